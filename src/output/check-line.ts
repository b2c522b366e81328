import { polyline } from '../geometry/pen.js';
import type { Mark } from '../process/layers.js';
import type { Page } from './page.js';

/** Long enough to see a print or a cut that is off by a quarter of a per cent. */
export const CHECK_LINE_MM = 100;
/** From the line to each end of a tick. */
const TICK_MM = 1.5;
/** From the line to the page's edge beside it, and at least so much beyond its ends. */
const INSET_MM = 4;
const CLEAR_MM = 2;
const ROOM_MM = CHECK_LINE_MM + 2 * CLEAR_MM;

/**
 * The page with a line of 100 mm among its guides, to lay a ruler on: along its lower edge, or
 * upright on a page too narrow for that. A page too small for either grows to the right and
 * downwards, so that what is drawn stays where it is.
 */
export function withCheckLine(page: Page): Page {
  const { size, marks } = laid(page);
  const rest = page.layers.filter(({ operation }) => operation !== 'guide');
  const guides = page.layers.filter(({ operation }) => operation === 'guide');
  const runs = [...guides.flatMap((layer) => layer.runs), { marks }];
  return { ...page, ...size, layers: [...rest, { operation: 'guide', runs }] };
}

function laid({ width, height }: Page) {
  if (width >= ROOM_MM) {
    const size = { width, height: Math.max(height, 2 * INSET_MM) };
    return { size, marks: level(middle(width), size.height - INSET_MM) };
  }
  if (height >= ROOM_MM) {
    const size = { width: Math.max(width, 2 * INSET_MM), height };
    return { size, marks: upright(INSET_MM, middle(height)) };
  }
  const size = { width: ROOM_MM, height: height + 2 * INSET_MM };
  return { size, marks: level(CLEAR_MM, height + INSET_MM) };
}

/** In whole millimetres, so that rounding moves both ends of the line alike. */
const middle = (extent: number): number => Math.floor((extent - CHECK_LINE_MM) / 2);

const level = (x: number, y: number): Mark[] => {
  const end = x + CHECK_LINE_MM;
  return [
    { ...straight(x, y, end, y), kind: 'check' },
    ...[x, end].map((at) => straight(at, y - TICK_MM, at, y + TICK_MM)),
  ];
};

const upright = (x: number, y: number): Mark[] => {
  const end = y + CHECK_LINE_MM;
  return [
    { ...straight(x, y, x, end), kind: 'check' },
    ...[y, end].map((at) => straight(x - TICK_MM, at, x + TICK_MM, at)),
  ];
};

const straight = (x0: number, y0: number, x1: number, y1: number): Mark => ({
  cubics: polyline([
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ]).cubics,
  closed: false,
});
