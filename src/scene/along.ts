import { LENGTH_PATTERN, type Reading, readExtent, SHARE_PATTERN } from './length.js';
import type { Extent } from './parameter.js';
import type { Unit } from './scene.js';
import { quote } from './words.js';

/** Words for the ends and the middle of a side, as shares of it from the left or from the top. */
const PLACES: Readonly<Record<string, number>> = {
  left: 0,
  top: 0,
  start: 0,
  middle: 0.5,
  right: 1,
  bottom: 1,
  end: 1,
};

export const ALONG_ALLOWED = 'a stretch such as "left to 40%", "20 mm to middle" or "30% to right"';

const place = `(?:${Object.keys(PLACES).join('|')}|${bare(LENGTH_PATTERN)}|${bare(SHARE_PATTERN)})`;
export const ALONG_PATTERN = `^\\s*${place}\\s+to\\s+${place}\\s*$`;

const ALONG = /^\s*(\S.*?)\s+to\s+(\S.*?)\s*$/;

/** A stretch of a side, from the left (sill, head) or from the top (jambs). */
export function readAlong(said: string, unit: Unit): Reading<{ from: Extent; to: Extent }> {
  const [, from, to] = ALONG.exec(said) ?? [];
  if (from === undefined) {
    return { problem: `${quote(said)} is no stretch of a side; give ${ALONG_ALLOWED}` };
  }
  const start = readPlace(from, unit);
  if ('problem' in start) return start;
  const end = readPlace(to, unit);
  if ('problem' in end) return end;
  if ('share' in start.value && 'share' in end.value && start.value.share >= end.value.share) {
    return { problem: `${quote(said)} runs backwards; say "${to} to ${from}"` };
  }
  return { value: { from: start.value, to: end.value } };
}

const readPlace = (said: string, unit: Unit): Reading<Extent> =>
  Object.hasOwn(PLACES, said) ? { value: { share: PLACES[said] } } : readExtent(said, unit);

function bare(pattern: string): string {
  return `(?:${pattern.replace(/^\^/, '').replace(/\$$/, '')})`;
}
