import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import { flatten } from './measure.js';
import { polygon } from './pen.js';
import type { Cubics, Region } from './types.js';

// INTERIM: polyline booleans behind the final public face; the curve-keeping engine replaces this file.
const SCALE = 1e5;
type Rule = 'nonzero' | 'even-odd';
const toPaths = (cs: readonly Cubics[]): Paths64 =>
  cs.map(
    (c) =>
      flatten(c, 0.01)
        .slice(0, -1)
        .map((p) => ({
          x: Math.round(p.x * SCALE),
          y: Math.round(p.y * SCALE),
          z: 0,
        })) as unknown as Path64,
  );
function run(
  type: ClipType,
  a: readonly Cubics[],
  b: readonly Cubics[],
  rule: FillRule = FillRule.NonZero,
): Region {
  const c = new Clipper64();
  c.addSubject(toPaths(a));
  if (b.length) c.addClip(toPaths(b));
  const out: Paths64 = [];
  c.execute(type, rule, out);
  return { contours: out.map((p) => polygon(p.map((q) => ({ x: q.x / SCALE, y: q.y / SCALE })))) };
}
const all = (rs: readonly Region[]) => rs.flatMap((r) => r.contours);

/** Everything that any of the regions covers. */
export const union = (regions: readonly Region[]): Region => run(ClipType.Union, all(regions), []);
/** What `region` covers and none of `cutters` does. */
export const subtract = (region: Region, cutters: readonly Region[]): Region =>
  run(ClipType.Difference, region.contours, all(cutters));
/** What both cover. */
export const intersect = (a: Region, b: Region): Region =>
  run(ClipType.Intersection, a.contours, b.contours);
/** What exactly one of the two covers. */
export const xor = (a: Region, b: Region): Region => run(ClipType.Xor, a.contours, b.contours);
/** Any closed chains, crossing or not and in either direction, made into a proper region. */
export const cleanRegion = (contours: readonly Cubics[], rule: Rule = 'nonzero'): Region =>
  run(ClipType.Union, contours, [], rule === 'nonzero' ? FillRule.NonZero : FillRule.EvenOdd);
