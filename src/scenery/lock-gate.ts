import { subtract, union } from '../geometry/boolean/boolean.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { aboveRoot } from './above-root.js';
import { handDrawn, keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { beamOf, handrailOf } from './lock-gate/beam.js';
import { gearOf } from './lock-gate/gear.js';
import { joinTimber, leafOf } from './lock-gate/leaf.js';
import { sideOf } from './lock-gate/side.js';
import { type Hand, onLeaf, type Stand, standOf } from './lock-gate/stand.js';
import { caught } from './net.js';
import type { Random } from './random.js';

const HANDS: readonly Hand[] = [-1, 1];
/** Scores keep this clear of cut edges, mm. */
const CLEAR_MM = 1;

const parameters = {
  opening: {
    kind: 'number',
    default: 0,
    min: 0,
    max: 1,
    says: 'How far the gates stand ajar: 0 shut, 1 swung right back.',
  },
  beams: {
    kind: 'number',
    default: 0.6,
    min: 0.2,
    max: 1,
    says: 'How far the balance beams reach out over the lock sides, as a share of half the lock.',
  },
  bays: {
    kind: 'number',
    default: 0.34,
    min: 0,
    max: 1,
    says: 'Share of the bays between the rails that are left open, from the top down.',
  },
  handrail: {
    kind: 'flag',
    default: true,
    says: 'A handrail over the walkway.',
  },
  sides: {
    kind: 'flag',
    default: true,
    says: 'Brick lock sides that the gates are hung from.',
  },
} as const;

/** A pair of mitre gates across the water. */
export const lockGate = family({
  name: 'lock-gate',
  says: 'A pair of mitre gates seen along the water, with balance beams and paddle gear.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.32 } },
  made: {
    cut: 'beams, leaves and the gaps between their planks',
    scored: 'planks, straps and gear',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const stand = standOf(plot, values.opening, values.beams, random.branch('stand'));
  const timber = joinTimber(
    HANDS.flatMap((hand) => {
      const luck = random.branch(hand);
      return [
        leafOf(stand, hand, values.bays, luck.branch('leaf')),
        beamOf(stand, hand, luck.branch('beam')),
        gearOf(stand, hand, luck.branch('gear')),
        ...(values.handrail ? [handrailOf(stand, hand, luck.branch('rail'))] : []),
      ];
    }),
  );
  const sides = values.sides
    ? HANDS.map((hand) => sideOf(stand, hand, random.branch(`side ${hand}`)))
    : [];
  const solids = [...timber.solids, ...sides.flatMap((s) => s.solids)];
  const holes = union(timber.holes);
  const body = aboveRoot(union([...solids, cillOf(stand, values.sides)]), plot.root);
  const card = subtract(body, [holes]);
  const lines = [...timber.lines, ...mitreLine(stand, random), ...sides.flatMap((s) => s.lines)];
  return caught({ body, holes, scores: keptClear(lines, card, CLEAR_MM), reliefs: [] }, plot);
}

/** The cill under the water, in the frame: it holds both leaves together. */
function cillOf(stand: Stand, sides: boolean): Region {
  const { ends, half, plot } = stand;
  const left = sides ? ends.left : -half;
  const right = sides ? ends.right : half;
  return rectangle(left, 0, right - left, plot.root);
}

/** Closed leaves meet in one joint. */
function mitreLine(stand: Stand, random: Random): Line[] {
  if (!stand.shut) return [];
  const top = onLeaf(stand, 1, stand.leaf, stand.up.beam).y;
  return [
    handDrawn(
      [
        { x: 0, y: 0 },
        { x: 0, y: top },
      ],
      0.1,
      random.branch('mitre'),
    ),
  ];
}
