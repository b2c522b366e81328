import { joined } from '../../geometry/chain.js';
import { trimLine } from '../../geometry/clip-lines.js';
import { containsPoint, distanceTo, type Nearest } from '../../geometry/components.js';
import { contourArea, middleOfBox, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polyline } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import { sliverGaps } from '../../geometry/width/slivers.js';
import { midlineOf } from './midline.js';
import { pushedIntoNotches } from './notches.js';

/** Where the middle of the beam runs so that the designed card is left. */
export interface KerfPath {
  /** The outline to run: outer contours lie half the kerf outside the card's, holes inside. */
  readonly cut: Region;
  /** Openings no wider than the beam, as one line along the middle of each. */
  readonly slits: readonly Line[];
  /** Holes that the beam has no room in, too short for a slit: they are not cut. */
  readonly lost: readonly LostHole[];
}

export interface LostHole {
  readonly at: Point;
  readonly areaMm2: number;
}

/** Openings wider than the beam by less than this (mm) hardly part its two passes. */
const SLACK_MM = 0.01;

/**
 * The path of a beam that burns away `kerfMm`, half of it to either side, round a card (mm, y down).
 *
 * Corners of card are gone round in an arc of half the kerf, which leaves every one of them as sharp
 * as designed, however pointed: mitred paths leave the same, but reach out into the waste, stop at
 * their tips, and have to blunt points sharper than their limit. Into the corners of holes and
 * notches no round beam can reach: at angle a it leaves kerf/2 (1 / sin(a/2) - 1), 0.041 mm at 90
 * degrees and a kerf of 0.2. In sharper ones the path goes on a little; see `pushedIntoNotches`. What
 * is narrower than the beam for 0.5 mm or more and three times as
 * long as wide gets a slit, which is burnt wider than designed by up to the kerf.
 */
export function kerfPath(card: Region, kerfMm: number): KerfPath {
  const paths = known.get(card) ?? new Map<number, KerfPath>();
  known.set(card, paths);
  const path = paths.get(kerfMm) ?? pathRound(card, kerfMm);
  paths.set(kerfMm, path);
  return path;
}

/** Found once for each card and kerf, however many copies lie on the sheets: cards never change. */
const known = new WeakMap<Region, Map<number, KerfPath>>();

function pathRound(card: Region, kerfMm: number): KerfPath {
  if (!(kerfMm > 0)) return { cut: card, slits: [], lost: [] };
  const round = offset(card, kerfMm / 2);
  const slits = sliverGaps(card, kerfMm + 2 * SLACK_MM).flatMap(({ region }) => {
    const slit = region.contours.length === 1 ? slitIn(region.contours[0], round, kerfMm) : null;
    return slit === null ? [] : [slit];
  });
  const cut = pushedIntoNotches(round, card, kerfMm, (corner) =>
    slits.some((slit) =>
      endsOf(slit).some((end) => Math.hypot(end.x - corner.x, end.y - corner.y) <= kerfMm),
    ),
  );
  return { cut, slits, lost: holesLost(card, cut, slits) };
}

/**
 * The middle of an opening but for half the kerf at its ends: so far the round beam reaches on. Where
 * it runs out into what the outline's own path opens, the slit runs on to that path.
 */
function slitIn(opening: Cubics, cut: Region, kerfMm: number): Line | null {
  const line = midlineOf(opening);
  const [from, to] = endsOf(line).map((end) => distanceTo(cut, end));
  const slit = trimLine(line, kerfMm / 2, kerfMm / 2);
  if (slit === null) return null;
  const opens = (foot: Nearest | null): boolean => foot !== null && foot.distanceMm <= kerfMm;
  const [start, end] = endsOf(slit);
  let { cubics } = slit;
  if (opens(from)) cubics = joined(straight(footOf(cut, start), start), cubics);
  if (opens(to)) cubics = joined(cubics, straight(end, footOf(cut, end)));
  return { cubics };
}

const endsOf = ({ cubics }: Line): [Point, Point] => [
  { x: cubics[0], y: cubics[1] },
  { x: cubics[cubics.length - 2], y: cubics[cubics.length - 1] },
];

const straight = (a: Point, b: Point): Cubics => polyline([a, b]).cubics;

const footOf = (region: Region, p: Point): Point => distanceTo(region, p)?.point ?? p;

/** Holes of the card with neither a hole of the path nor a slit in them. */
function holesLost(card: Region, cut: Region, slits: readonly Line[]): LostHole[] {
  const cutHoles = cut.contours.filter((c) => contourArea(c) < 0);
  const marks = [...cutHoles, ...slits.map(({ cubics }) => cubics)].map((c) => ({
    x: c[0],
    y: c[1],
  }));
  return card.contours.flatMap((contour): LostHole[] => {
    const area = contourArea(contour);
    if (area >= 0) return [];
    const hole = { contours: [reversed(contour)] };
    const box = regionBounds(hole);
    const { minX, minY, maxX, maxY } = box;
    const isCut = marks.some(
      (p) => p.x >= minX && p.x <= maxX && p.y >= minY && p.y <= maxY && containsPoint(hole, p),
    );
    if (isCut) return [];
    return [{ at: middleOfBox(box), areaMm2: -area }];
  });
}
