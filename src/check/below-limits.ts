import type { Point } from '../geometry/types.js';
import { narrowSlots, smallHoles } from '../geometry/width/webs.js';
import type { Piece } from '../panel/piece.js';
import type { ProcessLimits } from '../scene/scene.js';
import { type Finding, type Rule, rounded, type Severity } from './finding.js';

/** Openings that the process cannot cut; of each piece the worst, with how many there are. */
export const belowLimits: Rule = ({ pieces, limits }) =>
  pieces.flatMap((piece) => [...slotsOf(piece, limits), ...holesOf(piece, limits)]);

/**
 * Slots that are too narrow throughout, and gaps that are between two wider openings: there the
 * waste still comes away with its neighbours, though the edges may suffer. Ends of notches, which
 * run out to nothing anyway, are let be.
 */
function slotsOf(piece: Piece, { smallestSlot }: ProcessLimits): Finding[] {
  const found = narrowSlots(piece.card, smallestSlot).sort((a, b) => a.widthMm - b.widthMm);
  const ofKind = (kind: 'whole' | 'neck') =>
    found.filter((slot) => slot.kind === kind).map(({ at, widthMm }) => ({ at, mm: widthMm }));
  return [
    ...told('warning', piece, 'A slot', ofKind('whole'), smallestSlot),
    ...told('hint', piece, 'A gap', ofKind('neck'), smallestSlot),
  ];
}

function holesOf(piece: Piece, { smallestHole }: ProcessLimits): Finding[] {
  const holes = smallHoles(piece.card, smallestHole);
  const places = holes.map(({ at, diameterMm }) => ({ at, mm: diameterMm }));
  return told('warning', piece, 'A hole', places, smallestHole);
}

interface Opening {
  readonly at: Point;
  readonly mm: number;
}

/** @param openings the worst first. */
function told(
  severity: Severity,
  { name }: Piece,
  what: string,
  openings: readonly Opening[],
  wanted: number,
): Finding[] {
  if (openings.length === 0) return [];
  const [{ at, mm }] = openings;
  const [x, y, measured] = [rounded(at.x), rounded(at.y), rounded(mm)];
  const others = openings.length > 1 ? ` (and ${openings.length - 1} more are too small)` : '';
  return [
    {
      rule: 'below-limits',
      severity,
      where: { piece: name, x, y },
      measured,
      wanted,
      unit: 'mm',
      message: `${what} of ${name} is only ${measured} mm wide, ${x} mm from its left and ${y} mm from its top${others}; this process needs ${rounded(wanted)} mm.`,
      cure: 'Make the element larger or its detail coarser, move it, take another seed, or cut by a finer process.',
    },
  ];
}
