import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { boundsOf } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { regionOf } from '../geometry/pen.js';
import { type Bounds, type Cubics, EMPTY_REGION, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { bank } from './bank.js';
import { keptClear, mix } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { creased } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';
import { kelp } from './seaweed/kelp.js';
import { lace } from './seaweed/lace.js';
import { current, holdfasts, weedHeight } from './seaweed/stand.js';
import { KINDS, type Kind } from './seaweed/weed.js';
import { wrack } from './seaweed/wrack.js';

const parameters = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'wrack',
    says: 'Kelp in long waved ribbons with floats, forking wrack with paired bladders, or lace.',
  },
  sway: {
    kind: 'number',
    default: 10,
    min: -35,
    max: 35,
    says: 'How far the water carries all of it along the edge, in degrees; positive to the right.',
  },
  thick: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How closely the plants stand: 0 a few apart, 1 a forest.',
  },
} as const;

/** Seaweed for a tide pool. */
export const seaweed = family({
  name: 'seaweed',
  says: 'Seaweed that sways together: ribbons of kelp, forking wrack with bladders, or fine lace.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.6 }, height: { share: 0.42 } },
  made: {
    cut: 'ribbons, forking blades, floats and bladders',
    scored: 'midribs of kelp and wrack',
    embossed: 'floats and bladders',
  },
  parts: ['blade', 'float'],
  parameters,
  stance: 'turned',
  grow,
});

const DRAW = { kelp, wrack, lace } as const;
/** From plant to plant in heights, thin and thick, and the margin at the plot's ends. */
const STEP: Record<Kind, readonly [number, number]> = {
  kelp: [0.66, 0.28],
  wrack: [1.0, 0.46],
  lace: [1.1, 0.5],
};
const MARGIN: Record<Kind, number> = { kelp: 0.1, wrack: 0.18, lace: 0.2 };
const LEAST_STEP_WEBS = 5;
/** Creases between pieces are rounded to this. */
const CREASE_MM = 0.4;
const PRESS = { depthMm: 0.3, clearMm: 0.7 };

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const { kind, sway, thick } = values;
  const height = weedHeight(plot);
  const step = Math.max(mix(...STEP[kind], thick) * height, LEAST_STEP_WEBS * plot.smallestWeb);
  const flow = current(sway, height, random.branch('current'));
  const places = holdfasts(plot, step, MARGIN[kind] * height, random.branch('holdfasts'));
  const weeds = places.map((at) => DRAW[kind](at, flow, plot, random.branch(`weed ${at.key}`)));
  const low = Math.max(0.7, Math.min(1.5, 0.05 * height));
  const rock = regionOf(bank(plot, low, Math.min(3, 2 * low), random.branch('rock')));
  const blades = together(weeds.flatMap((w) => w.card));
  const floats = together(weeds.flatMap((w) => w.floats));
  const { body, holes } = fitToCut(creased(union([rock, blades, floats]), CREASE_MM), plot);
  const ribs = weeds.flatMap((w) => w.ribs);
  return {
    body,
    holes,
    scores: keptClear(ribs, subtract(body, [holes, floats]), CLEAR_MM),
    reliefs: raised(
      weeds.flatMap((w) => w.floats),
      subtract(body, [holes]),
    ),
    parts: { float: intersect(floats, body), blade: intersect(subtract(blades, [floats]), body) },
  };
}

/** The floats that lie by themselves, as far as they can be pressed: clear of every cut edge. */
function raised(floats: readonly Cubics[], card: Region): Growth['reliefs'] {
  const boxes = floats.map((f) => boundsOf([f]));
  const alone = floats.filter((_, i) => boxes.every((box, k) => k === i || apart(box, boxes[i])));
  const region = intersect(offset(together(alone), -PRESS.clearMm), offset(card, -PRESS.clearMm));
  const isThere = region.contours.length > 0;
  return isThere ? [{ region, side: 'raised', depthMm: PRESS.depthMm }] : [];
}

/** Whether two boxes overlap by less than half of the smaller one, both ways. */
function apart(a: Bounds, b: Bounds): boolean {
  const x = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const y = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return (
    x < 0.5 * Math.min(a.maxX - a.minX, b.maxX - b.minX) ||
    y < 0.5 * Math.min(a.maxY - a.minY, b.maxY - b.minY)
  );
}

const together = (contours: readonly Cubics[]): Region =>
  contours.length > 0 ? union(contours.map((c) => regionOf(c))) : EMPTY_REGION;
