import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { rectangle } from '../../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Point, type Region } from '../../geometry/types.js';
import { keptClear } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { fitToCut } from '../land/fit.js';

/** Scores keep this clear of cut edges, mm. */
export const CLEAR_MM = 1.5;

/** What somebody built, as it is drawn: pieces of card, what is cut out of them, and scores. */
export interface Drawing {
  readonly solids: readonly Region[];
  readonly cuts: readonly Region[];
  readonly lines: readonly Line[];
  /** Pieces of it that can be treated by themselves, by their names. */
  readonly parts?: Readonly<Record<string, readonly Region[]>>;
}

export const NOTHING: Drawing = { solids: [], cuts: [], lines: [] };

/** Several drawings as one; all cuts are cut out of all solids. */
export const joinDrawings = (drawings: readonly Drawing[]): Drawing => ({
  solids: drawings.flatMap((d) => d.solids),
  cuts: drawings.flatMap((d) => d.cuts),
  lines: drawings.flatMap((d) => d.lines),
});

/** Height over the ground at which what stands on it is sure to be card, y down. */
const HELD_MM = -0.5;

/**
 * The drawing made fit to cut. `foot` is a place at whose x there is card just over the ground;
 * nothing is left below its y.
 */
export function finished(drawing: Drawing, plot: Plot, foot: Point): Growth {
  const whole = union(drawing.solids);
  const drawn = drawing.cuts.length > 0 ? subtract(whole, drawing.cuts) : whole;
  const { body, holes } = fitToCut(drawn, plot, { x: foot.x, y: HELD_MM }, foot);
  const card = holes.contours.length > 0 ? subtract(body, [holes]) : body;
  const scores = keptClear(drawing.lines, aboveGround(card), CLEAR_MM);
  const parts = Object.entries(drawing.parts ?? {}).map(([name, regions]) => [
    name,
    regions.length > 0 ? intersect(card, union(regions)) : EMPTY_REGION,
  ]);
  return { body, holes, scores, reliefs: [], parts: Object.fromEntries(parts) };
}

/** Scores may run down to the ground, where the card goes on. */
function aboveGround(card: Region): Region {
  const { minX, maxX, maxY } = regionBounds(card);
  const deep = rectangle(minX - 1, CLEAR_MM, maxX - minX + 2, Math.max(1, maxY));
  return subtract(card, [deep]);
}

/** 0 coarse, 1 middling, 2 fine: how much detail a panel of this fineness shows. */
export const levelOf = ({ fineness }: Plot): 0 | 1 | 2 =>
  fineness < 1 / 3 ? 0 : fineness < 2 / 3 ? 1 : 2;
