import { handleBounds } from '../boolean/clusters.js';
import { isClosed } from '../chain.js';
import { isStraightCubic, jetAt, straightCubic, subCubic } from '../cubic.js';
import { contourArea } from '../measure.js';
import { circle, rectangle } from '../primitives.js';
import { moveRegion, reversed } from '../transform.js';
import type { Bounds, Cubics, Point } from '../types.js';
import { fitsInCircle } from './enclosing.js';
import { type Cap, joinOf, path, SAME_POINT_MM, type Style, type Turn, turnAt } from './joins.js';
import { ARM_T, parallelOf, type Stretch, tangent } from './parallel.js';
import { type Element, trimLoops } from './trim.js';

/**
 * Raw offset outlines: the parallel curve of every cubic, joined at the nodes. They may cross
 * themselves; what they wind round a positive number of times is the offset.
 *
 * Why that is so: moving the outline from the chain out to the distance, each time that it sweeps
 * over a point where the point's distance from the chain is least adds one to its winding number
 * there, and where it is greatest takes one off (such parallels run backwards). Each stretch of
 * the chain within the distance of the point has one more of the former than of the latter. A
 * chain all of which is within the distance of one point has none, so a contour that shrinks must
 * be left out where it is so small. Inner corners take nothing off, as they go through the node.
 */

/**
 * Spots that came out wrong, for a second try: there the outline is cut into shorter cubics, so
 * that a boolean's chords lie nearer to it, and nothing that would fall out anyway is cut off it
 * beforehand. Null for a first try.
 */
export type Wrong = readonly Point[] | null;

/** What stays this near (mm) to one point of a source has no direction of its own. */
const SPECK_MM = 1e-3;
/** A second try's cubics near a wrong spot are cut in so many: chords then lie 64 times nearer. */
const PARTS = 8;
/** What passes this near (mm) to a spot is near it. */
const NEAR_MM = 0.1;

/**
 * The raw outline of a closed chain at `distanceMm` to its left as it runs (y down): outward from
 * an outer contour where positive, inward where negative.
 */
export function offsetOutline(
  chain: Cubics,
  distanceMm: number,
  style: Style,
  wrong: Wrong = null,
): Cubics {
  if (contourArea(chain) * distanceMm < 0 && fitsInCircle(chain, Math.abs(distanceMm))) {
    return new Float64Array(0);
  }
  return outline(sideElements(chain, distanceMm, style), distanceMm, style, wrong);
}

/** All round a closed chain, specks and all. */
export const sideElements = (chain: Cubics, distanceMm: number, style: Style): Element[] =>
  elementsOf(withoutSpecks(chain), distanceMm, style, Infinity, turnsAtSpecks(chain));

/** The raw outline of a pen of twice `distanceMm` drawn along an open chain. */
export function strokeOutline(
  chain: Cubics,
  distanceMm: number,
  style: Style,
  wrong: Wrong = null,
): Cubics {
  const line = withoutSpecks(chain);
  if (line.length === 0) return dot(chain, distanceMm, style.cap);
  const elements = elementsOf(thereAndBack(line), distanceMm, style, line.length / 8);
  return outline(elements, distanceMm, style, wrong);
}

/** A closed chain round nothing, with both sides of an open one to its left. */
export const thereAndBack = (line: Cubics): Cubics =>
  Float64Array.from([...line, ...reversed(line)]);

/** Length (mm) that a dot is given where its distance from other points is looked at. */
const DOT_MM = 1e-6;

/** What a pen goes along, there and back. */
export function drawnChain(chain: Cubics): Cubics {
  const line = withoutSpecks(chain);
  if (line.length > 0) return thereAndBack(line);
  const [x, y] = chain;
  return thereAndBack(Float64Array.from(straightCubic(x, y, x + DOT_MM, y)));
}

/** Ends nearer than this (mm) give a line no direction. */
const DIRECTION_MM = 1e-9;

/**
 * What is left of a line of no length: its caps alone, upright (SVG 2, section 13.5.4), or turned
 * with the line where it is merely too short to be drawn.
 */
export function dot(line: Cubics, radiusMm: number, cap: Cap): Cubics {
  if (cap === 'butt') return new Float64Array(0);
  const [x, y] = line;
  if (cap === 'round') return circle(x, y, radiusMm).contours[0];
  const [dx, dy] = [line[line.length - 2] - x, line[line.length - 1] - y];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = length > DIRECTION_MM ? [dx / length, dy / length] : [1, 0];
  const turned = { a: radiusMm * ux, b: radiusMm * uy, c: -radiusMm * uy, d: radiusMm * ux };
  return moveRegion(rectangle(-1, -1, 2, 2), { ...turned, e: x, f: y }).contours[0];
}

/**
 * What is swept to the left of a closed chain where its parallels run backwards, each piece a
 * contour that may cross itself. A round outline winds round all of it, but where a corner or an
 * end is not round it may be missing.
 */
export function backwardStrips(
  chain: Cubics,
  distanceMm: number,
  style: Style,
  cubicsToCap?: number,
): Cubics[] {
  const line = withoutSpecks(chain);
  return elementsOf(line, distanceMm, style, cubicsToCap).flatMap((e) => {
    if (e.kind !== 'curve' || !e.inverted) return [];
    const source = subCubic(line, e.i, e.t0, e.t1);
    const [x0, y0, x1, y1] = [source[0], source[1], source[6], source[7]];
    const end = path({ x: x1, y: y1 }, e.b);
    const start = path(e.a, { x: x0, y: y0 });
    return [closedExactly([...source, ...end, ...reversed(e.cubic), ...start])];
  });
}

export function lineStrips(chain: Cubics, distanceMm: number, style: Style): Cubics[] {
  const line = withoutSpecks(chain);
  return backwardStrips(thereAndBack(line), distanceMm, style, line.length / 8);
}

const outline = (elements: readonly Element[], distanceMm: number, style: Style, wrong: Wrong) =>
  wrong
    ? cutUp(closedExactly(drawn(elements, distanceMm, style)), wrong)
    : closedExactly(drawn(trimLoops(elements, distanceMm), distanceMm, style));

/**
 * All round a closed chain without specks; a line ends after every `cubicsToCap` cubics. `turns` are
 * those of `turnsAtSpecks`.
 */
export function elementsOf(
  chain: Cubics,
  distanceMm: number,
  style: Style,
  cubicsToCap = Infinity,
  turns: readonly (number | null)[] = [],
): Element[] {
  const parallels: Stretch[][] = [];
  for (let i = 0; i < chain.length; i += 8) parallels.push(parallelOf(chain, i, distanceMm));
  return parallels.flatMap((stretches, k): Element[] => {
    const next = (k + 1) % parallels.length;
    const a = stretches[stretches.length - 1].b;
    const b = parallels[next][0].a;
    const before = jetAt(chain, k * 8, 1 - ARM_T);
    const after = jetAt(chain, next * 8, ARM_T);
    const node: Turn =
      (k + 1) % cubicsToCap === 0
        ? { kind: 'turn', a, b, sweep: Math.PI, shape: style.cap }
        : turnAt(a, b, before, after, distanceMm, style.join, turns[k]);
    return [...stretches.map((s) => withBendTurned(s, distanceMm)), node];
  });
}

/** Ever sharper bends have ever sharper round parallels, so the sharpest is round too. */
const withBendTurned = (s: Stretch, distanceMm: number): Element =>
  s.kind === 'bend' ? turnAt(s.a, s.b, s.before, s.after, distanceMm, 'round') : s;

function drawn(elements: readonly Element[], distanceMm: number, style: Style): number[] {
  const numbers: number[] = [];
  for (const e of elements) {
    if (e.kind === 'curve') numbers.push(...(isPoint(e.cubic) ? [] : e.cubic));
    else if (e.sweep > 0) numbers.push(...joinOf(e, distanceMm, style.mitreLimit));
    else numbers.push(...path(e.a, { x: e.a.px, y: e.a.py }, e.b));
  }
  return numbers;
}

const isPoint = (c: Cubics): boolean => Math.hypot(c[6] - c[0], c[7] - c[1]) < SAME_POINT_MM;

/** The chain with its curved cubics near some spots cut in parts. */
function cutUp(chain: Cubics, spots: readonly Point[]): Cubics {
  const numbers: number[] = [];
  for (let i = 0; i < chain.length; i += 8) {
    const box = handleBounds(chain.subarray(i, i + 8));
    const isNear = !isStraightCubic(chain, i) && spots.some((p) => isInBox(p, box, NEAR_MM));
    const parts = isNear ? PARTS : 1;
    for (let k = 0; k < parts; k++) {
      numbers.push(...subCubic(chain, i, k / parts, (k + 1) / parts));
    }
  }
  return closedExactly(numbers);
}

const isInBox = (p: Point, box: Bounds, marginMm: number): boolean =>
  p.x > box.minX - marginMm &&
  p.x < box.maxX + marginMm &&
  p.y > box.minY - marginMm &&
  p.y < box.maxY + marginMm;

/**
 * The chain without what is too small to have a direction: its neighbours are joined. Outlines that
 * come from rounding fold and cross there, which would tell an offset the wrong side.
 */
export function withoutSpecks(chain: Cubics): Cubics {
  const kept: number[] = [];
  let [x, y] = chain;
  for (const i of keptOf(chain)) {
    kept.push(...movedEnds(chain, i, { x, y }, { x: chain[i + 6], y: chain[i + 7] }));
    [x, y] = [chain[i + 6], chain[i + 7]];
  }
  return isClosed(chain) ? closedExactly(kept) : Float64Array.from(kept);
}

/** Indices of the cubics that are no specks. */
function keptOf(chain: Cubics): number[] {
  const kept: number[] = [];
  let [x, y] = chain;
  for (let i = 0; i < chain.length; i += 8) {
    const isSpeck = [2, 4, 6].every(
      (k) => Math.hypot(chain[i + k] - x, chain[i + k + 1] - y) < SPECK_MM,
    );
    if (isSpeck) continue;
    kept.push(i);
    [x, y] = [chain[i + 6], chain[i + 7]];
  }
  return kept;
}

/**
 * How far (radians, clockwise on screen) a closed chain turns after each cubic that is no speck,
 * by way of the specks that follow it; null where none do. A notch whose short bottom is left out
 * turns like any notch, even where its walls, prolonged, would cross.
 */
function turnsAtSpecks(chain: Cubics): (number | null)[] {
  const kept = keptOf(chain);
  return kept.map((i, k) => {
    const end = kept[(k + 1) % kept.length];
    const next = (j: number): number => (j + 8) % chain.length;
    if (next(i) === end) return null;
    let [ux, uy] = tangent(chain, i, 1);
    let turn = 0;
    const towards = (vx: number, vy: number): void => {
      if (vx === 0 && vy === 0) return;
      turn += Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
      [ux, uy] = [vx, vy];
    };
    for (let j = next(i); j !== end; j = next(j)) {
      towards(chain[j + 6] - chain[j], chain[j + 7] - chain[j + 1]);
    }
    towards(...tangent(chain, end, 0));
    return turn;
  });
}

/** A cubic with its ends put elsewhere, handles moved along; a straight one stays straight. */
function movedEnds(c: Cubics, i: number, p: Point, q: Point): number[] {
  const [dx0, dy0, dx1, dy1] = [p.x - c[i], p.y - c[i + 1], q.x - c[i + 6], q.y - c[i + 7]];
  if (isStraightCubic(c, i)) return straightCubic(p.x, p.y, q.x, q.y);
  const [x1, y1] = [c[i + 2] + dx0, c[i + 3] + dy0];
  return [p.x, p.y, x1, y1, c[i + 4] + dx1, c[i + 5] + dy1, q.x, q.y];
}

/** Each cubic ends exactly where the next starts; what is closed up is small. */
function closedExactly(numbers: readonly number[]): Cubics {
  const chain = Float64Array.from(numbers);
  for (let i = 0; i < chain.length; i += 8) {
    const next = (i + 8) % chain.length;
    const [x, y] = [chain[next], chain[next + 1]];
    if (chain[i + 6] === x && chain[i + 7] === y) continue;
    chain.set(movedEnds(chain, i, { x: chain[i], y: chain[i + 1] }, { x, y }), i);
  }
  return chain;
}
