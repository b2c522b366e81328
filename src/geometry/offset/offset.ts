import { type Checked, cleanChecked, subtractChecked, unionChecked } from '../boolean/boolean.js';
import { components } from '../components.js';
import { contourArea, regionArea } from '../measure.js';
import { markPolylined } from '../polylined.js';
import { reversed } from '../transform.js';
import type { Cubics, Line, Region } from '../types.js';
import { withoutLeftovers, wrongSpots } from './distance.js';
import { fitsInCircle } from './enclosing.js';
import type { Join, Style } from './joins.js';
import {
  backwardStrips,
  drawnChain,
  lineStrips,
  offsetOutline,
  strokeOutline,
  type Wrong,
  withoutSpecks,
} from './offset-outline.js';
import { agrees, type Swept, sweptLines, sweptRegion, sweptRings } from './swept.js';

export type { Cap, Join } from './joins.js';

/** How a pen draws; see `STROKE_DEFAULTS`. */
export type StrokeStyle = Partial<Style>;

/** Round ends and corners; SVG's limit for mitres, should they be asked for. */
export const STROKE_DEFAULTS: Style = { cap: 'round', join: 'round', mitreLimit: 4 };

/** The second is cut finer where the first went wrong. */
const ATTEMPTS = 2;

/**
 * The region grown outward by `distanceMm`, or shrunk when it is negative. The corners that open
 * are joined as SVG 2 joins a stroke's (section 13.5.5): round; mitred, save where a mitre would
 * reach further than `mitreLimit` distances from its corner, which is bevelled; or all bevelled.
 * Curves are kept, within 0.005 mm of the true offset.
 */
export const offset = (
  region: Region,
  distanceMm: number,
  join: Join = 'round',
  mitreLimit = STROKE_DEFAULTS.mitreLimit,
): Region => offsetChecked(region, distanceMm, join, mitreLimit).region;

/**
 * Lines drawn with a pen of `widthMm`, ends and corners as in SVG 2, section 13.5. A line of no
 * length is a dot, upright where its cap is square, and nothing where it is butt. Curves are kept,
 * within 0.005 mm. A cusp within a curve is round whatever the join.
 */
export const stroke = (lines: readonly Line[], widthMm: number, style?: StrokeStyle): Region =>
  strokeChecked(lines, widthMm, style).region;

/** Closed contours drawn with a pen of `widthMm`: joined all round, without ends. */
export const strokeContours = (
  contours: readonly Cubics[],
  widthMm: number,
  style?: Omit<StrokeStyle, 'cap'>,
): Region => strokeContoursChecked(contours, widthMm, style).region;

export function offsetChecked(
  region: Region,
  distanceMm: number,
  join: Join = 'round',
  mitreLimit = STROKE_DEFAULTS.mitreLimit,
): Checked {
  if (distanceMm === 0) return { region, exact: true };
  const style: Style = { cap: 'butt', join, mitreLimit };
  const source = withoutVanishing(withoutSpeckContours(region), distanceMm);
  const swept = once(() => sweptRegion(source.contours, distanceMm, style));
  const first = offsetOf(source, distanceMm, style, swept);
  if (first.exact) return first;
  // Where rounding has folded an outline over itself, its left is not always out of it.
  const proper = cleanChecked(source.contours, 'positive').region;
  return offsetOf(proper, distanceMm, style, swept);
}

function offsetOf(region: Region, distanceMm: number, style: Style, swept: () => Swept): Checked {
  const { contours } = region;
  const draw = (wrong: Wrong): Checked =>
    cleanChecked(
      contours.map((c) => offsetOutline(c, distanceMm, style, wrong)),
      'positive',
    );
  if (style.join === 'round') {
    return checked(draw, (result) => wrongSpots(result, region, distanceMm), swept);
  }
  return checked(
    (wrong) => {
      const strips = wrong ? contours.flatMap((c) => backwardStrips(c, distanceMm, style)) : [];
      const result = withStrips(draw(wrong), strips, distanceMm > 0);
      return {
        ...result,
        region: withoutLeftovers(result.region, region, distanceMm, style.join),
      };
    },
    (result) =>
      noSpots(agrees(regionArea(result) - regionArea(region), swept())) ??
      wrongSpots(result, region, distanceMm, style.join, style.mitreLimit),
    swept,
  );
}

/** The same region unless it has contours that are too small to have a shape. */
function withoutSpeckContours(region: Region): Region {
  const contours = region.contours.filter((c) => withoutSpecks(c).length > 0);
  return contours.length === region.contours.length ? region : { contours };
}

/** Without the pieces, holes and all, that shrinking eats up because a small circle holds them. */
function withoutVanishing(region: Region, distanceMm: number): Region {
  const vanishes = (c: Cubics): boolean => contourArea(c) > 0 && fitsInCircle(c, -distanceMm);
  if (distanceMm > 0 || !region.contours.some(vanishes)) return region;
  const kept = components(region).filter((part) => !part.contours.some(vanishes));
  return { contours: kept.flatMap((part) => part.contours) };
}

export function strokeChecked(
  lines: readonly Line[],
  widthMm: number,
  style: StrokeStyle = {},
): Checked {
  const chains = lines.map((line) => line.cubics).filter((c) => c.length > 0);
  if (!(widthMm > 0) || chains.length === 0) return { region: { contours: [] }, exact: true };
  const full = { ...STROKE_DEFAULTS, ...style };
  const distanceMm = widthMm / 2;
  const swept = once(() => sweptLines(chains, distanceMm, full));
  const outlines = (wrong: Wrong): Cubics[][] =>
    chains.map((c) => [strokeOutline(c, distanceMm, full, wrong)]);
  if (full.cap === 'round' && full.join === 'round') {
    const source = { contours: chains.map(drawnChain) };
    return checked(
      (wrong) => unitedStrokes(outlines(wrong)),
      (result) => wrongSpots(result, source, distanceMm),
      swept,
    );
  }
  return checked(
    (wrong) => {
      const strips = wrong ? chains.flatMap((c) => lineStrips(c, distanceMm, full)) : [];
      return withStrips(unitedStrokes(outlines(wrong)), strips, true);
    },
    (result) => noSpots(agrees(regionArea(result), swept())),
    swept,
  );
}

export function strokeContoursChecked(
  contours: readonly Cubics[],
  widthMm: number,
  style: Omit<StrokeStyle, 'cap'> = {},
): Checked {
  const full = { ...STROKE_DEFAULTS, ...style };
  // A round pen leaves the same trace whether or not its start is joined to its end.
  if (full.join === 'round') {
    const lines = contours.map((cubics) => ({ cubics }));
    return strokeChecked(lines, widthMm);
  }
  const chains = contours.filter((c) => c.length > 0);
  if (!(widthMm > 0) || chains.length === 0) return { region: { contours: [] }, exact: true };
  const distanceMm = widthMm / 2;
  const swept = once(() => sweptRings(chains, distanceMm, full));
  return checked(
    (wrong) => {
      const sides = wrong ? chains.flatMap((c) => [c, reversed(c)]) : [];
      const strips = sides.flatMap((c) => backwardStrips(c, distanceMm, full));
      const shapes = chains.flatMap((c) => ringOutlines(c, distanceMm, full, wrong));
      return withStrips(unitedStrokes(shapes), strips, true);
    },
    (result) => noSpots(agrees(regionArea(result), swept())),
    swept,
  );
}

/** The outlines of a pen drawn round a closed chain, as shapes to be united. */
function ringOutlines(chain: Cubics, distanceMm: number, style: Style, wrong: Wrong): Cubics[][] {
  const sides = [chain, reversed(chain)].map((c) => offsetOutline(c, distanceMm, style, wrong));
  // Sides alone leave open what is within the distance of the whole chain.
  if (!fitsInCircle(chain, distanceMm)) return [sides];
  return [sides, [strokeOutline(chain, distanceMm, { ...style, cap: 'butt' }, wrong)]];
}

/** Strokes made proper one by one: what winds round backwards in one must not open another. */
function unitedStrokes(shapes: readonly Cubics[][]): Checked {
  const strokes = shapes.map((shape) => cleanChecked(shape, 'positive'));
  const { region, exact } = unionChecked(strokes.map((s) => s.region));
  return { region, exact: exact && strokes.every((s) => s.exact) };
}

/** A result with strips, that may cross themselves and each other, added to it or taken off. */
function withStrips(result: Checked, strips: readonly Cubics[], isAdded: boolean): Checked {
  if (strips.length === 0) return result;
  const cleaned = strips.map((strip) => cleanChecked([strip]));
  const regions = cleaned.map((c) => c.region);
  const { region, exact } = isAdded
    ? unionChecked([result.region, ...regions])
    : subtractChecked(result.region, regions);
  return { region, exact: exact && result.exact && cleaned.every((c) => c.exact) };
}

/** The first try that is right or, if that fails as well, the second or, failing that, polygons. */
function checked(
  draw: (wrong: Wrong) => Checked,
  check: (region: Region) => Wrong,
  swept: () => Swept,
): Checked {
  let wrong: Wrong = null;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const result = draw(wrong);
    wrong = check(result.region);
    if (result.exact && wrong === null) return result;
    wrong ??= [];
  }
  const { result } = swept();
  markPolylined(result.region.contours);
  return result;
}

/** An area tells whether something is wrong, but not where. */
const noSpots = (isRight: boolean): Wrong => (isRight ? null : []);

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
