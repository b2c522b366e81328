import { narrowSlots, smallHoles } from '../geometry/width/webs.js';
import type { Piece } from '../panel/piece.js';
import type { ProcessLimits } from '../scene/scene.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Slots and holes that the process cannot cut; of each piece the worst, with how many there are. */
export const belowLimits: Rule = ({ pieces, limits }) =>
  pieces.flatMap((piece) => [...slotsOf(piece, limits), ...holesOf(piece, limits)]);

/** Slots with card on both sides; the ends of notches, which run out to nothing anyway, are let be. */
function slotsOf({ name, card }: Piece, { smallestSlot }: ProcessLimits): Finding[] {
  const slots = narrowSlots(card, smallestSlot)
    .filter(({ kind }) => kind !== 'tip')
    .sort((a, b) => a.widthMm - b.widthMm);
  if (slots.length === 0) return [];
  const [x, y] = [rounded(slots[0].at.x), rounded(slots[0].at.y)];
  const width = rounded(slots[0].widthMm);
  return [
    {
      rule: 'below-limits',
      severity: 'warning',
      where: { piece: name, x, y },
      measured: width,
      wanted: smallestSlot,
      unit: 'mm',
      message: `A gap of ${name} is only ${width} mm wide, ${x} mm from its left and ${y} mm from its top${others(slots.length)}; this process needs ${smallestSlot} mm.`,
      cure: 'Make the element larger or move it, take another seed, or cut by a finer process.',
    },
  ];
}

function holesOf({ name, card }: Piece, { smallestHole }: ProcessLimits): Finding[] {
  const holes = smallHoles(card, smallestHole);
  if (holes.length === 0) return [];
  const [x, y] = [rounded(holes[0].at.x), rounded(holes[0].at.y)];
  const diameter = rounded(holes[0].diameterMm);
  return [
    {
      rule: 'below-limits',
      severity: 'warning',
      where: { piece: name, x, y },
      measured: diameter,
      wanted: smallestHole,
      unit: 'mm',
      message: `A hole of ${name} is no larger than a circle of ${diameter} mm, ${x} mm from its left and ${y} mm from its top${others(holes.length)}; this process needs ${smallestHole} mm.`,
      cure: 'Make the element larger or its detail coarser, or cut by a finer process.',
    },
  ];
}

const others = (count: number): string => (count > 1 ? ` (and ${count - 1} others)` : '');
