import { rectangle } from '../primitives.js';
import { inOrder, moveCubics, translation } from '../transform.js';
import { basicShape, type Chains, Lengths } from './basic-shapes.js';
import { clippedBy } from './clipping.js';
import { hrefOf, referred } from './document.js';
import { type Drawing, pathOf } from './drawing.js';
import type { Element } from './element.js';
import { nameOf, SvgImportError } from './error.js';
import { MAX_DEPTH } from './limits.js';
import {
  circular,
  isPassedOver,
  lossOf,
  NEVER_DRAWN,
  notInDrawing,
  warnOfProperties,
} from './losses.js';
import type { Place } from './place.js';
import { opacityOf, styleOf } from './style.js';
import { readTransform } from './transform-list.js';
import { type Size, viewBoxOf, viewBoxTransform } from './viewport.js';

/** Called with each shape in drawing order; `chains` are in the user units of `place`. */
export type Visit = (element: Element, chains: Chains, place: Place) => void;

const CONTAINERS = new Set(['g', 'a']);
export const SHAPES: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
]);

/** Goes through all that an element draws; its surroundings are `outer`. */
export function walk(drawing: Drawing, element: Element, outer: Place, visit: Visit): void {
  drawing.budget.meet(element);
  if (outer.depth >= MAX_DEPTH) throw tooDeep(element);
  const declared = drawing.cascade(element);
  if (declared.get('display')?.trim() === 'none' || isPassedOver(element)) return;
  const { name } = element;
  const loss = lossOf(name);
  if (loss !== undefined) drawing.warnings.add(name, element, loss);
  if (NEVER_DRAWN.has(name) || name.includes(':') || loss !== undefined) return;
  const place = placeIn(drawing, element, outer);
  if (place === null) return;
  if (SHAPES.has(name)) {
    warnOfChildren(drawing, element);
    visit(element, chainsOf(drawing, element, place), place);
  } else if (CONTAINERS.has(name)) walkChildren(drawing, element, place, visit);
  else if (name === 'switch') walkFirst(drawing, element, place, visit);
  else if (name === 'use') walkReferred(drawing, element, place, visit);
  else if (name === 'svg') walkViewport(drawing, element, place, null, visit);
  else drawing.warnings.add(name, element, `<${name}> is no element of SVG and is left out.`);
}

export function walkChildren(drawing: Drawing, element: Element, place: Place, visit: Visit): void {
  const id = element.attributes.get('id');
  const inside: Place = {
    ...place,
    depth: place.depth + 1,
    groups: id === undefined ? place.groups : [...place.groups, id],
  };
  for (const child of element.children) walk(drawing, child, inside, visit);
}

/** The place of an element in its surroundings; null where its transform leaves nothing of it. */
export function placeIn(
  drawing: Drawing,
  element: Element,
  outer: Place,
  transform = readTransform(element, drawing.cascade(element).get('transform')),
): Place | null {
  const declared = drawing.cascade(element);
  const matrix = inOrder(transform, outer.matrix);
  if (!Number.isFinite(1 / (matrix.a * matrix.d - matrix.b * matrix.c))) return null;
  const style = styleOf(element, declared, outer.style, drawing.warnings);
  const opacity = opacityOf(element, declared.get('opacity'));
  warnOfProperties(element, declared, opacity, drawing.warnings);
  const place = { ...outer, matrix, style, isClear: outer.isClear || opacity === 0 };
  return { ...place, clip: clippedBy(drawing, element, place, { element, place, outer }) };
}

function chainsOf(drawing: Drawing, element: Element, place: Place): Chains {
  const chains =
    element.name === 'path'
      ? pathOf(drawing, element)
      : basicShape(element, drawing.cascade(element), place.viewport);
  const numbers = [...chains.closed, ...chains.open].reduce((sum, c) => sum + c.length, 0);
  drawing.budget.draw(element, numbers / 8 + chains.dots.length);
  return chains;
}

/** A shape's children draw nothing, but some move or change it. */
function warnOfChildren(drawing: Drawing, element: Element): void {
  for (const child of element.children) {
    const loss = lossOf(child.name);
    if (loss !== undefined) drawing.warnings.add(child.name, child, loss);
  }
}

/** Draws the first child that applies (SVG 2, section 5.9). */
function walkFirst(drawing: Drawing, element: Element, place: Place, visit: Visit): void {
  const isLost = (child: Element): boolean => lossOf(child.name) !== undefined;
  const first = element.children.find(
    (child) => !isPassedOver(child) && !NEVER_DRAWN.has(child.name) && !isLost(child),
  );
  const chosen = first ?? element.children.find(isLost);
  if (chosen) walkChildren(drawing, { ...element, children: [chosen] }, place, visit);
}

/** Draws what a `use` element refers to (SVG 2, section 5.6). */
function walkReferred(drawing: Drawing, use: Element, place: Place, visit: Visit): void {
  const href = hrefOf(use);
  const target = referred(drawing.document, href);
  if (target === null) {
    const loss = href ? notInDrawing(href) : 'it refers to nothing.';
    drawing.warnings.add('use', use, `${loss} It draws nothing.`);
    return;
  }
  if (place.referred.includes(target) || isWithin(use, target)) throw circular(use, target);
  const lengths = new Lengths(use, drawing.cascade(use), place.viewport);
  const moved = translation(lengths.across('x'), lengths.down('y'));
  const id = use.attributes.get('id');
  const inside: Place = {
    ...place,
    matrix: inOrder(moved, place.matrix),
    groups: id === undefined ? place.groups : [...place.groups, id],
    depth: place.depth + 1,
    referred: [...place.referred, target],
  };
  if (target.name !== 'symbol' && target.name !== 'svg') {
    walk(drawing, target, inside, visit);
    return;
  }
  drawing.budget.meet(target);
  if (inside.depth >= MAX_DEPTH) throw tooDeep(target);
  if (drawing.cascade(target).get('display')?.trim() === 'none') return;
  const own = placeIn(drawing, target, inside);
  if (own) walkViewport(drawing, target, own, lengths, visit);
}

/** Whether an element stands within another or is it. */
function isWithin(element: Element, other: Element): boolean {
  for (let e: Element | null = element; e !== null; e = e.parent) if (e === other) return true;
  return false;
}

/** Draws the inside of an inner `svg` or a symbol, whose size a `use` may overrule. */
function walkViewport(
  drawing: Drawing,
  element: Element,
  place: Place,
  use: Lengths | null,
  visit: Visit,
): void {
  const declared = drawing.cascade(element);
  const own = new Lengths(element, declared, place.viewport);
  const size: Size = {
    width: use?.width('width') ?? own.width('width') ?? place.viewport.width,
    height: use?.height('height') ?? own.height('height') ?? place.viewport.height,
  };
  if (size.width === 0 || size.height === 0) return;
  const corner = inOrder(translation(own.across('x'), own.down('y')), place.matrix);
  const box = viewBoxOf(element);
  const isOpen = /^(?:visible|auto)$/.test(declared.get('overflow')?.trim() ?? '');
  const edge = rectangle(0, 0, size.width, size.height).contours[0];
  walkChildren(
    drawing,
    element,
    {
      ...place,
      matrix: inOrder(viewBoxTransform(element, box, size), corner),
      viewport: box ?? size,
      clip: isOpen
        ? place.clip
        : { outer: place.clip, edge: moveCubics(edge, corner), viewport: element },
    },
    visit,
  );
}

const tooDeep = (element: Element): SvgImportError =>
  new SvgImportError(
    `The drawing nests elements more than ${MAX_DEPTH} deep where ${nameOf(element)} is used. ` +
      'Ungroup it.',
  );
