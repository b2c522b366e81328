import type { Book, PanelPlan } from '../../book/book.js';
import { subtract } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { rectangle } from '../../geometry/primitives.js';
import type { ImportedDrawing } from '../../geometry/svg/import.js';
import {
  type Affine,
  IDENTITY,
  inOrder,
  inverse,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../geometry/transform.js';
import { type Bounds, EMPTY_REGION, type Region } from '../../geometry/types.js';
import type { Side } from '../../scene/parameter.js';
import type { ProcessLimits, Scene, SceneElement } from '../../scene/scene.js';
import type { Family, Plot } from '../../scenery/family.js';
import type { LetterFont } from '../../scenery/lettering/read-font.js';
import { cornerPoint, edgeLevel } from './edge.js';
import { finenessOf } from './fineness.js';
import { type Room, roomOf } from './room.js';
import { type Station, stationsOf } from './stations.js';

/** Where an element stands in one panel: its plot, and the map from the plot to the panel. */
export interface Placement {
  readonly plot: Plot;
  readonly toPanel: Affine;
  /** Tells several of one element apart; empty for the only one. */
  readonly key: string;
}

/** What has been read from files, by the names that the scene gives them. */
export interface Opened {
  readonly drawings: ReadonlyMap<string, ImportedDrawing>;
  readonly fonts: ReadonlyMap<string, LetterFont>;
}

export const NOTHING_OPENED: Opened = { drawings: new Map(), fonts: new Map() };

/** What placing an element asks of the book beside the element itself. */
export interface Setting {
  readonly scene: Scene;
  readonly book: Book;
  readonly plan: PanelPlan;
  readonly limits: ProcessLimits;
  readonly opened: Opened;
}

/** The card round the window in which scenery may be pressed. */
export const frameCard = (book: Book, plan: PanelPlan): Region =>
  subtract(keepBox(book), plan.window === null ? [] : [plan.window.outline]);

export const keepBox = ({ keep }: Book): Region =>
  rectangle(keep.minX, keep.minY, keep.maxX - keep.minX, keep.maxY - keep.minY);

/** Every place that the element has in this panel, several where it is scattered or paired. */
export function placeElement(setting: Setting, element: SceneElement, family: Family): Placement[] {
  const { scene, book, plan } = setting;
  const room = roomOf(book, plan, element);
  const onJamb = element.side === 'left' || element.side === 'right';
  const downJamb = onJamb && family.stance === 'turned';
  if (family.stance === 'frame') {
    const spot = { turn: IDENTITY, x: room.x + room.width / 2, y: room.y + room.height };
    return [placedAt(setting, element, family, spot, wholeStation(element))];
  }
  return stationsOf(scene, book, plan, element, downJamb).map((station) => {
    const side = station.opposite ? OPPOSITE[element.side] : element.side;
    const spot = footOf(room, { ...element, side }, family.stance === 'upright', station);
    return placedAt(setting, { ...element, side }, family, spot, station);
  });
}

const OPPOSITE: Readonly<Record<Side, Side>> = {
  sill: 'head',
  head: 'sill',
  left: 'right',
  right: 'left',
};

/** What covers the frame is as large as the frame. */
const wholeStation = ({ mirror }: SceneElement): Station => ({
  along: 0,
  width: 0,
  height: 0,
  lift: 0,
  mirrored: mirror,
  opposite: false,
  key: '',
});

interface Foot {
  readonly turn: Affine;
  readonly x: number;
  readonly y: number;
}

function footOf(
  room: Room,
  { side, corner }: SceneElement,
  upright: boolean,
  { along, width, lift }: Station,
): Foot {
  if (corner !== null) return cornerFoot(room, side, corner === 'end', upright, width, lift);
  if (upright && (side === 'left' || side === 'right')) {
    return { turn: IDENTITY, x: side === 'left' ? room.x : room.x + room.width, y: along - lift };
  }
  const level = edgeLevel(room, side, along - width / 2, along + width / 2);
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

/** Half of a right angle: what grows from a corner grows along its bisector. */
const BISECTOR_DEG = 45;

/** What stands upright fills the corner; what is turned to its side points out of it. */
function cornerFoot(
  room: Room,
  side: Side,
  atRight: boolean,
  upright: boolean,
  width: number,
  lift: number,
): Foot {
  const atFoot = side === 'sill';
  const { x, y } = cornerPoint(room, atFoot, atRight);
  const inward = atRight ? -1 : 1;
  const flip = atFoot ? IDENTITY : scaling(1, -1);
  if (upright) {
    const along = x + (inward * width) / 2;
    const level = edgeLevel(room, side, along - width / 2, along + width / 2);
    return { turn: flip, x: along, y: level + (atFoot ? -lift : lift) };
  }
  const turn = inOrder(flip, rotation((atFoot ? 1 : -1) * inward * BISECTOR_DEG));
  const reach = lift * Math.SQRT1_2;
  return { turn, x: x + inward * reach, y: y + (atFoot ? -reach : reach) };
}

function placedAt(
  setting: Setting,
  element: SceneElement,
  family: Family,
  spot: Foot,
  station: Station,
): Placement {
  const mirror = station.mirrored ? scaling(-1, 1) : IDENTITY;
  const toPanel = inOrder(mirror, spot.turn, translation(spot.x, spot.y));
  return {
    toPanel,
    key: station.key,
    plot: plotOf(setting, element, family, toPanel, spot, station),
  };
}

function plotOf(
  { scene, book, plan, limits, opened }: Setting,
  element: SceneElement,
  family: Family,
  toPanel: Affine,
  spot: Foot,
  { width, height }: Station,
): Plot {
  const toPlot = inverse(toPanel);
  const card = moveRegion(frameCard(book, plan), toPlot);
  const bounds = regionBounds(card);
  const whole = family.stance === 'frame';
  const drawing = opened.drawings.get(String(element.values.file));
  const font = opened.fonts.get(String(element.values.font));
  return {
    side: element.side,
    width: whole ? bounds.maxX - bounds.minX : width,
    height: whole ? -bounds.minY : height,
    root: element.loose ? element.loose.glue : rootOf(book.keep, element, family, spot),
    smallestWeb: limits.smallestWeb,
    smallestHole: limits.smallestHole,
    smallestSlot: limits.smallestSlot,
    fineness: finenessOf(scene, element, plan.number),
    ...(drawing === undefined ? {} : { drawing }),
    ...(font === undefined ? {} : { font }),
    frame: {
      card,
      bounds,
      window: plan.window === null ? EMPTY_REGION : moveRegion(plan.window.outline, toPlot),
    },
  };
}

function rootOf(keep: Bounds, element: SceneElement, family: Family, foot: Foot): number {
  const side = family.stance === 'turned' || element.corner !== null ? element.side : 'sill';
  return Math.max(0, rootDepth(keep, side, foot));
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
