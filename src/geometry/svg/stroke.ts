import { type Checked, unionChecked } from '../boolean/boolean.js';
import { cubicLength } from '../chain.js';
import { type StrokeStyle, strokeChecked, strokeContoursChecked } from '../offset/offset.js';
import { moveCubics, moveRegion } from '../transform.js';
import type { Cubics, Line } from '../types.js';
import { type Chains, Lengths } from './basic-shapes.js';
import { roughSides } from './crossings.js';
import { type Dashing, dashed } from './dash.js';
import type { Budget, Drawing } from './drawing.js';
import type { Element } from './element.js';
import { onPage } from './fill.js';
import { MAX_REACH_MM } from './limits.js';
import { type Given, lengthPx, malformed, numberOf, partsOf } from './number.js';
import { type PenSpace, penSpace } from './pen-space.js';
import type { Place } from './place.js';
import type { Style } from './style.js';

/** An element's stroke in the space where its pen is round; see `PenSpace`. */
export interface Stroke {
  readonly element: Element;
  readonly space: PenSpace;
  readonly width: number;
  readonly pen: Required<StrokeStyle>;
  readonly closed: readonly Cubics[];
  readonly open: readonly Cubics[];
  /** Chains of one point, which only caps make visible. */
  readonly dots: readonly Cubics[];
}

const JOINS = {
  miter: 'mitre',
  'miter-clip': 'mitre',
  arcs: 'mitre',
  round: 'round',
  bevel: 'bevel',
};

/** The stroke of an element, dashes cut; null where its width is 0. */
export function strokeOf(
  drawing: Drawing,
  element: Element,
  chains: Chains,
  { matrix, style, viewport }: Place,
): Stroke | null {
  const declared = drawing.cascade(element);
  const { diagonal } = new Lengths(element, declared, viewport);
  const read = (property: keyof Style): number =>
    lengthPx({ element, property, text: style[property] }, diagonal);
  const width = read('stroke-width');
  if (width < 0) throw malformed(givenIn(element, style, 'stroke-width'), 'is negative');
  if (width === 0) return null;
  warnOfJoin(drawing, element, style);
  const isNonScaling = declared.get('vector-effect')?.trim() === 'non-scaling-stroke';
  const space = penSpace(matrix, isNonScaling);
  if (width * space.scale > MAX_REACH_MM) {
    throw malformed(givenIn(element, style, 'stroke-width'), 'is too wide for any page');
  }
  const inPenSpace = (c: Cubics): Cubics => moveCubics(c, space.fromUser);
  const solid = { closed: chains.closed.map(inPenSpace), open: chains.open.map(inPenSpace) };
  const dashing = dashingOf(element, style, diagonal, read('stroke-dashoffset'));
  const cap = style['stroke-linecap'] as 'butt' | 'round' | 'square';
  const dots = chains.dots.map(({ x, y }) => inPenSpace(Float64Array.of(x, y, x, y, x, y, x, y)));
  const lines = dashing === null ? solid : cutInto(drawing, element, solid, chains, dashing, space);
  return {
    element,
    space,
    width: width * space.scale,
    pen: {
      cap,
      join: JOINS[style['stroke-linejoin'] as keyof typeof JOINS] as 'mitre' | 'round' | 'bevel',
      // No spike may leave what can be reckoned with.
      mitreLimit: Math.min(mitreLimitOf(element, style), MAX_REACH_MM / (width * space.scale)),
    },
    ...lines,
    dots: cap === 'butt' ? [] : dots,
  };
}

const givenIn = (element: Element, style: Style, property: keyof Style): Given => ({
  element,
  property,
  text: style[property],
});

/** Joins that SVG 2 lists but that no two programs draw alike. */
function warnOfJoin({ warnings }: Drawing, element: Element, style: Style): void {
  const join = style['stroke-linejoin'];
  if (join !== 'miter-clip' && join !== 'arcs') return;
  warnings.add(`stroke-linejoin="${join}"`, element, 'its corners are mitred.');
}

function mitreLimitOf(element: Element, style: Style): number {
  const given = givenIn(element, style, 'stroke-miterlimit');
  const limit = numberOf(given);
  if (limit < 1) throw malformed(given, 'is below 1');
  return limit;
}

/** The dash pattern in user units; null for a solid stroke (SVG 2, section 13.5.6). */
function dashingOf(
  element: Element,
  style: Style,
  diagonal: number,
  offset: number,
): Dashing | null {
  const given = givenIn(element, style, 'stroke-dasharray');
  if (given.text === 'none') return null;
  const lengths = partsOf(given).map((text) => lengthPx({ ...given, text }, diagonal));
  if (lengths.some((length) => length < 0)) throw malformed(given, 'has a negative length');
  const period = lengths.reduce((sum, length) => sum + length, 0);
  if (!Number.isFinite(period)) throw malformed(given, 'is too long');
  if (period === 0) return null;
  return { pattern: lengths.length % 2 === 0 ? lengths : [...lengths, ...lengths], offset };
}

function cutInto(
  drawing: Drawing,
  element: Element,
  solid: { closed: readonly Cubics[]; open: readonly Cubics[] },
  chains: Chains,
  dashing: Dashing,
  space: PenSpace,
): { closed: readonly Cubics[]; open: readonly Cubics[] } {
  const scale = space.scale * pathLengthScale(drawing, element, chains);
  const scaled: Dashing = {
    pattern: dashing.pattern.map((length) => length * scale),
    offset: dashing.offset * scale,
  };
  const pieces = [
    ...solid.closed.map((c) => dashed(element, c, true, scaled)),
    ...solid.open.map((c) => dashed(element, c, false, scaled)),
  ];
  const open = pieces.flatMap((piece) => piece.open);
  drawing.budget.dash(element, open.length);
  return { open, closed: pieces.flatMap((piece) => piece.closed) };
}

/** True length per unit of the length that the author gives the path (SVG 2, section 9.6.1). */
function pathLengthScale(drawing: Drawing, element: Element, chains: Chains): number {
  const text = drawing.cascade(element).get('pathLength');
  if (text === undefined) return 1;
  const given: Given = { element, property: 'pathLength', text };
  const said = numberOf(given);
  if (said < 0) throw malformed(given, 'is negative');
  let length = 0;
  for (const c of [...chains.closed, ...chains.open]) {
    for (let i = 0; i < c.length; i += 8) length += cubicLength(c, i);
  }
  return said === 0 ? 1 : length / said;
}

/** What the stroke covers, in mm of the page. */
export function strokeRegion(budget: Budget, stroke: Stroke): Checked {
  const { element, space, width, pen, closed, open, dots } = stroke;
  onPage(element, [...closed, ...open, ...dots], space.toPage);
  budget.cross(element, roughSides([...closed, ...open], width / 2));
  const lines = [...open, ...dots].map((cubics) => ({ cubics }));
  const parts = [strokeChecked(lines, width, pen), strokeContoursChecked(closed, width, pen)];
  const { region, exact } = unionChecked(parts.map((part) => part.region));
  return { region: moveRegion(region, space.toPage), exact: exact && parts.every((p) => p.exact) };
}

/** The stroke's centre lines, in mm of the page; dots have none. */
export function centreLines({ element, space, closed, open }: Stroke): Line[] {
  return onPage(element, [...closed, ...open], space.toPage).map((cubics) => ({ cubics }));
}

/** The width on the page; the mean where a transform stretches it unevenly. */
export function strokeWidthMm({ width, space }: Stroke): number {
  const { a, b, c, d } = space.toPage;
  return width * Math.sqrt(Math.abs(a * d - b * c));
}
