import type { Point } from '../../geometry/types.js';
import type { Piece } from '../../panel/piece.js';
import { kerfPath } from '../../process/laser/kerf.js';
import { holdingOf } from '../../process/nibs/nibs.js';
import { type Finding, rounded } from '../finding.js';
import { piecesOf, sayPieces } from './job-pieces.js';
import type { JobsRule } from './job-rule.js';

/** Nibs on edges that are seen, and parts that nothing holds because only scenery is round them. */
export const nibs: JobsRule = (jobs, process) => {
  if (process.kind === 'press' || process.nibs.count === 0) return [];
  const wanted = process.nibs;
  const kerfMm = process.kind === 'laser' ? process.kerfMm : 0;
  const held = piecesOf(jobs).map((piece) => ({
    piece,
    ...holdingOf(piece, kerfPath(piece.card, kerfMm).cut.contours, wanted, kerfMm),
  }));
  const shown = held.flatMap(({ piece, nibs: all }): Found[] =>
    all.filter(({ shows }) => shows).map(({ at }) => ({ piece, at })),
  );
  const loose = held.flatMap(({ piece, loose: all }): Found[] => all.map((at) => ({ piece, at })));
  return [
    ...finding(shown, 'nib-shows', {
      one: 'nib stands where its piece is seen',
      many: 'nibs stand where their piece is seen',
      cure: 'Cut them through from the front with a sharp blade rather than tear them, or set nibs to 0 and hold the sheet down flat.',
    }),
    ...finding(loose, 'nib-missing', {
      one: 'part has only scenery round it, where no nib may stand',
      many: 'parts have only scenery round them, where no nib may stand',
      cure: 'Watch them: a part that tips up can meet the head. Hold them down, or lift them out as soon as they are free and the machine has stopped.',
    }),
  ];
};

interface Found {
  readonly piece: Piece;
  readonly at: Point;
}

function finding(
  found: readonly Found[],
  rule: string,
  { one, many, cure }: { readonly one: string; readonly many: string; readonly cure: string },
): Finding[] {
  return found.slice(0, 1).map(({ piece, at }): Finding => {
    const [x, y] = [rounded(at.x), rounded(at.y)];
    const what = found.length === 1 ? one : many;
    const pieces = sayPieces(found.map((f) => f.piece));
    return {
      rule,
      severity: 'hint',
      where: { piece: piece.name, x, y },
      measured: found.length,
      wanted: 0,
      unit: 'parts',
      message: `${found.length} ${what}, in ${pieces}; the first in ${piece.name}, ${x} mm from its left and ${y} mm from its top.`,
      cure,
    };
  });
}
