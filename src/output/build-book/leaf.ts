import type { TextStyle } from './typesetting.js';

/** Something printed on a page. Lengths in mm from the page's top left, y down. */
export type Item = Text | Rule | Box | Picture;

export interface Text {
  readonly kind: 'text';
  /** Where the text starts, ends or has its middle, by `align`. */
  readonly x: number;
  readonly baseline: number;
  readonly text: string;
  readonly style: TextStyle;
  readonly align: Align;
}

export type Align = 'left' | 'right' | 'centre';

export interface Rule {
  readonly kind: 'rule';
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly widthMm: number;
  readonly colour: string;
  /** In the layer of guides, as in the sheets' files. */
  readonly isGuide?: boolean;
}

/** Filled, or drawn as an outline so wide. */
export interface Box {
  readonly kind: 'box';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly colour: string;
  readonly outlineMm?: number;
}

/** The preview of the book. */
export interface Picture {
  readonly kind: 'picture';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One page. */
export type Leaf = readonly Item[];

export const text = (
  x: number,
  baseline: number,
  words: string,
  style: TextStyle,
  align: Align = 'left',
): Text => ({ kind: 'text', x, baseline, text: words, style, align });

export const rule = (x0: number, x1: number, y: number, widthMm: number, colour: string): Rule => ({
  kind: 'rule',
  from: [x0, y],
  to: [x1, y],
  widthMm,
  colour,
});
