import type { Bounds, Line } from '../../geometry/types.js';
import { handDrawn } from '../brick/craft.js';
import type { Random } from '../random.js';
import { cellsIn } from './cells.js';

/** Height of a course in spacings: room for a perpend clear of both beds. */
const COURSE = 3.6;
/** A brick is three courses long, joints counted: 225 by 75 mm (facts of brickwork, BS 4729). */
const LONG = 3;
/** Strokes of different joints keep this many spacings apart, the hand's wander allowed for. */
const CLEAR = 1.12;
const WANDER = 0.05;
/** Chance that a bed goes on under the next brick. */
const GOES_ON = 0.55;

/** Courses of brick in stretcher bond: each bed and perpend one stroke, never meeting. */
export function brick(box: Bounds, spacing: number, random: Random): Line[] {
  const course = COURSE * spacing;
  const long = LONG * course;
  const gap = CLEAR * spacing;
  const wander = WANDER * spacing;
  return cellsIn(box, long, course, 'bonded').flatMap(({ column, row, x, y }) => {
    const luck = random.branch(`${column} ${row}`);
    const before = random.branch(`${column - 1} ${row}`);
    const [left, right] = [x - long / 2, x + long / 2];
    const bed = y - course / 2;
    const goesOn = luck.chance(GOES_ON);
    // A bed that the brick before runs on into starts where that one ends.
    const start = before.chance(GOES_ON) ? left + gap + long / 4 : left + gap / 2;
    const end = goesOn ? right + long / 4 : right - gap / 2;
    const beds = handDrawn(
      [
        { x: start, y: bed },
        { x: end, y: bed },
      ],
      wander,
      luck.branch('bed'),
    );
    const perpend = handDrawn(
      [
        { x: left, y: bed + gap },
        { x: left, y: bed + course - gap },
      ],
      wander,
      luck.branch('perpend'),
    );
    return [beds, perpend];
  });
}
