import type { Unit } from '../../scene/scene.js';
import type { TextStyle } from './typesetting.js';

/** What the book is printed on, and where its text stands. Lengths in mm. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Nothing but the foot line stands below. */
  readonly bottom: number;
}

const SIDE_MM = 20;
const HEAD_MM = 20;
const FOOT_MM = 24;

const paper = (width: number, height: number): Paper => ({
  width,
  height,
  left: SIDE_MM,
  right: width - SIDE_MM,
  top: HEAD_MM,
  bottom: height - FOOT_MM,
});

/** Makers who measure in inches print on Letter (ANSI/ASME Y14.1, size A), others on A4 (ISO 216). */
export const paperFor = (unit: Unit): Paper =>
  unit === 'in' ? paper(215.9, 279.4) : paper(210, 297);

export const INK = '#23262d';
export const SOFT = '#6b7078';
export const HAIRLINE = '#c9ccd1';

const MM_PER_POINT = 25.4 / 72;

/** Sizes in points, as printers count. */
const style = (face: TextStyle['face'], points: number, colour: string): TextStyle => ({
  face,
  emMm: points * MM_PER_POINT,
  colour,
});

export const TITLE = style('title', 30, INK);
export const HEADING = style('title', 17, INK);
export const BODY = style('text', 9, INK);
export const STRONG = style('bold', 9, INK);
export const NOTE = style('text', 9, SOFT);
export const SMALL = style('text', 7.5, SOFT);
export const LABEL = style('bold', 7.5, SOFT);
export const NUMBER: TextStyle = { ...BODY, evenFigures: true };
export const TOTAL: TextStyle = { ...STRONG, evenFigures: true };

/** From one line of body text to the next. */
export const LEADING_MM = 4.8;
