import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { rectangle } from '../geometry/primitives.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { COURSE_MM, jointsOn, MASONRY, type Masonry } from './brick/facing.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { archStones, wallAnchors, wallLines } from './wall/lines.js';
import { wallParts } from './wall/outline.js';
import { GATEWAYS, type GatewayKind, setOutWall } from './wall/plan.js';

/** Scores keep this clear of cut edges, mm; wall joints stay a little further off. */
const CLEAR_MM = 1.5;
const JOINT_CLEAR_MM = 1.75;
/** Wall joints keep this far from dressed stones: nearer, a line looks drawn twice. */
const APART_MM = 0.6;

const parameters = {
  gateway: {
    kind: 'choice',
    options: GATEWAYS,
    default: 'none',
    says: 'A way through: an arch under raised masonry, or a gap.',
  },
  masonry: {
    kind: 'choice',
    options: MASONRY,
    default: 'brick',
    says: 'What it is built of.',
  },
  piers: {
    kind: 'flag',
    default: true,
    says: 'Piers with balls on their caps.',
  },
  broken: {
    kind: 'flag',
    default: false,
    says: 'One end has fallen, or, between two jambs, a breach; toothed by quarter bricks.',
  },
  coverage: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'Share of the wall whose joints are drawn.',
  },
} as const;

/** A garden wall along the sill. */
export const wall = family({
  name: 'wall',
  says: 'A garden wall with its coping, piers with balls, a gateway or a broken end.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.34 } },
  made: {
    cut: 'the outline and the gateway',
    scored: 'joints, coping and piers',
    embossed: 'coping and piers, on a backdrop',
  },
  parameters,
  parts: ['dressed'],
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const masonry = values.masonry as Masonry;
  const { piers, broken } = values;
  const wanted = { masonry, gateway: values.gateway as GatewayKind, piers, broken };
  const plan = setOutWall(plot, wanted, random.branch('plan'));
  const { body, holes, dressed } = wallParts(plan, random.branch('parts'));
  const card = subtract(body, [holes]);
  const ground = rectangle(plan.left, 0, plan.right - plan.left, plot.root + 1);
  const proud = union([...dressed, ...archStones(plan)]);
  const face = subtract(offset(card, -JOINT_CLEAR_MM), [ground, offset(proud, APART_MM)]);
  const joints = jointsOn(
    face,
    {
      masonry,
      courseMm: COURSE_MM[masonry],
      anchors: wallAnchors(plan),
      coverage: values.coverage,
      fineness: plot.fineness,
    },
    random.branch('face'),
  );
  const drawn = subtract(card, [ground]);
  const lines = keptClear(wallLines(plan, random.branch('lines')), drawn, CLEAR_MM);
  const stones = intersect(proud, drawn);
  const isBackdrop = plot.frame.window.contours.length === 0;
  return {
    body,
    holes,
    scores: [...lines, ...joints],
    reliefs: isBackdrop ? [{ region: stones, side: 'raised', depthMm: 0.3 }] : [],
    parts: { dressed: stones },
  };
}
