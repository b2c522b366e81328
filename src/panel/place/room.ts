import type { Book, PanelPlan, WindowPlan } from '../../book/book.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Extent } from '../../scene/parameter.js';
import type { Carried, GroupBox, SceneElement } from '../../scene/scene.js';
import { carriedLength, carriedShare } from '../carry.js';
import { edgeLevel } from './edge.js';
import { openingOf } from './opening.js';

/** What an element's place and size refer to in one panel: the window, or its group's box. */
export interface Room extends Pick<WindowPlan, 'x' | 'y' | 'width' | 'height' | 'outline'> {
  /** Lengths in millimetres grow and shrink by this: 1 but in a group that changes its size. */
  readonly scale: number;
  /** Shown as in a mirror. */
  readonly mirrored: boolean;
}

/** How far along its panels the element, or the group that carries it, is. */
export const shareOf = (book: Book, element: SceneElement, panel: number): number =>
  carriedShare(book, element.group ?? element, panel);

export function roomOf(book: Book, plan: PanelPlan, { group }: SceneElement): Room {
  const opening = openingOf(book, plan);
  if (group === null) return { ...opening, scale: 1, mirrored: false };
  const front = boxOf(book, book.panels[group.panels[0] - 1], group);
  const box = boxOf(book, plan, group);
  return { ...box, scale: box.width / front.width, mirrored: group.mirror };
}

/** The room in the first of the panels that the element, or its group, runs through. */
export const frontRoomOf = (book: Book, element: SceneElement): Room =>
  roomOf(book, book.panels[(element.group ?? element).panels[0] - 1], element);

/** A length or share as it is in this panel, in mm. */
export const lengthIn = (
  room: Room,
  value: Carried<Extent>,
  share: number,
  wholeMm: number,
): number => carriedLength(value, share, wholeMm, room.scale);

/** Groups stand upright whatever their side: boxes of their own, foot down. */
function boxOf(book: Book, plan: PanelPlan, group: GroupBox): Omit<Room, 'scale' | 'mirrored'> {
  const share = carriedShare(book, group, plan.number);
  const opening = openingOf(book, plan);
  const front = openingOf(book, book.panels[group.panels[0] - 1]);
  const width = carriedLength(group.width, share, opening.width);
  const height = carriedLength(group.height, share, opening.height);
  const lift = carriedLength(group.lift, share, opening.height);
  const { side } = group;
  if (side === 'sill' || side === 'head') {
    const middle = front.x + carriedLength(group.at, share, front.width);
    const x = middle - width / 2;
    const level = edgeLevel(opening, side, x, x + width);
    const y = side === 'sill' ? level - lift - height : level + lift;
    return { x, y, width, height, outline: rectangle(x, y, width, height) };
  }
  const foot = opening.y + carriedLength(group.at, share, opening.height);
  const level = edgeLevel(opening, side, foot - height, foot);
  const x = side === 'left' ? level + lift : level - lift - width;
  return {
    x,
    y: foot - height,
    width,
    height,
    outline: rectangle(x, foot - height, width, height),
  };
}
