import { union } from '../../geometry/boolean/boolean.js';
import { smoothLine } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import { limb } from '../limb.js';

/** A bird's shape and the lines that part its feathers. */
export interface Bird {
  readonly region: Region;
  readonly lines: readonly Line[];
}

/** Wings, beaks and tails end no thinner than this many webs. */
const TIP_WEBS = 1.2;

/** Places a bird in its own measure: its size 1, ahead of it x, down y. */
type Place = (x: number, y: number) => Point;

const placeAt =
  (at: Point, size: number, hand: number, tiltDeg: number): Place =>
  (x, y) => {
    const a = (tiltDeg * Math.PI) / 180;
    const [rx, ry] = [x * Math.cos(a) + y * Math.sin(a), y * Math.cos(a) - x * Math.sin(a)];
    return { x: at.x + hand * rx * size, y: at.y + ry * size };
  };

/** A smooth limb through places, each with its breadth in sizes and no narrower than the tip. */
const part = (
  place: Place,
  size: number,
  tip: number,
  nodes: readonly (readonly [number, number, number])[],
): Region =>
  shapeOf(
    limb(
      nodes.map(([x, y, broad]) => ({ ...place(x, y), thickness: Math.max(tip, broad * size) })),
    ),
  );

/** A bird that sits on `at`, upright, looking to `hand`; `size` is its length, mm. */
export function perched(
  at: Point,
  size: number,
  hand: number,
  leanDeg: number,
  smallestWeb: number,
): Bird {
  const tip = TIP_WEBS * smallestWeb;
  const place = placeAt(at, size, hand, leanDeg);
  const head = place(0.2, -0.47);
  const region = union([
    part(place, size, tip, [
      [-0.56, 0.22, 0.1],
      [-0.36, 0.06, 0.13],
      [-0.16, -0.12, 0.34],
      [0.04, -0.24, 0.42],
      [0.17, -0.38, 0.26],
    ]),
    circle(head.x, head.y, Math.max(0.15 * size, 0.9 * smallestWeb)),
    part(place, size, tip, [
      [0.22, -0.47, 0.16],
      [0.34, -0.47, 0.1],
      [0.45, -0.45, 0.02],
    ]),
  ]);
  const wing = smoothLine([
    place(0.08, -0.28),
    place(-0.02, -0.1),
    place(-0.18, -0.03),
    place(-0.34, 0.04),
  ]);
  return { region, lines: [wing] };
}

/**
 * A bird in flight whose wings reach from one tip to the other; its body lies `lift` below the
 * middle between them and its wings bow up by `bow`, its head to `hand`. mm.
 */
export function flying(
  tips: readonly [Point, Point],
  lift: number,
  bow: number,
  hand: number,
  smallestWeb: number,
): Bird {
  const [a, b] = tips;
  const span = Math.hypot(b.x - a.x, b.y - a.y);
  const size = 0.62 * span;
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 + lift };
  const tilt = (Math.atan2(-(b.y - a.y), b.x - a.x) * 180) / Math.PI;
  const tip = TIP_WEBS * smallestWeb;
  const place = placeAt(middle, size, hand, hand > 0 ? 0.6 * tilt : -0.6 * tilt);
  const head = place(0.37, -0.05);
  const wings = tips.map((end, k) => {
    const shoulder = place(k === (hand > 0 ? 0 : 1) ? -0.02 : 0.12, 0);
    const mid = (t: number, up: number): Point => ({
      x: shoulder.x + t * (end.x - shoulder.x),
      y: shoulder.y + t * (end.y - shoulder.y) - up * bow,
    });
    const nodes = [
      { ...shoulder, thickness: Math.max(1.2 * tip, 0.3 * size) },
      { ...mid(0.3, 0.8), thickness: Math.max(1.2 * tip, 0.27 * size) },
      { ...mid(0.56, 1), thickness: Math.max(1.15 * tip, 0.2 * size) },
      { ...mid(0.8, 0.66), thickness: Math.max(1.1 * tip, 0.12 * size) },
      { ...end, thickness: 1.1 * tip },
    ];
    return shapeOf(limb(nodes));
  });
  const region = union([
    ...wings,
    part(place, size, tip, [
      [-0.52, 0.07, 0.22],
      [-0.36, 0.04, 0.12],
      [-0.08, 0, 0.25],
      [0.16, -0.02, 0.22],
      [0.36, -0.05, 0.14],
    ]),
    circle(head.x, head.y, Math.max(0.11 * size, 0.8 * smallestWeb)),
    part(place, size, tip, [
      [0.38, -0.05, 0.1],
      [0.46, -0.03, 0.06],
      [0.56, 0, 0.02],
    ]),
    ...tips.map((p) => circle(p.x, p.y, 0.75 * smallestWeb)),
  ]);
  const feathers = [0.34, 0.62].map((t) => {
    const back = tips[hand > 0 ? 0 : 1];
    const from = place(-0.02, 0);
    const at = (along: number, down: number): Point => ({
      x: from.x + along * (back.x - from.x),
      y: from.y + along * (back.y - from.y) - 0.75 * bow + down * size,
    });
    return smoothLine([at(t, -0.03), at(t - 0.06, 0.06), at(t - 0.16, 0.12)]);
  });
  return { region, lines: feathers };
}
