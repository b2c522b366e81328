import { cleanRegion } from '../../geometry/boolean/boolean.js';
import { pen, regionOf } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import { type LeafForm, leaf } from '../leaf.js';
import { alongSmooth, type LimbNode, limb } from '../limb.js';
import type { Random } from '../random.js';
import { type Course, type Place, stepIn } from './course.js';

/** What both branches are drawn with, mm. */
export interface Habit {
  readonly form: LeafForm;
  /** From leaf to leaf along a stem. */
  readonly spacing: number;
  /** Of the stem at its foot and at its tip. */
  readonly thickness: readonly [number, number];
  /** The branch leaves the window's edge by up to so much, low and high. */
  readonly sway: readonly [number, number];
  readonly web: number;
  readonly fineness: number;
  readonly berries: boolean;
}

export interface Branch {
  readonly shapes: readonly Region[];
  /** Ribs of leaves. */
  readonly ribs: readonly Line[];
}

/** A branch leaves the edge and comes back within this length, in sways, and in lengths at most. */
const SWING = { sways: 7, share: 0.14 };
/** Degrees that a leaf is turned from the way its stem grows. */
const LEAF_TURN_DEG = 52;
const TWIG_TURN_DEG = 46;
/** A twig for so many leaves, and how long it is in leaves. */
const LEAVES_TO_TWIG = [4, 3, 3] as const;
const TWIG_LEAVES = 2.1;
/** The outer third of a branch is in full leaf; near its foot it is bare for so much of it. */
const BARE = 0.1;

/** A branch along its course up to `lengthMm`. */
export function branch(
  course: Course,
  lengthMm: number,
  side: -1 | 1,
  habit: Habit,
  random: Random,
): Branch {
  const stem = stemOf(course, lengthMm, habit, random.branch('stem'));
  const shapes: Region[] = [cleanRegion([limb(stem.nodes)])];
  const ribs: Line[] = [];
  const put = (foot: Point, headingDeg: number, size: number): void => {
    const form = {
      ...habit.form,
      length: habit.form.length * size,
      width: habit.form.width * size,
    };
    shapes.push(regionOf(leaf(form, foot, headingDeg)));
    ribs.push(ribOf(form, foot, headingDeg));
  };

  const bare = BARE * lengthMm;
  const count = Math.floor((lengthMm - bare) / habit.spacing);
  const every = LEAVES_TO_TWIG[Math.min(2, Math.floor(3 * habit.fineness))];
  for (let k = 0; k <= count; k++) {
    const luck = random.branch(`leaf ${k}`);
    const mm = bare + (k + 0.25 * luck.bell()) * habit.spacing;
    if (mm > lengthMm) continue;
    const place = course.place(mm);
    const foot = stepIn(place, stem.sway(mm));
    const size = mix(1.05, 0.85, mm / lengthMm) * (1 + 0.1 * luck.bell());
    const turn = -side * (LEAF_TURN_DEG + 9 * luck.bell());
    if (k % every === 1 && mm < 0.94 * lengthMm) {
      twig(place, foot, side, habit, luck.branch('twig'), shapes, put);
    } else {
      put(foot, headingOf(place) + turn, size);
    }
    // On its outer side it is in leaf where there is room: the frame hides what there is not.
    if (k % 2 === 0) put(foot, headingOf(place) - turn * 0.9, 0.85 * size);
    if (habit.berries && k % 3 === 2) {
      for (const [along, inMm] of [
        [0.15, 0.62],
        [0.55, 0.5],
      ] as const) {
        const r = Math.max(1.05 * habit.web, 0.13 * habit.form.length);
        const p = stepIn(place, stem.sway(mm) + inMm * 2.6 * r);
        const q = {
          x: p.x - place.along.x * along * 3 * r,
          y: p.y - place.along.y * along * 3 * r,
        };
        shapes.push(circle(q.x, q.y, r));
      }
    }
  }
  const tip = course.place(lengthMm);
  put(stepIn(tip, stem.sway(lengthMm)), headingOf(tip) - 6 * side, 1);
  return { shapes, ribs };
}

interface Stem {
  readonly nodes: readonly LimbNode[];
  /** How far off its course the stem is at a length along it. */
  sway(mm: number): number;
}

/** The stem comes out of the frame, and back to the window's edge time and again: there it is held. */
function stemOf(course: Course, lengthMm: number, habit: Habit, random: Random): Stem {
  const [least, most] = habit.sway;
  const swing = Math.max(SWING.sways * most, SWING.share * lengthMm);
  const turns = Math.max(2, Math.round(lengthMm / swing)) * 2;
  const sways = Array.from({ length: turns + 1 }, (_, k) =>
    k === 0 ? -habit.thickness[0] : k % 2 === 0 ? 0 : random.branch(k).between(least, most),
  );
  const sway = (mm: number): number => {
    const at = Math.max(0, Math.min(turns - 1e-9, (mm / lengthMm) * turns));
    const k = Math.floor(at);
    const ease = (1 - Math.cos(Math.PI * (at - k))) / 2;
    return mix(sways[k], sways[k + 1], ease);
  };
  const steps = 4 * turns;
  const nodes = Array.from({ length: steps + 1 }, (_, i) => {
    const mm = (i / steps) * lengthMm;
    const thickness = mix(habit.thickness[0], habit.thickness[1], (i / steps) ** 0.8);
    return { ...stepIn(course.place(mm), sway(mm)), thickness };
  });
  return { nodes, sway };
}

/** A side shoot into the window with leaves of its own. */
function twig(
  place: Place,
  foot: Point,
  side: -1 | 1,
  habit: Habit,
  random: Random,
  shapes: Region[],
  put: (foot: Point, headingDeg: number, size: number) => void,
): void {
  const heading = headingOf(place) - side * (TWIG_TURN_DEG + 7 * random.bell());
  const length = TWIG_LEAVES * habit.form.length * (1 + 0.12 * random.bell());
  const bend = side * random.between(6, 22);
  const points = alongSmooth(
    [
      foot,
      step(foot, heading, length / 2),
      step(step(foot, heading, length / 2), heading + bend, length / 2),
    ],
    4,
  );
  const last = points.length - 1;
  const web = habit.web;
  const nodes = points.map((p, i) => ({ ...p, thickness: mix(1.5, 1.1, i / last) * web }));
  shapes.push(cleanRegion([limb(nodes)]));
  for (const [i, turn] of [
    [3, 48],
    [4, -46],
    [6, 44],
    [7, -42],
  ] as const) {
    const luck = random.branch(i);
    put(points[i], heading + bend * (i / last) + turn + 8 * luck.bell(), 0.85);
  }
  put(points[last], heading + bend, 0.95);
}

const headingOf = ({ along }: Place): number => (Math.atan2(along.y, along.x) * 180) / Math.PI;

const step = ({ x, y }: Point, deg: number, mm: number): Point => ({
  x: x + mm * Math.cos((deg * Math.PI) / 180),
  y: y + mm * Math.sin((deg * Math.PI) / 180),
});

function ribOf(form: LeafForm, foot: Point, headingDeg: number): Line {
  const [a, b] = [
    step(foot, headingDeg, 0.3 * form.length),
    step(foot, headingDeg, 0.72 * form.length),
  ];
  return pen(a.x, a.y).lineTo(b.x, b.y).line();
}
