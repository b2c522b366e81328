import { pen } from '../../geometry/pen.js';
import type { Bounds, Line, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { cellsIn } from './cells.js';

/** From clump to clump, in spacings, and how far a clump strays from its cell's middle, in cells. */
const CELL = { wide: 6.2, high: 4.7 };
const STRAY = 0.16;
/** Between two flecks of a fan, degrees; flecks start where that leaves them a spacing apart. */
const FAN_DEG = 27;
const AMPLE = 1.1;
/** Length of a fleck in spacings, low and high, and how far it is bent, in lengths. */
const FLECK = [1.5, 2.6] as const;
const BEND = 0.13;

/** Leaves as the light finds them: clumps of short curved flecks, each fanned about its foot. */
export function stipple(box: Bounds, spacing: number, random: Random): Line[] {
  return cellsIn(box, CELL.wide * spacing, CELL.high * spacing, 'bonded').flatMap((cell) => {
    const own = random.branch(`${cell.column} ${cell.row}`);
    const foot = {
      x: cell.x + own.between(-STRAY, STRAY) * CELL.wide * spacing,
      y: cell.y + own.between(-STRAY, STRAY) * CELL.high * spacing,
    };
    return fan(foot, spacing, own);
  });
}

function fan(foot: Point, spacing: number, random: Random): Line[] {
  const count = random.whole(4, 6);
  const lean = random.between(-28, 28);
  const near = (AMPLE * spacing) / (2 * Math.sin((FAN_DEG * Math.PI) / 360));
  // From the middle out: where clumps crowd, the flecks at a fan's sides give way.
  const order = Array.from({ length: count }, (_, i) => i - (count - 1) / 2);
  return order
    .sort((a, b) => Math.abs(a) - Math.abs(b))
    .map((k) => {
      const own = random.branch(k);
      const angle = ((lean + k * FAN_DEG) * Math.PI) / 180;
      const way = { x: Math.sin(angle), y: -Math.cos(angle) };
      const start = near + own.between(0, 0.5) * spacing;
      const length = own.between(...FLECK) * (1 - 0.05 * k * k) * spacing;
      const bend = BEND * length * Math.sign(k || own.between(-1, 1));
      // The fan's foot lies below its flecks, so that the clump sits about its cell.
      const y = foot.y + near + spacing;
      const point = (mm: number, aside: number): [number, number] => [
        foot.x + way.x * mm - way.y * aside,
        y + way.y * mm + way.x * aside,
      ];
      return pen(...point(start, 0))
        .quadTo(...point(start + length / 2, -bend), ...point(start + length, 0))
        .line();
    });
}
