import { linesInside } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { lineLength, regionBounds } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { polyline } from '../geometry/pen.js';
import { moveLine, moveRegion, reversed, rotation } from '../geometry/transform.js';
import type { Line, Point, Region } from '../geometry/types.js';
import { contourStrokes, dot, isSlim, type Stroke } from './slim.js';

/**
 * Strokes that fill a region: lines across it, rings within it, dots. The region is where the tool's
 * middle may go. All lengths in mm. Parts of the region are filled one after another.
 */

/** Scraps of hatching shorter than this share of its spacing only cost a lift of the tool. */
const SHORTEST_SHARE = 1 / 8;
/** A dot is a stroke so long, in spacings: a tool that only goes down and up again may leave none. */
const DOT_SHARE = 1 / 5;
/** Parts no wider than this share of the spacing, on the whole, have room for one stroke only. */
const SLIM_SHARE = 1 / 3;
/** At half the spacing itself a band of one spacing would come to nothing but crumbs. */
const JUST_HALF = 0.498;
/** More rings than this in one another are a sign of an absurd spacing. */
const MOST_RINGS = 2000;

/**
 * Parallel lines at `angleDeg` (anticlockwise from the x axis) with their ends on the region's edge,
 * evenly placed in each part of it. A part narrower than the spacing gets one line through its
 * middle. Lines are run to and fro, one lobe of a part after another.
 */
export const hatchLines = (region: Region, angleDeg: number, apartMm: number): Line[] =>
  components(region).flatMap((part) => {
    const level = moveRegion(part, rotation(angleDeg));
    const back = rotation(-angleDeg);
    return lobesOf(levelLines(level, apartMm))
      .flatMap((lobe) => lobe.map((line, k) => (k % 2 === 0 ? line : turned(line))))
      .map((line) => moveLine(line, back));
  });

/** Rows of level lines as columns, in each of which every line lies beside the one before it. */
function lobesOf(rows: readonly (readonly Line[])[]): Line[][] {
  const lobes: { row: number; readonly lines: Line[] }[] = [];
  rows.forEach((lines, row) => {
    for (const line of lines) {
      const above = lobes.find(
        (l) => l.row === row - 1 && overlap(l.lines[l.lines.length - 1], line),
      );
      if (above) {
        above.lines.push(line);
        above.row = row;
      } else lobes.push({ row, lines: [line] });
    }
  });
  return lobes.map(({ lines }) => lines);
}

/** Whether two level lines, both from left to right, stand one above the other somewhere. */
const overlap = ({ cubics: a }: Line, { cubics: b }: Line): boolean =>
  a[0] < b[b.length - 2] && b[0] < a[a.length - 2];

const turned = ({ cubics }: Line): Line => ({ cubics: reversed(cubics) });

/** Level lines from left to right, row by row from the top. */
function levelLines(part: Region, apartMm: number): Line[][] {
  const { minX, minY, maxX, maxY } = regionBounds(part);
  const count = Math.floor((maxY - minY) / apartMm) + 1;
  const first = (minY + maxY - (count - 1) * apartMm) / 2;
  return Array.from({ length: count }, (_, k) => {
    const y = first + k * apartMm;
    // From well outside, so that ends lie on the edge and not on the box.
    const ends = [
      { x: minX - apartMm, y },
      { x: maxX + apartMm, y },
    ];
    const parts = linesInside([polyline(ends)], part);
    return parts.filter((line) => lineLength(line) >= SHORTEST_SHARE * apartMm);
  });
}

/** The region's contours as strokes; two sides nearer than a third of the spacing are run as one. */
export const outlines = (region: Region, apartMm: number): Stroke[] =>
  components(region).flatMap((part) => outlineOfPart(part, apartMm));

const outlineOfPart = (part: Region, apartMm: number): Stroke[] =>
  contourStrokes(part, SLIM_SHARE * apartMm, DOT_SHARE * apartMm);

/**
 * A fill of the parts that have room for one. Slim ones, where hatching would be scraps and dots would
 * miss, are run along their middle.
 */
export function filled(
  region: Region,
  apartMm: number,
  fill: (region: Region) => readonly Line[],
): Stroke[] {
  return components(region).flatMap((part) =>
    isSlim(part, SLIM_SHARE * apartMm)
      ? outlineOfPart(part, apartMm)
      : fill(part).map(({ cubics }) => ({ cubics, closed: false })),
  );
}

/**
 * Rings: the region's contours and those of what is left of it a spacing further in, and so on, each
 * part from its edge to its middle before the next. A middle too narrow for another ring gets one at
 * half the spacing where it has room for that. A ring whose two sides are nearer than a third of
 * the spacing is one open stroke.
 */
export const rings = (region: Region, apartMm: number): Stroke[] => ringsIn(region, apartMm, 0);

const ringsIn = (region: Region, apartMm: number, depth: number): Stroke[] =>
  components(region).flatMap((part) => [
    ...outlineOfPart(part, apartMm),
    ...(depth < MOST_RINGS ? furtherIn(part, apartMm, depth) : []),
  ]);

function furtherIn(part: Region, apartMm: number, depth: number): Stroke[] {
  const inner = offset(part, -apartMm);
  if (inner.contours.length > 0) return ringsIn(inner, apartMm, depth + 1);
  return outlines(offset(part, -JUST_HALF * apartMm), apartMm);
}

/**
 * Dots on a staggered grid, each as near to six others as the spacing, row by row to and fro. A part
 * that the grid misses gets one dot.
 */
export const stipple = (region: Region, apartMm: number): Line[] =>
  components(region).flatMap((part) => {
    const { minX, maxX } = regionBounds(part);
    const dotMm = DOT_SHARE * apartMm;
    const rows = levelLines(part, (Math.sqrt(3) / 2) * apartMm);
    const dots = rows.map((row, k) => {
      const middle = (minX + maxX) / 2 + (k % 2 === 0 ? 0 : apartMm / 2);
      return row.flatMap((line) => dotsAlong(line, middle, apartMm, dotMm));
    });
    const drawn = dots.flatMap((row, k) => (k % 2 === 0 ? row : row.toReversed()));
    return drawn.length > 0 ? drawn : widestMiddle(rows.flat()).map((at) => dot(at, dotMm));
  });

/** Dots that lie wholly on a level line, at whole spacings from x = `middle`. */
function dotsAlong({ cubics }: Line, middle: number, apartMm: number, dotMm: number): Line[] {
  const [from, y, to] = [cubics[0] + dotMm / 2, cubics[1], cubics[cubics.length - 2] - dotMm / 2];
  const first = Math.ceil((from - middle) / apartMm);
  const last = Math.floor((to - middle) / apartMm);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) =>
    dot({ x: middle + (first + k) * apartMm, y }, dotMm),
  );
}

/** The middle of the longest of level lines; none of no lines. */
function widestMiddle(lines: readonly Line[]): Point[] {
  const longest = lines.toSorted((a, b) => lineLength(b) - lineLength(a)).slice(0, 1);
  return longest.map(({ cubics: c }) => ({ x: (c[0] + c[c.length - 2]) / 2, y: c[1] }));
}
