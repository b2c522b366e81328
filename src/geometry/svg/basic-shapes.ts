import { pen, polygon, polyline } from '../pen.js';
import { ellipse, rectangle, roundedRectangle } from '../primitives.js';
import { inOrder, moveRegion, scaling, translation } from '../transform.js';
import type { Cubics, Point, Region } from '../types.js';
import type { Element } from './element.js';
import { type Given, lengthPx, malformed, numbersOf } from './number.js';
import type { Size } from './viewport.js';

/** What an element draws, in its own user units: closed and open chains, and dots of no length. */
export interface Chains {
  readonly closed: readonly Cubics[];
  readonly open: readonly Cubics[];
  readonly dots: readonly Point[];
}

export const NO_CHAINS: Chains = { closed: [], open: [], dots: [] };

const closed = (region: Region): Chains => ({ ...NO_CHAINS, closed: region.contours });

/** Basic shapes (SVG 2, chapter 10), starting and running as the standard's equivalent paths do. */
export function basicShape(
  element: Element,
  declared: ReadonlyMap<string, string>,
  viewport: Size,
): Chains {
  const lengths = new Lengths(element, declared, viewport);
  switch (element.name) {
    case 'rect':
      return rect(lengths);
    case 'circle':
      return round(lengths, lengths.size('r', lengths.diagonal), null);
    case 'ellipse':
      return ovalOf(lengths);
    case 'line':
      return lineOf(lengths);
    default:
      return pointsOf(element);
  }
}

/** Lengths of one element; what is not given is 0. */
export class Lengths {
  constructor(
    private readonly element: Element,
    private readonly declared: ReadonlyMap<string, string>,
    private readonly viewport: Size,
  ) {}

  /** What percentages that are neither across nor down refer to (SVG 2, section 8.9). */
  get diagonal(): number {
    return Math.hypot(this.viewport.width, this.viewport.height) / Math.SQRT2;
  }

  across = (property: string): number => this.length(property, this.viewport.width) ?? 0;
  down = (property: string): number => this.length(property, this.viewport.height) ?? 0;

  /** A length that cannot be negative; null where it is not given or "auto". */
  size(property: string, whole: number): number | null {
    const length = this.length(property, whole);
    if (length !== null && length < 0) throw malformed(this.given(property), 'is negative');
    return length;
  }

  width = (property: string): number | null => this.size(property, this.viewport.width);
  height = (property: string): number | null => this.size(property, this.viewport.height);

  private length(property: string, whole: number): number | null {
    const { text } = this.given(property);
    if (text.trim() === 'auto' || text === '') return null;
    return lengthPx(this.given(property), whole);
  }

  private given(property: string): Given {
    return { element: this.element, property, text: this.declared.get(property) ?? '' };
  }
}

/** SVG 2, section 10.2: a radius that is not given is the other one; none is over half a side. */
function rect(lengths: Lengths): Chains {
  const [x, y] = [lengths.across('x'), lengths.down('y')];
  const [width, height] = [lengths.width('width') ?? 0, lengths.height('height') ?? 0];
  if (width === 0 || height === 0) return NO_CHAINS;
  const [givenX, givenY] = [lengths.width('rx'), lengths.height('ry')];
  const rx = Math.min(givenX ?? givenY ?? 0, width / 2);
  const ry = Math.min(givenY ?? givenX ?? 0, height / 2);
  if (rx === 0 || ry === 0) return closed(rectangle(x, y, width, height));
  if (rx === ry) return closed(roundedRectangle(x, y, width, height, rx));
  const unit = roundedRectangle(0, 0, width / rx, height / ry, 1);
  return closed(moveRegion(unit, inOrder(scaling(rx, ry), translation(x, y))));
}

/** SVG 2, section 10.4: a radius that is not given is the other one. */
function ovalOf(lengths: Lengths): Chains {
  return round(lengths, lengths.width('rx'), lengths.height('ry'));
}

function round(lengths: Lengths, givenX: number | null, givenY: number | null): Chains {
  const rx = givenX ?? givenY ?? 0;
  const ry = givenY ?? givenX ?? 0;
  if (rx === 0 || ry === 0) return NO_CHAINS;
  return closed(ellipse(lengths.across('cx'), lengths.down('cy'), rx, ry));
}

function lineOf(lengths: Lengths): Chains {
  const [x1, y1] = [lengths.across('x1'), lengths.down('y1')];
  const { cubics } = pen(x1, y1).lineTo(lengths.across('x2'), lengths.down('y2')).line();
  return cubics.length > 0 ? { ...NO_CHAINS, open: [cubics] } : dot({ x: x1, y: y1 });
}

const dot = (point: Point): Chains => ({ ...NO_CHAINS, dots: [point] });

function pointsOf(element: Element): Chains {
  const text = element.attributes.get('points') ?? '';
  const given: Given = { element, property: 'points', text };
  const numbers = text.trim() === 'none' ? [] : numbersOf(given);
  if (numbers.length % 2 !== 0) throw malformed(given, 'has an x without its y');
  const points: Point[] = [];
  for (let i = 0; i < numbers.length; i += 2) points.push({ x: numbers[i], y: numbers[i + 1] });
  if (points.length === 0) return NO_CHAINS;
  const isClosed = element.name === 'polygon';
  const cubics = isClosed ? polygon(points) : polyline(points).cubics;
  if (cubics.length === 0) return isClosed || points.length > 1 ? dot(points[0]) : NO_CHAINS;
  return isClosed ? { ...NO_CHAINS, closed: [cubics] } : { ...NO_CHAINS, open: [cubics] };
}
