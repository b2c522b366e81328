/**
 * The shapes every other room speaks in. All lengths are millimetres, x runs right and y runs
 * down, as in SVG.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A chain of cubic Béziers, eight numbers a cubic: `x0 y0 x1 y1 x2 y2 x3 y3`, where each cubic
 * starts exactly where the one before it ended. Straight edges are cubics with their handles at
 * the thirds of the chord. Treat the array as immutable.
 */
export type Cubics = Float64Array;

/**
 * A flat piece of card, or a hole's shape: closed contours that neither cross themselves nor each
 * other. Outer contours run clockwise on screen (positive shoelace area with y down), holes
 * anticlockwise, so that the nonzero and the even-odd rule agree on what is inside.
 */
export interface Region {
  readonly contours: readonly Cubics[];
}

/** An open line, such as a score. */
export interface Line {
  readonly cubics: Cubics;
}

/** An axis-parallel box; empty when `minX > maxX`. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const EMPTY_REGION: Region = { contours: [] };
