import { readSegments } from '../../../src/geometry/path/path-grammar.js';

/**
 * Path data of M, L, H, V, C, S and Z worked out anew in its longest form: lines and curves only,
 * each absolute and by name, so that tests can read coordinates off it. Every subpath must start
 * with an absolute M.
 */
export function absoluteForm(d: string): string {
  let [x, y, handleX, handleY] = [0, 0, 0, 0];
  const tidy = (v: number): string => String(Math.round(v * 1e6) / 1e6 + 0);
  return readSegments(d)
    .segments.map(({ command, numbers }) => {
      const letter = command.toUpperCase();
      const isRelative = command !== letter;
      if (letter === 'Z') return 'Z';
      const at = [...numbers];
      if (letter === 'H') at.push(isRelative ? 0 : y);
      if (letter === 'V') at.unshift(isRelative ? 0 : x);
      const points = at.map((v, k) => (isRelative ? v + (k % 2 === 0 ? x : y) : v));
      if (letter === 'S') points.unshift(2 * x - handleX, 2 * y - handleY);
      [x, y] = points.slice(-2);
      if (points.length === 6) [handleX, handleY] = points.slice(2, 4);
      const name = points.length === 6 ? 'C' : letter === 'M' ? 'M' : 'L';
      return name + points.map(tidy).join(' ');
    })
    .join('');
}
