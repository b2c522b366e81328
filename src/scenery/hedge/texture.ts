import { pen } from '../../geometry/pen.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { clearOf } from './clear.js';
import type { Room } from './room.js';

/** From clump to clump at the front panel, before they are strewn. */
const CELL_MM = 6.8;
/** A score nearer than this to a cut would tear. */
const CLEAR_MM = 1.1;
/** Clumps are strewn by up to this share of a cell, or the grid would show. */
const STRAY = 0.44;
/** Cells to a side of a patch; patches are dense or bare of themselves, as leaves grow. */
const PATCH_CELLS = 3;
const PATCH_DENSITY = [0.3, 1.35] as const;
/** Fewer strokes than this do not read as a fan. */
const FEWEST = 3;

/** How dark it is at a place: 0 in full light, 1 in the deepest shade. */
export type Shade = (p: Point) => number;

/**
 * Fanned clumps of short strokes, as leaves catch the light: close in the shade and thinning out to
 * nothing toward the light. `card` is the contours of the card and of its holes. A clump belongs to a cell counted from the hedge's foot, so that a
 * larger hedge keeps the clumps of a smaller one.
 */
export function clumps(
  room: Room,
  card: readonly Cubics[],
  shade: Shade,
  density: number,
  random: Random,
): Line[] {
  if (density <= 0) return [];
  const cell = CELL_MM * (0.5 + 0.5 * room.grain);
  const clear = clearOf(card, CLEAR_MM);
  const columns = Math.ceil(room.width / 2 / cell) + 1;
  const rows = Math.ceil(room.height / cell) + 1;
  const strokes: Line[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = -columns; column <= columns; column++) {
      const own = random.branch(`clump ${row} ${column}`);
      const at = {
        x: (column + (row % 2) / 2 + own.between(-STRAY, STRAY)) * cell,
        y: -(row + 0.4 + own.between(-STRAY, STRAY)) * cell,
      };
      const dark = shade(at);
      const patch = `patch ${Math.floor(row / PATCH_CELLS)} ${Math.floor(column / PATCH_CELLS)}`;
      const growth = random.branch(patch).between(...PATCH_DENSITY);
      if (!own.chance(2.2 * density * dark * growth)) continue;
      const whole = fan(at, dark, room, own).filter((line) => ends(line).every(clear));
      if (whole.length >= FEWEST) strokes.push(...whole);
    }
  }
  return strokes;
}

/** Strokes about one point, open in the middle like a tuft seen from above, turned to the light. */
function fan(at: Point, dark: number, room: Room, random: Random): Line[] {
  const count = random.whole(FEWEST, FEWEST + 1) + Math.round(2 * dark);
  const lean = 18 * room.light + random.between(-26, 26);
  const spread = random.between(24, 31);
  const reach = room.grain * (2.9 + 1.1 * dark) * random.between(0.85, 1.15);
  return Array.from({ length: count }, (_, i) => {
    const fromMiddle = i - (count - 1) / 2;
    const angle = ((lean + fromMiddle * spread + random.between(-6, 6)) * Math.PI) / 180;
    // The middle strokes are the longest, as in a shoot.
    const far = reach * (1 - 0.08 * fromMiddle * fromMiddle) * random.between(0.85, 1.1);
    const near = random.between(0.4, 0.48) * reach;
    const curl = 0.1 * far * Math.sign(fromMiddle || 1);
    const way = { x: Math.sin(angle), y: -Math.cos(angle) };
    const middle = (near + far) / 2;
    return pen(at.x + way.x * near, at.y + way.y * near)
      .quadTo(
        at.x + way.x * middle + way.y * curl,
        at.y + way.y * middle - way.x * curl,
        at.x + way.x * far,
        at.y + way.y * far,
      )
      .line();
  });
}

function ends({ cubics }: Line): Point[] {
  const last = cubics.length - 2;
  return [
    { x: cubics[0], y: cubics[1] },
    { x: cubics[last], y: cubics[last + 1] },
  ];
}
