import { readSegments } from '../path/path-grammar.js';
import { chainsFromPathData } from '../path/path-read.js';
import type { Cubics } from '../types.js';
import { type Chains, NO_CHAINS } from './basic-shapes.js';
import { type Cascade, cascadeOf } from './cascade.js';
import { crossingsOf, tooTangled } from './crossings.js';
import { tooManyDashes } from './dash.js';
import { readDocument, type SvgDocument } from './document.js';
import type { Element } from './element.js';
import { nameOf, SvgImportError, shortened } from './error.js';
import { MAX_CLIPPED, MAX_CROSSINGS, MAX_DASHES, MAX_ELEMENTS, MAX_SEGMENTS } from './limits.js';
import { Warnings } from './warnings.js';

/** A document with all that drawing it needs at hand. */
export interface Drawing {
  readonly document: SvgDocument;
  readonly cascade: Cascade;
  readonly warnings: Warnings;
  readonly budget: Budget;
  /** What path data draws, by the data. */
  readonly paths: ReadonlyMap<string, PathRead>;
}

export interface PathRead extends Chains {
  readonly fault: string | null;
}

/** Counts what drawing costs and ends it, with an error, where a file asks for too much. */
export class Budget {
  private elements = 0;
  private segments = 0;
  private crossings = 0;
  private clipped = 0;
  private dashes = 0;

  meet(element: Element): void {
    if (++this.elements <= MAX_ELEMENTS) return;
    throw new SvgImportError(
      `The drawing has more than ${MAX_ELEMENTS} elements, each counted as often as it is used ` +
        `(${nameOf(element)} is one too many). Join paths, or split the drawing.`,
    );
  }

  draw(element: Element, segments: number): void {
    this.segments += segments;
    if (this.segments <= MAX_SEGMENTS) return;
    throw new SvgImportError(
      `The drawing has more than ${MAX_SEGMENTS} curves and edges (${nameOf(element)} goes beyond). ` +
        'Simplify its paths.',
    );
  }

  cross(element: Element, chains: readonly Cubics[]): void {
    this.crossings += crossingsOf(chains, MAX_CROSSINGS);
    if (this.crossings > MAX_CROSSINGS) throw tooTangled(nameOf(element), MAX_CROSSINGS);
  }

  clip(element: Element, segments: number): void {
    this.clipped += segments;
    if (this.clipped <= MAX_CLIPPED) return;
    throw new SvgImportError(
      `Clipping the drawing takes too much: ${nameOf(element)} and what is clipped before it have ` +
        `more than ${MAX_CLIPPED} curves and edges, those of the clip paths counted again for each ` +
        'shape. Simplify the clip paths, or cut the shapes for good.',
    );
  }

  dash(element: Element, dashes: number): void {
    this.dashes += dashes;
    if (this.dashes > MAX_DASHES) throw tooManyDashes(element);
  }
}

export async function openDrawing(text: string): Promise<Drawing> {
  const document = await readDocument(text);
  const warnings = new Warnings();
  const cascade = cascadeOf(document, warnings);
  const paths = await readPaths(document, cascade);
  return { document, cascade, warnings, budget: new Budget(), paths };
}

/** Reads all path data once, so that drawing need not wait for it. */
async function readPaths(
  { elements }: SvgDocument,
  cascade: Cascade,
): Promise<Map<string, PathRead>> {
  const paths = new Map<string, PathRead>();
  const budget = new Budget();
  for (const element of elements.filter(({ name }) => name === 'path')) {
    const d = pathDataOf(cascade(element));
    if (paths.has(d)) continue;
    budget.draw(element, fewestSegments(d));
    const { segments, fault } = readSegments(d);
    budget.draw(element, Math.max(0, segments.length - fewestSegments(d)));
    if (fault === null) {
      const { closed, open, dots } = await chainsFromPathData(d);
      paths.set(d, { closed, open: open.map(({ cubics }) => cubics), dots, fault });
    } else {
      paths.set(d, { ...NO_CHAINS, fault });
    }
  }
  return paths;
}

/** As many segments as path data has at least, told in no time: none takes over seven numbers. */
function fewestSegments(d: string): number {
  const letters = d.match(/[a-df-z]/gi)?.length ?? 0;
  const numbers = d.match(/\d+/g)?.length ?? 0;
  // A number may have digits before and after its point, and in its exponent.
  return Math.max(letters, Math.floor(numbers / 21));
}

/** The path data of an element: its attribute, or `path("...")` of a style sheet. */
function pathDataOf(declared: ReadonlyMap<string, string>): string {
  const d = declared.get('d') ?? '';
  const inSheet = /^\s*path\(\s*(["'])([^"']*)\1\s*\)\s*$/.exec(d)?.[2];
  return inSheet ?? (d.trim() === 'none' ? '' : d);
}

/** What a path element draws. @throws SvgImportError where its data is faulty. */
export function pathOf(drawing: Drawing, element: Element): Chains {
  const d = pathDataOf(drawing.cascade(element));
  const path = drawing.paths.get(d) ?? { ...NO_CHAINS, fault: null };
  if (path.fault === null) return path;
  throw new SvgImportError(
    `${nameOf(element)}: its path data "${shortened(d)}" cannot be read ${path.fault}. ` +
      'Draw or save it again.',
  );
}
