import { subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { smoothLine } from '../geometry/pen.js';
import type { Line } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { drawRing, type RingJoint, radiatingJoints, ringRegion } from './brick/arch.js';
import { keptClear } from './brick/craft.js';
import { COURSE_MM, jointsOn, MASONRY, type Masonry } from './brick/facing.js';
import {
  anchorsOf,
  bandLines,
  bandOf,
  holeOf,
  keyLines,
  openingOf,
  pierLines,
  pierRegions,
  piersOf,
  wallOf,
} from './bridge/parts.js';
import { ARCHES, type ArchForm, type Profile, profileOf } from './bridge/profile.js';
import { family, type Growth, type Plot, type Relief } from './family.js';
import { caught } from './net.js';
import type { Random } from './random.js';

/** Scores keep this clear of cut edges, mm; wall joints stay a little further off. */
const CLEAR_MM = 1.2;
const JOINT_CLEAR_MM = 1.75;
/** Wall joints keep this far from drawn bands: nearer, a line looks drawn twice. */
const APART_MM = 0.8;
const RELIEF_MM = 0.3;
/** A voussoir's width as a share of the ring's depth. */
const VOUSSOIR: Record<Masonry, number> = { stone: 0.72, brick: 0.5 };
/** Joints of the ring start this far behind the soffit, mm. */
const SHY_MM = 0.4;

const parameters = {
  arch: {
    kind: 'choice',
    options: ARCHES,
    default: 'segmental',
    says: 'Form of the arch.',
  },
  masonry: {
    kind: 'choice',
    options: MASONRY,
    default: 'stone',
    says: 'What it is built of.',
  },
  span: {
    kind: 'number',
    default: 0.5,
    min: 0.25,
    max: 0.7,
    says: 'Width of the arch as a share of the bridge.',
  },
  hump: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How much the parapet rises over the arch: 0 level, 1 a steep hump.',
  },
  towpath: {
    kind: 'choice',
    options: ['none', 'left', 'right'],
    default: 'left',
    says: 'The side on which a path passes under the arch.',
  },
  coverage: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'Share of the wall whose joints are drawn.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** An arched bridge over the water. */
export const bridge = family({
  name: 'bridge',
  says: 'An arched bridge over the water, of stone or brick, with a humped parapet.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.34 } },
  made: {
    cut: 'outline and arches',
    scored: 'joints of the masonry',
    embossed: 'arch ring, piers and coping, on a backdrop',
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const masonry = values.masonry as Masonry;
  const form = values.arch as ArchForm;
  const p = profileOf(plot, form, values.span, values.hump, random.branch('profile'));
  const opening = openingOf(p);
  const ring = radiatingJoints(p.soffit, p.ring, p.ring * VOUSSOIR[masonry]);
  const piers = piersOf(p);
  const pierStones = piers.flatMap((pier, i) => pierRegions(p, pier, random.branch(`pier ${i}`)));
  const coping = bandOf(p, p.top, p.coping, 0);
  const body = union([wallOf(p), coping, ...pierStones]);
  const holes = holeOf(p, opening, values.towpath, random.branch('hole'));
  const card = subtract(body, [holes]);

  const lines = [
    ...ringLines(masonry, p, ring, random.branch('ring')),
    smoothLine(p.soffit),
    ...bandLines(p, piers, random.branch('bands')),
    ...piers.flatMap((pier, i) => pierLines(p, pier, random.branch(`lines ${i}`))),
  ];
  const face = subtract(offset(card, -JOINT_CLEAR_MM), [
    ringRegion(ring),
    opening,
    bandOf(p, (x) => p.road(x) - APART_MM, p.band + 2 * APART_MM, 1),
    bandOf(p, p.top, p.coping + APART_MM, 1),
    ...pierStones,
  ]);
  const { fineness } = plot;
  const joints = jointsOn(
    face,
    {
      masonry,
      courseMm: COURSE_MM[masonry],
      anchors: anchorsOf(p, ring, piers),
      coverage: values.coverage,
      fineness,
    },
    random.branch('face'),
  );
  // On a panel without a window nothing is cut: what stands proud is pressed instead.
  const proud =
    plot.frame.window.contours.length === 0 ? [ringRegion(ring), coping, ...pierStones] : [];
  const reliefs: Relief[] =
    proud.length > 0 ? [{ region: union(proud), side: 'raised', depthMm: RELIEF_MM }] : [];
  const scores = [...keptClear(lines, card, CLEAR_MM), ...joints];
  return caught({ body, holes, scores, reliefs }, plot);
}

/** Stone: one ring with its key. Brick: two rings of half a brick, each jointed for itself. */
function ringLines(
  masonry: Masonry,
  p: Profile,
  ring: readonly RingJoint[],
  random: Random,
): Line[] {
  const whole = (r: readonly RingJoint[]) => new Set(r.slice(1).keys());
  if (masonry === 'stone') {
    return [...drawRing(ring, whole(ring), SHY_MM, random), ...keyLines(ring)];
  }
  const width = p.ring * VOUSSOIR.brick;
  const inner = radiatingJoints(p.soffit, p.ring / 2, width);
  const outer = radiatingJoints(
    inner.map((j) => j.head),
    p.ring / 2,
    width,
  );
  return [inner, outer].flatMap((r, i) => drawRing(r, whole(r), SHY_MM, random.branch(i)));
}
