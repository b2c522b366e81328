import { type Checked, cleanChecked, intersectChecked, unionChecked } from '../boolean/boolean.js';
import { boundsOf } from '../measure.js';
import {
  type Affine,
  IDENTITY,
  inOrder,
  inverse,
  moveCubics,
  scaling,
  translation,
} from '../transform.js';
import { type Bounds, type Cubics, EMPTY_REGION } from '../types.js';
import { clippedBy } from './clipping.js';
import { hrefOf, referred } from './document.js';
import type { Drawing } from './drawing.js';
import type { Element } from './element.js';
import { filled, onPage } from './fill.js';
import { circular, lossOf } from './losses.js';
import { largestStretch } from './pen-space.js';
import type { Clipping, ClipUser, Place } from './place.js';
import { styleInPlace } from './style.js';
import { readTransform } from './transform-list.js';
import { SHAPES, walk } from './walk.js';

const NOTHING: Checked = { region: EMPTY_REGION, exact: true };

/** Works out what clippings leave to be seen (CSS Masking Level 1, section 5), each only once. */
export class Clips {
  private readonly known = new WeakMap<Clipping, Checked>();
  private readonly byMatrix = new WeakMap<Element, Map<string, Checked>>();

  constructor(private readonly drawing: Drawing) {}

  /** The region of the page that a clipping and all round it leave to be seen. */
  seen(element: Element, clipping: Clipping): Checked {
    let seen = this.known.get(clipping);
    if (seen === undefined) {
      const own =
        'edge' in clipping
          ? cleanChecked(onPage(clipping.viewport, [clipping.edge], IDENTITY))
          : this.clipPath(clipping.clipPath, clipping.user);
      seen = this.clipped(element, own, clipping.outer);
      this.known.set(clipping, seen);
    }
    return seen;
  }

  /** What of a region a clipping leaves to be seen. */
  clipped(element: Element, whole: Checked, clipping: Clipping | null): Checked {
    if (clipping === null || whole.region.contours.length === 0) return whole;
    const seen = this.seen(element, clipping);
    this.drawing.budget.clip(element, cubicsIn(whole) + cubicsIn(seen));
    const { region, exact } = intersectChecked(whole.region, seen.region);
    return { region, exact: exact && whole.exact && seen.exact };
  }

  private clipPath(clipPath: Element, user: ClipUser): Checked {
    const { element, place } = user;
    if (place.referred.includes(clipPath)) throw circular(element, clipPath);
    const isOfBox = clipPath.attributes.get('clipPathUnits') === 'objectBoundingBox';
    if (isOfBox) return this.content(clipPath, user, boxOf(this.drawing, user));
    const key = JSON.stringify([place.matrix, place.viewport]);
    const known = this.byMatrix.get(clipPath) ?? new Map<string, Checked>();
    this.byMatrix.set(clipPath, known);
    const seen = known.get(key) ?? this.content(clipPath, user, null);
    known.set(key, seen);
    return seen;
  }

  /** What the clipPath's shapes cover together; with a box, its units are the box's sides. */
  private content(clipPath: Element, user: ClipUser, box: Bounds | null): Checked {
    const { drawing } = this;
    const place: Place = {
      ...user.place,
      clip: null,
      isClear: false,
      depth: user.place.depth + 1,
      referred: [...user.place.referred, clipPath],
    };
    const toBox = box === null ? null : boxMatrix(box);
    if (box !== null && toBox === null) return NOTHING;
    const inUnits = toBox === null ? place.matrix : inOrder(toBox, place.matrix);
    const inside: Place = {
      ...place,
      matrix: inOrder(transformOf(drawing, clipPath), inUnits),
      style: styleInPlace(clipPath, drawing.cascade, drawing.warnings),
      viewport: box === null ? place.viewport : { width: 1, height: 1 },
    };
    const parts: Checked[] = [];
    for (const child of clipPath.children.filter((c) => clipsBy(drawing, c))) {
      walk(drawing, child, inside, (element, chains, { matrix, style, clip }) => {
        if (style.visibility !== 'visible') return;
        const rule = style['clip-rule'] === 'evenodd' ? 'even-odd' : 'nonzero';
        const whole = filled(drawing.budget, element, chains, matrix, rule);
        parts.push(this.clipped(element, whole, clip));
      });
    }
    const { region, exact } = unionChecked(parts.map((part) => part.region));
    const whole = { region, exact: exact && parts.every((part) => part.exact) };
    return this.clipped(clipPath, whole, clippedBy(drawing, clipPath, place, { ...user, place }));
  }
}

const cubicsIn = ({ region }: Checked): number =>
  region.contours.reduce((sum, c) => sum + c.length / 8, 0);

const transformOf = (drawing: Drawing, clipPath: Element): Affine =>
  readTransform(clipPath, drawing.cascade(clipPath).get('transform'));

/** Whether a child of a clipPath is one of those that count: shapes, and `use` of shapes. */
function clipsBy(drawing: Drawing, child: Element): boolean {
  const target = child.name === 'use' ? referred(drawing.document, hrefOf(child)) : child;
  if (target === null || SHAPES.has(target.name)) return true;
  if (/^(?:title|desc|metadata|style)$/.test(target.name) || target.name.includes(':'))
    return false;
  drawing.warnings.add(
    `${target.name} in clipPath`,
    child,
    `${lossOf(target.name) ?? 'in a clipPath only shapes count.'} It clips nothing in.`,
  );
  return false;
}

/** The box of an element's shapes, without strokes and clips, in its own user units. */
function boxOf(drawing: Drawing, { element, place, outer }: ClipUser): Bounds {
  const chains: Cubics[] = [];
  // Chords are laid to a fraction of a millimetre, whatever a user unit is.
  const scale = largestStretch(place.matrix);
  const back = inOrder(inverse(place.matrix), scaling(scale));
  walk(drawing, element, outer, (_, { closed, open, dots }, { matrix }) => {
    const toBox = inOrder(matrix, back);
    const points = dots.map(({ x, y }) => Float64Array.of(x, y, x, y, x, y, x, y));
    for (const c of [...closed, ...open, ...points]) chains.push(moveCubics(c, toBox));
  });
  const { minX, minY, maxX, maxY } = boundsOf(chains);
  return { minX: minX / scale, minY: minY / scale, maxX: maxX / scale, maxY: maxY / scale };
}

/** The map from the unit square to a box; null where the box has no area. */
function boxMatrix({ minX, minY, maxX, maxY }: Bounds): Affine | null {
  if (!(maxX > minX && maxY > minY)) return null;
  return inOrder(scaling(maxX - minX, maxY - minY), translation(minX, minY));
}
