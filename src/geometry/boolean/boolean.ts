import { isPolylined, markPolylined } from '../polylined.js';
import type { Cubics, Region } from '../types.js';
import type { Operation, Rule } from './clip.js';
import { handleBounds, touchingGroups } from './clusters.js';
import { type Problem, type Solution, solve } from './curve-boolean.js';

/**
 * Booleans of regions with their curves kept. Not guaranteed: where curves touch or all but
 * coincide, the contours of a result may overlap by slivers thinner than 0.0005 mm, and gaps or
 * overlaps thinner than 0.01 mm between the shapes may be closed or kept as the chords have it.
 */

/** A result that says whether it is certain. */
export interface Checked {
  readonly region: Region;
  /** Curves kept and verified throughout; false where some contours are polylines (0.01 mm). */
  readonly exact: boolean;
}

/** Everything that any of the regions covers. */
export const union = (regions: readonly Region[]): Region => unionChecked(regions).region;
/** What `region` covers and none of `cutters` does. */
export const subtract = (region: Region, cutters: readonly Region[]): Region =>
  subtractChecked(region, cutters).region;
/** What both cover. */
export const intersect = (a: Region, b: Region): Region => intersectChecked(a, b).region;
/** What exactly one of the two covers. */
export const xor = (a: Region, b: Region): Region => xorChecked(a, b).region;
/** Any closed chains, crossing or not and in either direction, made into a proper region. */
export const cleanRegion = (
  contours: readonly Cubics[],
  rule: 'nonzero' | 'even-odd' = 'nonzero',
): Region => cleanChecked(contours, rule).region;

export const unionChecked = (regions: readonly Region[]): Checked => combine('union', regions, []);
export const subtractChecked = (region: Region, cutters: readonly Region[]): Checked =>
  combine('subtract', [region], cutters);
export const intersectChecked = (a: Region, b: Region): Checked => combine('intersect', [a], [b]);
export const xorChecked = (a: Region, b: Region): Checked => combine('xor', [a], [b]);

/** As `cleanRegion`; the rule `positive` keeps what is wound round clockwise more often than not. */
export function cleanChecked(contours: readonly Cubics[], rule: Rule = 'nonzero'): Checked {
  const drawn = contours.filter((c) => c.length > 0);
  const solutions = touchingGroups(drawn.map(handleBounds)).map((cluster) =>
    solved({ operation: 'union', rule, subjects: [cluster.map((k) => drawn[k])], clips: [] }),
  );
  return together([], solutions);
}

/** Solves a problem and marks what comes of it where curves were lost, now or before. */
function solved(problem: Problem): Solution {
  const solution = solve(problem);
  const lost = [...problem.subjects, ...problem.clips].flat().filter(isPolylined);
  if (!solution.exact) markPolylined(solution.contours);
  else if (lost.length > 0) markPolylined(throughNodesOf(lost, solution.contours));
  return solution;
}

/** The contours that share a node with some of `sources`. */
function throughNodesOf(sources: readonly Cubics[], contours: readonly Cubics[]): Cubics[] {
  const nodes = (c: Cubics): string[] =>
    Array.from({ length: c.length / 8 }, (_, k) => `${c[8 * k]} ${c[8 * k + 1]}`);
  const known = new Set(sources.flatMap(nodes));
  return contours.filter((contour) => nodes(contour).some((node) => known.has(node)));
}

const together = (untouched: readonly Cubics[], solutions: readonly Solution[]): Checked => ({
  region: { contours: [...untouched, ...solutions.flatMap((s) => s.contours)] },
  exact: solutions.every((s) => s.exact),
});

interface Owned {
  readonly contour: Cubics;
  readonly owner: number;
}

/**
 * Splits a boolean into problems that have nothing to do with each other, since their boxes do not
 * touch, and solves those in which different regions meet. All other contours pass bit for bit.
 */
function combine(
  operation: Operation,
  subjects: readonly Region[],
  clips: readonly Region[],
): Checked {
  const owned: Owned[] = [...subjects, ...clips].flatMap((region, owner) =>
    region.contours.filter((c) => c.length > 0).map((contour) => ({ contour, owner })),
  );
  const untouched: Cubics[] = [];
  const solutions: Solution[] = [];
  const isClip = (m: Owned): boolean => m.owner >= subjects.length;
  for (const group of touchingGroups(owned.map((o) => handleBounds(o.contour)))) {
    const members = group.map((k) => owned[k]);
    if (members.some((m) => m.owner !== members[0].owner)) {
      const subject = byOwner(members.filter((m) => !isClip(m)));
      const clip = byOwner(members.filter(isClip));
      solutions.push(solved({ operation, rule: 'nonzero', subjects: subject, clips: clip }));
    } else if (isKept(operation, isClip(members[0]))) {
      untouched.push(...members.map((m) => m.contour));
    }
  }
  return together(untouched, solutions);
}

/** Whether a subject or clip that meets nothing else is part of the result. */
const isKept = (operation: Operation, isClip: boolean): boolean =>
  operation === 'union' || operation === 'xor' || (operation === 'subtract' && !isClip);

function byOwner(members: readonly Owned[]): Cubics[][] {
  const groups = new Map<number, Cubics[]>();
  for (const { contour, owner } of members) {
    const group = groups.get(owner);
    if (group) group.push(contour);
    else groups.set(owner, [contour]);
  }
  return [...groups.values()];
}
