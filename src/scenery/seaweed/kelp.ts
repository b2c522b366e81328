import { smoothLine } from '../../geometry/pen.js';
import { ellipse } from '../../geometry/primitives.js';
import { inOrder, moveCubics, rotation, translation } from '../../geometry/transform.js';
import type { Cubics, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type LimbNode, limb } from '../limb.js';
import type { Random } from '../random.js';
import { carried, type Holdfast } from './stand.js';
import type { Weed } from './weed.js';

const NODES = 14;
/** Half a ribbon's breadth as a share of its length, and in webs at the least. */
const HALF = { share: 0.05, webs: 1.05 };
/** Blades a plant has: one or two low ones beside the long one. */
const BLADES = [0, -1, 1] as const;
const BESIDE = 0.62;

/** Long ribbons with waved edges that rise from one holdfast, with a float or two at their feet. */
export function kelp(
  at: Holdfast,
  flow: (upMm: number) => number,
  plot: Plot,
  random: Random,
): Weed {
  const shoots = BLADES.filter((side) => side === 0 || random.branch(side).chance(BESIDE));
  const drawn = shoots.map((side) => {
    const own = random.branch(`blade ${side}`);
    const long = at.heightMm * (side === 0 ? 1 : own.between(0.42, 0.7));
    return ribbonOf(at.x, side, long, flow, plot, own);
  });
  return {
    card: drawn.flatMap((d) => d.card),
    floats: drawn.flatMap((d) => d.floats),
    ribs: drawn.flatMap((d) => d.ribs),
  };
}

function ribbonOf(
  x: number,
  side: number,
  long: number,
  flow: (upMm: number) => number,
  plot: Plot,
  random: Random,
): Weed {
  const { smallestWeb: web, smallestHole: hole } = plot;
  const half = Math.max(HALF.webs * web, HALF.share * long);
  // A blade beside the long one leans clear of it: far enough for the light to show between.
  const apart = side * (2 * half + 1.3 * hole) * random.between(1, 1.35);
  const waves = random.between(2.1, 3.2);
  const phase = random.between(0, 1);
  const spine = (t: number): Point =>
    carried(flow, x + apart * Math.sin((Math.PI / 2) * Math.min(1, 1.6 * t)), t * long);
  const nodes = Array.from({ length: NODES + 1 }, (_, i): LimbNode => {
    const t = i / NODES;
    const p = spine(t * 0.98 - 0.02);
    // Both edges wave, one after the other: the ribbon swells and shrinks along its length.
    const swell = 1 + 0.3 * Math.sin(2 * Math.PI * (waves * t + phase));
    const body = mix(0.62, 1, Math.min(1, 3 * t)) * (1 - 0.62 * Math.max(0, (t - 0.6) / 0.4) ** 2);
    return { ...p, thickness: Math.max(1.16 * web, 2 * half * body * swell) };
  });
  const rib = smoothLine([0.22, 0.4, 0.6, 0.78].map(spine));
  const float = floatOn(spine, half, long, plot, random.branch('float'));
  return { card: [limb(nodes)], floats: float, ribs: [rib] };
}

/** An oval bladder on the ribbon's side, low on it where the stalk becomes a blade. */
function floatOn(
  spine: (t: number) => Point,
  half: number,
  long: number,
  { smallestWeb: web }: Plot,
  random: Random,
): Cubics[] {
  const [rx, ry] = [Math.max(1.05 * web, 0.72 * half), Math.max(1.45 * web, 1.2 * half)];
  if (long < 10 * ry) return [];
  const side = random.chance(0.5) ? 1 : -1;
  return [random.between(0.2, 0.3), random.between(0.46, 0.56)].map((t, i) => {
    const [a, b] = [spine(t), spine(t + 0.04)];
    const deg = (Math.atan2(b.x - a.x, a.y - b.y) * 180) / Math.PI;
    const out = (i === 0 ? side : -side) * (0.62 * half + 0.6 * rx);
    const oval = ellipse(0, 0, rx, ry).contours[0];
    return moveCubics(
      oval,
      inOrder(
        rotation((i === 0 ? side : -side) * 24),
        translation(out, 0),
        rotation(deg),
        translation(a.x, a.y),
      ),
    );
  });
}
