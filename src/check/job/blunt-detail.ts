import { type BladeSpot, bladeLimits } from '../../process/knife/blade-limits.js';
import { type Finding, rounded } from '../finding.js';
import { piecesOf, sayPieces } from './job-pieces.js';
import type { JobsRule } from './job-rule.js';

const KINDS: readonly BladeSpot['kind'][] = ['hole', 'corner', 'short'];

const SAID: Readonly<Record<BladeSpot['kind'], { one: string; many: string; cure: string }>> = {
  hole: {
    one: 'hole is smaller across than a dragged blade can turn in',
    many: 'holes are smaller across than a dragged blade can turn in',
    cure: 'Make the holes larger, or take another seed; a finer blade has less offset.',
  },
  corner: {
    one: 'bend is tighter than the offset of the blade',
    many: 'bends are tighter than the offset of the blade',
    cure: 'It comes out a little rounder or torn; draw larger, or use a blade with less offset.',
  },
  short: {
    one: 'run between two corners is too short for the blade to come into line',
    many: 'runs between two corners are too short for the blade to come into line',
    cure: 'Corners come out blunt; draw larger, or let the file swing the blade (compensate) where the machine does not.',
  },
};

/** Details finer than a dragged blade can turn: one finding of each kind, at the worst. */
export const bluntDetail: JobsRule = (jobs, process) => {
  if (process.kind !== 'knife') return [];
  const { blade } = process;
  const all = piecesOf(jobs).flatMap((piece) =>
    bladeLimits(piece.card, blade).map((spot) => ({ piece, spot })),
  );
  return KINDS.flatMap((kind): Finding[] => {
    const found = all.filter(({ spot }) => spot.kind === kind);
    if (found.length === 0) return [];
    const { piece, spot } = found.reduce((a, b) => (shortfall(b.spot) > shortfall(a.spot) ? b : a));
    const [x, y] = [rounded(spot.at.x), rounded(spot.at.y)];
    const { one, many, cure } = SAID[kind];
    const what = found.length === 1 ? one : many;
    const pieces = sayPieces(found.map((f) => f.piece));
    return [
      {
        rule: 'blunt-detail',
        severity: kind === 'hole' ? 'warning' : 'hint',
        where: { piece: piece.name, x, y },
        measured: rounded(spot.measuredMm),
        wanted: rounded(spot.wantedMm),
        unit: 'mm',
        message: `${found.length} ${what}, in ${pieces}; the worst is ${rounded(spot.measuredMm)} mm where it wants ${rounded(spot.wantedMm)} mm, in ${piece.name}, ${x} mm from its left and ${y} mm from its top.`,
        cure,
      },
    ];
  });
};

const shortfall = ({ measuredMm, wantedMm }: BladeSpot): number => wantedMm / measuredMm;
