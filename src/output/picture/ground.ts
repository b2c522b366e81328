import type { Book } from '../../book/book.js';
import { type Perspective, project } from '../../book/perspective.js';
import type { Bounds, Point } from '../../geometry/types.js';
import { blurFilter, box, boxOf, grown, n, straightPath } from './markup.js';

/** Warm and pale, between the lightest and the darkest card, so that either stands out. */
const WALL = '#d5ccc1';
const TABLE = '#cdc3b6';
const LAMP = '#fff8ec';
const SHADE = '#4a382a';

/** Definitions for a ground of seamless paper, lit from the upper left. */
export const GROUND_DEFS =
  '<linearGradient id="sweep" x1="0" y1="0" x2="0" y2="1">' +
  `<stop offset="0" stop-color="${WALL}"/><stop offset="0.6" stop-color="${WALL}"/>` +
  `<stop offset="0.8" stop-color="${TABLE}"/><stop offset="1" stop-color="${TABLE}"/>` +
  '</linearGradient>' +
  '<radialGradient id="lamp" cx="0.3" cy="0.2" r="1.15">' +
  `<stop offset="0" stop-color="${LAMP}" stop-opacity="0.55"/>` +
  `<stop offset="0.5" stop-color="${LAMP}" stop-opacity="0"/></radialGradient>` +
  '<radialGradient id="falloff" cx="0.3" cy="0.2" r="1.15">' +
  `<stop offset="0.4" stop-color="${SHADE}" stop-opacity="0"/>` +
  `<stop offset="1" stop-color="${SHADE}" stop-opacity="0.22"/></radialGradient>`;

/** A table and the wall behind it in one sweep, without a horizon. */
export const sweptGround = (frame: Bounds): string => lit(frame, 'url(#sweep)');

/** A table seen from straight above. */
export const tableTop = (frame: Bounds): string => lit(frame, TABLE);

const lit = (frame: Bounds, fill: string): string =>
  [fill, 'url(#lamp)', 'url(#falloff)']
    .map((paint) => `<rect ${box(frame)} fill="${paint}"/>`)
    .join('');

/** How far back and to the right the book's shadow reaches, as shares of its height. Shorter and
 * more to the side than the light inside the book would throw it: it would lie hidden behind. */
const SHADOW_BACK = 0.55;
const SHADOW_RIGHT = 0.4;
/** Softness and width of the shadow, of the dimness round the foot, and of the line of contact. */
const SHADOW_BLUR_MM = 6;
const FOOT = { blurMm: 2.4, widthMm: 5, opacity: 0.34 };
const CONTACT = { blurMm: 0.6, widthMm: 1, opacity: 0.6 };

/** The shadow of the standing book on the table, and the dark line where it touches. */
export function standingShadow(book: Book, view: Perspective): string {
  const { leftX, rightX } = book.panels[0].hinge;
  const { reachMm } = book.spine;
  const deepest = book.panels[book.panels.length - 1].depthMm;
  const half = book.spacing / 2;
  const back = SHADOW_BACK * book.height;
  const right = SHADOW_RIGHT * book.height;
  const onTable = (x: number, z: number) => project(view, { x, y: book.height }, z);
  const foot = [
    onTable(leftX - reachMm, half),
    onTable(leftX, 0),
    onTable(rightX, 0),
    onTable(rightX + reachMm, half),
  ];
  const far = [
    onTable(rightX + reachMm + right, half + back),
    onTable(leftX + right, deepest + back),
  ];
  return (
    fadingShadow([...foot, ...far], foot[3], far[0]) +
    softLine('foot', foot, FOOT) +
    softLine('contact', foot, CONTACT)
  );
}

/** A soft shadow that fades from left to right between two of its corners. */
function fadingShadow(outline: readonly Point[], from: Point, to: Point): string {
  return (
    `<linearGradient id="fade" gradientUnits="userSpaceOnUse" x1="${n(from.x)}" y1="0" ` +
    `x2="${n(to.x)}" y2="0"><stop offset="0" stop-color="${SHADE}" stop-opacity="0.55"/>` +
    `<stop offset="1" stop-color="${SHADE}" stop-opacity="0.1"/></linearGradient>` +
    blurFilter('cast', grown(boxOf(outline), 3 * SHADOW_BLUR_MM), SHADOW_BLUR_MM) +
    `<path d="${straightPath(outline)}Z" fill="url(#fade)" filter="url(#cast)"/>`
  );
}

function softLine(id: string, line: readonly Point[], look: typeof FOOT): string {
  const seen = grown(boxOf(line), 3 * look.blurMm + look.widthMm / 2);
  return (
    blurFilter(id, seen, look.blurMm) +
    `<path d="${straightPath(line)}" fill="none" stroke="${SHADE}" stroke-width="${look.widthMm}" ` +
    `stroke-opacity="${look.opacity}" filter="url(#${id})"/>`
  );
}
