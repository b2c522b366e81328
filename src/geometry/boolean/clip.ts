import {
  Clipper64,
  ClipType,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Path64,
} from 'clipper2-ts';
import type { ChordTable } from './chords.js';
import { withoutSpikes } from './spikes.js';

/**
 * The one door to Clipper2: integer polygons in, integer polygons out. A vertex's `z` is one more
 * than its number in the chord table, and 0 where the clipper made it; it survives several passes,
 * though now and then it is wrong and must be checked against the coordinates.
 */
export type Ring = Path64;

export type Operation = 'union' | 'subtract' | 'intersect' | 'xor';

/** Which winding numbers are inside: not 0, odd, or above 0. */
export type Rule = 'nonzero' | 'even-odd' | 'positive';

const CLIP_TYPES: Record<Operation, ClipType> = {
  union: ClipType.Union,
  subtract: ClipType.Difference,
  intersect: ClipType.Intersection,
  xor: ClipType.Xor,
};

const FILL_RULES: Record<Rule, FillRule> = {
  nonzero: FillRule.NonZero,
  'even-odd': FillRule.EvenOdd,
  positive: FillRule.Positive,
};

/** Groups in one call: the clipper's cost grows faster than its input, its fixed cost is small. */
const TILE_GROUPS = 25;
/** So few groups are united in one call. */
const FEW_GROUPS = 1.5 * TILE_GROUPS;
/** Partial results merged at a time on the way up. */
const MERGE_FAN = 8;

/** The contours `from`..`to` of a table as tagged rings without spikes, collapsed ones left out. */
export function ringsOf(table: ChordTable, from: number, to: number): Ring[] {
  const rings: Ring[] = [];
  for (let q = from; q < to; q++) {
    const ring: Ring = [];
    for (let v = table.contourStart[q]; v < table.contourStart[q + 1]; v++) {
      ring.push({ x: table.x[v], y: table.y[v], z: v + 1 });
    }
    rings.push(ring);
  }
  return despiked(rings);
}

/**
 * One boolean of rings under a fill rule; outers come back with positive area. Neither the rings
 * given nor those that come back have spikes.
 */
export function clip(
  operation: Operation,
  subjects: readonly Ring[],
  clips: readonly Ring[],
  rule: Rule,
): Ring[] {
  const clipper = new Clipper64();
  clipper.addSubject(subjects as Ring[]);
  clipper.addClip(clips as Ring[]);
  const solution: Ring[] = [];
  if (!clipper.execute(CLIP_TYPES[operation], FILL_RULES[rule], solution)) {
    throw new Error(
      `The ${operation} of ${subjects.length + clips.length} outlines could not be worked out.`,
    );
  }
  return despiked(solution);
}

/** A corner is drawn out to at most so many times the distance; a sharper one is cut off square. */
const MITRE_LIMIT = 2;

/**
 * A region of rings (outers with positive area, holes negative) that reaches further out by
 * a distance, everywhere and a little more at corners, which stay sharp; less far by a negative one.
 */
export const grown = (rings: readonly Ring[], distance: number): Ring[] =>
  rings.length === 0 || distance === 0
    ? [...rings]
    : despiked(inflatePaths([...rings], distance, JoinType.Miter, EndType.Polygon, MITRE_LIMIT));

const despiked = (rings: readonly Ring[]): Ring[] =>
  rings.map(withoutSpikes).filter((ring) => ring.length > 0);

/**
 * The union of groups of rings, each group a shape of its own under the nonzero rule (an outer ring
 * never without its holes). Many groups are united tile by tile, neighbours first.
 */
export function uniteGroups(groups: readonly Ring[][]): Ring[] {
  const filled = groups.filter((g) => g.length > 0);
  if (filled.length <= FEW_GROUPS) return clip('union', filled.flat(), [], 'nonzero');
  // The clipper sweeps down: what it has to look at on each level grows with the width.
  return isWide(filled) ? uniteTiled(filled.map(turned)).map(turnedBack) : uniteTiled(filled);
}

function isWide(groups: readonly Ring[][]): boolean {
  const starts = groups.map((g) => g[0][0]);
  const [xs, ys] = [starts.map((p) => p.x), starts.map((p) => p.y)];
  return spread(xs) > spread(ys);
}

function spread(values: readonly number[]): number {
  let [least, most] = [Infinity, -Infinity];
  for (const v of values) {
    least = Math.min(least, v);
    most = Math.max(most, v);
  }
  return most - least;
}

/** A quarter turn, which keeps what is clockwise so. */
const turned = (group: readonly Ring[]): Ring[] =>
  group.map((ring) => ring.map(({ x, y, z }) => ({ x: -y, y: x, z })));
const turnedBack = (ring: Ring): Ring => ring.map(({ x, y, z }) => ({ x: y, y: -x, z }));

function uniteTiled(groups: readonly Ring[][]): Ring[] {
  let level = tiles(groups).map((tile) => clip('union', tile.flat(), [], 'nonzero'));
  while (level.length > 1) {
    const merged: Ring[][] = [];
    for (let i = 0; i < level.length; i += MERGE_FAN) {
      const part = level.slice(i, i + MERGE_FAN);
      merged.push(part.length > 1 ? clip('union', part.flat(), [], 'nonzero') : part[0]);
    }
    level = merged;
  }
  return level[0];
}

/** Neighbouring groups together: columns by x, each cut into tiles by y. */
function tiles(groups: readonly Ring[][]): Ring[][][] {
  const byX = [...groups].sort((a, b) => a[0][0].x - b[0][0].x);
  const columns = Math.max(1, Math.round(Math.sqrt(byX.length / TILE_GROUPS)));
  const perColumn = Math.ceil(byX.length / columns);
  const out: Ring[][][] = [];
  for (let c = 0; c < byX.length; c += perColumn) {
    const column = byX.slice(c, c + perColumn).sort((a, b) => a[0][0].y - b[0][0].y);
    for (let r = 0; r < column.length; r += TILE_GROUPS) out.push(column.slice(r, r + TILE_GROUPS));
  }
  return out;
}
