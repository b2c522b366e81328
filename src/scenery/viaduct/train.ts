import { ellipse, rectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { handCut } from '../brick/craft.js';
import { type Drawing, joinDrawings } from '../built/finish.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Plan } from './plan.js';

/** Hidden behind the parapet, as a share of the train's height. */
const SUNK = 0.2;
const WANDER_MM = 0.1;
/** Lengths in train heights. */
const ENGINE = 2.05;
const TENDER = 1;
const COACH = 2.5;

/** A vehicle's own room: x counts in train heights back from its nose, y upward from the rails. */
type ToPlan = (x: number, y: number) => Point;

/** A steam engine with its tender and coaches of our own, out of one jamb and under way. */
export function trainOf(plan: Plan, random: Random): Drawing {
  const { plot, ends, train, top } = plan;
  const hand = random.branch('way').chance(0.5) ? -1 : 1;
  const nose = hand * plot.width * random.branch('nose').between(0.2, 0.36);
  const gap = Math.max(1.15 * plot.smallestHole, 0.1 * train) / train;
  const foot = top + SUNK * train;
  const high = train * (1 + SUNK);
  const at =
    (start: number): ToPlan =>
    (x, y) => ({ x: nose - hand * (start + x) * train, y: foot - y * high });
  const vehicles = [engineOf(at(0), plan, random.branch('engine'))];
  vehicles.push(tenderOf(at(ENGINE), random.branch('tender')));
  const room = Math.abs(nose - (hand > 0 ? ends.left : ends.right)) / train;
  let start = ENGINE + TENDER + gap;
  for (let i = 0; start < room && i < 30; i++) {
    const length = Math.min(COACH, room - start);
    if (length > 0.8) vehicles.push(coachOf(at(start), length, plan, random.branch(`coach ${i}`)));
    start += COACH + gap;
  }
  return joinDrawings(vehicles);
}

function engineOf(at: ToPlan, { plot, train }: Plan, random: Random): Drawing {
  const cut = (name: string, points: readonly (readonly [number, number])[]): Region =>
    handCut(
      points.map(([x, y]) => at(x, y)),
      WANDER_MM,
      random.branch(name),
    );
  const least = (1.2 * plot.smallestWeb) / train / 2;
  const stack = Math.max(0.09, least);
  const lip = stack + 0.045;
  const boiler = cut('boiler', [
    [0.06, 0],
    [0, 0.3],
    [0.1, 0.34],
    [0.1, 0.62],
    [0.18, 0.72],
    [1.4, 0.74],
    [1.4, 0],
  ]);
  const chimney = cut('chimney', [
    [0.36 - stack * 1.25, 0.66],
    [0.36 - stack, 0.8],
    [0.36 - stack, 0.93],
    [0.36 - lip, 0.95],
    [0.36 - lip, 1],
    [0.36 + lip, 1],
    [0.36 + lip, 0.95],
    [0.36 + stack, 0.93],
    [0.36 + stack, 0.8],
    [0.36 + stack * 1.25, 0.66],
  ]);
  const cab = cut('cab', [
    [1.3, 0],
    [1.3, 0.9],
    [1.22, 0.93],
    [1.26, 0.97],
    [1.6, 1.01],
    [2.02, 0.98],
    [2.06, 0.93],
    [1.96, 0.91],
    [1.96, 0.5],
    [2.1, 0.46],
    [2.1, 0],
  ]);
  const crown = at(0.94, 0.74);
  const dome = ellipse(crown.x, crown.y, Math.max(0.15 * train, plot.smallestWeb), 0.17 * train);
  return { solids: [boiler, chimney, cab, dome], cuts: sidelight(at, plot, train), lines: [] };
}

/** The cab's window, where it leaves card enough round it. */
function sidelight(at: ToPlan, { smallestWeb, smallestHole }: Plot, train: number): Region[] {
  const wide = 0.66 * train - 2.2 * smallestWeb;
  const tall = Math.min(0.3 * train, 0.5 * train - 1.2 * smallestWeb);
  if (wide < 1.1 * smallestHole || tall < 1.1 * smallestHole) return [];
  const { x } = at(1.63, 0);
  return [rectangle(x - wide / 2, at(0, 0.92).y + 1.1 * smallestWeb, wide, tall)];
}

function tenderOf(at: ToPlan, random: Random): Drawing {
  const coal = [0.56, 0.68, 0.64, 0.74, 0.66, 0.57].map((y, i) => at(0.2 + 0.12 * i, y));
  const body = [at(-0.05, 0), at(-0.05, 0.5), at(0.1, 0.56), ...coal, at(1, 0.56), at(1, 0)];
  return { solids: [handCut(body, WANDER_MM, random)], cuts: [], lines: [] };
}

/** Windows of a coach: from the waist to under the roof, in train heights over the rails. */
const WAIST = 0.38;
const CANT = 0.78;

function coachOf(at: ToPlan, length: number, { plot, train }: Plan, random: Random): Drawing {
  const roof = [
    [0, 0],
    [0, 0.82],
    [0.03, 0.87],
    [0.2, 0.94],
    [length / 2, 0.97],
    [length - 0.2, 0.94],
    [length - 0.03, 0.87],
    [length, 0.82],
    [length, 0],
  ].map(([x, y]) => at(x, y));
  const body = handCut(roof, WANDER_MM, random.branch('body'));
  const { smallestWeb, smallestHole } = plot;
  const [low, high] = [at(0, WAIST).y, at(0, CANT).y];
  const overRoof = high - at(0, 0.95).y;
  const tall = low - high - Math.max(0, 1.15 * smallestWeb - overRoof);
  const pane = Math.max(1.15 * smallestHole, 0.24 * train);
  const bar = Math.max(1.25 * smallestWeb, 0.1 * train);
  const shy = Math.max(1.3 * smallestWeb, 0.14 * train);
  const count = Math.floor((length * train - 2 * shy + bar) / (pane + bar));
  if (tall < 1.1 * smallestHole || count < 1) return { solids: [body], cuts: [], lines: [] };
  const step = (length * train - 2 * shy + bar) / count;
  const cuts = Array.from({ length: count }, (_, i) => {
    const from = at((shy + i * step) / train, 0).x;
    const to = at((shy + (i + 1) * step - bar) / train, 0).x;
    return rectangle(Math.min(from, to), low - tall, Math.abs(to - from), tall);
  });
  return { solids: [body], cuts, lines: [] };
}
