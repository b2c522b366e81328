import { outlineLines } from '../../geometry/clip-lines.js';
import { polyline } from '../../geometry/pen.js';
import { circle, ellipse } from '../../geometry/primitives.js';
import type { Bounds, Line } from '../../geometry/types.js';
import type { Opening } from '../window/opening.js';

/** Bars run on behind the window's edge by this much, mm. */
const BEHIND_MM = 3;
/** A pane is this much higher than wide. */
const TALL = 1.3;
/** A diamond is this much higher than wide, as leaded lights are. */
const STEEP = 1.5;
/** The hub of a wheel, as a share of its radius, and of its rings. */
const HUB = 0.22;
const RING = 0.62;

const line = (x0: number, y0: number, x1: number, y1: number): Line =>
  polyline([
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ]);

/** Upright and level bars that divide a box into whole panes. */
export function panes({ minX, minY, maxX, maxY }: Bounds, paneMm: number): Line[] {
  const columns = Math.max(2, Math.round((maxX - minX) / paneMm));
  const rows = Math.max(2, Math.round((maxY - minY) / (TALL * paneMm)));
  const upright = Array.from({ length: columns - 1 }, (_, k) => {
    const x = minX + ((k + 1) / columns) * (maxX - minX);
    return line(x, minY - BEHIND_MM, x, maxY + BEHIND_MM);
  });
  const level = Array.from({ length: rows - 1 }, (_, k) => {
    const y = minY + ((k + 1) / rows) * (maxY - minY);
    return line(minX - BEHIND_MM, y, maxX + BEHIND_MM, y);
  });
  return [...upright, ...level];
}

/** Bars both ways aslant; whole diamonds, or halves, lie along every side of the box. */
export function diamonds({ minX, minY, maxX, maxY }: Bounds, paneMm: number): Line[] {
  const [width, height] = [maxX - minX, maxY - minY];
  const columns = Math.max(1, Math.round(width / paneMm));
  const rows = Math.max(1, Math.round(height / (STEEP * paneMm)));
  const [dx, dy] = [width / columns, height / rows];
  const lines: Line[] = [];
  // Each bar meets the head's level at the middle of a column: x0 = minX + (k + 1/2) dx.
  for (let k = -rows - 1; k <= columns + rows; k++) {
    const x = minX + (k + 0.5) * dx;
    const run = (rows + 0.5) * dx;
    const [top, bottom] = [minY - dy / 4, maxY + dy / 4];
    lines.push(line(x - dx / 4, top, x + run - dx / 4, bottom));
    lines.push(line(x + dx / 4, top, x - run + dx / 4, bottom));
  }
  return lines;
}

/** Rays from a hub and a ring between, about the window's middle. */
export function radial({ bounds }: Opening, paneMm: number, barMm: number): Line[] {
  const { minX, minY, maxX, maxY } = bounds;
  const [cx, cy] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [rx, ry] = [(maxX - minX) / 2, (maxY - minY) / 2];
  const hub = Math.max(HUB * Math.min(rx, ry), 2.2 * barMm);
  // As many rays as find room about the hub, as wide apart as asked at the ring.
  const most = Math.floor((2 * Math.PI * hub) / (1.9 * barMm));
  const round = 2 * Math.PI * RING * Math.min(rx, ry);
  const rays = Math.max(4, Math.min(most, 2 * Math.round(round / paneMm / 2)));
  const far = Math.hypot(rx, ry) + BEHIND_MM;
  const spokes = Array.from({ length: rays }, (_, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / rays;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return line(cx + hub * c, cy + hub * s, cx + far * c, cy + far * s);
  });
  const ring =
    RING * Math.min(rx, ry) > hub + 3 * barMm ? [ellipse(cx, cy, RING * rx, RING * ry)] : [];
  return [...spokes, ...[circle(cx, cy, hub), ...ring].flatMap(outlineLines)];
}
