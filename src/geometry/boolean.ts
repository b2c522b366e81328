import type { Operation, Rule } from './clip.js';
import { handleBounds, touchingGroups } from './clusters.js';
import { solve } from './curve-boolean.js';
import type { Cubics, Region } from './types.js';

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
export const cleanChecked = (contours: readonly Cubics[], rule: Rule = 'nonzero'): Checked =>
  uniteClusters(contours, rule, (cluster) => [cluster]);

/**
 * The union of chains that may cross themselves but each wind round nothing a negative number of
 * times, such as strokes. Faster than `cleanChecked` where there are many.
 */
export const uniteStrokes = (outlines: readonly Cubics[]): Checked =>
  uniteClusters(outlines, 'nonzero', (cluster) => cluster.map((outline) => [outline]));

function uniteClusters(
  contours: readonly Cubics[],
  rule: Rule,
  grouped: (cluster: Cubics[]) => Cubics[][],
): Checked {
  const drawn = contours.filter((c) => c.length > 0);
  const solutions = touchingGroups(drawn.map(handleBounds)).map((cluster) => {
    const subjects = grouped(cluster.map((k) => drawn[k]));
    return solve({ operation: 'union', rule, subjects, clips: [] });
  });
  return {
    region: { contours: solutions.flatMap((s) => s.contours) },
    exact: solutions.every((s) => s.exact),
  };
}

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
  const contours: Cubics[] = [];
  let exact = true;
  for (const group of touchingGroups(owned.map((o) => handleBounds(o.contour)))) {
    const members = group.map((k) => owned[k]);
    const lone = members.every((m) => m.owner === members[0].owner);
    if (lone) {
      const isSubject = members[0].owner < subjects.length;
      const kept =
        operation === 'union' || operation === 'xor' || (operation === 'subtract' && isSubject);
      if (kept) contours.push(...members.map((m) => m.contour));
      continue;
    }
    const isClip = (m: Owned): boolean => m.owner >= subjects.length;
    const solution = solve({
      operation,
      rule: 'nonzero',
      subjects: byOwner(members.filter((m) => !isClip(m))),
      clips: byOwner(members.filter(isClip)),
    });
    contours.push(...solution.contours);
    exact &&= solution.exact;
  }
  return { region: { contours }, exact };
}

function byOwner(members: readonly Owned[]): Cubics[][] {
  const groups = new Map<number, Cubics[]>();
  for (const { contour, owner } of members) {
    const group = groups.get(owner);
    if (group) group.push(contour);
    else groups.set(owner, [contour]);
  }
  return [...groups.values()];
}
