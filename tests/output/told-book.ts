import type { Costs } from '../../src/output/build-book/costs.js';
import type { Told } from '../../src/output/build-book/first-page.js';
import { pngOf } from '../../src/output/raster.js';
import type { Piece } from '../../src/panel/piece.js';
import { STARTING } from '../../src/process/starting.js';
import type { ProcessName, Unit } from '../../src/scene/scene.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { bridge, gate, sky, spine } from '../process/lock-pieces.js';
import { sceneWith } from '../support/scene.js';
import { emptyBook } from './picture-book.js';

/** A plain picture in the shape of a preview. */
export const PREVIEW = pngOf(
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 240 190"><path fill="#46506a" d="M0 0h240v190H0z"/></svg>',
  240,
);

export interface Telling {
  readonly title?: string;
  readonly unit?: Unit;
  readonly kind?: ProcessName;
  readonly pieces?: readonly Piece[];
}

/** What a build book tells of a canal lock. */
export function told({
  title = 'Lock at dusk',
  unit = 'mm',
  kind = 'knife',
  pieces = [bridge, gate, sky, spine('spine-left', 8)],
}: Telling = {}): Told {
  const process = STARTING[kind];
  const { book, panels } = emptyBook();
  const jobs = nest(pieces, process).sheets.map((sheet) => sheetJob(sheet, { process, ballMm: 1 }));
  return { scene: sceneWith({ unit }), book: { ...book, title }, panels, process, jobs };
}

/** Twenty-odd sheets of it. */
export const manySheets: readonly Piece[] = [
  bridge,
  ...[gate, sky, spine('spine-left', 8)].map((piece) => ({ ...piece, copies: 14 })),
];

/** Costs with figures that can be told apart. */
export const costsOf = ({ jobs }: Told): Costs => ({
  steps: jobs.flatMap(({ sheet, faces }) =>
    faces.flatMap(({ face, steps }) =>
      steps.map(({ operation }, i) => ({
        sheet: sheet.name,
        face,
        operation,
        cutMm: 12345.6 + i,
        travelMm: 4321,
        corners: 987,
        seconds: 432,
      })),
    ),
  ),
  stopSeconds: 270,
  cards: [{ stock: 'lock-wall grey', sheets: jobs.length, usedMm2: 75000, wastedMm2: 25000 }],
  quote: [
    {
      copies: 1,
      sheets: 2,
      minutes: 83,
      price: { setUp: 25, machine: 41.5, card: 4.2, total: 70.7, each: 70.7 },
    },
    {
      copies: 12,
      sheets: 24,
      minutes: 996,
      price: { setUp: 25, machine: 498, card: 50.4, total: 573.4, each: 47.783 },
    },
  ],
  currency: 'EUR',
});
