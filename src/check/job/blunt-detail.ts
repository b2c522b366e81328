import { type BladeSpot, bladeLimits } from '../../process/knife/blade-limits.js';
import { type Finding, rounded } from '../finding.js';
import { firstCopies } from './job-pieces.js';
import type { JobRule } from './job-rule.js';

const SAID: Readonly<Record<BladeSpot['kind'], { what: string; many: string; cure: string }>> = {
  hole: {
    what: 'A hole is smaller across than a dragged blade can turn in',
    many: 'holes',
    cure: 'Make the holes larger, or take another seed; a finer blade has less offset.',
  },
  corner: {
    what: 'A bend is tighter than the offset of the blade',
    many: 'bends',
    cure: 'It comes out rounder or a little torn; draw it larger, or use a blade with less offset.',
  },
  short: {
    what: 'A run between two corners is too short for the blade to come into line',
    many: 'runs',
    cure: 'Its corners come out blunt; draw it larger, or let the file swing the blade (compensate) where the machine does not.',
  },
};

/** Details finer than a dragged blade can turn: of each kind one finding a piece, at the worst. */
export const bluntDetail: JobRule = (job, process) => {
  if (process.kind !== 'knife') return [];
  const { blade } = process;
  return firstCopies(job).flatMap((piece) => {
    const spots = bladeLimits(piece.card, blade);
    return (Object.keys(SAID) as BladeSpot['kind'][]).flatMap((kind): Finding[] => {
      const found = spots.filter((spot) => spot.kind === kind);
      if (found.length === 0) return [];
      const worst = found.reduce((a, b) => (shortfall(b) > shortfall(a) ? b : a));
      const [x, y] = [rounded(worst.at.x), rounded(worst.at.y)];
      const { what, many, cure } = SAID[kind];
      const more = found.length === 1 ? '' : ` It is the worst of ${found.length} such ${many}.`;
      return [
        {
          rule: 'blunt-detail',
          severity: kind === 'hole' ? 'warning' : 'hint',
          where: { piece: piece.name, x, y },
          measured: rounded(worst.measuredMm),
          wanted: rounded(worst.wantedMm),
          unit: 'mm',
          message: `${what}: ${rounded(worst.measuredMm)} mm where it wants ${rounded(worst.wantedMm)} mm, in ${piece.name}, ${x} mm from its left and ${y} mm from its top.${more}`,
          cure,
        },
      ];
    });
  });
};

const shortfall = ({ measuredMm, wantedMm }: BladeSpot): number => wantedMm / measuredMm;
