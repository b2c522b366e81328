import { unionChecked } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { subCubic } from '../../src/geometry/cubic.js';
import { contourArea, regionBounds } from '../../src/geometry/measure.js';
import { pen, regionOf, smoothContour } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle, roundedRectangle } from '../../src/geometry/primitives.js';
import {
  type Affine,
  inOrder,
  moveRegion,
  reversed,
  rotation,
  scaling,
  translation,
} from '../../src/geometry/transform.js';
import type { Cubics, Point, Region } from '../../src/geometry/types.js';
import type { Case } from '../cases/case.js';
import {
  corner,
  foldedChain,
  leaf,
  nearCopies,
  ring,
  scribble,
  shapes,
  strewnLeaves,
  tangentCircles,
} from '../geometry/shapes.js';

/** Random cases of many kinds, each made to give a boolean trouble in its own way. */

export type Random = () => number;

const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * random();
const whole = (random: Random, low: number, high: number): number =>
  low + Math.floor((high - low + 1) * random());
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(list.length * random())];
const many = <T>(count: number, make: (k: number) => T): T[] =>
  Array.from({ length: count }, (_, k) => make(k));
const moved = (region: Region, ...steps: Affine[]): Region => moveRegion(region, inOrder(...steps));

/** A simple polygon or blob wound clockwise on screen, as regions are. */
const proper = (c: Cubics): Region => regionOf(contourArea(c) < 0 ? reversed(c) : c);

/** Shapes with all their nodes on a lattice of 1 or 5 mm, so that edges and arcs fall together. */
function lattice(random: Random): Region[] {
  const step = pick(random, [1, 5]);
  const on = (low: number, high: number): number => step * whole(random, low, high);
  const one = (): Region => {
    const [w, h] = [on(1, 5), on(1, 5)];
    const made = pick(random, [
      () => rectangle(0, 0, w, h),
      () => circle(0, 0, w),
      () => ellipse(0, 0, w, h),
      () => roundedRectangle(0, 0, w + step, h + step, step / 2),
      () => corner(2 * w, 2 * h),
      () => ring(w),
      () => regionOf(pen(0, 0).lineTo(w, 0).lineTo(0, h).close()),
      () => regionOf(pen(w, 0).arcAround(0, 0, 180).close()),
      () => regionOf(pen(0, 0).lineTo(w, 0).arcAround(0, 0, 90).close()),
      () => leaf(2 * w, h),
    ])();
    return moved(made, rotation(90 * whole(random, 0, 3)), translation(on(0, 8), on(0, 8)));
  };
  return many(whole(random, 2, 6), one);
}

/** Shapes and copies moved, turned or scaled by next to nothing. */
function near(random: Random): Region[] {
  if (random() < 0.4) return nearCopies(random, 2);
  const tiny = (): number => 10 ** between(random, -6, -3) * (random() < 0.5 ? -1 : 1);
  return shapes(random, 'free', 2).flatMap((shape) => {
    const { minX, minY } = regionBounds(shape);
    const change = random() < 0.5 ? rotation(60 * tiny()) : scaling(1 + tiny(), 1 + tiny());
    return [shape, moved(shape, translation(-minX, -minY), change, translation(minX, minY))];
  });
}

/** Circles that touch each other and the lines along them, inside and out. */
function tangents(random: Random): Region[] {
  const circles = tangentCircles(random);
  if (random() < 0.5) return circles;
  const { minX, minY, maxX, maxY } = regionBounds(circles[whole(random, 0, 3)]);
  const [w, h] = [maxX - minX, maxY - minY];
  const plates = [
    rectangle(maxX, minY - 2, 10, h + 4),
    rectangle(minX, minY, w, h),
    rectangle(minX - 5, maxY, 30, 4),
    roundedRectangle(minX, minY, w + 8, h, h / 2),
  ];
  return [...circles.slice(0, 2), pick(random, plates), pick(random, plates)];
}

const scribbles = (random: Random): Region[] =>
  many(whole(random, 1, 3), () => regionOf(scribble(random)));

const folded = (random: Random): Region[] =>
  many(whole(random, 1, 3), () => regionOf(foldedChain(random)));

/** Chains of cubics with cusps, loops, handles of no length and handles that lie on their ends. */
function cusps(random: Random): Region[] {
  const at = (): [number, number] => [between(random, 0, 40), between(random, 0, 40)];
  return many(whole(random, 1, 3), () => {
    let [x, y] = at();
    const p = pen(x, y);
    for (let k = whole(random, 2, 5); k > 0; k--) {
      const [u, v] = at();
      const [dx, dy] = [u - x, v - y];
      // With s = 1 the handles cross in a cusp, with more in a loop.
      const s = pick(random, [1, 1, 1 + 1e-4, 1 - 1e-3, 1.3, 0.9]);
      pick(random, [
        () =>
          p.curveTo(
            x + s * (dx - dy),
            y + s * (dx + dy),
            u - s * (dx + dy),
            v + s * (dx - dy),
            u,
            v,
          ),
        () => p.curveTo(x, y, u, v, u, v),
        () => p.curveTo(x, y, ...at(), u, v),
        () => p.curveTo(u, v, x, y, u, v),
        () => p.curveTo(x - dx, y - dy, u + dx, v + dy, u, v),
        () => p.curveTo(...at(), ...at(), u, v),
      ])();
      [x, y] = [u, v];
    }
    return regionOf(p.close());
  });
}

/** Strips and leaves 0.005 to 0.3 mm wide across and along each other, with one broad shape. */
function slivers(random: Random): Region[] {
  const thin = (): number => 10 ** between(random, -2.3, -0.5);
  const one = (): Region => {
    const length = between(random, 5, 50);
    const made = random() < 0.5 ? leaf(length, thin()) : rectangle(0, 0, length, thin());
    const turn = random() < 0.5 ? between(random, -0.5, 0.5) : between(random, 0, 360);
    return moved(made, rotation(turn), translation(between(random, 0, 10), between(random, 0, 2)));
  };
  return [
    ellipse(20, 1, between(random, 4, 18), between(random, 0.3, 9)),
    ...many(whole(random, 1, 5), one),
  ];
}

/** Bent needles, 0.02 to 0.4 mm wide, that fan out from a few places. */
function needles(random: Random): Region[] {
  const roots = many(2, () => ({ x: between(random, 0, 20), y: between(random, 0, 20) }));
  return many(whole(random, 3, 14), () => {
    const length = between(random, 4, 40);
    const [w, bend] = [between(random, 0.02, 0.4), between(random, -0.3, 0.3) * length];
    const needle = pen(0, 0)
      .quadTo(length / 2, bend - w, length, 0)
      .quadTo(length / 2, bend + w, 0, 0)
      .close();
    const { x, y } = pick(random, roots);
    return moved(proper(needle), rotation(between(random, 0, 360)), translation(x, y));
  });
}

/** The part of a contour from place u to place v, as the pen would draw it. */
function arcOf(c: Cubics, u: number, v: number): number[] {
  const count = c.length / 8;
  const cubics: number[] = [];
  for (let at = u; at < v; ) {
    const k = Math.floor(at);
    const to = Math.min(v, k + 1);
    cubics.push(...subCubic(c, (k % count) * 8, at - k, to - k));
    at = to;
  }
  // The joints of parts meet to the last bit.
  for (let i = 8; i < cubics.length; i += 8) {
    cubics[i] = cubics[i - 2];
    cubics[i + 1] = cubics[i - 1];
  }
  return cubics;
}

function lump(random: Random, radius: number): Cubics {
  const count = whole(random, 3, 8);
  return smoothContour(
    many(count, (k): Point => {
      const a = ((k + between(random, -0.3, 0.3)) / count) * 2 * Math.PI;
      const r = radius * between(random, 0.6, 1);
      return { x: r * Math.cos(a), y: r * Math.sin(a) };
    }),
  );
}

/** An outline round the origin, and pieces whose edges are parts of it, each cut in its own way. */
function shared(random: Random, outs: readonly number[]): Cubics[] {
  const base = pick(random, [
    () => lump(random, 20),
    () => circle(0, 0, 20).contours[0],
    () => moveRegion(leaf(30, 8), translation(-15, 0)).contours[0],
  ])();
  const count = base.length / 8;
  const piece = (): Cubics => {
    const u = pick(random, [whole(random, 0, count - 1), between(random, 0, count)]);
    const arc = Float64Array.from(arcOf(base, u, u + between(random, 0.2, count - 0.05)));
    const n = arc.length;
    const out = pick(random, outs);
    const p = pen(arc[0], arc[1]);
    for (let i = 0; i < n; i += 8) {
      // Split once more at times, so that the chords of equal arcs differ.
      const t = random() < 0.4 ? between(random, 0.1, 0.9) : 1;
      const parts =
        t < 1 ? [...subCubic(arc, i, 0, t), ...subCubic(arc, i, t, 1)] : arc.subarray(i, i + 8);
      for (let k = 2; k < parts.length; k += 8) {
        const [x1, y1, x2, y2, x, y] = parts.slice(k, k + 6);
        p.curveTo(x1, y1, x2, y2, x, y);
      }
    }
    if (out > 0) p.lineTo(out * arc[n - 2], out * arc[n - 1]).lineTo(out * arc[0], out * arc[1]);
    else p.lineTo(0, 0);
    return p.close();
  };
  return [base, ...many(whole(random, 1, 4), piece)];
}

const arcs = (random: Random): Region[] => shared(random, [0, 0.4]).map(proper);

/** The same in either direction and crossing themselves. */
const arcChains = (random: Random): Region[] =>
  shared(random, [0.4, 1.5, -1]).map((c) => regionOf(random() < 0.5 ? c : reversed(c)));

/** Plates with holes, holes at their rims, islands in holes. */
function holes(random: Random): Region[] {
  const plate = (): Region => {
    const [w, h] = [whole(random, 10, 40), whole(random, 10, 40)];
    const cells = many(whole(random, 1, 5), (k) => {
      const size = Math.min(w / 5, h) / pick(random, [2, 2.5, 4]);
      const x = (k + 0.5) * (w / 5);
      return random() < 0.5
        ? circle(x, h / 2, size)
        : rectangle(x - size, h / 2 - size, 2 * size, 2 * size);
    });
    const apart = cells.filter((_, k) => k % 2 === 0 || random() < 0.3);
    const [outer] = rectangle(0, 0, w, h).contours;
    const plate = regionOf(outer, ...apart.flatMap((c) => c.contours.map(reversed)));
    return moved(plate, translation(whole(random, 0, 20), whole(random, 0, 20)));
  };
  const rings = (): Region => {
    const [x, y] = [whole(random, 5, 30), whole(random, 5, 30)];
    const radii = [8, 6, 4, 2].slice(0, whole(random, 1, 4));
    return regionOf(
      ...radii.flatMap((r, k) =>
        circle(x, y, r).contours.map((c) => (k % 2 === 0 ? c : reversed(c))),
      ),
    );
  };
  return many(whole(random, 2, 4), () => (random() < 0.6 ? plate() : rings()));
}

/** Enough leaves on little ground that the union works tile by tile. */
function leaves(random: Random): Region[] {
  const count = whole(random, 60, 200);
  const crowd = scaling(between(random, 0.2, 0.7));
  return strewnLeaves(count, whole(random, 0, 1e9)).map((l) => moveRegion(l, crowd));
}

/** A plate cut along lines and curves into pieces that share their edges to the last bit. */
function jigsaw(random: Random): Region[] {
  const columns = whole(random, 2, 4);
  const seams = many(columns + 1, (k) => {
    const x = k * 10;
    const bow = k === 0 || k === columns ? 0 : between(random, -6, 6);
    return [x, 0, x + bow, 8, x - bow, 17, x, 25];
  });
  return many(columns, (k) => {
    const [, , ax, ay, bx, by] = seams[k];
    const [x1, y1, cx, cy, dx, dy, x2, y2] = seams[k + 1];
    const piece = pen(seams[k][0], 0).lineTo(x1, y1).curveTo(cx, cy, dx, dy, x2, y2);
    return regionOf(piece.lineTo(seams[k][6], 25).curveTo(bx, by, ax, ay, seams[k][0], 0).close());
  });
}

const tiny = (random: Random): Region[] => {
  const size = 10 ** between(random, -3, -1.3);
  return pick(random, [lattice, tangents, holes])(random).map((r) => moveRegion(r, scaling(size)));
};

const free = (random: Random): Region[] =>
  many(whole(random, 2, 6), () =>
    moved(
      proper(lump(random, between(random, 2, 20))),
      translation(between(random, 0, 40), between(random, 0, 40)),
    ),
  );

/** A kind's shapes may cross themselves (`chains`), or are regions each (`regions`). */
const CHAINS = { scribbles, folded, cusps, arcChains };
const REGIONS = {
  lattice,
  near,
  tangents,
  slivers,
  needles,
  arcs,
  holes,
  leaves,
  jigsaw,
  tiny,
  free,
  turned: (random: Random) => shapes(random, 'turned', 6),
};
export const KINDS: readonly string[] = [...Object.keys(CHAINS), ...Object.keys(REGIONS), 'offset'];

/** As drawn, turned, mirrored or far away: what lies well must do so anywhere on a sheet. */
function placement(random: Random): Affine {
  const turn = pick(random, [
    0,
    0,
    90 * whole(random, 1, 3),
    15 * whole(random, 1, 23),
    360 * random(),
  ]);
  const mirror = random() < 0.25 ? scaling(-1, 1) : scaling(1);
  const far = (): number => pick(random, [0, 0, 1000 * random(), -100]);
  return inOrder(rotation(turn), mirror, translation(far(), far()));
}

export function caseOf(kind: string, random: Random): Case {
  if (kind === 'offset') return offsetCase(random);
  const made = (CHAINS[kind as keyof typeof CHAINS] ?? REGIONS[kind as keyof typeof REGIONS])(
    random,
  );
  const place = placement(random);
  const placed = made.map((shape) => moveRegion(shape, place));
  if (kind in CHAINS) return { operation: pick(random, ['nonzero', 'even-odd']), shapes: placed };
  const operation = pick(random, [
    'union',
    'union',
    'subtract',
    'intersect',
    'xor',
    'even-odd',
    'nonzero',
  ] as const);
  const isPair = operation === 'intersect' || operation === 'xor';
  return { operation, shapes: isPair ? placed.slice(0, 2) : placed };
}

/** The offset of one piece made of shapes of any kind. */
function offsetCase(random: Random): Case {
  const kind = pick(
    random,
    Object.keys(REGIONS).filter((k) => k !== 'leaves' || random() < 0.2),
  );
  const made = REGIONS[kind as keyof typeof REGIONS](random);
  const place = placement(random);
  const whole = moveRegion(unionChecked(made.slice(0, 40)).region, place);
  const distanceMm =
    pick(random, [-1, 1]) * pick(random, [0.05, 0.1, 0.6, 1, 2.5, 10 ** between(random, -2, 0.5)]);
  const region = random() < 0.7 ? whole : (components(whole)[0] ?? whole);
  return {
    operation: 'offset',
    distanceMm,
    join: pick(random, ['round', 'round', 'mitre', 'bevel']),
    shapes: [region],
  };
}
