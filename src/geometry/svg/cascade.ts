import { compareSpecificity, fits, type Rule, readDeclarations, readSheet } from './css.js';
import type { SvgDocument } from './document.js';
import type { Element } from './element.js';
import { SvgImportError, shortened } from './error.js';
import { MAX_DECLARATIONS } from './limits.js';
import type { Warnings } from './warnings.js';

/**
 * What an element itself says: its attributes, which count least, then the style sheets' rules and
 * its style attribute (SVG 2, section 6.6; CSS Cascading Level 4, section 6).
 */
export type Cascade = (element: Element) => ReadonlyMap<string, string>;

export function cascadeOf(document: SvgDocument, warnings: Warnings): Cascade {
  const rules = sheetRules(document, warnings);
  const known = new WeakMap<Element, ReadonlyMap<string, string>>();
  return (element) => {
    let declared = known.get(element);
    if (declared === undefined) {
      declared = declaredBy(element, rules, warnings);
      known.set(element, declared);
    }
    return declared;
  };
}

/** The classes of an element. */
export const classesOf = (element: Element): string[] =>
  (element.attributes.get('class') ?? '').split(/\s+/).filter((name) => name !== '');

/** All rules of the document's style sheets, least weighty first. */
function sheetRules({ elements }: SvgDocument, warnings: Warnings): Rule[] {
  const rules: Rule[] = [];
  let declarations = 0;
  for (const element of elements.filter(({ name }) => name === 'style')) {
    const { type = '', media = 'all' } = Object.fromEntries(element.attributes);
    if (!/^(?:text\/css)?$/i.test(type.trim())) continue;
    if (!/^(?:all|screen|print)?$/i.test(media.trim())) {
      warnings.add('media', element, `a style sheet for "${shortened(media)}" only is left out`);
      continue;
    }
    const sheet = readSheet(element.text, MAX_DECLARATIONS);
    for (const written of sheet.ignored) {
      warnings.add(
        `style rule ${shortened(written)}`,
        element,
        `the style rule "${shortened(written)}" is left out: only elements, classes and ids are ` +
          'understood. Set the properties on the elements themselves.',
      );
    }
    for (const rule of sheet.rules) {
      rules.push(rule);
      declarations += rule.declarations.size;
    }
    if (declarations > MAX_DECLARATIONS) {
      throw new SvgImportError(
        `The drawing's style sheets set more than ${MAX_DECLARATIONS} properties. Save it with ` +
          'presentation attributes instead of style sheets.',
      );
    }
  }
  // Sorting keeps the order of equals.
  return rules.sort((a, b) => compareSpecificity(a.selector, b.selector));
}

function declaredBy(
  element: Element,
  rules: readonly Rule[],
  warnings: Warnings,
): ReadonlyMap<string, string> {
  const declared = new Map(element.attributes);
  const important = new Map<string, string>();
  const add = (declarations: Rule['declarations']): void => {
    for (const [property, { value, important: isImportant }] of declarations) {
      if (/\b(?:var|calc|env)\(/i.test(value)) {
        warnings.add(
          'computed values',
          element,
          `${property}: ${shortened(value)} is left out. Write the value itself.`,
        );
      } else if (isImportant) important.set(property, value);
      else declared.set(property, value);
    }
  };
  const target = {
    name: element.name,
    id: element.attributes.get('id'),
    classes: classesOf(element),
  };
  for (const { selector, declarations } of rules) if (fits(selector, target)) add(declarations);
  add(readDeclarations(element.attributes.get('style') ?? ''));
  for (const [property, value] of important) declared.set(property, value);
  return declared;
}
