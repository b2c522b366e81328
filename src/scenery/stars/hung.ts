import { union } from '../../geometry/boolean/boolean.js';
import type { Point, Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { thread } from '../sky/thread.js';
import { starAt, strewn, type Wanted } from './places.js';
import type { Star } from './star.js';

/** Stars and the threads that hold them to each other and to the head. */
export interface Hung {
  readonly stars: readonly Star[];
  readonly threads: Region;
}

/** A tie between strings hangs through by this share of its length. */
const SAG = 0.1;
/** Strings need so much room each, in middling stars. */
const STRING_ROOM = 2.7;

/** Strings of stars, uneven in length, tied across from star to star where they are long. */
export function stringsOf(plot: Plot, wanted: Wanted, random: Random): Hung {
  const { width, height, smallestWeb } = plot;
  const most = Math.max(
    1,
    Math.floor(width / Math.max(STRING_ROOM * wanted.radius, 3 * wanted.apart)),
  );
  const count = Math.min(most, Math.max(1, Math.round(wanted.count / 2.2)));
  const pitch = width / count;
  const strings = Array.from({ length: count }, (_, i): Star[] => {
    const luck = random.branch(`string ${i}`);
    const x = (i + 0.5 + luck.between(-0.16, 0.16)) * pitch - width / 2;
    const long = count > 1 ? (i % 2 === 0 ? luck.between(0.72, 1) : luck.between(0.34, 0.66)) : 1;
    const last = starAt({ x, y: 0 }, wanted, luck.branch('last'));
    const foot = { ...last, x: held(x, last.radius, width), y: -(height * long - last.radius) };
    return [foot, ...above(foot, wanted, luck)];
  });
  const stars = strings.flat();
  const lines = strings.map(([foot]) => thread({ x: foot.x, y: plot.root }, foot, smallestWeb));
  const ties = strings.slice(1).flatMap((string, i) => {
    const [a, b] = nearestPair(strings[i], string);
    return thread(a, b, smallestWeb, SAG);
  });
  return { stars, threads: union([...lines, ...ties]) };
}

const held = (x: number, radius: number, width: number): number =>
  Math.max(-width / 2 + radius, Math.min(width / 2 - radius, x));

/** Stars threaded on a string over its last one, while there is room. */
function above(foot: Star, wanted: Wanted, luck: Random): Star[] {
  const stars: Star[] = [];
  let below = foot;
  for (let k = 0; k < 3; k++) {
    const own = luck.branch(`up ${k}`);
    const step = own.between(2, 3.6) * wanted.radius + 0.5 * wanted.apart;
    const star = starAt({ x: foot.x, y: below.y + step }, wanted, own);
    if (star.y > -(star.radius + wanted.apart)) break;
    stars.push(star);
    below = star;
  }
  return stars;
}

/** The two stars of neighbouring strings between which a tie runs most nearly level. */
function nearestPair(a: readonly Star[], b: readonly Star[]): [Star, Star] {
  const pairs = a.flatMap((s) => b.map((t): [Star, Star] => [s, t]));
  const steep = ([s, t]: [Star, Star]) => Math.abs(s.y - t.y) - 0.15 * Math.abs(s.y + t.y);
  return pairs.reduce((best, pair) => (steep(pair) < steep(best) ? pair : best));
}

/** Two threads at one star make at least this angle, or the hole between them clogs. */
const LEAST_DEG = 38;
/** How many of the ties that a net could have beside the fewest it needs. */
const EXTRA = 0.5;

/** Stars strewn over the sky, each tied to its neighbours, the uppermost to the head. */
export function netOf(plot: Plot, wanted: Wanted, random: Random): Hung {
  const { width, height, smallestWeb } = plot;
  const box = { minX: -width / 2, minY: -height, maxX: width / 2, maxY: -wanted.apart };
  const stars = strewn(box, wanted, random.branch('places'));
  if (stars.length === 0) stars.push(starAt({ x: 0, y: -height / 2 }, wanted, random));
  const ties = fewestTies(stars);
  for (const [a, b] of neighbours(stars)) {
    if (!random.branch(`tie ${a} ${b}`).chance(EXTRA)) continue;
    if (ties.some(([c, d]) => c === a && d === b)) continue;
    if (isOpen(stars, ties, a, b) && isOpen(stars, ties, b, a)) ties.push([a, b]);
  }
  const threads = ties.map(([a, b]) => thread(stars[a], stars[b], smallestWeb));
  const stays = uppermost(stars, plot).map((s) => thread(s, { x: s.x, y: plot.root }, smallestWeb));
  return { stars, threads: union([...threads, ...stays]) };
}

type Tie = readonly [number, number];

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The shortest ties that join all stars: R. C. Prim, Bell System Technical Journal 36 (1957). */
function fewestTies(stars: readonly Star[]): Tie[] {
  const ties: Tie[] = [];
  const inside = [0];
  while (inside.length < stars.length) {
    let best: Tie | null = null;
    for (const a of inside) {
      for (let b = 0; b < stars.length; b++) {
        if (inside.includes(b)) continue;
        const isNearer =
          best === null || distance(stars[a], stars[b]) < distance(stars[best[0]], stars[best[1]]);
        if (isNearer) best = [a, b];
      }
    }
    if (best === null) break;
    inside.push(best[1]);
    ties.push(best[0] < best[1] ? best : [best[1], best[0]]);
  }
  return ties;
}

/**
 * Pairs between which no other star lies: none in the circle over the tie. Such ties never cross.
 * K. R. Gabriel and R. R. Sokal, Systematic Zoology 18 (1969).
 */
function neighbours(stars: readonly Star[]): Tie[] {
  const pairs: Tie[] = [];
  stars.forEach((a, i) => {
    stars.forEach((b, j) => {
      if (j <= i) return;
      const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      const r = distance(a, b) / 2;
      if (stars.every((s, k) => k === i || k === j || distance(s, middle) > r)) pairs.push([i, j]);
    });
  });
  return pairs;
}

/** Whether a tie from a to b leaves its angle free at a. */
function isOpen(stars: readonly Star[], ties: readonly Tie[], a: number, b: number): boolean {
  const heading = (to: number) =>
    (Math.atan2(stars[to].y - stars[a].y, stars[to].x - stars[a].x) * 180) / Math.PI;
  return ties.every(([c, d]) => {
    if (c !== a && d !== a) return true;
    const turn = Math.abs(heading(c === a ? d : c) - heading(b)) % 360;
    return Math.min(turn, 360 - turn) >= LEAST_DEG;
  });
}

/** The highest star in each of a few parts of the width, where nothing hangs in its way. */
function uppermost(stars: readonly Star[], plot: Plot): Star[] {
  const parts = Math.max(1, Math.min(4, Math.round(plot.width / 22)));
  const highest = stars.reduce((best, s) => (s.y > best.y ? s : best));
  const kept = [highest];
  for (let i = 0; i < parts; i++) {
    const inPart = stars.filter((s) => Math.floor((s.x / plot.width + 0.5) * parts) === i);
    if (inPart.length === 0) continue;
    const top = inPart.reduce((best, s) => (s.y > best.y ? s : best));
    const room = 3 * plot.smallestWeb + plot.smallestHole;
    const isClear = stars.every(
      (s) => s === top || s.y < top.y || Math.abs(s.x - top.x) > s.radius + room,
    );
    if (isClear && kept.every((s) => Math.abs(s.x - top.x) > 2 * room)) kept.push(top);
  }
  return kept;
}
