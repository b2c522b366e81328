import { subtract, union } from '../../geometry/boolean/boolean.js';
import { components } from '../../geometry/components.js';
import { middleOfBox, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polygon } from '../../geometry/pen.js';
import type { Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import { type Axis, beside, crossings, pointOn } from './crossings.js';
import type { Guide, SetLetter } from './guide.js';
import { strokeOf } from './stencil.js';

/** A stroke that stands free should be this many webs wide; letters are emboldened up to it. */
const STROKE_WEBS = 1.25;
/** ... but by no more than this share of the web, or they clot. */
const MOST_BOLDER = 0.4;
/** A stem's width: so many webs, or so many strokes where that is more. */
const STEM = { webs: 1.1, strokes: 0.55 };
/** How far apart the places are by which a curved bar is drawn, mm. */
const BAR_STEP_MM = 2;

/** A bar that a word stands on or hangs from, along its edge in the window. */
export interface Bar {
  readonly region: Region;
  /** Degrees off a letter's upright at which the bar lies: 180 under it, 0 over it. */
  readonly toward: 0 | 180;
}

/**
 * The band between `insideMm` and `outsideMm` of a guide, inside being the letters' up, from `from`
 * to `to` along it.
 */
export function band(
  guide: Guide,
  from: number,
  to: number,
  insideMm: number,
  outsideMm: number,
): Region {
  const steps = Math.max(1, Math.ceil((to - from) / BAR_STEP_MM));
  const side = (mm: number): Point[] =>
    Array.from({ length: steps + 1 }, (_, i) => {
      const { at, degrees } = guide(from + ((to - from) * i) / steps);
      const radians = (degrees * Math.PI) / 180;
      return { x: at.x + mm * Math.sin(radians), y: at.y - mm * Math.cos(radians) };
    });
  return shapeOf(polygon([...side(insideMm), ...side(-outsideMm).reverse()]));
}

/** How far letters of this stroke are grown all round so that they can stand free. */
export const bolderMm = (strokeMm: number, webMm: number): number =>
  Math.max(0, Math.min(MOST_BOLDER * webMm, STROKE_WEBS * webMm - strokeMm) / 2);

/** Letters whose strokes can stand free. */
export function emboldened(letters: readonly SetLetter[], webMm: number): SetLetter[] {
  const bolder = bolderMm(strokeOf(union(letters.map((l) => l.shape))), webMm);
  if (bolder === 0) return [...letters];
  return letters.map((letter) => ({ ...letter, shape: offset(letter.shape, bolder) }));
}

/**
 * Letters and bar in one: whatever does not touch, such as the dot of an i, an accent or a hyphen,
 * is held by a stem from its middle straight to the card it stands over or hangs under.
 */
export function standing(letters: readonly SetLetter[], bar: Bar, webMm: number): Region {
  const strokeMm = strokeOf(union(letters.map((l) => l.shape)));
  const stemMm = Math.max(STEM.webs * webMm, STEM.strokes * strokeMm);
  let held = union([bar.region, ...letters.map((l) => l.shape)]);
  for (let left = components(held).length - 1; left > 0; left--) {
    const parts = components(held);
    const main = parts.reduce((a, b) => (overlaps(a, bar.region) ? a : b));
    const loose = parts.filter((part) => part !== main);
    const stems = loose.map((part) => stemTo(part, letters, subtract(held, [part]), bar, stemMm));
    held = union([held, ...stems]);
    if (components(held).length === 1) break;
  }
  return held;
}

const overlaps = (part: Region, bar: Region): boolean =>
  components(union([part, bar])).length === 1;

/** A stem from the middle of a loose part on through what is next to it on the bar's side. */
function stemTo(
  part: Region,
  letters: readonly SetLetter[],
  others: Region,
  bar: Bar,
  stemMm: number,
): Region {
  const middle = middleOfBox(regionBounds(part));
  const radians = ((degreesNear(middle, letters) + bar.toward) * Math.PI) / 180;
  const axis: Axis = { origin: middle, along: { x: Math.sin(radians), y: -Math.cos(radians) } };
  const reach = regionBounds(others);
  const reachMm = Math.hypot(reach.maxX - reach.minX, reach.maxY - reach.minY);
  const next = crossings(axis, others, reachMm).find((c) => c.to > 0);
  const endMm = next ? Math.min(next.to, Math.max(next.from, 0) + stemMm) : reachMm;
  const [left, right] = [beside(axis, -stemMm / 2), beside(axis, stemMm / 2)];
  return shapeOf(
    polygon([pointOn(left, 0), pointOn(left, endMm), pointOn(right, endMm), pointOn(right, 0)]),
  );
}

function degreesNear(at: Point, letters: readonly SetLetter[]): number {
  const away = ({ shape }: SetLetter): number => {
    const { x, y } = middleOfBox(regionBounds(shape));
    return Math.hypot(x - at.x, y - at.y);
  };
  return letters.reduce((best, l) => (away(l) < away(best) ? l : best)).degrees;
}
