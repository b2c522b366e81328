import type { Book, PanelPlan, WindowPlan } from '../book/book.js';
import { subtract } from '../geometry/boolean/boolean.js';
import { flatten, regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import {
  type Affine,
  IDENTITY,
  inOrder,
  inverse,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../geometry/transform.js';
import { type Bounds, EMPTY_REGION, type Region } from '../geometry/types.js';
import type { Side } from '../scene/parameter.js';
import type { ProcessLimits, SceneElement } from '../scene/scene.js';
import type { Family, Plot } from '../scenery/family.js';
import { carriedLength, carriedShare } from './carry.js';
import { openingOf } from './opening.js';

/** Where an element stands in one panel: its plot, and the map from the plot to the panel. */
export interface Placement {
  readonly plot: Plot;
  readonly toPanel: Affine;
}

/** The card round the window in which scenery may be pressed. */
export const frameCard = (book: Book, plan: PanelPlan): Region =>
  subtract(keepBox(book), plan.window === null ? [] : [plan.window.outline]);

export const keepBox = ({ keep }: Book): Region =>
  rectangle(keep.minX, keep.minY, keep.maxX - keep.minX, keep.maxY - keep.minY);

export function placeElement(
  book: Book,
  plan: PanelPlan,
  element: SceneElement,
  family: Family,
  limits: ProcessLimits,
): Placement {
  const share = carriedShare(book, element, plan.number);
  const opening = openingOf(book, plan);
  const onJamb = element.side === 'left' || element.side === 'right';
  // Along the sill and the head an element keeps its place of the front panel; on a jamb it
  // follows each window's own edge.
  const front = openingOf(book, book.panels[element.panels[0] - 1]);
  const along = onJamb
    ? opening.y + carriedLength(element.at, share, opening.height)
    : front.x + carriedLength(element.at, share, front.width);
  const upright = family.stance !== 'turned';
  const acrossWhole = onJamb && !upright ? opening.height : opening.width;
  const upWhole = onJamb && !upright ? opening.width : opening.height;
  const width = carriedLength(element.width, share, acrossWhole);
  const height = carriedLength(element.height, share, upWhole);
  const lift = carriedLength(element.lift, share, upWhole);
  const spot =
    family.stance === 'frame'
      ? { turn: IDENTITY, x: opening.x + opening.width / 2, y: opening.y + opening.height }
      : footOf(opening, element.side, upright, along, width, lift);
  const mirror = element.mirror ? scaling(-1, 1) : IDENTITY;
  const toPanel = inOrder(mirror, spot.turn, translation(spot.x, spot.y));
  return {
    toPanel,
    plot: plotOf(book, plan, element, family, limits, toPanel, spot, width, height),
  };
}

interface Foot {
  readonly turn: Affine;
  readonly x: number;
  readonly y: number;
}

function footOf(
  opening: WindowPlan,
  side: Side,
  upright: boolean,
  along: number,
  width: number,
  lift: number,
): Foot {
  if (upright && (side === 'left' || side === 'right')) {
    return {
      turn: IDENTITY,
      x: side === 'left' ? opening.x : opening.x + opening.width,
      y: along - lift,
    };
  }
  const level = edgeLevel(opening, side, along - width / 2, along + width / 2);
  switch (side) {
    case 'sill':
      return { turn: IDENTITY, x: along, y: level - lift };
    case 'head':
      // Mirrored, not turned by half, so that wind and lean keep their direction.
      return { turn: scaling(1, -1), x: along, y: level + lift };
    case 'left':
      return { turn: rotation(90), x: level + lift, y: along };
    case 'right':
      return { turn: rotation(-90), x: level - lift, y: along };
  }
}

/** The window's outermost edge on one side between two places along it (x or y, mm). */
export function edgeLevel(opening: WindowPlan, side: Side, from: number, to: number): number {
  const onJamb = side === 'left' || side === 'right';
  const outward = side === 'sill' || side === 'right' ? 1 : -1;
  const low = onJamb ? opening.y : opening.x;
  const high = low + (onJamb ? opening.height : opening.width);
  // Held inside the window, so that an element that stands on the frame finds the nearest edge.
  const a = Math.min(Math.max(from, low), high - 0.5);
  const b = Math.max(Math.min(to, high), a + 0.5);
  let level = -Infinity;
  for (const contour of opening.outline.contours) {
    const points = flatten(contour, 0.01);
    for (let i = 1; i < points.length; i++) {
      const [s0, l0] = onJamb
        ? [points[i - 1].y, points[i - 1].x]
        : [points[i - 1].x, points[i - 1].y];
      const [s1, l1] = onJamb ? [points[i].y, points[i].x] : [points[i].x, points[i].y];
      if (Math.max(s0, s1) < a || Math.min(s0, s1) > b) continue;
      for (const s of [Math.max(a, Math.min(s0, s1)), Math.min(b, Math.max(s0, s1))]) {
        const l =
          Math.abs(s1 - s0) < 1e-9
            ? Math.max(l0 * outward, l1 * outward)
            : (l0 + ((s - s0) / (s1 - s0)) * (l1 - l0)) * outward;
        level = Math.max(level, l);
      }
    }
  }
  return level * outward;
}

function plotOf(
  book: Book,
  plan: PanelPlan,
  element: SceneElement,
  family: Family,
  limits: ProcessLimits,
  toPanel: Affine,
  spot: Foot,
  width: number,
  height: number,
): Plot {
  const toPlot = inverse(toPanel);
  const card = moveRegion(frameCard(book, plan), toPlot);
  const bounds = regionBounds(card);
  const whole = family.stance === 'frame';
  return {
    side: element.side,
    width: whole ? bounds.maxX - bounds.minX : width,
    height: whole ? -bounds.minY : height,
    root: Math.max(
      0,
      rootDepth(book.keep, family.stance === 'turned' ? element.side : 'sill', spot),
    ),
    smallestWeb: limits.smallestWeb,
    smallestHole: limits.smallestHole,
    fineness: (plan.number - 1) / (book.panels.length - 1),
    frame: {
      card,
      bounds,
      window: plan.window === null ? EMPTY_REGION : moveRegion(plan.window.outline, toPlot),
    },
  };
}

/** Card between a foot and the edge of the box that scenery keeps to. */
function rootDepth(keep: Bounds, side: Side, foot: Foot): number {
  switch (side) {
    case 'sill':
      return keep.maxY - foot.y;
    case 'head':
      return foot.y - keep.minY;
    case 'left':
      return foot.x - keep.minX;
    case 'right':
      return keep.maxX - foot.x;
  }
}
