import { chordsOf } from '../chain.js';
import { polyline } from '../pen.js';
import type { Cubics, Point } from '../types.js';
import { SvgImportError } from './error.js';

/** So few curves cannot cross often enough to matter. */
const FEW_CUBICS = 20;
/** Crossings are counted on chords this near (mm) to the curves: it is how many that matters. */
const CHORD_MM = 0.05;
/** Pairs of chords looked at, at most: a second's work. Beyond, edges lie over each other in heaps. */
const MOST_PAIRS = 100_000_000;
/** Chords so few places apart in a chain overlap at bends, which costs nothing. */
const NEIGHBOURS = 3;

/**
 * How often chains cross themselves and each other, as far as coarse chords tell. Only whether that
 * is above `most` matters: counting ends there, or where too many edges lie over each other to tell.
 */
export function crossingsOf(chains: readonly Cubics[], most: number): number {
  if (chains.reduce((sum, c) => sum + c.length / 8, 0) < FEW_CUBICS) return 0;
  const chords = sorted(chordsAlong(chains));
  let [count, pairs] = [0, 0];
  for (let k = 0; k < chords.length; k++) {
    const chord = chords[k];
    for (let n = k + 1; n < chords.length && chords[n].low <= chord.high; n++) {
      if (++pairs > MOST_PAIRS) return Infinity;
      const areNeighbours = Math.abs(chord.place - chords[n].place) <= NEIGHBOURS;
      if (!areNeighbours && cross(chord, chords[n]) && ++count > most) return count;
    }
  }
  return count;
}

/** A chord from a to b; `low` and `high` are its reach along the axis that is swept. */
interface Chord {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly low: number;
  readonly high: number;
  /** Its number in the order in which the chains are given. */
  readonly place: number;
}

/** All chords, swept along the axis on which they are the shorter. */
function chordsAlong(chains: readonly Cubics[]): Chord[] {
  const ends: (readonly [number, number, number, number])[] = [];
  let [across, down] = [0, 0];
  // Copies upon each other cost little, as nothing crosses.
  const different = new Map(chains.map((chain) => [chain.join(), chain]));
  for (const chain of different.values()) {
    const { x, y } = chordsOf(chain, CHORD_MM);
    for (let k = 1; k < x.length; k++) {
      ends.push([x[k - 1], y[k - 1], x[k], y[k]]);
      across += Math.abs(x[k] - x[k - 1]);
      down += Math.abs(y[k] - y[k - 1]);
    }
  }
  return ends.map(([ax, ay, bx, by], place) => {
    const [p, q] = across < down ? [ax, bx] : [ay, by];
    return { ax, ay, bx, by, low: Math.min(p, q), high: Math.max(p, q), place };
  });
}

const sorted = (chords: Chord[]): Chord[] => chords.sort((a, b) => a.low - b.low);

/** Whether two chords cross at an inner point of both. */
const cross = (p: Chord, q: Chord): boolean =>
  sideOf(p, q.ax, q.ay) * sideOf(p, q.bx, q.by) < 0 &&
  sideOf(q, p.ax, p.ay) * sideOf(q, p.bx, p.by) < 0;

const sideOf = ({ ax, ay, bx, by }: Chord, x: number, y: number): number =>
  (bx - ax) * (y - ay) - (by - ay) * (x - ax);

/**
 * Roughly both sides of a pen of twice `distanceMm` along chains: they show how often the outline of
 * such a stroke crosses itself before it is cleaned.
 */
export const roughSides = (chains: readonly Cubics[], distanceMm: number): Cubics[] =>
  chains.flatMap((chain) => [roughSide(chain, distanceMm), roughSide(chain, -distanceMm)]);

function roughSide(chain: Cubics, distanceMm: number): Cubics {
  const { x, y } = chordsOf(chain, CHORD_MM);
  const points: Point[] = [];
  for (let k = 1; k < x.length; k++) {
    const [dx, dy] = [x[k] - x[k - 1], y[k] - y[k - 1]];
    const shift = distanceMm / (Math.hypot(dx, dy) || 1);
    for (const end of [k - 1, k]) points.push({ x: x[end] - dy * shift, y: y[end] + dx * shift });
  }
  return points.length > 0 ? polyline(points).cubics : new Float64Array(0);
}

export const tooTangled = (what: string, most: number): SvgImportError =>
  new SvgImportError(
    `${what} is too tangled: edges cross in more than ${most} places, or too many lie over each ` +
      'other. Draw it with fewer lines, or split the drawing.',
  );
