import { intersect, union } from '../../geometry/boolean/boolean.js';
import { pen, smoothLine } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { landUnder, levelsOf } from '../land/ground.js';
import type { Random } from '../random.js';
import type { Form, Row, Wave } from './rows.js';

/** A row as card, the hollows under its curling crests, and lines that run up its backs. */
export interface Crests {
  readonly region: Region;
  readonly hollows: readonly Region[];
  readonly streaks: readonly Line[];
}

export function crestsOf(plot: Plot, form: Form, row: Row, hand: number, random: Random): Crests {
  const { waves, left, right } = row;
  const bottom = plot.root;
  const box = rectangle(left, -2 * plot.height, right - left, 2 * plot.height + bottom);
  const at = (wave: Wave) => placer(row, wave, hand);
  if (form === 'breakers') {
    const curled = waves.map((wave) => shapeOf(breaker(at(wave), bottom)));
    const low = landUnder(smoothLine(troughs(row)), bottom);
    const foam = waves.flatMap((wave) => foamOf(at(wave), wave, plot));
    return {
      region: intersect(union([low, ...curled, ...foam]), box),
      hollows: waves.map((wave) => shapeOf(hollow(at(wave)))),
      streaks: waves.flatMap((wave) => streaksOf(at(wave))),
    };
  }
  const line = smoothLine(rolling(row, hand));
  const sea = landUnder(line, bottom);
  const lace = form === 'surf' ? laceAlong(line, row, plot, random) : [];
  const region = intersect(union([sea, ...lace]), box);
  return { region, hollows: [], streaks: waves.flatMap((wave) => streaksOf(at(wave))) };
}

/** Maps a wave's own measure (along 0..1 in its heading, up 0..1) to the plot. */
type Placer = (along: number, up: number) => Point;

function placer(row: Row, { from, to, rise }: Wave, hand: number): Placer {
  return (along, up) => {
    const x = hand > 0 ? from + along * (to - from) : to - along * (to - from);
    return { x, y: -(row.troughAt(x) + up * rise) };
  };
}

const troughs = (row: Row): Point[] =>
  Array.from({ length: 17 }, (_, k) => {
    const x = row.left + (k / 16) * (row.right - row.left);
    return { x, y: -row.troughAt(x) };
  });

/** A long back, a crest and a shorter face for each wave. */
const PROFILE = [
  [0, 0],
  [0.3, 0.38],
  [0.6, 1],
  [0.82, 0.42],
] as const;

function rolling(row: Row, hand: number): Point[] {
  const points = row.waves.flatMap((wave) => {
    const own = PROFILE.map(([along, up]) => placer(row, wave, hand)(along, up));
    return hand > 0 ? own : own.reverse();
  });
  const inside = points.filter((p) => p.x > row.left + 0.5 && p.x < row.right - 0.5);
  const end = (x: number): Point => ({ x, y: -row.troughAt(x) });
  return [end(row.left), ...inside, end(row.right)];
}

/** A wave that rears up and curls over its own hollow. */
function breaker(at: Placer, bottom: number): Cubics {
  const start = at(-0.06, -0.1);
  const end = at(1.04, -0.06);
  const p = pen(start.x, bottom).lineTo(start.x, start.y);
  const to = (a: Point, b: Point, c: Point) => p.curveTo(a.x, a.y, b.x, b.y, c.x, c.y);
  to(at(0.22, 0.02), at(0.34, 1), at(0.58, 1));
  to(at(0.72, 1), at(0.86, 0.88), at(0.88, 0.6));
  to(at(0.8, 0.72), at(0.69, 0.74), at(0.65, 0.56));
  to(at(0.6, 0.3), at(0.74, 0.02), end);
  return p.lineTo(end.x, bottom).close();
}

/** The hollow between the curl and the face. */
function hollow(at: Placer): Cubics {
  const tip = at(0.88, 0.58);
  const p = pen(tip.x, tip.y);
  const to = (a: Point, b: Point, c: Point) => p.curveTo(a.x, a.y, b.x, b.y, c.x, c.y);
  to(at(0.8, 0.72), at(0.69, 0.74), at(0.65, 0.56));
  to(at(0.6, 0.3), at(0.74, 0.06), at(0.97, 0.04));
  to(at(0.84, 0.2), at(0.84, 0.4), tip);
  return p.close();
}

/** Drops of foam thrown forward at the tip of a curl, joined to it. */
function foamOf(at: Placer, wave: Wave, plot: Plot): Region[] {
  const r = Math.max(0.62 * plot.smallestWeb, 0.1 * wave.rise);
  if (wave.rise < 4 * plot.smallestWeb) return [];
  return [
    [0.885, 0.6, 1],
    [0.85, 0.8, 0.9],
    [0.74, 0.95, 0.85],
  ].map(([along, up, size]) => {
    const p = at(along, up);
    return circle(p.x, p.y, r * size);
  });
}

/** Lines up the back of a wave, each shorter than the one before. */
function streaksOf(at: Placer): Line[] {
  return [0.06, 0.2, 0.34].map((along, k) =>
    smoothLine([
      at(along, 0.02),
      at(along + 0.17, 0.22 - 0.04 * k),
      at(along + 0.27, 0.5 - 0.1 * k),
      at(along + 0.33 - 0.01 * k, 0.76 - 0.18 * k),
    ]),
  );
}

/** Rounds of foam along a crest, in webs and as shares of the height, and from one to the next. */
const LACE = { leastWebs: 0.9, share: [0.05, 0.12], step: [0.9, 1.5] } as const;

function laceAlong(line: Line, row: Row, plot: Plot, random: Random): Region[] {
  const levelAt = levelsOf(line);
  const rounds: Region[] = [];
  let x = row.left;
  for (let i = 0; x < row.right; i++) {
    const luck = random.branch(`lace ${i}`);
    const r = Math.max(
      LACE.leastWebs * plot.smallestWeb,
      plot.height * luck.between(LACE.share[0], LACE.share[1]),
    );
    // Foam dies away towards an end that stands free.
    if (levelAt(x) < -r) rounds.push(circle(x, levelAt(x) + 0.25 * r, r));
    x += r * luck.between(...LACE.step);
  }
  return rounds;
}
