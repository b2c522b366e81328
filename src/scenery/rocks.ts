import { subtract, union } from '../geometry/boolean/boolean.js';
import { linesOutside, outlineLines } from '../geometry/clip-lines.js';
import { contourArea } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';
import { heapOf } from './rocks/heap.js';

const parameters = {
  size: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How large the boulders are: 0 many small ones, 1 a few great ones.',
  },
  worn: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How far water has rounded them: 0 fresh and angular, 1 smooth.',
  },
  planes: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How many boulders have their planes and cracks scored, 0 for none.',
  },
} as const;

/** Boulders heaped along the sill. */
export const rocks = family({
  name: 'rocks',
  says: 'Boulders heaped along the sill, with scored planes and cracks.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.5 }, height: { share: 0.16 } },
  made: {
    cut: 'the outline of the heap',
    scored: 'boulders, planes and cracks',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const heap = heapOf(plot, values.size, values.worn, values.planes, random);
  const { x0, x1 } = heap;
  const bed = rectangle(x0, -0.5, x1 - x0, plot.root + 0.5);
  const pile = withoutHoles(union([bed, ...heap.boulders.map((b) => b.outline)]));
  const { body } = fitToCut(pile, plot);
  // Boulders are listed from the back: each is hidden by those after it.
  const lines = heap.boulders.flatMap(({ outline, planes }, i) => {
    const before = heap.boulders.slice(i + 1).map((b) => b.outline);
    const own = [...outlineLines(outline), ...keptClear(planes, outline, CLEAR_MM / 2)];
    return before.length > 0 ? linesOutside(own, union(before)) : own;
  });
  const ground = subtract(body, [rectangle(x0 - 5, 0, x1 - x0 + 10, plot.root + 5)]);
  return { body, holes: EMPTY_REGION, scores: keptClear(lines, ground, CLEAR_MM), reliefs: [] };
}

const withoutHoles = ({ contours }: Region): Region => ({
  contours: contours.filter((c) => contourArea(c) > 0),
});
