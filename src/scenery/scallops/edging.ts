import { subtract, union } from '../../geometry/boolean/boolean.js';
import { offset } from '../../geometry/offset/offset.js';
import { smoothContour } from '../../geometry/pen.js';
import { ellipse } from '../../geometry/primitives.js';
import { moveRegion } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import { rounded, shape, shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import { inWindow, lapOf } from '../window/fit.js';
import { inset, type Station, stationsRound } from '../window/walk.js';
import { frameAt, type Measures } from './measures.js';

/** A scallop is this much wider than its pitch, so that neighbours run into one another. */
const WIDE = 1.06;
/** How far a hand strays in depth from one to the next, as a share of it. */
export const STRAY = 0.035;
/** Radius of the finest tip, in smallest webs, and of a notch's floor, in smallest holes. */
const TIP = 0.53;
const NOTCH = 0.51;

/** Stations on the hem: crests where the edging reaches furthest in, troughs between them. */
export interface Teeth {
  readonly crests: readonly Station[];
  readonly troughs: readonly Station[];
  /** Depth of each crest from the hem, mm. */
  readonly depths: readonly number[];
}

export function teethOf(window: Region, measures: Measures, random: Random): Teeth {
  const { pitch, depth, hem } = measures;
  const [edge] = offset(window, -hem).contours;
  const stations = stationsRound(edge, pitch, 2);
  const crests = stations.filter((_, i) => i % 2 === 0);
  return {
    crests,
    troughs: stations.filter((_, i) => i % 2 === 1),
    depths: crests.map((_, i) => depth * (1 + STRAY * random.branch(i).bell())),
  };
}

/** The card of an edging of scallops. */
export function scalloped(window: Region, teeth: Teeth, measures: Measures): Region {
  const lobes = teeth.crests.map((crest, k) => {
    const half = (WIDE * measures.pitch) / 2;
    const deep = teeth.depths[k];
    // In a corner a round lobe reaches both edges' first troughs.
    const [a, b] = crest.corner ? [Math.max(half, deep), Math.max(half, deep)] : [half, deep];
    return moveRegion(ellipse(0, 0, a, b), frameAt(crest));
  });
  return banded(lobes, window, measures);
}

/** The card of an edging of points, as on a valance. */
export function pointed(window: Region, teeth: Teeth, measures: Measures): Region {
  const count = teeth.crests.length;
  const lobes = teeth.crests.map((crest, k) => {
    const before = teeth.troughs[(k + count - 1) % count];
    return shape([
      inset(before, -1),
      inset(before, 0),
      inset(crest, teeth.depths[k] * crest.mitre),
      inset(teeth.troughs[k], 0),
      inset(teeth.troughs[k], -1),
      inset(crest, -1),
    ]);
  });
  return banded([rounded(union(lobes), TIP * measures.web)], window, measures);
}

/** The card of an edging that waves in and out. */
export function waved(window: Region, teeth: Teeth, measures: Measures): Region {
  const edge = teeth.crests.flatMap((crest, k) => [
    inset(crest, teeth.depths[k] * crest.mitre),
    inset(teeth.troughs[k], 0),
  ]);
  const open = shapeOf(smoothContour(edge));
  return banded([subtract(offset(window, 1), [open])], window, measures);
}

/** Lobes on a straight hem, notches between them no finer than a tool can cut. */
function banded(lobes: readonly Region[], window: Region, { hem, web, hole }: Measures): Region {
  const band = subtract(offset(window, 1), [offset(window, -hem)]);
  const card = inWindow([band, ...lobes], window);
  const open = rounded(subtract(window, [card]), NOTCH * hole);
  const kept = rounded(subtract(offset(window, 2 * web), [open]), TIP * web);
  return inWindow([kept, lapOf(window)], window);
}
