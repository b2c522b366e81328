import { pen } from '../../geometry/pen.js';
import type { Cubics } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { ARRIS_MM, BATTER_DEG } from './clipped.js';
import { type Corner, isFree, roundedLine, type Stretch } from './outline.js';
import type { Room } from './room.js';

/** How deep a ball sinks into the block, as a share of its diameter. */
const SUNK = 0.2;
/** A ball's share of the height above the block, and of the block's top that it may take. */
const BALL_RISE = 0.46;
const BALL_SPAN = 0.86;
/** The block's arrises, the middle of what any clipped hedge may have. */
const BLOCK_ARRIS_MM = (ARRIS_MM[0] + ARRIS_MM[1]) / 2;
/** A crescent narrower than this (radians to each side) would be a nick, so it is left out. */
const LEAST_CRESCENT = 0.35;

export interface Ball {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Half the angle, from straight down, that lies within the block. */
  readonly sunkAngle: number;
}

/** A block with clipped balls standing on it; each has a crescent of light cut under it. */
export interface BallHedge {
  readonly stretches: readonly Stretch[];
  readonly crescents: readonly Cubics[];
  readonly balls: readonly Ball[];
}

export function ballHedge(room: Room, count: number, random: Random): BallHedge {
  const { height, leftX, rightX } = room;
  const tan = [random.between(...BATTER_DEG), random.between(...BATTER_DEG)].map((deg) =>
    Math.tan((deg * Math.PI) / 180),
  );
  const from = Math.max(room.seen.minX, isFree(room, 'left') ? leftX : 0);
  const to = Math.min(room.seen.maxX, rightX);
  const diameter = Math.min((BALL_RISE * height) / (1 - SUNK), (BALL_SPAN * (to - from)) / count);
  const top = -(height - diameter * (1 - SUNK));
  const inLeft = isFree(room, 'left') ? -top * tan[0] : 0;
  const inRight = isFree(room, 'right') ? -top * tan[1] : 0;
  const balls = ballsOn(from + inLeft, to - inRight, top, diameter, count, random);
  return {
    stretches: edges(room, balls, top, leftX + inLeft, rightX - inRight),
    crescents: balls.flatMap((ball) => crescent(ball, room)),
    balls,
  };
}

function ballsOn(
  from: number,
  to: number,
  top: number,
  diameter: number,
  count: number,
  random: Random,
): Ball[] {
  const room = to - from;
  return Array.from({ length: count }, (_, i) => {
    const own = random.branch(`ball ${i}`);
    const radius = (diameter / 2) * (1 - own.between(0, 0.05));
    const edge = Math.min(room / 2, radius * own.between(1.08, 1.16));
    // A single ball stands off the middle; several stand from end to end.
    const share = count === 1 ? own.pick([0.3, 0.7]) : i / (count - 1);
    return {
      x: from + edge + share * (room - 2 * edge),
      y: top - radius * (1 - 2 * SUNK),
      radius,
      sunkAngle: Math.acos(1 - 2 * SUNK),
    };
  });
}

/** Block, ball, block ...: each stretch ends in the crease where a ball meets the block. */
function edges(
  room: Room,
  balls: readonly Ball[],
  top: number,
  arrisLeft: number,
  arrisRight: number,
): Stretch[] {
  const stretches: Stretch[] = [];
  let start: Corner[] = isFree(room, 'left')
    ? [
        { x: room.leftX, y: 0 },
        { x: arrisLeft, y: top, radius: BLOCK_ARRIS_MM },
      ]
    : [{ x: room.leftX, y: top }];
  for (const ball of balls) {
    const half = ball.radius * Math.sin(ball.sunkAngle);
    stretches.push({ line: roundedLine([...start, { x: ball.x - half, y: top }]), anchor: 0.5 });
    const sweep = 360 - (2 * ball.sunkAngle * 180) / Math.PI;
    const arc = pen(ball.x - half, top).arcAround(ball.x, ball.y, sweep);
    stretches.push({ line: arc.line(), anchor: 0.5 });
    start = [{ x: ball.x + half, y: top }];
  }
  const end: Corner[] = isFree(room, 'right')
    ? [
        { x: arrisRight, y: top, radius: BLOCK_ARRIS_MM },
        { x: room.rightX, y: 0 },
      ]
    : [{ x: room.rightX, y: top }];
  return [...stretches, { line: roundedLine([...start, ...end]), anchor: 0.5 }];
}

/** A moon of light along the ball's underside, fuller on the shade side, tied at both horns. */
function crescent(ball: Ball, room: Room): Cubics[] {
  const { smallestWeb, smallestHole } = room.plot;
  const tie = 1.7 * smallestWeb + 0.4;
  const angle = ball.sunkAngle - tie / ball.radius;
  if (angle < LEAST_CRESCENT) return [];
  const { x, y, radius } = ball;
  const half = radius * Math.sin(angle);
  const hornY = y + radius * Math.cos(angle);
  const thick = Math.max(1.15 * smallestHole, 0.17 * radius);
  // A cubic's middle lies three quarters of the way out to its handles.
  const depth = (radius * (1 - Math.cos(angle)) + thick) / 0.75;
  const shift = -room.light * 0.12 * half;
  return [
    pen(x + half, hornY)
      .curveTo(
        x + half * 0.62 + shift,
        hornY + depth,
        x - half * 0.62 + shift,
        hornY + depth,
        x - half,
        hornY,
      )
      .arcAround(x, y, (-2 * angle * 180) / Math.PI)
      .close(),
  ];
}
