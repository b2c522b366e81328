import { stroke } from '../offset/offset.js';
import { smoothLine } from '../pen.js';
import { circle } from '../primitives.js';
import type { Region } from '../types.js';
import { type NarrowPlace, narrowWebs } from './webs.js';

/** A strip is this much wider than asked, so that curves drawn anew still pass. */
const AMPLE = 1.04;

/** A strip along the middle of a narrow place, round at its ends: filled with it, it is `widthMm` wide. */
export function stripAlong({ axis, at }: NarrowPlace, widthMm: number): Region {
  const ampleMm = AMPLE * widthMm;
  return axis.length === 1 ? circle(at.x, at.y, ampleMm / 2) : stroke([smoothLine(axis)], ampleMm);
}

/** A strip along every neck of a region that is narrower than `widthMm`. */
export const stripsAlongNecks = (region: Region, widthMm: number): Region[] =>
  narrowWebs(region, widthMm)
    .filter(({ kind }) => kind === 'neck')
    .map((neck) => stripAlong(neck, widthMm));
