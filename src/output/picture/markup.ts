import { linePathData, plain } from '../../geometry/path/path-data.js';
import type { Bounds, Line, Point } from '../../geometry/types.js';

/** Places of a millimetre in pictures: a hundredth is less than a tenth of a pixel. */
export const PLACES = 2;

/** A number for an attribute. */
export const n = (value: number): string => plain(value, 3);

/** The box as attributes of a rectangle or a filter. */
export const box = ({ minX, minY, maxX, maxY }: Bounds): string =>
  `x="${n(minX)}" y="${n(minY)}" width="${n(maxX - minX)}" height="${n(maxY - minY)}"`;

/** Path data of straight edges, left open. */
export const straightPath = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('');

/** Path data of many open lines together. */
export const linesPath = (lines: readonly Line[]): string =>
  lines.map((line) => linePathData(line, PLACES)).join('');

/** A filter that blurs. What lies outside `seen` is neither drawn nor paid for. */
export const blurFilter = (id: string, seen: Bounds, deviationMm: number): string =>
  `<filter id="${id}" filterUnits="userSpaceOnUse" ${box(seen)} ` +
  `color-interpolation-filters="sRGB"><feGaussianBlur stdDeviation="${n(deviationMm)}"/></filter>`;

/** A whole picture, `frame` in mm. */
export const picture = (frame: Bounds, defs: string, body: string): string => {
  const width = n(frame.maxX - frame.minX);
  const height = n(frame.maxY - frame.minY);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" ` +
    `viewBox="${n(frame.minX)} ${n(frame.minY)} ${width} ${height}">` +
    `<defs>${defs}</defs>${body}</svg>`
  );
};

/** The box round points. */
export const boxOf = (points: readonly Point[]): Bounds => ({
  minX: Math.min(...points.map(({ x }) => x)),
  minY: Math.min(...points.map(({ y }) => y)),
  maxX: Math.max(...points.map(({ x }) => x)),
  maxY: Math.max(...points.map(({ y }) => y)),
});

export const grown = (b: Bounds, by: number): Bounds => ({
  minX: b.minX - by,
  minY: b.minY - by,
  maxX: b.maxX + by,
  maxY: b.maxY + by,
});

export const overlap = (p: Bounds, q: Bounds): Bounds => ({
  minX: Math.max(p.minX, q.minX),
  minY: Math.max(p.minY, q.minY),
  maxX: Math.min(p.maxX, q.maxX),
  maxY: Math.min(p.maxY, q.maxY),
});

/** True of a box without area, on which a filter cannot work. */
export const isEmpty = (b: Bounds): boolean => !(b.minX < b.maxX && b.minY < b.maxY);
