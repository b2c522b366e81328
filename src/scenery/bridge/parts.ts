import { intersect, subtract } from '../../geometry/boolean/boolean.js';
import { type Pen, pen } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import { inOrder, moveRegion, scaling, translation } from '../../geometry/transform.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import type { RingJoint } from '../brick/arch.js';
import { handCut, handDrawn, mix, shapeOf } from '../brick/craft.js';
import type { Anchor } from '../brick/patches.js';
import type { Random } from '../random.js';
import type { Profile } from './profile.js';

const WANDER_MM = 0.2;
/** Stretches of a long curve between nodes. */
const CURVE_PARTS = 8;
/** Below the water's edge, so that the opening ends exactly on it. */
const BELOW_MM = 6;
/** The far end of the vault looks this much smaller; the eye stands low and to one side. */
const VAULT = 0.9;
const EYE_UP = 0.12;
const EYE_ASIDE = 0.22;
const TOWPATH_SHARE = 0.27;
const TOWPATH_UP = 0.075;
/** Piers' width as a share of the height, and how far their caps stand out and up, mm. */
const PIER = 0.1;
const CAP_MM = 0.7;

/** Points along y = f(x) from x0 to x1. */
const curve = (f: (x: number) => number, x0: number, x1: number): Point[] =>
  Array.from({ length: CURVE_PARTS + 1 }, (_, i) => {
    const x = mix(x0, x1, i / CURVE_PARTS);
    return { x, y: f(x) };
  });

const drawn = (points: readonly Point[]): Pen =>
  pen(points[0].x, points[0].y).smoothTo(points.slice(1));

/** The whole wall, arch not yet opened; its ends lean in a little. */
export function wallOf(p: Profile): Region {
  const { left, right } = p.ends;
  const top = curve((x) => p.top(x) + p.coping / 2, left + 0.4, right - 0.4);
  return shapeOf(drawn(top).lineTo(right, p.plot.root).lineTo(left, p.plot.root).close());
}

/** A band that follows the hump: from `upper` down by `thick`, past both ends by `overhang`, mm. */
export function bandOf(
  p: Profile,
  upper: (x: number) => number,
  thick: number,
  overhang: number,
): Region {
  const [left, right] = [p.ends.left - overhang, p.ends.right + overhang];
  const above = curve(upper, left, right);
  const below = curve((x) => upper(x) + thick, right, left);
  return shapeOf(drawn(above).lineTo(below[0].x, below[0].y).smoothTo(below.slice(1)).close());
}

/** The opening between the near faces of the abutments, down past the water's edge. */
export function openingOf(p: Profile): Region {
  const right = p.soffit.at(-1)!.x;
  const left = p.soffit[0].x;
  return shapeOf(drawn(p.soffit).lineTo(right, BELOW_MM).lineTo(left, BELOW_MM).close());
}

/** What is cut: the part of the opening that neither the vault's inside nor the towpath hides. */
export function holeOf(p: Profile, opening: Region, towpath: string, random: Random): Region {
  const { height } = p.plot;
  const aside = (random.chance(0.5) ? -1 : 1) * EYE_ASIDE * p.span;
  const [ex, ey] = [p.middle + aside, -EYE_UP * height];
  const far = moveRegion(
    opening,
    inOrder(translation(-ex, -ey), scaling(VAULT), translation(ex, ey)),
  );
  const water = rectangle(p.middle - p.span, -2 * height, 2 * p.span, 2 * height);
  const through = intersect(intersect(opening, far), water);
  if (towpath === 'none') return through;
  const hand = towpath === 'left' ? -1 : 1;
  const wall = p.middle + (hand * p.span) / 2;
  const edge = wall - hand * p.span * TOWPATH_SHARE * random.between(0.85, 1.15);
  const up = -TOWPATH_UP * height;
  const path = handCut(
    [
      { x: wall + hand, y: up - 0.4 },
      { x: edge, y: up },
      { x: edge - hand * 0.7, y: 1 },
      { x: wall + hand, y: 1 },
    ],
    WANDER_MM,
    random.branch('edge'),
  );
  return subtract(through, [path]);
}

/** A pilaster or end pier. */
interface Pier {
  readonly x: number;
  readonly width: number;
  readonly top: number;
}

/** Pilasters beside the arch, where there is room for them, and piers at both ends. */
export function piersOf(p: Profile): Pier[] {
  const width = Math.max(2 * p.plot.smallestWeb, PIER * p.plot.height);
  const end = p.plot.width / 2 - width / 2;
  const off = p.span / 2 + p.ring + width * 0.9;
  const xs = [-end];
  for (const hand of [-1, 1]) {
    const x = p.middle + hand * off;
    if (p.pilasters && end - Math.abs(x) > width * 2) xs.push(x);
  }
  xs.push(end);
  return xs.map((x) => ({ x, width, top: p.top(x) - CAP_MM }));
}

/** The pier's shaft and its cap. */
export function pierRegions(p: Profile, pier: Pier, random: Random): Region[] {
  const { x, width, top } = pier;
  const cap = p.coping + 0.2;
  const half = width / 2;
  const shaft = [
    { x: x - half, y: top + cap / 2 },
    { x: x + half, y: top + cap / 2 },
    { x: x + half + 0.2, y: p.plot.root },
    { x: x - half - 0.2, y: p.plot.root },
  ];
  const stone = [
    { x: x - half - CAP_MM, y: top + 0.5 },
    { x: x - half * 0.4, y: top - 0.1 },
    { x: x + half * 0.4, y: top - 0.1 },
    { x: x + half + CAP_MM, y: top + 0.5 },
    { x: x + half + CAP_MM, y: top + cap },
    { x: x - half - CAP_MM, y: top + cap },
  ];
  return [
    handCut(shaft, WANDER_MM, random.branch('shaft')),
    handCut(stone, WANDER_MM / 2, random.branch('cap')),
  ];
}

export function pierLines(p: Profile, pier: Pier, random: Random): Line[] {
  const { x, width } = pier;
  const under = pier.top + p.coping + 0.2;
  const edges = [-1, 1].map((hand) =>
    handDrawn(
      [
        { x: x + (hand * width) / 2, y: under },
        { x: x + (hand * width) / 2, y: -random.between(0, 0.2) * p.plot.height },
      ],
      WANDER_MM,
      random.branch(hand),
    ),
  );
  const cap = handDrawn(
    [
      { x: x - width / 2 - CAP_MM, y: under },
      { x: x + width / 2 + CAP_MM, y: under },
    ],
    0.1,
    random.branch('cap'),
  );
  return [...edges, cap];
}

/** Underside of the coping, joints between its stones, and both edges of the string course. */
export function bandLines(p: Profile, piers: readonly Pier[], random: Random): Line[] {
  const lines: Line[] = [];
  for (let i = 0; i + 1 < piers.length; i++) {
    const from = piers[i].x + piers[i].width / 2;
    const to = piers[i + 1].x - piers[i + 1].width / 2;
    const edges = [
      (x: number) => p.top(x) + p.coping,
      (x: number) => p.road(x),
      (x: number) => p.road(x) + p.band,
    ];
    const luck = random.branch(i);
    for (const f of edges) {
      // Each is left open somewhere, so that it does not fold.
      const gap = mix(from, to, luck.between(0.3, 0.7));
      lines.push(drawn(curve(f, from + 0.4, gap - 1.4)).line());
      lines.push(drawn(curve(f, gap + 1.4, to - 0.4)).line());
    }
    let x = from + luck.between(3, 6);
    for (; x < to - 2; x += luck.between(5, 8)) {
      lines.push(
        handDrawn(
          [
            { x, y: p.top(x) },
            { x, y: p.top(x) + p.coping - 0.2 },
          ],
          0.05,
          luck,
        ),
      );
    }
  }
  return lines;
}

/** How high the key stone is drawn, in ring depths. */
const KEY_RISE = 1.22;

/** The key stone, drawn higher than the ring that it closes. */
export function keyLines(ring: readonly RingJoint[]): Line[] {
  // A very flat ellipse bends so sharply at its ends that its ring may have no middle stone.
  if (ring.length % 2 !== 0) return [];
  const left = ring[(ring.length - 2) / 2];
  const right = ring[ring.length / 2];
  const up = (j: RingJoint, t: number) => ({
    x: mix(j.foot.x, j.head.x, t),
    y: mix(j.foot.y, j.head.y, t),
  });
  const [a, b] = [up(left, KEY_RISE), up(right, KEY_RISE)];
  return [
    pen(left.head.x, left.head.y)
      .lineTo(a.x, a.y)
      .lineTo(b.x, b.y)
      .lineTo(right.head.x, right.head.y)
      .line(),
  ];
}

/** Joints gather at the springings, along the ring and at the piers' feet. */
export function anchorsOf(
  p: Profile,
  ring: readonly RingJoint[],
  piers: readonly Pier[],
): Anchor[] {
  const size = p.plot.height / 40;
  const point = ({ x, y }: Point, reach: number, pull: number): Anchor => ({
    x0: x,
    y0: y,
    x1: x,
    y1: y,
    reach: reach * size,
    pull,
  });
  const back = ring.map((j) => point(j.head, 5, 0.35));
  const feet = piers.map(({ x }) => point({ x, y: 0 }, 9, 0.5));
  return [...back, ...feet, point(ring[0].head, 8, 0.55), point(ring.at(-1)!.head, 8, 0.55)];
}
