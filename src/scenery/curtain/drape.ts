import { type Pen, pen } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { mix, shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import type { Stage } from './stage.js';

/** A curtain drawn to one jamb, tied back and falling open again below. */
export interface Drape {
  readonly shapes: readonly Region[];
  readonly folds: readonly Line[];
}

/** Where it is tied, down from the head, and how wide it is there and at its foot, in reaches. */
const TIED = { at: 0.62, width: 0.36, foot: 0.74 };
/** How far the drape runs on behind jamb, head and sill, mm: what is past the edge is clipped. */
const BEHIND_MM = 4;
/** From fold to fold along the head, mm, for one fold to each step of plenty. */
const FOLD_MM = 5.5;

/** `side` is -1 for the left jamb and 1 for the right one; `reach` how far it hangs in, mm. */
export function drape(
  stage: Stage,
  side: -1 | 1,
  reach: number,
  plenty: number,
  random: Random,
): Drape {
  const { bounds, height, web } = stage;
  const jamb = side < 0 ? bounds.minX : bounds.maxX;
  const luck = random.branch('shape');
  const tie = bounds.minY + height * (TIED.at + 0.025 * luck.bell());
  const waist = Math.max(2.2 * web, TIED.width * reach * (1 + 0.06 * luck.bell()));
  const foot = TIED.foot * reach * (1 + 0.08 * luck.bell());
  const at = (inMm: number, y: number): [number, number] => [jamb - side * inMm, y];
  const drop = tie - bounds.minY;
  const fall = bounds.maxY - tie;

  const outline: Pen = pen(...at(-BEHIND_MM, bounds.minY - BEHIND_MM))
    .lineTo(...at(reach, bounds.minY - BEHIND_MM))
    .lineTo(...at(reach, bounds.minY))
    .curveTo(
      ...at(reach * 1.02, bounds.minY + 0.45 * drop),
      ...at(mix(waist, reach, 0.42), tie - 0.16 * drop),
      ...at(waist, tie),
    )
    .curveTo(
      ...at(mix(waist, foot, 0.42), tie + 0.2 * fall),
      ...at(foot * 0.96, tie + 0.5 * fall),
      ...at(foot, bounds.maxY + BEHIND_MM),
    )
    .lineTo(...at(-BEHIND_MM, bounds.maxY + BEHIND_MM));
  const knot = at(waist - 0.35 * web, tie);
  const shapes = [shapeOf(outline.close()), circle(...knot, 1.15 * web)];

  const count = Math.min(9, Math.round((plenty * reach) / FOLD_MM));
  const upper = Array.from({ length: count }, (_, k) => {
    const fold = random.branch(`upper ${k}`);
    const share = (k + 0.7 + 0.18 * fold.bell()) / (count + 0.4);
    const high = { in: share * reach, y: bounds.minY + drop * fold.between(0.05, 0.3) };
    const low = { in: mix(0.25, 0.9, share) * waist, y: tie - drop * fold.between(0.04, 0.1) };
    return foldLine(
      at(low.in, low.y),
      at(mix(low.in, high.in, 0.55), tie - 0.24 * drop),
      at(high.in * 1.01, mix(high.y, tie, 0.4)),
      at(high.in, high.y),
    );
  });
  const lower = Array.from({ length: Math.ceil(0.7 * count) }, (_, k) => {
    const fold = random.branch(`lower ${k}`);
    const share = (k + 0.7 + 0.18 * fold.bell()) / (0.7 * count + 0.4);
    const high = { in: mix(0.25, 0.85, share) * waist, y: tie + fall * fold.between(0.06, 0.12) };
    const low = { in: share * foot, y: bounds.maxY - fall * fold.between(0.02, 0.35) };
    return foldLine(
      at(high.in, high.y),
      at(mix(high.in, low.in, 0.5), tie + 0.3 * fall),
      at(low.in * 0.98, tie + 0.55 * fall),
      at(low.in, low.y),
    );
  });
  const sash = [-0.8, 0.8].map((mm) => {
    const [x0, y0] = at(0.2, tie + mm * web - 0.1 * waist);
    const [x1, y1] = at(waist, tie + mm * web);
    return pen(x0, y0)
      .quadTo((x0 + x1) / 2, (y0 + y1) / 2 + 0.16 * waist, x1, y1)
      .line();
  });
  return { shapes, folds: [...upper, ...lower, ...sash] };
}

type Pair = [number, number];

const foldLine = (a: Pair, b: Pair, c: Pair, d: Pair): Line =>
  pen(...a)
    .curveTo(...b, ...c, ...d)
    .line();

/** A tassel that hangs from a place: cord, head and a skirt that widens. */
export function tassel(from: Point, lengthMm: number, web: number): Region[] {
  const cap = 0.95 * web;
  const [neck, hem] = [0.75 * web, 1.35 * web];
  const top = from.y + 0.3 * lengthMm;
  const bottom = from.y + lengthMm;
  const skirt = pen(from.x - neck, top)
    .lineTo(from.x + neck, top)
    .quadTo(from.x + neck, (top + bottom) / 2, from.x + hem, bottom)
    .quadTo(from.x, bottom + 0.35 * web, from.x - hem, bottom)
    .quadTo(from.x - neck, (top + bottom) / 2, from.x - neck, top);
  const cord = pen(from.x - 0.55 * web, from.y - 2 * web)
    .lineTo(from.x + 0.55 * web, from.y - 2 * web)
    .lineTo(from.x + 0.55 * web, top)
    .lineTo(from.x - 0.55 * web, top);
  return [shapeOf(skirt.close()), shapeOf(cord.close()), circle(from.x, top, cap)];
}
