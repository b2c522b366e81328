import { polyline } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { drawRing, type RingJoint, radiatingJoints, ringRegion } from '../brick/arch.js';
import { handDrawn, inStrokes } from '../brick/craft.js';
import type { Anchor } from '../brick/patches.js';
import type { Random } from '../random.js';
import { capOf } from './outline.js';
import type { Gateway, WallPlan } from './plan.js';

const WANDER_MM = 0.15;
/** Stones of the coping, mm. */
const COPING_STONE_MM = [6, 11] as const;
/** Joints of the arch start this far behind the soffit, mm. */
const SHY_MM = 1.6;
const SOFFIT_PARTS = 24;

/** The stones over an arched gateway. */
export function ringOf(plan: WallPlan, gate: Gateway): RingJoint[] {
  const radius = (gate.x1 - gate.x0) / 2;
  const middle = (gate.x0 + gate.x1) / 2;
  const soffit = Array.from({ length: SOFFIT_PARTS + 1 }, (_, i): Point => {
    const a = Math.PI * (1 - i / SOFFIT_PARTS);
    return { x: middle + radius * Math.cos(a), y: gate.springing - radius * Math.sin(a) };
  });
  const over = plan.plot.height + gate.springing - radius - plan.coping;
  const depth = Math.max(SHY_MM + 1.2, Math.min(0.8 * over, 0.62 * radius));
  return radiatingJoints(soffit, depth, Math.max(1.8, 0.62 * depth));
}

export const archStones = (plan: WallPlan): Region[] =>
  plan.gateway?.kind === 'arch' ? [ringRegion(ringOf(plan, plan.gateway))] : [];

/** Edges of coping and piers, the coping's joints and the stones of the arch. */
export function wallLines(plan: WallPlan, random: Random): Line[] {
  const { left, right, top, coping, gateway } = plan;
  const lines: Line[] = [
    ...inStrokes(level(left, right, top + coping), random.branch('coping')),
    ...copingJoints(plan, random.branch('joints')),
  ];
  plan.piers.forEach((pier, i) => {
    const half = plan.pierWidth / 2;
    const luck = random.branch(`pier ${i}`);
    for (const x of [pier.x - half, pier.x + half]) {
      const side = [pier.top + capOf(plan) + 1, -1].map((y) => ({ x, y }));
      lines.push(...inStrokes(polyline(side), luck.branch(`${x > pier.x}`)));
    }
    lines.push(
      handDrawn(levelPoints(pier.x - half, pier.x + half, pier.top + capOf(plan)), WANDER_MM, luck),
    );
    if (pier.ball > 4) {
      const shade = circle(pier.x, pier.top - 1.25 * pier.ball, pier.ball * 0.55).contours[0];
      lines.push({ cubics: shade.slice(0, 8) });
    }
  });
  if (gateway?.kind === 'arch') {
    const ring = ringOf(plan, gateway);
    lines.push(...drawRing(ring, new Set(ring.slice(1).keys()), SHY_MM, random.branch('ring')));
  }
  return lines;
}

function copingJoints({ left, right, top, coping }: WallPlan, random: Random): Line[] {
  const lines: Line[] = [];
  for (let x = left + random.between(...COPING_STONE_MM); x < right; ) {
    const lean = random.between(-0.2, 0.2);
    lines.push(
      polyline([
        { x: x + lean, y: top },
        { x, y: top + coping - 0.4 },
      ]),
    );
    x += random.between(...COPING_STONE_MM);
  }
  return lines;
}

const levelPoints = (x0: number, x1: number, y: number): Point[] => [
  { x: x0, y },
  { x: x1, y },
];
const level = (x0: number, x1: number, y: number): Line => polyline(levelPoints(x0, x1, y));

/** Joints gather at the wall's ends, at its gateway and piers, and where it is broken. */
export function wallAnchors(plan: WallPlan): Anchor[] {
  const { left, right, top, freeLeft, freeRight, gateway, breach, piers } = plan;
  const xs: number[] = [];
  if (freeLeft) xs.push(left);
  if (freeRight) xs.push(right);
  if (gateway) xs.push(gateway.x0 - gateway.side / 2, gateway.x1 + gateway.side / 2);
  if (breach) xs.push(breach.x);
  for (const p of piers) xs.push(p.x - plan.pierWidth, p.x + plan.pierWidth);
  return xs.map((x) => ({
    x0: x,
    x1: x,
    y0: top * 0.7,
    y1: 0,
    reach: 3.5 * plan.course,
    pull: 0.5,
  }));
}
