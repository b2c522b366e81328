import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { readSegments } from '../../src/geometry/path/path-grammar.js';
import { type Pen, pen } from '../../src/geometry/pen.js';
import { moveCubics, scaling } from '../../src/geometry/transform.js';
import type { Cubics, Region } from '../../src/geometry/types.js';
import type { Case, Task } from './case.js';

/** A case as the files hold it, its shapes as path data, and what must come of it. */
export type CaseRecord = Task & {
  readonly name: string;
  /** What makes it hard. */
  readonly note: string;
  /** SVG path data, absolute M L H V C Q A Z; x right, y down, mm. Every subpath is closed. */
  readonly shapes: readonly string[];
  readonly areaMm2: number;
  /** Contours that enclose more than the tolerance; left out where pieces meet in points only. */
  readonly outers?: number;
  readonly holes?: number;
  /** Where the expected values come from. */
  readonly source: string;
  readonly toleranceMm2?: number;
  /** Polygons instead of curves may come of it, which the result says. */
  readonly mayBePolygons?: boolean;
  /** Why the tolerance is looser than the default. */
  readonly reason?: string;
};

/** All cases of the JSON files in this folder, each file a list. */
export function readCases(): CaseRecord[] {
  const folder = import.meta.dirname;
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return files
    .sort()
    .flatMap((name) => JSON.parse(readFileSync(path.join(folder, name), 'utf8')) as CaseRecord[]);
}

export const caseFrom = (record: CaseRecord): Case => {
  const shapes = record.shapes.map(regionFrom);
  return record.operation === 'offset'
    ? { operation: 'offset', distanceMm: record.distanceMm, join: record.join, shapes }
    : { operation: record.operation, shapes };
};

/** Path data with every coordinate to its last bit; straight edges too are written as curves. */
export const pathDataOf = (region: Region): string =>
  region.contours
    .map((c) => {
      let d = `M${c[0]} ${c[1]}`;
      for (let i = 0; i < c.length; i += 8) d += `C${c.subarray(i + 2, i + 8).join(' ')}`;
      return `${d}Z`;
    })
    .join(' ');

/** The shape that path data draws, bit for bit. */
export function regionFrom(d: string): Region {
  const { segments, fault } = readSegments(d);
  if (fault) throw new Error(`${d}: ${fault}`);
  const contours: Cubics[] = [];
  let drawn: Pen | null = null;
  let [x, y] = [0, 0];
  for (const { command, numbers } of segments) {
    const start: [number, number] = [x, y];
    if (command === 'H') x = numbers[0];
    else if (command === 'V') y = numbers[0];
    else if (command !== 'Z') [x, y] = numbers.slice(-2);
    if (command === 'M') {
      if (drawn) contours.push(drawn.close());
      drawn = pen(x, y);
    } else if (drawn) {
      draw(drawn, command, numbers, start, x, y);
    }
  }
  if (drawn) contours.push(drawn.close());
  return { contours };
}

function draw(
  drawn: Pen,
  command: string,
  numbers: readonly number[],
  start: readonly [number, number],
  x: number,
  y: number,
): void {
  const [a, b, c, d] = numbers;
  if (command === 'C') drawn.curveTo(a, b, c, d, x, y);
  else if (command === 'Q') drawn.quadTo(a, b, x, y);
  else if (command === 'A') drawArc(drawn, numbers, start);
  else if ('LHV'.includes(command)) drawn.lineTo(x, y);
  else if (command !== 'Z') throw new Error(`"${command}" is not one of M L H V C Q A Z.`);
}

/** Arcs are cut into parts this short (degrees): each within 1e-7 of the radius. */
const ARC_DEG = 22.5;

/** An elliptic arc along the axes (SVG 2, appendix B.2.4, without its turned axes). */
function drawArc(
  drawn: Pen,
  [rx, ry, turn, large, clockwise, x, y]: readonly number[],
  [x0, y0]: readonly [number, number],
): void {
  if (turn !== 0) throw new Error('Arcs with turned axes are not read.');
  const [ux, uy, vx, vy] = [x0 / rx, y0 / ry, x / rx, y / ry];
  const half = Math.hypot(vx - ux, vy - uy) / 2;
  const rise = Math.sqrt(Math.max(0, 1 - half * half)) / (2 * half);
  const side = large === clockwise ? 1 : -1;
  const cx = (ux + vx) / 2 + side * rise * (vy - uy);
  const cy = (uy + vy) / 2 - side * rise * (vx - ux);
  let sweep = Math.atan2(vy - cy, vx - cx) - Math.atan2(uy - cy, ux - cx);
  if (clockwise === 1 && sweep <= 0) sweep += 2 * Math.PI;
  if (clockwise === 0 && sweep >= 0) sweep -= 2 * Math.PI;
  const degrees = (sweep * 180) / Math.PI;
  const count = Math.ceil(Math.abs(degrees) / ARC_DEG - 1e-9);
  const arc = pen(ux, uy);
  for (let k = 0; k < count; k++) arc.arcAround(cx, cy, degrees / count);
  const { cubics } = arc.line();
  const scaled = moveCubics(cubics, scaling(rx, ry));
  // The arc ends where the data says, to the last bit.
  scaled.set([x, y], scaled.length - 2);
  for (let i = 0; i < scaled.length; i += 8) {
    const [x1, y1, x2, y2, x3, y3] = scaled.subarray(i + 2, i + 8);
    drawn.curveTo(x1, y1, x2, y2, x3, y3);
  }
}
