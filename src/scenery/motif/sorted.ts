import { subtract, union } from '../../geometry/boolean/boolean.js';
import { linesOutside, outlineLines } from '../../geometry/clip-lines.js';
import { boundsOf } from '../../geometry/measure.js';
import { stroke } from '../../geometry/offset/offset.js';
import { rectangle } from '../../geometry/primitives.js';
import { COLOUR_NAMES } from '../../geometry/svg/colour-names.js';
import type { ImportedShape } from '../../geometry/svg/import.js';
import { type Bounds, EMPTY_REGION, type Line, type Region } from '../../geometry/types.js';

/** What each kind of work is done to, by words for ids, classes, colours and zones. */
export interface Choices {
  readonly keep: string;
  readonly erase: string;
  readonly scored: string;
  readonly raised: string;
  readonly pierced: string;
  /** Width of card that strokes become, mm; 0: they are scored. */
  readonly outline: number;
}

/** A drawing taken apart by what is done with it. */
export interface Roles {
  readonly card: Region;
  readonly scores: readonly Line[];
  readonly raised: Region;
}

/** Later shapes lie on top: what is pierced is cut out of what lies below it. */
export function sorted(shapes: readonly ImportedShape[], choices: Choices): Roles {
  const words = {
    keep: wordsIn(choices.keep),
    erase: wordsIn(choices.erase),
    scored: wordsIn(choices.scored),
    raised: wordsIn(choices.raised),
    pierced: wordsIn(choices.pierced),
  };
  let card: Region = EMPTY_REGION;
  const scores: Line[] = [];
  const raised: Region[] = [];
  for (const shape of shapes) {
    if (words.keep.length > 0 && !isNamed(shape, words.keep)) continue;
    if (isNamed(shape, words.erase)) continue;
    // The stroke round what is filled only makes it bolder.
    const lines = shape.fill === null ? shape.lines.filter(({ cubics }) => cubics.length > 0) : [];
    if (isNamed(shape, words.scored)) scores.push(...outlineLines(shape.region), ...lines);
    else if (isNamed(shape, words.raised)) raised.push(shape.region);
    else if (isNamed(shape, words.pierced)) card = subtract(card, [shape.region]);
    else {
      const stroked =
        choices.outline > 0 && lines.length > 0 ? [stroke(lines, choices.outline)] : [];
      card = union([card, shape.region, ...stroked]);
      if (choices.outline === 0) scores.push(...lines);
    }
  }
  const zones = zonesIn(words.erase, boundsOf(shapes.flatMap(({ region }) => region.contours)));
  if (zones.contours.length === 0) return { card, scores, raised: union(raised) };
  return {
    card: subtract(card, [zones]),
    scores: linesOutside(scores, zones),
    raised: subtract(union(raised), [zones]),
  };
}

const wordsIn = (text: string): string[] =>
  text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** Whether one of the words is the shape's id or class, that of a group round it, or its colour. */
function isNamed(shape: ImportedShape, words: readonly string[]): boolean {
  const names = [shape.id, ...shape.classes, ...shape.groups];
  return words.some((word) => {
    const colour = hexOf(word);
    return names.includes(word) || (colour !== null && colourOf(shape) === colour);
  });
}

const colourOf = ({ fill, stroke: line }: ImportedShape): string | null => fill ?? line;

function hexOf(word: string): string | null {
  const lower = word.toLowerCase();
  if (/^#[0-9a-f]{6}$/.test(lower)) return lower;
  if (/^#[0-9a-f]{3}$/.test(lower)) return `#${[...lower.slice(1)].map((c) => c + c).join('')}`;
  const named = (COLOUR_NAMES as Readonly<Record<string, string>>)[lower];
  return named === undefined ? null : named.toLowerCase();
}

const ZONE = /^(left|right|upper|lower)\s+(half|quarter|\d{1,2}(?:\.\d+)?\s*%)$/;
const SHARES: Readonly<Record<string, number>> = { half: 0.5, quarter: 0.25 };
const FAR_MM = 5000;

/** The parts of the drawing's box that words such as `left half` or `lower 20%` stand for. */
function zonesIn(words: readonly string[], { minX, minY, maxX, maxY }: Bounds): Region {
  const zones = words.flatMap((word): Region[] => {
    const [, side, size] = ZONE.exec(word) ?? [];
    if (side === undefined) return [];
    const share = SHARES[size] ?? Number.parseFloat(size) / 100;
    const [x, y] = [share * (maxX - minX), share * (maxY - minY)];
    switch (side) {
      case 'left':
        return [rectangle(-FAR_MM, -FAR_MM, FAR_MM + minX + x, 2 * FAR_MM)];
      case 'right':
        return [rectangle(maxX - x, -FAR_MM, FAR_MM - maxX + x, 2 * FAR_MM)];
      case 'upper':
        return [rectangle(-FAR_MM, -FAR_MM, 2 * FAR_MM, FAR_MM + minY + y)];
      default:
        return [rectangle(-FAR_MM, maxY - y, 2 * FAR_MM, FAR_MM - maxY + y)];
    }
  });
  return zones.length > 0 ? union(zones) : EMPTY_REGION;
}
