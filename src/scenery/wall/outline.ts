import { subtract, union } from '../../geometry/boolean/boolean.js';
import { pen } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { handCut, shape, shapeOf } from '../brick/craft.js';
import { creased } from '../grass/tidy.js';
import type { Random } from '../random.js';
import { BALL_UP, CAP_OUT_MM, type Gateway, type Pier, type WallPlan } from './plan.js';

const WANDER_MM = 0.2;
/** Creases where a ball meets its neck are filled to this radius, mm. */
const CREASE_MM = 0.4;
const FAR_MM = 400;
/** A broken end falls back slowly at its foot, faster higher up. */
const FALL = 1.35;
/** A breach in the middle reaches down to this share of the height. */
const BREACH_DOWN = 0.42;
/** A quarter brick in courses: 56.25 to 75 mm. */
const QUARTER = 0.75;

export interface WallParts {
  readonly body: Region;
  readonly holes: Region;
  /** What stands proud of the wall's face and is not jointed with it. */
  readonly dressed: readonly Region[];
}

export function wallParts(plan: WallPlan, random: Random): WallParts {
  const { plot, gateway, left, right } = plan;
  const bed = rectangle(left, 0, right - left, plot.root);
  const copings = copingsOf(plan, random.branch('coping'));
  const piers = plan.piers.flatMap((pier, i) => pierOf(plan, pier, random.branch(`pier ${i}`)));
  const block = gateway?.kind === 'arch' ? blockOf(plan, gateway, random.branch('block')) : null;
  const gap = gateway?.kind === 'open' ? [gapOf(plan, gateway)] : [];
  const masonry = subtract(masonryOf(plan), gap);
  const wall = subtract(union([masonry, ...copings]), fallen(plan, random.branch('fallen')));
  const body = union([bed, wall, ...piers, ...(block ? [block.stones, block.coping] : [])]);
  const dressed = [...copings, ...piers, ...(block ? [block.coping] : [])];
  return { body: creased(body, CREASE_MM), holes: archHole(gateway), dressed };
}

/** The wall's face from end to end; where an end stands free the coping hangs over it. */
function masonryOf({ left, right, top, coping, overhang, freeLeft, freeRight }: WallPlan): Region {
  const x0 = left + (freeLeft ? overhang : 0);
  const x1 = right - (freeRight ? overhang : 0);
  return rectangle(x0, top + coping / 2, x1 - x0, -top - coping / 2 + 0.5);
}

/** The coping, over the whole length or on both sides of an open gateway. */
function copingsOf(plan: WallPlan, random: Random): Region[] {
  const { left, right, top, coping, overhang, gateway } = plan;
  const isOpen = gateway?.kind === 'open';
  const stretches = isOpen
    ? [
        [left, gateway.x0 + overhang],
        [gateway.x1 - overhang, right],
      ]
    : [[left, right]];
  return stretches.map(([a, b], i) => {
    // Behind an end pier the coping ends in its middle.
    const pierAt = (x: number) =>
      plan.piers.find((p) => Math.abs(p.x - x) < plan.pierWidth / 2 + overhang + CAP_OUT_MM)?.x;
    const [x0, x1] = [pierAt(a) ?? a, pierAt(b) ?? b];
    // Weathered: its upper arrises are rounded off.
    const arris = Math.min(0.3 * coping, 0.9);
    return handCut(
      [
        { x: x0, y: top + coping },
        { x: x0, y: top + arris },
        { x: x0 + arris, y: top },
        { x: x1 - arris, y: top },
        { x: x1, y: top + arris },
        { x: x1, y: top + coping },
      ],
      WANDER_MM,
      random.branch(i),
    );
  });
}

/** How thick caps are, mm. */
export const capOf = ({ plot, coping }: WallPlan): number =>
  Math.max(1.1 * plot.smallestWeb, 0.8 * coping);

function pierOf(plan: WallPlan, { x, top, ball }: Pier, random: Random): Region[] {
  const half = plan.pierWidth / 2;
  const cap = Math.min(capOf(plan), -0.5 * top);
  const column = rectangle(x - half, top + cap / 2, 2 * half, -top - cap / 2 + 0.5);
  const out = half + CAP_OUT_MM;
  const lid = handCut(
    [
      { x: x - out, y: top + cap },
      { x: x - out, y: top + cap * 0.35 },
      { x: x - out * 0.55, y: top },
      { x: x + out * 0.55, y: top },
      { x: x + out, y: top + cap * 0.35 },
      { x: x + out, y: top + cap },
    ],
    WANDER_MM / 2,
    random,
  );
  if (ball === 0) return [column, lid];
  const neck = Math.max(0.62 * plan.plot.smallestWeb, 0.6 * ball);
  return [
    column,
    lid,
    circle(x, top - (BALL_UP - 1) * ball, ball),
    rectangle(x - neck, top - ball, 2 * neck, ball + cap / 2),
  ];
}

/** The raised masonry over an arched gateway, and its own coping, pitched to both sides. */
function blockOf(plan: WallPlan, gate: Gateway, random: Random) {
  const { plot, coping, overhang } = plan;
  const [x0, x1] = [gate.x0 - gate.side, gate.x1 + gate.side];
  const pitch = Math.min(0.16 * (x1 - x0), 0.09 * plot.height);
  const eaves = -plot.height + pitch;
  const out = Math.min(overhang, 1.4);
  const middle = (x0 + x1) / 2;
  return {
    stones: rectangle(x0, eaves + coping / 2, x1 - x0, -eaves - coping / 2 + 0.5),
    coping: handCut(
      [
        { x: x0 - out, y: eaves + coping },
        { x: x0 - out, y: eaves },
        { x: middle, y: -plot.height },
        { x: x1 + out, y: eaves },
        { x: x1 + out, y: eaves + coping },
      ],
      WANDER_MM,
      random,
    ),
  };
}

const archHole = (gate: Gateway | null): Region =>
  gate?.kind === 'arch'
    ? shapeOf(
        pen(gate.x0, 0)
          .lineTo(gate.x0, gate.springing)
          .arcAround((gate.x0 + gate.x1) / 2, gate.springing, 180)
          .lineTo(gate.x1, 0)
          .close(),
      )
    : { contours: [] };

/** An open gateway, out of the masonry: the copings end by themselves. */
const gapOf = ({ plot }: WallPlan, gate: Gateway): Region =>
  rectangle(gate.x0, -plot.height, gate.x1 - gate.x0, plot.height);

/** What has fallen: all over a stair of courses that is toothed by quarter bricks. */
function fallen(plan: WallPlan, random: Random): Region[] {
  const { breach, plot } = plan;
  if (!breach || breach.reach <= 0) return [];
  const up = -plot.height - 10;
  if (breach.from !== 'middle') {
    const way = breach.from === 'left' ? -1 : 1;
    const end = breach.x + (breach.from === 'left' ? plan.overhang : -plan.overhang);
    const stair = stairOf(plan, 0, random.branch(0)).map((s) => ({ x: end - way * s.x, y: s.y }));
    const far = breach.x + way * FAR_MM;
    return [
      shape([
        { x: far, y: stair[0].y },
        ...stair,
        { x: stair[stair.length - 1].x, y: up },
        { x: far, y: up },
      ]),
    ];
  }
  const sides = [-1, 1].map((way) =>
    stairOf(plan, BREACH_DOWN, random.branch(way)).map((s) => ({
      x: breach.x + way * (plot.smallestHole + s.back),
      y: s.y,
    })),
  );
  const [l, r] = sides;
  return [
    shape([
      { x: l[l.length - 1].x, y: up },
      ...[...l].reverse(),
      ...r,
      { x: r[r.length - 1].x, y: up },
    ]),
  ];
}

interface Step extends Point {
  /** How far it stands back from the deepest step, for a breach that widens upward. */
  readonly back: number;
}

/** The stair from `from` (a share of the height) up: how far each course has fallen back. */
function stairOf(plan: WallPlan, from: number, random: Random): Step[] {
  const { tooth, top, course, breach } = plan;
  const reach = breach!.reach;
  const steps: Step[] = [];
  const first = Math.max(1, Math.round((-from * top) / tooth));
  const levels = Math.max(first + 1, Math.floor(-top / tooth));
  const quarter = QUARTER * course;
  for (let level = first; level < levels; level++) {
    const share = (level - first + 0.5) / (levels - first);
    const luck = random.branch(level);
    const teeth = luck.pick([-1, 0, 1]) + (level % 2 === 0 ? 1 : -1);
    const x = Math.min(reach, Math.max(0, reach * share ** FALL + teeth * quarter));
    steps.push({ x, y: -level * tooth, back: x }, { x, y: -(level + 1) * tooth, back: x });
  }
  return steps;
}
