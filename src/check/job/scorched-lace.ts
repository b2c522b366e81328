import { chordsOf } from '../../geometry/chain.js';
import { boundsOf } from '../../geometry/measure.js';
import type { Point } from '../../geometry/types.js';
import type { PlacedMark } from '../../process/layers.js';
import { type Finding, rounded } from '../finding.js';
import { byPiece, type JobRule, onSheet, sayPlace } from './job-rule.js';

/** Heat spreads through about so much card while its cuts are burnt; common practice, no source. */
const WINDOW_MM = 20;
/** The window is moved on by one cell at a time. */
const CELL_MM = 2.5;
const CELLS = WINDOW_MM / CELL_MM;
/** A curve's chords stray so little that its length is true to a thousandth. */
const CHORD_TOLERANCE_MM = 0.02;
/** Chords are shared out among cells in steps no longer than this. */
const STEP_MM = 0.25;

interface Dense {
  readonly perMm: number;
  readonly middle: Point;
}

/** Lace with more cut in it than its card can take of the heat; of each piece the worst place. */
export const scorchedLace: JobRule = (job, process) => {
  if (process.kind !== 'laser') return [];
  const { densestPerMm } = process.heat;
  return job.faces.flatMap((face) => {
    const cuts = face.steps
      .filter(({ operation }) => operation === 'cut')
      .flatMap((step) => step.marks)
      // Copies are alike.
      .filter(({ copy }) => copy === 1);
    return [...byPiece(cuts, ({ piece }) => piece)].flatMap(([piece, marks]): Finding[] => {
      const { perMm, middle } = densest(marks);
      if (perMm <= densestPerMm) return [];
      return [
        {
          rule: 'scorched-lace',
          severity: 'warning',
          where: onSheet(job, piece, middle),
          measured: rounded(perMm),
          wanted: densestPerMm,
          unit: 'mm/mm2',
          message: `${piece} has ${rounded(perMm)} mm of cut to each mm2 in a square of ${WINDOW_MM} mm round the place ${sayPlace(job, face, middle)}; above ${densestPerMm} lace scorches.`,
          cure: 'Make what grows there coarser or larger, or run a trial with less power in more passes, the card masked and held flat.',
        },
      ];
    });
  });
};

/** The window with most cut in it, of those that begin where a cell of the piece does. */
function densest(marks: readonly PlacedMark[]): Dense {
  const { minX, minY, maxX, maxY } = boundsOf(marks.map(({ cubics }) => cubics));
  const columns = cellsAcross(maxX - minX);
  const rows = cellsAcross(maxY - minY);
  const cells = new Float64Array(columns * rows);
  for (const { x, y, mm } of marks.flatMap(stepsOf)) {
    const column = Math.floor((x - minX) / CELL_MM);
    const row = Math.floor((y - minY) / CELL_MM);
    cells[row * columns + column] += mm;
  }
  let best: Dense = { perMm: 0, middle: { x: minX, y: minY } };
  for (let row = 0; row <= rows - CELLS; row++) {
    for (let column = 0; column <= columns - CELLS; column++) {
      let mm = 0;
      for (let k = 0; k < CELLS ** 2; k++) {
        mm += cells[(row + Math.floor(k / CELLS)) * columns + column + (k % CELLS)];
      }
      const perMm = mm / WINDOW_MM ** 2;
      if (perMm <= best.perMm) continue;
      const [x, y] = [minX + column * CELL_MM, minY + row * CELL_MM];
      best = { perMm, middle: { x: x + WINDOW_MM / 2, y: y + WINDOW_MM / 2 } };
    }
  }
  return best;
}

/** One more than needed, for what lies on the far edge itself; a whole window at least. */
const cellsAcross = (mm: number): number => Math.max(CELLS, Math.floor(mm / CELL_MM) + 1);

/** A cut in steps, each by its middle and length. */
function stepsOf({ cubics }: PlacedMark): { x: number; y: number; mm: number }[] {
  const { x, y } = chordsOf(cubics, CHORD_TOLERANCE_MM);
  return Array.from({ length: x.length - 1 }, (_, k) => {
    const [dx, dy] = [x[k + 1] - x[k], y[k + 1] - y[k]];
    const length = Math.hypot(dx, dy);
    const steps = Math.max(1, Math.ceil(length / STEP_MM));
    return Array.from({ length: steps }, (_, i) => {
      const share = (i + 0.5) / steps;
      return { x: x[k] + share * dx, y: y[k] + share * dy, mm: length / steps };
    });
  }).flat();
}
