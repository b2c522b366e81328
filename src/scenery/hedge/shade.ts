import type { Ball } from './ball.js';
import { type Room, shadeAt } from './room.js';
import type { Shade } from './texture.js';

/** Darker away from the light and, less so, toward the foot; a third of the width stays bare. */
export const blockShade =
  (room: Room): Shade =>
  ({ x, y }) => {
    const low = 1 + Math.max(-1, y / room.height);
    return clamp(1.2 * shadeAt(room, x) ** 1.6 + 0.2 * low - 0.19);
  };

/** A ball is dark on its underside away from the light, whatever side of the hedge it stands on. */
export function ballShade(room: Room, balls: readonly Ball[]): Shade {
  const block = blockShade(room);
  return (p) => {
    const ball = balls.find(({ x, y, radius }) => Math.hypot(p.x - x, p.y - y) < radius);
    if (!ball) return block(p);
    const away = (-room.light * (p.x - ball.x)) / ball.radius;
    const under = (p.y - ball.y) / ball.radius;
    return clamp(0.1 + 0.9 * (0.8 * away + 0.6 * under));
  };
}

const clamp = (value: number) => Math.max(0, Math.min(1, value));
