import type { Book, PanelPlan } from '../../book/book.js';
import { PlanError } from '../../book/fault.js';
import { intersect } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Extent } from '../../scene/parameter.js';
import type { Carried, Scene, SceneElement } from '../../scene/scene.js';
import { randomFrom } from '../../scenery/random.js';
import { frontRoomOf, lengthIn, type Room, roomOf, shareOf } from './room.js';

/** One place of an element in one panel, along its side. */
export interface Station {
  /** x of its middle on sill and head, y on jambs; panel coordinates, mm. */
  readonly along: number;
  readonly width: number;
  readonly height: number;
  readonly lift: number;
  readonly mirrored: boolean;
  /** On the side opposite to the one said. */
  readonly opposite: boolean;
  /** Tells several apart: each is drawn with luck of its own. Empty for the only one. */
  readonly key: string;
}

/**
 * Where an element stands in this panel, once or, scattered or paired, several times.
 * @throws PlanError when scattered ones do not fit side by side.
 */
export function stationsOf(
  scene: Scene,
  book: Book,
  plan: PanelPlan,
  element: SceneElement,
  /** Runs along a jamb: its width is measured down the jamb. */
  downJamb: boolean,
): Station[] {
  const room = roomOf(book, plan, element);
  const side = edgeOf(book, element, room);
  const share = shareOf(book, element, plan.number);
  const single = singleStation(element, room, side, share, downJamb);
  const all = element.scatter
    ? scattered(scene, element, single, stretchOf(element, room, side, share))
    : [single];
  if (!element.pair) return all;
  const twice = 2 * room.x + room.width;
  return all.flatMap((station) => [
    station,
    {
      ...station,
      along: side.onJamb ? station.along : twice - station.along,
      mirrored: !station.mirrored,
      opposite: side.onJamb,
    },
  ]);
}

/** The edge that places are measured along. */
interface Edge {
  readonly onJamb: boolean;
  readonly startMm: number;
  readonly lengthMm: number;
}

/** On sill and head places are those of the front panel; on a jamb they follow each window. */
function edgeOf(book: Book, element: SceneElement, room: Room): Edge {
  if (element.side === 'left' || element.side === 'right') {
    return { onJamb: true, startMm: room.y, lengthMm: room.height };
  }
  const front = element.group === null ? frontRoomOf(book, element) : room;
  return { onJamb: false, startMm: front.x, lengthMm: front.width };
}

function singleStation(
  element: SceneElement,
  room: Room,
  edge: Edge,
  share: number,
  downJamb: boolean,
): Station {
  const [acrossWhole, upWhole] = downJamb ? [room.height, room.width] : [room.width, room.height];
  const length = (value: Carried<Extent>, whole: number) => lengthIn(room, value, share, whole);
  const width = length(element.width, acrossWhole);
  const height = length(element.height, upWhole);
  const lift = length(element.lift, upWhole);
  const mirrored = element.mirror !== room.mirrored;
  const station = { width, height, lift, mirrored, opposite: false, key: '' };
  if (element.along !== null && element.scatter === null) {
    const { from, to } = stretchOf(element, room, edge, share);
    return { ...station, along: (from + to) / 2, width: Math.max(1, to - from) };
  }
  const along =
    element.snug === null
      ? placeAlong(element.at, room, edge, share)
      : snugTo(room, element, width, height, lift);
  return { ...station, along };
}

function placeAlong(at: Carried<Extent>, room: Room, edge: Edge, share: number): number {
  const mm = lengthIn(room, at, share, edge.lengthMm);
  return edge.startMm + (room.mirrored && !edge.onJamb ? edge.lengthMm - mm : mm);
}

/** The stretch of its side that an element takes up: as said, or all of it. */
function stretchOf({ along }: SceneElement, room: Room, edge: Edge, share: number) {
  const { from, to } = along ?? { from: { share: 0 }, to: { share: 1 } };
  const ends = [from, to].map((end) => placeAlong({ from: end, to: end }, room, edge, share));
  return { from: Math.min(...ends), to: Math.max(...ends) };
}

/** The middle of what is moved up against the edge at one end of its side. */
function snugTo(
  room: Room,
  { side, snug }: SceneElement,
  width: number,
  height: number,
  lift: number,
): number {
  const half = width / 2;
  const { x, y } = room;
  const onJamb = side === 'left' || side === 'right';
  if (onJamb) return snug === 'start' ? y + half : y + room.height - half;
  // Where the edge is curved, what counts is the window at half the element's height.
  const middle = side === 'sill' ? y + room.height - lift - height / 2 : y + lift + height / 2;
  const slice = intersect(room.outline, rectangle(x, middle - 0.5, room.width, 1));
  const { minX, maxX } =
    slice.contours.length > 0 ? regionBounds(slice) : { minX: x, maxX: x + room.width };
  return snug === 'start' ? minX + half : maxX - half;
}

/** Shares of the free room that luck gives to one gap: neighbours neither touch nor stand in a row. */
const UNEVEN = { from: 0.3, to: 1.7 };

/** Several over a stretch, sizes and gaps drawn by luck. */
function scattered(
  scene: Scene,
  element: SceneElement,
  one: Station,
  stretch: { readonly from: number; readonly to: number },
): Station[] {
  const { count, gap, sizes } = element.scatter as NonNullable<SceneElement['scatter']>;
  const random = randomFrom(scene.seed, element.id, element.seed, 'scatter');
  const places = Array.from({ length: count }, () => ({
    size: random.between(sizes.from, sizes.to),
    air: random.between(UNEVEN.from, UNEVEN.to),
    mirrored: random.chance(0.5),
  }));
  const room = stretch.to - stretch.from;
  const taken = places.reduce((sum, { size }) => sum + size * one.width, gap * (count - 1));
  if (taken > room) throw tooMany(element, taken, room);
  const airs = places.reduce((sum, { air }) => sum + air, 0);
  let x = stretch.from;
  return places.map(({ size, air, mirrored }, i) => {
    const width = size * one.width;
    const free = ((room - taken) * air) / airs;
    const along = x + free / 2 + width / 2;
    x += free + width + gap;
    return {
      ...one,
      along,
      width,
      height: size * one.height,
      mirrored: one.mirrored !== mirrored,
      key: `${i + 1}`,
    };
  });
}

function tooMany({ id, path, scatter }: SceneElement, neededMm: number, roomMm: number): PlanError {
  const message =
    `scatter: ${scatter?.count} of ${id} with ${scatter?.gap} mm between them need ` +
    `${Math.ceil(neededMm)} mm, and there are ${Math.floor(roomMm)} mm. Take fewer, smaller ones or a longer stretch.`;
  return new PlanError([{ path: [...path, 'scatter'], message }]);
}
