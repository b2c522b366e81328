import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { regionOf } from '../geometry/pen.js';
import { simplifyRegion } from '../geometry/tidy/simplify.js';
import { type Cubics, EMPTY_REGION } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { bank } from './bank.js';
import { keptClear, rounded } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { clumpHeight, clumpsOf } from './fern/clump.js';
import { crozier } from './fern/crozier.js';
import { frond, KINDS } from './fern/frond.js';
import { creased } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import { caught } from './net.js';
import type { Random } from './random.js';

const parameters = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'feather',
    says: 'Feathered fronds that taper both ways, broad bracken, or undivided tongues.',
  },
  arch: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How far the fronds arch over: 0 upright, 1 tips hanging down.',
  },
  full: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How many fronds a clump has, from few to many.',
  },
  croziers: {
    kind: 'number',
    default: 1,
    min: 0,
    max: 3,
    whole: true,
    says: 'How many young fronds, still rolled up, stand in each clump that is large enough to cut them.',
  },
} as const;

/** Clumps of fern. */
export const fern = family({
  name: 'fern',
  says: 'Clumps of fern: arching fronds whose pinnae taper to the tip, with rolled-up young ones.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.5 }, height: { share: 0.36 } },
  made: {
    cut: 'fronds, croziers and the light between the pinnae',
    scored: 'midribs where a frond is broad enough',
    embossed: null,
  },
  parts: ['frond', 'crozier'],
  parameters,
  stance: 'turned',
  grow,
});

/** Creases between pieces are rounded to this. */
const CREASE_MM = 0.35;
/** Pinnae by the hundred are drawn with fewer curves, which all that follows is quicker for. */
const FEW_CURVES_MM = 0.02;
/** Half the breadth of what counts as a stub, in smallest webs. */
const STUB = 0.4;

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const clumps = clumpsOf(plot, values, random.branch('clumps'));
  const fronds = clumps.flatMap((clump) =>
    clump.fronds.map(({ key, arc }) =>
      frond(arc, values.kind, plot, random.branch(`frond ${key}`)),
    ),
  );
  const rolled = clumps.flatMap((clump) =>
    clump.croziers.flatMap((c) => crozier({ x: c.x, y: 0.5 }, c.heightMm, c.side, plot)),
  );
  const low = Math.max(0.7, Math.min(1.4, 0.05 * clumpHeight(plot)));
  const ground = bank(plot, low, Math.min(3, 1.9 * low), random.branch('bank'));
  const green = together(fronds.flatMap((f) => f.outlines));
  const young = together(rolled);
  const drawn = creased(union([regionOf(ground), green, young]), CREASE_MM);
  const rough = fitToCut(simplifyRegion(drawn, FEW_CURVES_MM), plot);
  // Where a notch had to be filled, a stub is left of the pinna beside it: shaved off.
  const card = simplifyRegion(subtract(rough.body, [rough.holes]), FEW_CURVES_MM);
  const blunt = rounded(card, STUB * plot.smallestWeb);
  // The bank keeps its square foot.
  const body = simplifyRegion(union([blunt, regionOf(ground)]), FEW_CURVES_MM);
  const ribs = fronds.map((f) => f.rib);
  const growth = {
    body,
    holes: EMPTY_REGION,
    scores: keptClear(ribs, body, CLEAR_MM),
    reliefs: [],
    parts: { frond: intersect(green, body), crozier: intersect(subtract(young, [green]), body) },
  };
  return caught(growth, plot);
}

const together = (contours: readonly Cubics[]) => union(contours.map((c) => regionOf(c)));
