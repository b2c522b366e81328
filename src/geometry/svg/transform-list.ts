import { type Affine, IDENTITY, inOrder, rotation, scaling, translation } from '../transform.js';
import type { Element } from './element.js';
import { type Given, malformed, numberOf, partsOf } from './number.js';

/**
 * Reads a list of transforms (SVG 2, section 8.5; CSS Transforms Level 1): the first of the list is
 * the outermost. Lengths may carry px and angles a unit, as style sheets have them.
 */
export function readTransform(element: Element, text: string | undefined): Affine {
  const written = (text ?? '').trim();
  if (written === '' || written === 'none') return IDENTITY;
  const given: Given = { element, property: 'transform', text: written };
  let matrix = IDENTITY;
  const CALL = /\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)/y;
  while (CALL.lastIndex < written.length) {
    const found = CALL.exec(written);
    if (found === null) throw malformed(given, 'is no list of transforms');
    const values = partsOf({ ...given, text: found[2] }).map((part) => readValue(given, part));
    const step = stepOf(found[1].toLowerCase(), values);
    if (step === null) {
      throw malformed(
        given,
        `has "${found[1]}" with ${values.length} numbers, which is no transform`,
      );
    }
    matrix = inOrder(step, matrix);
  }
  return matrix;
}

/** Degrees in a unit of angle. */
const DEGREES: Readonly<Record<string, number>> = {
  deg: 1,
  grad: 0.9,
  rad: 180 / Math.PI,
  turn: 360,
};

function readValue(given: Given, part: string): number {
  const [, unit = ''] = /(px|deg|grad|rad|turn)$/i.exec(part) ?? [];
  const value = numberOf({ ...given, text: part.slice(0, part.length - unit.length) });
  return value * (DEGREES[unit.toLowerCase()] ?? 1);
}

/** The map of one function; null where there is none of this name and number of values. */
function stepOf(name: string, values: readonly number[]): Affine | null {
  const [a, b = 0, c = 0, d, e, f] = values;
  switch (`${name} ${values.length}`) {
    case 'matrix 6':
      return { a, b, c, d, e, f };
    case 'translate 1':
    case 'translate 2':
      return translation(a, b);
    case 'translatex 1':
      return translation(a, 0);
    case 'translatey 1':
      return translation(0, a);
    case 'scale 1':
      return scaling(a);
    case 'scale 2':
      return scaling(a, b);
    case 'scalex 1':
      return scaling(a, 1);
    case 'scaley 1':
      return scaling(1, a);
    case 'rotate 1':
    case 'rotate 3':
      return inOrder(translation(-b, -c), rotation(a), translation(b, c));
    case 'skewx 1':
      return { ...IDENTITY, c: Math.tan((a * Math.PI) / 180) };
    case 'skewy 1':
      return { ...IDENTITY, b: Math.tan((a * Math.PI) / 180) };
    default:
      return null;
  }
}
