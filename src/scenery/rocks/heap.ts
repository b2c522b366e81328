import { pen, polyline } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { mix, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export interface Boulder {
  readonly outline: Region;
  readonly planes: readonly Line[];
}

/** Boulders from the back to the front, and where the heap ends, mm. */
export interface Heap {
  readonly boulders: readonly Boulder[];
  readonly x0: number;
  readonly x1: number;
}

/** Breadth of a middling boulder as a share of the heap's height, and its least in webs. */
const BREADTH = [0.4, 0.95] as const;
const LEAST_WEBS = 4;
/** From one boulder to the next, and from one layer to the next, in breadths. */
const STEP = 0.72;
const LAYER = 0.42;
/** Higher layers keep to this share of the width, so that the heap stands broad. */
const HIGHER = 0.84;
const CORNERS = 7;

export function heapOf(
  plot: Plot,
  size: number,
  worn: number,
  planes: number,
  random: Random,
): Heap {
  const { width, height, smallestWeb } = plot;
  const wanted = Math.max(LEAST_WEBS * smallestWeb, mix(...BREADTH, size) * height);
  const breadth = Math.min(wanted, 0.6 * width);
  const crown = random.between(-0.2, 0.2);
  const topAt = (x: number) =>
    height * (1 - 0.72 * Math.min(1, Math.abs(x / width - crown) / 0.6) ** 1.5);
  const layers = Math.max(1, Math.ceil(height / (LAYER * breadth)));
  const boulders: Boulder[] = [];
  for (let layer = layers - 1; layer >= 0; layer--) {
    const most = Math.ceil(width / (STEP * breadth));
    for (let i = -most; i <= most; i++) {
      const luck = random.branch(`${layer} ${i}`);
      const x = (i + (layer % 2) / 2 + luck.between(-0.16, 0.16)) * STEP * breadth;
      const rx = (breadth / 2) * luck.between(0.78, 1.25);
      const ry = Math.min(rx * luck.between(0.62, 0.9), 0.55 * height);
      const top = Math.min(topAt(x), layer * LAYER * breadth + 1.4 * ry);
      const isHigh = layer > 0 && layer * LAYER * breadth + 0.5 * ry > topAt(x);
      const reach = (width / 2) * (layer > 0 ? HIGHER : 1);
      const isOut = isHigh || Math.abs(x) + rx > reach;
      if (isOut && !(layer === 0 && i === 0)) continue;
      boulders.push(boulderAt({ x, y: -top + ry }, rx, ry, worn, luck.chance(planes), luck));
    }
  }
  const half = width / 2 - breadth * 0.3;
  return { boulders, x0: -half, x1: half };
}

function boulderAt(
  at: Point,
  rx: number,
  ry: number,
  worn: number,
  scored: boolean,
  luck: Random,
): Boulder {
  const turn = luck.between(0, 360);
  const corners = Array.from({ length: CORNERS }, (_, k): Point => {
    const deg = turn + ((k + luck.between(-0.28, 0.28)) * 360) / CORNERS;
    const far = luck.between(0.9, 1.08);
    const a = (deg * Math.PI) / 180;
    return { x: at.x + rx * far * Math.cos(a), y: at.y + ry * far * Math.sin(a) };
  });
  const cut = mix(0.1, 0.5, worn);
  const towards = (a: Point, b: Point, t: number) => ({ x: mix(a.x, b.x, t), y: mix(a.y, b.y, t) });
  const start = towards(corners[0], corners[CORNERS - 1], cut);
  const p = pen(start.x, start.y);
  corners.forEach((c, k) => {
    const from = towards(c, corners[(k + CORNERS - 1) % CORNERS], cut);
    const to = towards(c, corners[(k + 1) % CORNERS], cut);
    p.lineTo(from.x, from.y).quadTo(c.x, c.y, to.x, to.y);
  });
  const outline = shapeOf(p.close());
  // Planes meet in an edge a little off the middle and run out to the upper and lower corners.
  const inner = { x: at.x + rx * luck.between(-0.3, 0.3), y: at.y - ry * luck.between(0, 0.3) };
  const first = luck.whole(0, CORNERS - 1);
  const planes = [0, 2, 5].map((k) => polyline([inner, corners[(first + k) % CORNERS]]));
  return { outline, planes: scored ? planes : [] };
}
