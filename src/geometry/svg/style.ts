import { readPaint } from './colour.js';
import { referred, type SvgDocument } from './document.js';
import type { Element } from './element.js';
import { shortened } from './error.js';
import { numberOf } from './number.js';
import type { Warnings } from './warnings.js';

/** Properties that children take over from their parents, with their initial values (SVG 2). */
const INITIAL = {
  color: 'black',
  fill: 'black',
  'fill-opacity': '1',
  'fill-rule': 'nonzero',
  'clip-rule': 'nonzero',
  stroke: 'none',
  'stroke-opacity': '1',
  'stroke-width': '1',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-miterlimit': '4',
  'stroke-dasharray': 'none',
  'stroke-dashoffset': '0',
  visibility: 'visible',
  'marker-start': 'none',
  'marker-mid': 'none',
  'marker-end': 'none',
} as const;

export type Inherited = keyof typeof INITIAL;

/** The inherited properties of an element, as text. */
export type Style = Readonly<Record<Inherited, string>>;

export const INITIAL_STYLE: Style = INITIAL;

const NAMES = Object.keys(INITIAL) as Inherited[];

/** Values allowed for properties that are one word. */
const WORDS: Partial<Record<Inherited, RegExp>> = {
  'fill-rule': /^(?:nonzero|evenodd)$/,
  'clip-rule': /^(?:nonzero|evenodd)$/,
  'stroke-linecap': /^(?:butt|round|square)$/,
  'stroke-linejoin': /^(?:miter|miter-clip|arcs|round|bevel)$/,
  visibility: /^(?:visible|hidden|collapse)$/,
};

/** The style of an element in one of the given style; words that CSS does not know are ignored. */
export function styleOf(
  element: Element,
  declared: ReadonlyMap<string, string>,
  outer: Style,
  warnings: Warnings,
): Style {
  const style: Record<Inherited, string> = { ...outer };
  for (const name of NAMES) {
    const shorthand = name.startsWith('marker-') ? declared.get('marker') : undefined;
    const value = (declared.get(name) ?? shorthand)?.trim();
    if (value === undefined || value === 'inherit' || value === 'unset') continue;
    if (value === 'initial') style[name] = INITIAL[name];
    else if (isReadable(name, value)) style[name] = value;
    else {
      warnings.add(
        `${name}="${shortened(value)}"`,
        element,
        `${name}="${shortened(value)}" is no value of this property and is left out.`,
      );
    }
  }
  return style;
}

function isReadable(name: Inherited, value: string): boolean {
  if (name === 'fill' || name === 'stroke' || name === 'color') return readPaint(value) !== null;
  return WORDS[name]?.test(value) ?? true;
}

/** The colour that fills or strokes an element, as "#rrggbb"; null where nothing does. */
export function colourOf(
  element: Element,
  style: Style,
  use: 'fill' | 'stroke',
  document: SvgDocument,
  warnings: Warnings,
): string | null {
  const paint = readPaint(style[use]);
  if (paint === null || paint.kind === 'none') return null;
  if (paint.kind === 'colour') return paint.hex;
  if (paint.kind === 'current') return currentColour(style);
  const server = referred(document, paint.target);
  warnings.add(
    server?.name ?? 'paint',
    element,
    server === null
      ? `its ${use} refers to "${shortened(paint.target)}", which is not in the drawing.`
      : `its ${use} by <${server.name}> becomes one solid colour. Split it into plain shapes if ` +
          'the pattern is to be cut.',
  );
  const { fallback } = paint;
  if (fallback?.kind === 'colour') return fallback.hex;
  if (fallback?.kind === 'current') return currentColour(style);
  return server === null ? null : '#000000';
}

function currentColour(style: Style): string | null {
  const paint = readPaint(style.color);
  // `color: currentColor` is what it would be without it (CSS Color Level 4, section 9.1).
  if (paint?.kind === 'current') return '#000000';
  return paint?.kind === 'colour' ? paint.hex : null;
}

/** An opacity from 0 to 1. @throws SvgImportError where it is no number. */
export function opacityOf(element: Element, text = '1'): number {
  if (/^\s*(?:inherit|initial|unset)\s*$/.test(text)) return 1;
  return Math.max(0, Math.min(1, numberOf({ element, property: 'opacity', text })));
}

/** The style of an element where it stands in the document, whoever refers to it. */
export function styleInPlace(
  element: Element,
  cascade: (element: Element) => ReadonlyMap<string, string>,
  warnings: Warnings,
): Style {
  const outer: Style =
    element.parent === null ? INITIAL_STYLE : styleInPlace(element.parent, cascade, warnings);
  return styleOf(element, cascade(element), outer, warnings);
}
