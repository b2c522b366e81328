import { trimLine } from '../../geometry/clip-lines.js';
import { containsPoint, distanceTo } from '../../geometry/components.js';
import { flatten, lineLength } from '../../geometry/measure.js';
import { smoothLine } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
import type { Branch } from './branches.js';

/** Scores keep this far from every cut: a line that meets an edge starts a tear. */
export const CLEARANCE_MM = 1.5;
/** Shorter scores look like specks. */
const SHORTEST_MM = 2;

/** A twig drawn on within its clump of leaves: a middle line with a short one to each side. */
export interface Sprig {
  readonly rib: Line;
  readonly sides: readonly Line[];
  readonly middle: Point;
  readonly lengthMm: number;
}

/** What of the lines lies well inside the card, and the sprigs that do so whole and have room. */
export function scoresOn(
  body: Region,
  holes: Region,
  lines: readonly Line[],
  sprigs: readonly Sprig[] = [],
): Line[] {
  const card = { contours: [...body.contours, ...holes.contours.map(reversed)] };
  const clear = (line: Line): Line[] => clearParts(line, card);
  const drawn: Sprig[] = [];
  for (const sprig of sprigs) {
    const room = (other: Sprig): number => 0.5 * (sprig.lengthMm + other.lengthMm);
    const isCrowded = drawn.some(
      (other) =>
        Math.hypot(other.middle.x - sprig.middle.x, other.middle.y - sprig.middle.y) < room(other),
    );
    const [rib, ...rest] = clear(sprig.rib);
    if (isCrowded || !rib || rest.length > 0) continue;
    const sides = sprig.sides.flatMap(clear);
    if (lineLength(rib) < WHOLE * sprig.lengthMm || sides.length === 0) continue;
    drawn.push({ ...sprig, rib, sides });
  }
  return [...lines.flatMap(clear), ...drawn.flatMap(({ rib, sides }) => [rib, ...sides])];
}

/** Steps (mm) in which a line is looked at for its distance from the edge. */
const LOOK_MM = 0.4;

/** The parts of a line that keep clear of every edge of the card. */
function clearParts(line: Line, card: Region): Line[] {
  const length = lineLength(line);
  const points = flatten(line.cubics, 0.02);
  const parts: Line[] = [];
  let from: number | null = null;
  let at = 0;
  const close = (to: number): void => {
    const part = from === null ? null : trimLine(line, from, length - to);
    if (part && lineLength(part) >= SHORTEST_MM) parts.push(part);
    from = null;
  };
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const steps = Math.max(1, Math.ceil(long / LOOK_MM));
    for (let k = 0; k < steps; k++) {
      const f = k / steps;
      const p = { x: a.x + f * (b.x - a.x), y: a.y + f * (b.y - a.y) };
      if (!isClear(p, card)) close(at + f * long);
      else from ??= at + f * long;
    }
    at += long;
  }
  close(length);
  return parts;
}

const isClear = (p: Point, card: Region): boolean =>
  containsPoint(card, p) && (distanceTo(card, p)?.distanceMm ?? 0) >= CLEARANCE_MM;

/** A sprig that loses more than the rest of its middle line looks like a scratch. */
const WHOLE = 0.7;

/** Share of the twigs that are drawn on: few, or the crown looks fussy. */
const DRAWN = 0.5;
/** Where on its twig a sprig begins, and how far past the twig's end it runs. */
const BEGINS = 0.3;
const RUNS_ON = 0.25;

export function sprigsOn(twigs: readonly Branch[], random: Random): Sprig[] {
  return twigs.flatMap(({ id, points }) => {
    const r = random.branch(id);
    if (!r.chance(DRAWN)) return [];
    const whole = alongSmooth(points, 6);
    const way = whole.slice(Math.round(BEGINS * whole.length));
    const [start, end] = [way[0], way[way.length - 1]];
    const long = Math.hypot(end.x - start.x, end.y - start.y);
    const axis = Math.atan2(end.y - start.y, end.x - start.x);
    const rib = smoothLine([start, way[way.length >> 1], onward(end, axis, RUNS_ON * long)]);
    const first = r.chance(0.5) ? 1 : -1;
    const side = (share: number, turn: number): Line => {
      const foot = way[Math.round(share * (way.length - 1))];
      const bend = onward(foot, axis + turn, 0.19 * long);
      return smoothLine([foot, bend, onward(foot, axis + 0.8 * turn, 0.38 * long)]);
    };
    return {
      rib,
      sides: [side(0.4, 0.75 * first), side(0.7, -0.7 * first)],
      middle: way[way.length >> 1],
      lengthMm: lineLength(rib),
    };
  });
}

const onward = (p: Point, angle: number, distance: number): Point => ({
  x: p.x + distance * Math.cos(angle),
  y: p.y + distance * Math.sin(angle),
});
