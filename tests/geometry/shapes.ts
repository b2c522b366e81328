import { pen, polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle, roundedRectangle } from '../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  reversed,
  rotation,
  scaling,
  translation,
} from '../../src/geometry/transform.js';
import type { Cubics, Region } from '../../src/geometry/types.js';

/** A seeded stream of numbers in 0..1, of the tests' own (a 32-bit multiply-and-shift hash). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let h = state;
    h = Math.imul(h ^ (h >>> 16), 0x21f0aaad);
    h = Math.imul(h ^ (h >>> 15), 0x735a2d97);
    return ((h ^ (h >>> 15)) >>> 0) / 2 ** 32;
  };
}

/** A pointed leaf along the x axis: two cubics. */
export const leaf = (length: number, width: number): Region =>
  regionOf(
    pen(0, 0)
      .curveTo(0.3 * length, -width, 0.7 * length, -0.8 * width, length, 0)
      .curveTo(0.7 * length, 0.8 * width, 0.3 * length, width, 0, 0)
      .close(),
  );

/** A circle of arcs so short (22.5 degrees) that its error is below 1e-7 of the radius. */
export const fineCircle = (cx: number, cy: number, radius: number): Region => {
  const p = pen(cx + radius, cy);
  for (let k = 0; k < 16; k++) p.arcAround(cx, cy, 22.5);
  return regionOf(p.close());
};

export const fineEllipse = (rx: number, ry: number): Region =>
  moveRegion(fineCircle(0, 0, 1), scaling(rx, ry));

export const corner = (w: number, h: number): Region =>
  regionOf(
    polygon([
      { x: 0, y: 0 },
      { x: w, y: 0 },
      { x: w, y: h / 2 },
      { x: w / 2, y: h / 2 },
      { x: w / 2, y: h },
      { x: 0, y: h },
    ]),
  );

export const ring = (radius: number): Region => ({
  contours: [
    ...circle(0, 0, radius).contours,
    ...circle(0, 0, radius / 2).contours.map((c) => reversed(c)),
  ],
});

/** Where shapes are put: on a 5 mm grid (edges fall together), turned by 15 degrees, or anywhere. */
export type Layout = 'grid' | 'turned' | 'free';

function shape(random: () => number, layout: Layout): Region {
  const snap = (v: number): number => (layout === 'grid' ? 5 * Math.round(v / 5) : v);
  const w = Math.max(5, snap(4 + 30 * random()));
  const h = Math.max(5, snap(4 + 30 * random()));
  const kinds = [
    () => rectangle(0, 0, w, h),
    () => ellipse(w / 2, h / 2, w / 2, h / 2),
    () => circle(w / 2, w / 2, w / 2),
    () => roundedRectangle(0, 0, w, h, snap(10 * random()) || 2),
    () => leaf(w, h / 3),
    () => corner(w, h),
    () => ring(w / 2),
  ];
  const made = kinds[Math.floor(kinds.length * random())]();
  const turn = { grid: 90, turned: 15, free: 360 * random() }[layout] * Math.floor(24 * random());
  return moveRegion(
    made,
    inOrder(rotation(turn), translation(snap(70 * random()), snap(70 * random()))),
  );
}

/** Two to `most` overlapping shapes within about 100 mm. */
export function shapes(random: () => number, layout: Layout, most: number): Region[] {
  const count = 2 + Math.floor((most - 1) * random());
  return Array.from({ length: count }, () => shape(random, layout));
}

/** Shapes and copies of them moved by 1e-5 to 0.1 mm: all but the same outline twice. */
export function nearCopies(random: () => number, most: number): Region[] {
  return shapes(random, 'free', most).flatMap((s) => {
    const by = 10 ** (4 * random() - 5);
    return [s, moveRegion(s, translation(by * (2 * random() - 1), by * (2 * random() - 1)))];
  });
}

/** Circles, each touching the one before it from outside or inside. */
export function tangentCircles(random: () => number): Region[] {
  const out: Region[] = [];
  let [x, y, r] = [30, 30, 5 + 10 * random()];
  for (let k = 0; k < 4; k++) {
    out.push(circle(x, y, r));
    const next = 3 + 10 * random();
    const apart = random() < 0.5 ? r + next : r - next;
    const angle = random() < 0.5 ? Math.floor(8 * random()) / 8 : random();
    x += apart * Math.cos(2 * Math.PI * angle);
    y += apart * Math.sin(2 * Math.PI * angle);
    r = next;
  }
  return out;
}

/** A closed chain of random cubics that crosses itself. */
export function scribble(random: () => number): Cubics {
  const at = (): [number, number] => [60 * random(), 60 * random()];
  const p = pen(...at());
  const count = 2 + Math.floor(4 * random());
  for (let k = 0; k < count; k++) p.curveTo(...at(), ...at(), ...at());
  return p.close();
}

/**
 * A closed chain on a 4 mm lattice: lines, arcs and curves that fall together, touch, retrace each
 * other and fold straight back.
 */
export function foldedChain(random: () => number): Cubics {
  const at = (): number => 4 * Math.floor(6 * random());
  const p = pen(at(), at());
  const count = 3 + Math.floor(8 * random());
  for (let k = 0; k < count; k++) {
    const kind = random();
    const [x, y] = [at(), at()];
    if (kind < 0.55) p.lineTo(x, y);
    else if (kind < 0.7) p.curveTo(at(), at(), at(), at(), x, y);
    else if (kind < 0.8) p.curveTo(x, y, x, y, x, y);
    else if (kind < 0.87) p.quadTo(at(), at(), x, y);
    else p.arcAround(x, y, [90, 180, -90, 360][Math.floor(4 * random())]);
  }
  return p.close();
}

/** Leaves of 4 to 12 mm strewn over 120 x 60 mm. */
export function strewnLeaves(count: number, seed: number): Region[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const length = 4 + 8 * random();
    const moved = inOrder(rotation(360 * random()), translation(120 * random(), 60 * random()));
    return moveRegion(leaf(length, length * (0.15 + 0.2 * random())), moved);
  });
}
