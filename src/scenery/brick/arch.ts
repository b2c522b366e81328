import { polygon, smoothLine } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';

/** A joint of an arch, from the soffit (foot) to the back of the ring (head). */
export interface RingJoint {
  readonly foot: Point;
  readonly head: Point;
}

/** Bends sharper than this split the ring: the apex of a pointed arch has a joint of its own. */
const KINK_DEG = 20;

/**
 * Joints square to the soffit, dividing it into voussoirs of about `width` mm, an odd number of
 * them in each smooth stretch, so that a key stone closes the crown. The soffit runs from the left
 * springing over the crown to the right one; the first and the last joint stand on the springings.
 */
export function radiatingJoints(
  soffit: readonly Point[],
  depth: number,
  width: number,
): RingJoint[] {
  const stretches = smoothStretches(soffit);
  const rings = stretches.map((s) => squareJoints(s, depth, width, stretches.length === 1));
  return rings.reduce((ring, next) => [
    ...ring.slice(0, -1),
    meeting(ring.at(-1)!, next[0], depth),
    ...next.slice(1),
  ]);
}

/** Joints of a flat arch over a level soffit, all pointing at one centre below it. */
export function flatArchJoints(
  left: Point,
  right: Point,
  depth: number,
  width: number,
  skewDeg: number,
): RingJoint[] {
  const half = (right.x - left.x) / 2;
  const centre = { x: left.x + half, y: left.y + half / Math.tan((skewDeg * Math.PI) / 180) };
  const rise = (centre.y - left.y + depth) / (centre.y - left.y);
  const count = odd((2 * half) / width);
  return Array.from({ length: count + 1 }, (_, i) => {
    const foot = { x: left.x + (2 * half * i) / count, y: left.y };
    return { foot, head: { x: centre.x + (foot.x - centre.x) * rise, y: left.y - depth } };
  });
}

const odd = (n: number): number => 2 * Math.max(1, Math.round((n - 1) / 2)) + 1;

function smoothStretches(points: readonly Point[]): Point[][] {
  const out: Point[][] = [[points[0]]];
  for (let i = 1; i < points.length; i++) {
    out.at(-1)!.push(points[i]);
    if (i + 1 === points.length) break;
    const before = heading(points[i - 1], points[i]);
    const turn = Math.abs(heading(points[i], points[i + 1]) - before) % (2 * Math.PI);
    if (Math.min(turn, 2 * Math.PI - turn) > (KINK_DEG * Math.PI) / 180) out.push([points[i]]);
  }
  return out;
}

const heading = (a: Point, b: Point): number => Math.atan2(b.y - a.y, b.x - a.x);

function squareJoints(points: readonly Point[], depth: number, width: number, key: boolean) {
  const steps = [0];
  for (let i = 1; i < points.length; i++) {
    steps.push(
      steps[i - 1] + Math.hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y),
    );
  }
  const length = steps.at(-1)!;
  const count = key ? odd(length / width) : Math.max(1, Math.round(length / width));
  const joints: RingJoint[] = [];
  for (let k = 0, i = 1; k <= count; k++) {
    const s = (length * k) / count;
    while (i + 1 < points.length && steps[i] < s) i++;
    const [a, b] = [points[i - 1], points[i]];
    const step = steps[i] - steps[i - 1];
    const t = (s - steps[i - 1]) / step;
    const foot = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    // Outward is to the left of the way from the left springing over the crown (y down).
    const head = {
      x: foot.x + ((b.y - a.y) / step) * depth,
      y: foot.y - ((b.x - a.x) / step) * depth,
    };
    joints.push({ foot, head });
  }
  return joints;
}

/** Two joints at a kink made one, along the bisector, with its head on both backs. */
function meeting(a: RingJoint, b: RingJoint, depth: number): RingJoint {
  const x = (a.head.x + b.head.x) / 2 - a.foot.x;
  const y = (a.head.y + b.head.y) / 2 - a.foot.y;
  const scale = (depth * depth) / (x * x + y * y);
  return { foot: a.foot, head: { x: a.foot.x + x * scale, y: a.foot.y + y * scale } };
}

/** All that the ring covers, soffit to back. */
export const ringRegion = (joints: readonly RingJoint[]): Region => ({
  contours: [polygon([...joints.map((j) => j.head), ...joints.map((j) => j.foot).reverse()])],
});

/** A ring's stones are drawn for this much more of it than the wall's bricks. */
const RING_DENSER = 0.38;
/** Chance that a run of drawn or bare stones ends at a stone: gaps and runs, not a sprinkle. */
const RUN_ENDS = 0.3;

/** Most of a ring is drawn even where the wall is only suggested: it is what makes it an arch. */
export function voussoirsShown(
  ring: readonly RingJoint[],
  coverage: number,
  random: Random,
): number[] {
  const count = ring.length - 1;
  const share = Math.min(1, RING_DENSER + coverage);
  const shown: number[] = [];
  let drawn = true;
  for (let i = 0; i < count; i++) {
    const luck = random.branch(i);
    if (luck.chance(RUN_ENDS)) drawn = luck.chance(share);
    const atEnd = Math.min(i, count - 1 - i) < 2;
    if (drawn || atEnd) shown.push(i);
  }
  return shown;
}

/**
 * The ring as score lines: joints from `shyMm` behind the soffit to the back, and the back itself,
 * for the voussoirs named in `shown` (index of each one's first joint).
 */
export const drawRing = (
  joints: readonly RingJoint[],
  shown: ReadonlySet<number>,
  shyMm: number,
  random: Random,
): Line[] => [
  ...drawVoussoirs(joints, shown, shyMm, random),
  ...drawBack(joints, shown, random.branch('back')),
];

/** The joints beside the voussoirs in `shown`, from `shyMm` behind the soffit to the back. */
export function drawVoussoirs(
  joints: readonly RingJoint[],
  shown: ReadonlySet<number>,
  shyMm: number,
  random: Random,
): Line[] {
  const last = joints.length - 1;
  const closed = isClosed(joints);
  return joints.flatMap((joint, i) => {
    const before = closed && i === 0 ? last - 1 : i - 1;
    if ((closed && i === last) || (!shown.has(i) && !shown.has(before))) return [];
    const luck = random.branch(i);
    return [smoothLine([along(joint, shyMm), along(joint, -0.3 * luck.next())])];
  });
}

function drawBack(
  joints: readonly RingJoint[],
  shown: ReadonlySet<number>,
  random: Random,
): Line[] {
  return runs(shown).flatMap(([from, to]) => {
    const back = joints.slice(from, to + 2).map((j) => j.head);
    return backStrokes(back, random.branch(from)).flatMap((part) =>
      smoothStretches(part).map(smoothLine),
    );
  });
}

/** A back runs at most this far in one stroke, mm; the straight one of a flat arch folds sooner. */
const LONGEST_BACK_MM = 85;
const LONGEST_STRAIGHT_MM = 38;
/** A back that rises less than this share of its length is as good as straight. */
const STRAIGHT_RISE = 0.04;

/** The back of a run of stones in strokes, the back of one stone left out between two of them. */
function backStrokes(back: readonly Point[], random: Random): Point[][] {
  const strokes: Point[][] = [];
  const ys = back.map((p) => p.y);
  const rise = Math.max(...ys) - Math.min(...ys);
  const straight = rise < STRAIGHT_RISE * span(back, 0, back.length - 1);
  const longest = straight ? LONGEST_STRAIGHT_MM : LONGEST_BACK_MM;
  let from = 0;
  while (from + 1 < back.length) {
    const room = longest * random.between(0.6, 1);
    let to = from + 1;
    while (to + 1 < back.length && span(back, from, to + 1) <= room) to++;
    strokes.push(back.slice(from, to + 1));
    from = to + 1;
  }
  return strokes;
}

function span(points: readonly Point[], from: number, to: number): number {
  let length = 0;
  for (let i = from + 1; i <= to; i++) {
    length += Math.hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
  }
  return length;
}

/** A ring all round an opening ends on its own first joint. */
const isClosed = (joints: readonly RingJoint[]): boolean =>
  joints.length > 2 &&
  Math.hypot(joints[0].foot.x - joints.at(-1)!.foot.x, joints[0].foot.y - joints.at(-1)!.foot.y) <
    1e-6;

/** A point on the joint: mm from its foot, or from its head when negative or zero. */
export function along({ foot, head }: RingJoint, mm: number): Point {
  const length = Math.hypot(head.x - foot.x, head.y - foot.y);
  const t = mm > 0 ? mm / length : 1 + mm / length;
  return { x: foot.x + (head.x - foot.x) * t, y: foot.y + (head.y - foot.y) * t };
}

function runs(shown: ReadonlySet<number>): [number, number][] {
  const out: [number, number][] = [];
  for (const i of [...shown].sort((a, b) => a - b)) {
    const last = out.at(-1);
    if (last && last[1] === i - 1) last[1] = i;
    else out.push([i, i]);
  }
  return out;
}
