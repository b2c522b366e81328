import { parse } from 'svgson';
import type { Element } from './element.js';
import { nameOf, SvgImportError, shortened } from './error.js';
import { scanXml } from './scan.js';

export interface SvgDocument {
  readonly root: Element;
  /** All elements in the file's order. */
  readonly elements: readonly Element[];
  /** The first element of each id. */
  readonly byId: ReadonlyMap<string, Element>;
}

/** @throws SvgImportError where the text is not XML, not SVG, or refers to other files. */
export async function readDocument(text: string): Promise<SvgDocument> {
  const { xml, lines } = scanXml(text);
  const name = /^\s*<([^\s>/]+)/.exec(xml)?.[1];
  if (name !== 'svg') {
    throw new SvgImportError(
      `The drawing's outermost element is <${shortened(name ?? '')}>, not <svg>: this is no SVG file.`,
    );
  }
  const elements: Element[] = [];
  const root = built(await parse(xml), null, lines, elements);
  const byId = new Map<string, Element>();
  for (const element of elements) {
    refuseOutside(element);
    const id = element.attributes.get('id');
    if (id !== undefined && !byId.has(id)) byId.set(id, element);
  }
  return { root, elements, byId };
}

type Parsed = Awaited<ReturnType<typeof parse>>;

/** The parsed element with all in it; the scan has bounded how deep that goes. */
function built(
  node: Parsed,
  parent: Element | null,
  lines: readonly number[],
  elements: Element[],
): Element {
  const children: Element[] = [];
  const element: Element = {
    name: node.name,
    attributes: new Map(
      Object.entries(node.attributes).map(([name, value]) => [name, decoded(value)]),
    ),
    children,
    parent,
    text: node.children
      .map((child) => (child.type === 'text' ? decoded(child.value) : ''))
      .join(''),
    line: lines[elements.length],
  };
  elements.push(element);
  for (const child of node.children) {
    if (child.type === 'element') children.push(built(child, element, lines, elements));
  }
  return element;
}

const CHARACTERS: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};
/** Stands for what is no character. */
const UNKNOWN = '\uFFFD';

const decoded = (text: string): string =>
  text.replace(/&(?:#x([0-9a-fA-F]+)|#(\d+)|(\w+));/g, (_, hex, decimal, name) => {
    if (name !== undefined) return CHARACTERS[name];
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : UNKNOWN;
  });

/** Where a url() leads, in an attribute or a style sheet. */
const URL = /url\(\s*["']?([^"')]*)/gi;

/** Refuses whatever would have to be fetched. A link round drawn things leads out but loads nothing. */
function refuseOutside(element: Element): void {
  const targets: string[] = [];
  for (const [name, value] of element.attributes) {
    if ((name === 'href' || name === 'xlink:href') && element.name !== 'a') targets.push(value);
    for (const [, target] of value.matchAll(URL)) targets.push(target);
  }
  if (element.name === 'style') {
    for (const [, target] of element.text.matchAll(URL)) targets.push(target);
    for (const [, target] of element.text.matchAll(/@import\s*["']([^"']*)/gi))
      targets.push(target);
  }
  const outside = targets.map((t) => t.trim()).find((t) => t !== '' && !/^(?:#|data:)/i.test(t));
  if (outside === undefined) return;
  throw new SvgImportError(
    `${nameOf(element)} refers to "${shortened(outside)}"; nothing outside of the drawing is ` +
      'fetched. Embed it in the drawing, or take it out.',
  );
}

/** The element that an href or url() of `element` means; null where there is none. */
export function referred(document: SvgDocument, target: string | undefined): Element | null {
  const id = /^\s*#(.+?)\s*$/.exec(target ?? '')?.[1];
  return id === undefined ? null : (document.byId.get(id) ?? null);
}

export const hrefOf = (element: Element): string | undefined =>
  element.attributes.get('href') ?? element.attributes.get('xlink:href');
