import { subtract, union } from '../geometry/boolean/boolean.js';
import {
  type Affine,
  inOrder,
  moveLine,
  movePoint,
  moveRegion,
  scaling,
  translation,
} from '../geometry/transform.js';
import type { ValuesOf } from '../scene/parameter.js';
import { type Air, BEHIND_MM, branchOf, flockOf } from './birds/flight.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';
import { type Sky, skyOf } from './sky/upright.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['branch', 'flock'],
    default: 'branch',
    says: 'Birds sitting on a branch, or a flock in flight, wing-tip to wing-tip.',
  },
  count: {
    kind: 'number',
    whole: true,
    default: 4,
    min: 1,
    max: 9,
    says: 'How many birds there are; fewer where there is no room for them.',
  },
  rise: {
    kind: 'number',
    default: 0.5,
    min: -1,
    max: 1,
    says: 'How far their line climbs from the jamb, or to the right: 1 steeply, 0 level, below 0 down.',
  },
  leaves: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How leafy a branch is, 0 for bare.',
  },
  feathers: {
    kind: 'flag',
    default: true,
    says: 'Wings and feathers scored on birds that are large enough.',
  },
} as const;

/** Birds by a jamb, from jamb to jamb, or hung from the head. */
export const birds = family({
  name: 'birds',
  says: 'Birds on a branch or a flock in flight, from jamb to jamb, out from a jamb or hung from the head.',
  sides: ['head', 'left', 'right'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 0.4 } },
  made: {
    cut: 'birds, branch and leaves',
    scored: 'wings and feathers',
    embossed: null,
  },
  parts: ['birds', 'branch'],
  parameters,
  stance: 'turned',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const sky = skyOf(plot);
  const { air, toPlot } = airOf(plot, sky);
  const { count, rise, leaves } = values;
  const group =
    values.form === 'flock'
      ? flockOf(air, count, rise, random)
      : branchOf(air, count, rise, leaves, random);
  const own = moveRegion(union(group.birds.map(({ region }) => region)), toPlot);
  const carrier = moveRegion(union(group.carrier), toPlot);
  const { body, holes } = fitToCut(union([own, carrier]), plot, movePoint(group.held, toPlot));
  const lines = group.birds.flatMap((bird) => bird.lines).map((line) => moveLine(line, toPlot));
  const card = subtract(body, [holes]);
  return {
    body,
    holes,
    scores: values.feathers ? keptClear(lines, card, CLEAR_MM) : [],
    reliefs: [],
    parts: { birds: own, branch: subtract(carrier, [own]) },
  };
}

/** The air as drawn from its left end, and the way from there to the plot. */
function airOf(plot: Plot, sky: Sky): { air: Air; toPlot: Affine } {
  const { smallestWeb, root } = plot;
  const { box, opening } = sky;
  const isOpen = plot.frame.window.contours.length > 0;
  const near = 1.5 * plot.smallestHole;
  const meets = (edge: number, jamb: number): boolean => isOpen && Math.abs(edge - jamb) < near;
  if (plot.side === 'head') {
    const atStart = meets(box.minX, opening.minX);
    const across = meets(box.maxX, opening.maxX);
    const from = atStart ? opening.minX : box.minX;
    const reach = (across ? opening.maxX : box.maxX) - from;
    const half = plot.height / 2;
    // A backdrop needs no stays: there the birds are only drawn.
    const hung = { start: isOpen && !atStart, end: isOpen && !across };
    const air = {
      reach,
      half,
      root: isOpen ? BEHIND_MM : 0,
      headRoot: root,
      smallestWeb,
      across,
      hung,
    };
    return { air, toPlot: inOrder(translation(from, half), sky.toPlot) };
  }
  const far = plot.side === 'left' ? opening.maxX : -opening.minX;
  const across = isOpen && plot.height > far - near;
  const reach = across ? far : plot.height;
  const hung = { start: false, end: false };
  const air = { reach, half: plot.width / 2, root, headRoot: 0, smallestWeb, across, hung };
  return { air, toPlot: inOrder(scaling(plot.side === 'right' ? -1 : 1, 1), sky.toPlot) };
}
