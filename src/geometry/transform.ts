import { isPolylined, markPolylined } from './polylined.js';
import type { Cubics, Line, Point, Region } from './types.js';

/** The affine map x' = a x + c y + e, y' = b x + d y + f, in SVG's order of letters. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const translation = (dx: number, dy: number): Affine => ({ ...IDENTITY, e: dx, f: dy });

export const scaling = (sx: number, sy = sx): Affine => ({ ...IDENTITY, a: sx, d: sy });

/** Clockwise on screen for positive degrees. */
export function rotation(degrees: number): Affine {
  // Quarter turns must land exactly on the grid, which Math.cos does not give.
  const quarter = ((degrees % 360) + 360) % 360;
  const exact: Record<number, [number, number]> = {
    0: [1, 0],
    90: [0, 1],
    180: [-1, 0],
    270: [0, -1],
  };
  const radians = (degrees * Math.PI) / 180;
  const [cos, sin] = exact[quarter] ?? [Math.cos(radians), Math.sin(radians)];
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}

/** One map that does `steps` in the order given. */
export function inOrder(...steps: Affine[]): Affine {
  return steps.reduce((m, n) => ({
    a: n.a * m.a + n.c * m.b,
    b: n.b * m.a + n.d * m.b,
    c: n.a * m.c + n.c * m.d,
    d: n.b * m.c + n.d * m.d,
    e: n.a * m.e + n.c * m.f + n.e,
    f: n.b * m.e + n.d * m.f + n.f,
  }));
}

export const movePoint = (p: Point, m: Affine): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

export function moveCubics(cubics: Cubics, m: Affine): Cubics {
  const out = new Float64Array(cubics.length);
  for (let i = 0; i < cubics.length; i += 2) {
    out[i] = m.a * cubics[i] + m.c * cubics[i + 1] + m.e;
    out[i + 1] = m.b * cubics[i] + m.d * cubics[i + 1] + m.f;
  }
  if (isPolylined(cubics)) markPolylined([out]);
  return out;
}

/** The region moved; a map that mirrors reverses the contours, so that outers stay clockwise. */
export function moveRegion(region: Region, m: Affine): Region {
  const mirrors = m.a * m.d - m.b * m.c < 0;
  return {
    contours: region.contours.map((c) => {
      const moved = moveCubics(c, m);
      return mirrors ? reversed(moved) : moved;
    }),
  };
}

export const moveLine = (line: Line, m: Affine): Line => ({ cubics: moveCubics(line.cubics, m) });

/** The same chain run the other way. */
export function reversed(cubics: Cubics): Cubics {
  const out = new Float64Array(cubics.length);
  for (let i = 0; i < cubics.length; i += 2) {
    out[cubics.length - 2 - i] = cubics[i];
    out[cubics.length - 1 - i] = cubics[i + 1];
  }
  if (isPolylined(cubics)) markPolylined([out]);
  return out;
}

/** The map that undoes `m`; `m` must not flatten the plane. */
export function inverse(m: Affine): Affine {
  const det = m.a * m.d - m.b * m.c;
  const a = m.d / det;
  const b = -m.b / det;
  const c = -m.c / det;
  const d = m.a / det;
  return { a, b, c, d, e: -(a * m.e + c * m.f), f: -(b * m.e + d * m.f) };
}
