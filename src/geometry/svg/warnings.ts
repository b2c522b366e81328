import type { Element } from './element.js';
import { nameOf } from './error.js';

/** Something that the drawing has and that was not carried over. */
export interface ImportWarning {
  /** What was lost: an element or a property by name. */
  readonly what: string;
  /** How many elements lost it. */
  readonly count: number;
  /** Where it was first, what is lost and what to do about it. */
  readonly message: string;
}

/** Collects losses: one warning for each kind, an element drawn many times counted once. */
export class Warnings {
  private readonly found = new Map<string, { elements: Set<Element>; loss: string }>();

  add(what: string, element: Element, loss: string): void {
    const known = this.found.get(what);
    if (known) known.elements.add(element);
    else this.found.set(what, { elements: new Set([element]), loss });
  }

  list(): ImportWarning[] {
    return [...this.found].map(([what, { elements, loss }]) => {
      const [first] = elements;
      const more = elements.size > 1 ? ` and ${elements.size - 1} more` : '';
      return { what, count: elements.size, message: `${nameOf(first)}${more}: ${loss}` };
    });
  }
}
