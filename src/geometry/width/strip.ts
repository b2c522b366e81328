import { stroke } from '../offset/offset.js';
import { smoothLine } from '../pen.js';
import { circle } from '../primitives.js';
import type { Region } from '../types.js';
import type { NarrowPlace } from './webs.js';

/** Card `widthMm` wide along the middle of a narrow place, round at its ends: it makes the place so wide. */
export const stripAlong = ({ axis, at }: NarrowPlace, widthMm: number): Region =>
  axis.length === 1 ? circle(at.x, at.y, widthMm / 2) : stroke([smoothLine(axis)], widthMm);
