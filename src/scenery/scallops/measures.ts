import type { Affine } from '../../geometry/transform.js';
import type { Plot } from '../family.js';
import type { Opening } from '../window/opening.js';
import type { Station } from '../window/walk.js';

/** What an edging is drawn with, mm, as the window and the process allow. */
export interface Measures {
  readonly pitch: number;
  readonly depth: number;
  readonly hem: number;
  readonly web: number;
  readonly hole: number;
}

/** An edging takes at most this share of the window's smaller side, on each side of it. */
const MOST_SHARE = 0.24;
/** A hem that fills the cusps between teeth, in smallest webs. */
const LEAST_HEM = 0.2;

export function measuresOf(
  asked: { pitch: number; depth: number; hem: number },
  least: { pitch: number; depth: number },
  { bounds }: Opening,
  plot: Plot,
): Measures {
  const { smallestWeb: web, smallestHole: hole } = plot;
  const side = Math.min(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY);
  const most = MOST_SHARE * side;
  const pitch = Math.max(asked.pitch, least.pitch);
  const depth = Math.min(most, pitch, Math.max(asked.depth, least.depth));
  const hem = Math.max(LEAST_HEM * web, Math.min(asked.hem, most - depth));
  return { pitch, depth, hem, web, hole };
}

/** The map that puts x along the edge and y into the window, from a station. */
export const frameAt = ({ at, along, inward }: Station): Affine => ({
  a: along.x,
  b: along.y,
  c: inward.x,
  d: inward.y,
  e: at.x,
  f: at.y,
});
