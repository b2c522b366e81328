import { isClosed } from '../chain.js';
import { isStraightCubic, straightCubic } from '../cubic.js';
import { lineLength } from '../measure.js';
import { reversed } from '../transform.js';
import type { Cubics, Line, Point } from '../types.js';

/** Handles shorter than this (mm) give no direction. */
const NO_HANDLE_MM = 1e-9;
/** A line closes on itself only if it is this many tolerances long: shorter ones are no loops. */
const LOOP_TOLERANCES = 4;

/** One end of a line; `outward` is the unit direction in which the line runs out at it. */
interface End extends Point {
  readonly line: number;
  readonly isStart: boolean;
  readonly outward: Point;
}

/**
 * Lines whose ends lie within `toleranceMm` of each other, joined into chains. Where more than two
 * ends meet, the pairs that run straightest on are joined first, so that a pen runs on smoothly;
 * each end is joined once. A chain whose ends meet is closed. Lines are reversed where needed: a
 * chain runs as its first line in `lines` does, a loop starts with that one, and chains come in the
 * order of those. Where ends do not quite meet, the later cubic's end is moved; a straight one stays
 * straight. Closed lines pass unchanged, empty ones are left out.
 */
export function joinLines(lines: readonly Line[], toleranceMm: number): Line[] {
  const isOpen = lines.map(({ cubics }) => cubics.length > 0 && !isClosed(cubics));
  const ends = lines.flatMap(({ cubics }, k) => (isOpen[k] ? endsOf(cubics, k) : []));
  const isLoop = (k: number): boolean => lineLength(lines[k]) > LOOP_TOLERANCES * toleranceMm;
  const pairs = meetingPairs(ends, toleranceMm).filter(
    ([a, b]) => a.line !== b.line || isLoop(a.line),
  );
  const partners = partnersOf(pairs);
  const done = new Set<number>();
  const chains: Line[] = [];
  lines.forEach((line, k) => {
    if (done.has(k) || line.cubics.length === 0) return;
    chains.push(isOpen[k] ? chainFrom(k, lines, partners, done) : line);
  });
  return chains;
}

function endsOf(c: Cubics, line: number): [End, End] {
  const back = reversed(c);
  const end = (out: Cubics, isStart: boolean): End => ({
    x: out[out.length - 2],
    y: out[out.length - 1],
    line,
    isStart,
    outward: directionAtEnd(out),
  });
  return [end(back, true), end(c, false)];
}

/** The unit direction in which a chain ends. */
function directionAtEnd(c: Cubics): Point {
  const [x, y] = c.subarray(c.length - 2);
  for (let k = c.length - 4; k >= 0; k -= 2) {
    const length = Math.hypot(x - c[k], y - c[k + 1]);
    if (length > NO_HANDLE_MM) return { x: (x - c[k]) / length, y: (y - c[k + 1]) / length };
  }
  return { x: 0, y: 0 };
}

/** Which end of which line follows on an end; keys name an end, as `keyOf` has it. */
type Partners = ReadonlyMap<number, End>;
const keyOf = ({ line, isStart }: Pick<End, 'line' | 'isStart'>): number =>
  2 * line + (isStart ? 0 : 1);

/** Each end joined once, the straightest runs first. */
function partnersOf(pairs: readonly (readonly [End, End])[]): Partners {
  // The rounding makes equal turns equal on every machine; then the order of the lines decides.
  const bend = ([a, b]: readonly [End, End]): number =>
    Math.round(1e9 * (a.outward.x * b.outward.x + a.outward.y * b.outward.y));
  const straightestFirst = [...pairs].sort(
    (p, q) => bend(p) - bend(q) || keyOf(p[0]) - keyOf(q[0]) || keyOf(p[1]) - keyOf(q[1]),
  );
  const partners = new Map<number, End>();
  for (const [a, b] of straightestFirst) {
    if (partners.has(keyOf(a)) || partners.has(keyOf(b))) continue;
    partners.set(keyOf(a), b);
    partners.set(keyOf(b), a);
  }
  return partners;
}

/** All pairs of ends that lie within the tolerance. */
function meetingPairs(ends: readonly End[], toleranceMm: number): [End, End][] {
  const byX = [...ends].sort((a, b) => a.x - b.x || keyOf(a) - keyOf(b));
  const pairs: [End, End][] = [];
  byX.forEach((a, k) => {
    for (let j = k + 1; j < byX.length && byX[j].x - a.x <= toleranceMm; j++) {
      const b = byX[j];
      if (Math.hypot(b.x - a.x, b.y - a.y) > toleranceMm) continue;
      pairs.push(keyOf(a) < keyOf(b) ? [a, b] : [b, a]);
    }
  });
  return pairs;
}

/** The whole chain that holds line `first`, which is the first of it in the list. */
function chainFrom(
  first: number,
  lines: readonly Line[],
  partners: Partners,
  done: Set<number>,
): Line {
  const ahead = walk({ line: first, isStart: false }, partners, done);
  const closes = partners.get(keyOf(ahead[ahead.length - 1]))?.line === first;
  const behind = closes ? [] : walk({ line: first, isStart: true }, partners, done).slice(1);
  // A line is run toward its end, or the other way round where the chain leaves it by its start.
  const run = ({ line, isStart }: Pick<End, 'line' | 'isStart'>): Cubics =>
    isStart ? reversed(lines[line].cubics) : lines[line].cubics;
  const before = behind.map((end) => reversed(run(end))).reverse();
  const parts = [...before, ...ahead.map(run)];
  const chain = new Float64Array(parts.reduce((sum, c) => sum + c.length, 0));
  let at = 0;
  for (const part of parts) {
    chain.set(at === 0 ? part : startingAt(part, chain[at - 2], chain[at - 1]), at);
    at += part.length;
  }
  return { cubics: closes ? endingAt(chain, chain[0], chain[1]) : chain };
}

/** The ends by which a chain leaves its lines, from `leaving` on, until it ends or comes round. */
function walk(
  leaving: Pick<End, 'line' | 'isStart'>,
  partners: Partners,
  done: Set<number>,
): Pick<End, 'line' | 'isStart'>[] {
  const path = [leaving];
  done.add(leaving.line);
  for (let next = partners.get(keyOf(leaving)); next && !done.has(next.line); ) {
    done.add(next.line);
    const onward = { line: next.line, isStart: !next.isStart };
    path.push(onward);
    next = partners.get(keyOf(onward));
  }
  return path;
}

const startingAt = (c: Cubics, x: number, y: number): Cubics =>
  reversed(endingAt(reversed(c), x, y));

/** The chain with its end moved, and the handle there with it. */
function endingAt(c: Cubics, x: number, y: number): Cubics {
  const last = c.length - 8;
  const [dx, dy] = [x - c[last + 6], y - c[last + 7]];
  if (dx === 0 && dy === 0) return c;
  const out = c.slice();
  if (isStraightCubic(c, last)) {
    out.set(straightCubic(c[last], c[last + 1], x, y), last);
    return out;
  }
  out[last + 4] += dx;
  out[last + 5] += dy;
  out[last + 6] = x;
  out[last + 7] = y;
  return out;
}
