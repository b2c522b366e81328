import { pen, smoothLine } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import { tassel } from './drape.js';
import { divided, type Stage } from './stage.js';

/** A pelmet's card and its folds. */
export interface Pelmet {
  readonly shapes: readonly Region[];
  readonly folds: readonly Line[];
}

/** How much of the drop a pelmet keeps where two swags meet, and where two gathers meet. */
const MEETING = { swag: 0.34, gather: 0.8 };
/** A tassel's length in drops, and the room that it keeps from bobbles, in webs and holes. */
const TASSEL = 0.85;
const TASSEL_ROOM = 1.5;
/** Points along a swag's hem. */
const HEM_STEPS = 14;
/** A fringe's bobbles: their share of the pitch, and the fewest that make a fringe. */
const BOBBLE = 0.5;
const FEWEST = 5;
/** A gather is this many webs wide at least. */
const GATHER_WEBS = 3.2;
const FAR_MM = 60;

/** Swags along the head: each hangs from two places on it, tassels between them. */
export function swagged(
  stage: Stage,
  dropMm: number,
  count: number,
  plenty: number,
  random: Random,
): Pelmet {
  const hooks = divided(stage.head, count);
  const hems = hooks.slice(1).map((to, k) => {
    const dip = dropMm * (1 - MEETING.swag) * (1 + 0.05 * random.branch(k).bell());
    return hemOf(hooks[k], to, MEETING.swag * dropMm, dip);
  });
  const swags = hems.map((hem) => upTo(hem));
  const inner = hooks
    .slice(1, -1)
    .filter((hook, k) => [hooks[k], hooks[k + 2]].every((next) => isLevel(hook, next)));
  const between = inner.flatMap(({ x, y }) =>
    tassel({ x, y: y + MEETING.swag * dropMm }, TASSEL * dropMm, stage.web),
  );
  const bobbles = hems.flatMap((hem) => fringe(hem, stage, inner));
  const folds = hems.flatMap((hem, k) =>
    swagFolds(hem, hooks[k], hooks[k + 1], plenty, random.branch(`fold ${k}`)),
  );
  return { shapes: [...swags, ...between, ...bobbles], folds };
}

/** A straight pelmet in gathers. */
export function gathered(
  stage: Stage,
  dropMm: number,
  count: number,
  plenty: number,
  random: Random,
): Pelmet {
  const least = GATHER_WEBS * Math.max(stage.web, stage.hole);
  const gathers = Math.max(3, Math.min(4 * count, Math.floor(stage.width / least)));
  const hooks = divided(stage.head, gathers);
  const hems = hooks.slice(1).map((to, k) => {
    const dip = (1 - MEETING.gather) * dropMm * (1 + 0.12 * random.branch(k).bell());
    return hemOf(hooks[k], to, MEETING.gather * dropMm, dip);
  });
  const folds = hooks.slice(1, -1).flatMap((hook, k) => {
    const luck = random.branch(`fold ${k}`);
    if (!luck.chance(Math.min(1, 0.45 + 0.5 * plenty))) return [];
    const [from, to] = [luck.between(0.05, 0.35), luck.between(0.55, 0.72)];
    const lean = 0.04 * dropMm * luck.bell();
    return [
      pen(hook.x, hook.y + from * dropMm)
        .quadTo(hook.x + lean, hook.y + 0.4 * dropMm, hook.x, hook.y + to * dropMm)
        .line(),
    ];
  });
  return { shapes: hems.map((hem) => upTo(hem)), folds };
}

/** A swag that falls more steeply than this from its hook would bury a tassel there. */
const STEEP = 0.4;

const isLevel = (a: Point, b: Point): boolean => Math.abs(b.y - a.y) < STEEP * Math.abs(b.x - a.x);

/** A hem from hook to hook, as a cloth hangs between them. */
function hemOf(a: Point, b: Point, startMm: number, dipMm: number): Point[] {
  return Array.from({ length: HEM_STEPS + 1 }, (_, i) => {
    const t = i / HEM_STEPS;
    return {
      x: a.x + t * (b.x - a.x),
      y: a.y + t * (b.y - a.y) + startMm + dipMm * hang(t),
    };
  });
}

/** Fuller than a parabola: cloth falls steeply from its hooks. */
const hang = (t: number): number => (4 * t * (1 - t)) ** 0.8;

/** All between a hem and far above it, a hair wider so that neighbours are one. */
function upTo(hem: readonly Point[]): Region {
  const [a, b] = [hem[0], hem[hem.length - 1]];
  const wide = 0.05;
  const line = pen(a.x - wide, a.y - FAR_MM).lineTo(a.x - wide, a.y);
  line.smoothTo(hem.slice(1, -1)).lineTo(b.x + wide, b.y);
  return shapeOf(line.lineTo(b.x + wide, b.y - FAR_MM).close());
}

/** Bobbles along a hem, clear of the tassels; none where too few find room. */
function fringe(hem: readonly Point[], { web, hole }: Stage, tassels: readonly Point[]): Region[] {
  const pitch = 1.08 * (web + 0.9 * hole);
  const length = hem
    .slice(1)
    .reduce((sum, p, i) => sum + Math.hypot(p.x - hem[i].x, p.y - hem[i].y), 0);
  const count = Math.floor(length / pitch);
  if (count < FEWEST) return [];
  return divided(hem, count)
    .slice(1, -1)
    .filter((p) => tassels.every(({ x }) => Math.abs(p.x - x) > TASSEL_ROOM * (web + hole)))
    .map(({ x, y }) => circle(x, y, BOBBLE * (length / count)));
}

/** Folds that follow the hem higher up, each fading before its hooks. */
function swagFolds(
  hem: readonly Point[],
  from: Point,
  to: Point,
  plenty: number,
  random: Random,
): Line[] {
  const count = Math.round(1 + 3 * plenty);
  return Array.from({ length: count }, (_, k) => {
    const luck = random.branch(k);
    const share = (k + 0.85) / (count + 0.35);
    const [start, end] = [luck.between(0.08, 0.2), luck.between(0.8, 0.92)];
    const points = hem
      .map((p, i) => {
        const t = i / HEM_STEPS;
        const top = from.y + t * (to.y - from.y);
        return { t, x: p.x, y: top + (p.y - top) * share };
      })
      .filter(({ t }) => t >= start && t <= end);
    return smoothLine(points);
  });
}
