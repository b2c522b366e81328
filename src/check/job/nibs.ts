import type { Piece } from '../../panel/piece.js';
import { kerfPath } from '../../process/laser/kerf.js';
import { holdingOf } from '../../process/nibs/nibs.js';
import type { Process } from '../../process/process.js';
import { type Finding, rounded } from '../finding.js';
import { firstCopies } from './job-pieces.js';
import type { JobRule } from './job-rule.js';

/** Nibs on edges that are seen, and parts that nothing holds because only scenery is round them. */
export const nibs: JobRule = (job, process) => {
  if (process.kind === 'press' || process.nibs.count === 0) return [];
  return firstCopies(job).flatMap((piece) => findingsOf(piece, process, process.nibs));
};

type Held = Exclude<Process, { kind: 'press' }>;

function findingsOf(piece: Piece, process: Held, wanted: Held['nibs']): Finding[] {
  const kerfMm = process.kind === 'laser' ? process.kerfMm : 0;
  const { contours } = kerfPath(piece.card, kerfMm).cut;
  const holding = holdingOf(piece, contours, wanted, kerfMm);
  const shown = holding.nibs.filter(({ shows }) => shows);
  const place = (at: { x: number; y: number }) => ({
    piece: piece.name,
    x: rounded(at.x),
    y: rounded(at.y),
  });
  return [
    ...shown.slice(0, 1).map(
      ({ at }): Finding => ({
        rule: 'nib-shows',
        severity: 'hint',
        where: place(at),
        measured: shown.length,
        wanted: 0,
        unit: 'parts',
        message: `${shown.length === 1 ? 'A nib stands' : `${shown.length} nibs stand`} where ${piece.name} is seen, one of them ${rounded(at.x)} mm from its left and ${rounded(at.y)} mm from its top.`,
        cure: 'Cut them through from the front with a sharp blade rather than tear them, or set nibs to 0 and hold the sheet down flat.',
      }),
    ),
    ...holding.loose.slice(0, 1).map(
      (at): Finding => ({
        rule: 'nib-missing',
        severity: 'hint',
        where: place(at),
        measured: holding.loose.length,
        wanted: 0,
        unit: 'parts',
        message: `${holding.loose.length === 1 ? 'A part' : `${holding.loose.length} parts`} of ${piece.name} has only scenery round it, where no nib may stand: round the place ${rounded(at.x)} mm from its left and ${rounded(at.y)} mm from its top.`,
        cure: 'Watch it: a part that tips up can meet the head. Hold it down, or lift it out as soon as it is free and the machine has stopped.',
      }),
    ),
  ];
}
