import { contourArea } from '../geometry/measure.js';
import { reversed } from '../geometry/transform.js';
import type { Region } from '../geometry/types.js';

/** Card as a growth has it: the body without its openings, and the openings as shapes to cut out. */
export const bodyAndHoles = ({ contours }: Region): { body: Region; holes: Region } => ({
  body: { contours: contours.filter((c) => contourArea(c) > 0) },
  holes: { contours: contours.filter((c) => contourArea(c) < 0).map(reversed) },
});
