import { regionBounds } from '../../geometry/measure.js';
import { mix } from '../brick/craft.js';
import { COURSE_MM, type Masonry } from '../brick/facing.js';
import type { Plot } from '../family.js';
import { groundOf } from '../land/ground.js';
import type { Random } from '../random.js';

export const GATEWAYS = ['none', 'arch', 'open'] as const;
export type GatewayKind = (typeof GATEWAYS)[number];

/** A way through the wall, mm. */
export interface Gateway {
  readonly kind: 'arch' | 'open';
  readonly x0: number;
  readonly x1: number;
  /** Where the arch springs (y). */
  readonly springing: number;
  /** How far the raised masonry reaches beside the opening; its top is the plot's. */
  readonly side: number;
}

/** A pier, its middle and top (y) in mm; its ball stands on that. */
export interface Pier {
  readonly x: number;
  readonly top: number;
  /** Radius of its ball, 0 for none. */
  readonly ball: number;
}

/** Where the masonry has fallen: towards one end, or in the middle between two that stand. */
export interface Breach {
  readonly from: 'left' | 'right' | 'middle';
  /** Where the wall ends at its foot, or the breach's middle. */
  readonly x: number;
  /** How far it has fallen back at its top. */
  readonly reach: number;
}

/** The wall set out, mm; y negative upward from the ground. */
export interface WallPlan {
  readonly plot: Plot;
  readonly left: number;
  readonly right: number;
  readonly freeLeft: boolean;
  readonly freeRight: boolean;
  /** Top of the coping, how thick it is and how far it stands out. */
  readonly top: number;
  readonly coping: number;
  readonly overhang: number;
  readonly course: number;
  /** A tooth of a broken end: whole courses, as high as can be cut. */
  readonly tooth: number;
  readonly pierWidth: number;
  readonly piers: readonly Pier[];
  readonly gateway: Gateway | null;
  readonly breach: Breach | null;
}

/** Coping: how thick as a share of the height, and how far out, mm (common practice: 2 to 3). */
const COPING = 0.09;
const OVERHANG_MM = 2.2;
/** Height of the wall where piers, and where a gateway's head, rise over it. */
const UNDER_PIERS = [0.42, 0.68] as const;
const UNDER_ARCH = 0.62;
const PIER_WIDE = 0.19;
/** A ball's radius in piers' widths, and the least in webs. */
const BALL = 0.44;
const LEAST_BALL = 0.95;
/** How far a pier's cap stands out, mm. */
export const CAP_OUT_MM = 0.7;
/** A ball and its neck, in radii of the ball. */
export const BALL_UP = 2.25;
/** Piers stand this far apart: heights of the wall, and mm. */
const BAY_HEIGHTS = 1.5;
const BAY_MM = 18;
const FINER_AT_BACK = 0.28;

const overhangOf = (heightMm: number): number => Math.min(OVERHANG_MM, 0.14 * heightMm);

export interface Wanted {
  readonly masonry: Masonry;
  readonly gateway: GatewayKind;
  readonly piers: boolean;
  readonly broken: boolean;
}

export function setOutWall(plot: Plot, wanted: Wanted, random: Random): WallPlan {
  const { height, smallestWeb: web, smallestHole: hole } = plot;
  const { left, right, freeLeft, freeRight } = groundOf(plot);
  const { x0, x1 } = inSight(plot, left, right);
  const gateway = gatewayOf(plot, wanted.gateway, x0, x1, random.branch('gateway'));
  const pierWidth = Math.max(2.4 * web, PIER_WIDE * height);
  const ball = ballOn(pierWidth, height, web);
  const underPiers = Math.max(
    UNDER_PIERS[0],
    Math.min(UNDER_PIERS[1], 1 - (BALL_UP * ball + 1.6 * web) / height),
  );
  const raised = wanted.piers ? underPiers : 1;
  const top = -height * (gateway?.kind === 'arch' ? Math.min(raised, UNDER_ARCH) : raised);
  const coping = Math.min(Math.max(1.2 * web, COPING * height), -0.45 * top);
  const course = COURSE_MM[wanted.masonry] * (1 - FINER_AT_BACK * plot.fineness);
  const tooth = course * Math.ceil(Math.max(1.05 * web, 0.8 * hole) / course);
  const breach = wanted.broken
    ? breachOf(x0, x1, top, freeLeft, freeRight, gateway, random.branch('breach'))
    : null;
  const plan = {
    plot,
    left,
    right,
    freeLeft,
    freeRight,
    top,
    coping,
    overhang: coping >= web ? overhangOf(height) : 0,
    course,
    tooth,
    pierWidth,
    gateway,
    breach,
  };
  const piers = wanted.piers ? piersOf(plan, x0, x1, random.branch('piers')) : [];
  return { ...plan, piers };
}

/** Radius of a pier's ball; none on a pier too low for one. */
function ballOn(pierWidth: number, height: number, web: number): number {
  const radius = BALL * pierWidth;
  return radius >= LEAST_BALL * web && BALL_UP * radius < 0.42 * height ? radius : 0;
}

/** The part of the wall that stands in the window. */
function inSight({ frame }: Plot, left: number, right: number) {
  const { minX, maxX } =
    frame.window.contours.length > 0 ? regionBounds(frame.window) : frame.bounds;
  return { x0: Math.max(left, minX), x1: Math.min(right, maxX) };
}

function gatewayOf(
  plot: Plot,
  kind: GatewayKind,
  x0: number,
  x1: number,
  random: Random,
): Gateway | null {
  const { height, smallestWeb: web, smallestHole: hole } = plot;
  const at = mix(x0, x1, random.between(0.4, 0.6));
  const share = random.between(0.4, 0.48);
  if (kind === 'none') return null;
  const pier = Math.max(2.4 * web, PIER_WIDE * height) + CAP_OUT_MM + 1.4 * hole;
  const side = kind === 'open' ? pier : Math.max(1.6 * web, 0.17 * height);
  const room = 2 * Math.min(at - x0, x1 - at) - 2 * side - 2 * web;
  const wide = Math.min(share * height * (kind === 'open' ? 1.3 : 1), room);
  const over = Math.max(1.8 * web, 0.2 * height);
  const springing = -(height - over - wide / 2);
  const overhangs = kind === 'open' ? 2 * overhangOf(height) : 0;
  if (wide < 1.5 * hole + overhangs || (kind === 'arch' && -springing < 0.8 * hole)) return null;
  return { kind, x0: at - wide / 2, x1: at + wide / 2, springing, side };
}

function breachOf(
  x0: number,
  x1: number,
  top: number,
  freeLeft: boolean,
  freeRight: boolean,
  gateway: Gateway | null,
  random: Random,
): Breach {
  const coin = random.chance(0.5);
  const share = random.between(0.3, 0.42);
  const side = random.chance(0.5);
  // The end furthest from the gateway has room to fall.
  const room = gateway
    ? Math.min(gateway.x0 - gateway.side - x0, x1 - gateway.x1 - gateway.side) * 0.7
    : (x1 - x0) * share;
  const reach = Math.max(0, Math.min(room, -1.6 * top));
  if (freeLeft && freeRight) {
    return coin ? { from: 'left', x: x0, reach } : { from: 'right', x: x1, reach };
  }
  if (freeLeft) return { from: 'left', x: x0, reach };
  if (freeRight) return { from: 'right', x: x1, reach };
  const middle = gateway
    ? side
      ? (x0 + gateway.x0 - gateway.side) / 2
      : (x1 + gateway.x1 + gateway.side) / 2
    : mix(x0, x1, side ? 0.32 : 0.68);
  return { from: 'middle', x: middle, reach: reach * (gateway ? 0.5 : 0.7) };
}

type WithoutPiers = Omit<WallPlan, 'piers'>;

/** Piers beside an open gateway, at the ends that stand free, and along a long wall. */
function piersOf(plan: WithoutPiers, x0: number, x1: number, random: Random): Pier[] {
  const { plot, gateway, breach, pierWidth, freeLeft, freeRight } = plan;
  const { height, smallestWeb: web, smallestHole: hole } = plot;
  const half = pierWidth / 2;
  const beside = gateway?.kind === 'open' ? [gateway.x0 - half, gateway.x1 + half] : [];
  const ends = [
    ...(freeLeft && breach?.from !== 'left' ? [x0 + half + CAP_OUT_MM] : []),
    ...(freeRight && breach?.from !== 'right' ? [x1 - half - CAP_OUT_MM] : []),
  ];
  const bays = Math.max(1, Math.round((x1 - x0) / (BAY_HEIGHTS * height + BAY_MM)));
  const between = Array.from({ length: bays }, (_, k) =>
    mix(x0, x1, (k + 0.5) / bays + random.branch(k).between(-0.02, 0.02)),
  );
  // Beside a jamb that it does not touch, a pier leaves a gap that can be cut.
  const gapLeft = freeLeft ? 0 : 1.3 * hole;
  const gapRight = freeRight ? 0 : 1.3 * hole;
  const isFree = (x: number): boolean =>
    x - half - CAP_OUT_MM >= x0 + gapLeft - 1e-6 &&
    x + half + CAP_OUT_MM <= x1 - gapRight + 1e-6 &&
    isWhole(plan, x, 1.2 * pierWidth);
  const found = [...beside];
  for (const x of [...ends, ...between]) {
    const isApart = found.every((other) => Math.abs(other - x) > 2.6 * pierWidth);
    if (isApart && isFree(x)) found.push(x);
  }
  const ball = ballOn(pierWidth, height, web);
  return found.map((x) => ({ x, top: -height + BALL_UP * ball, ball }));
}

/** Whether the wall stands whole for `near` mm round x. */
function isWhole({ gateway, breach }: WithoutPiers, x: number, near: number): boolean {
  const inGate =
    gateway !== null &&
    x > gateway.x0 - gateway.side - near &&
    x < gateway.x1 + gateway.side + near;
  const inBreach = breach !== null && Math.abs(x - breach.x) < breach.reach + near;
  return !inGate && !inBreach;
}
