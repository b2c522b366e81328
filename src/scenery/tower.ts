import { subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { rectangle } from '../geometry/primitives.js';
import type { ValuesOf } from '../scene/parameter.js';
import { endsOf, keptClear, mix, wholeHoles } from './brick/craft.js';
import { jointsOn } from './brick/facing.js';
import type { Built } from './cottage/plan.js';
import { family, type Growth, type Plot } from './family.js';
import { creased } from './grass/tidy.js';
import type { Random } from './random.js';
import { castleOn } from './tower/castle.js';
import { churchOn } from './tower/church.js';
import { lighthouseOn } from './tower/lighthouse.js';
import type { Site } from './tower/parts.js';

const FORMS = ['church', 'castle', 'lighthouse'] as const;
type Form = (typeof FORMS)[number];

/** Scores keep this clear of cut edges, mm; wall joints stay a little further off. */
const CLEAR_MM = 1.5;
const JOINT_CLEAR_MM = 1.75;
/** A far tower has lower courses than a wall close by. */
const STONE_MM = 3.3;
const CREASE_MM = 0.35;
/** Half the shaft's width as a share of the height, slim and stout, and its least in webs. */
const GIRTH: Record<Form, readonly [number, number]> = {
  church: [0.1, 0.18],
  castle: [0.14, 0.28],
  lighthouse: [0.1, 0.17],
};
const LEAST_WEBS = 1.9;
/** The shaft takes at most this share of half the plot, as its foot and parapet stand out. */
const OF_PLOT = 0.72;
/** How far a church's nave, and its porch opposite, run out, in heights. */
const NAVE = [0.65, 0.95] as const;
const PORCH = [0.11, 0.19] as const;

const parameters = {
  form: {
    kind: 'choice',
    options: FORMS,
    default: 'church',
    says: 'What it is: a church with a spire, a castle with battlements, a lighthouse.',
  },
  girth: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How stout the tower is: 0 slim, 1 broad.',
  },
  lit: {
    kind: 'flag',
    default: true,
    says: 'Openings are cut out, so that light falls through; otherwise they are scored.',
  },
  coverage: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'Share of the walls whose joints are drawn.',
  },
} as const;

const BUILDERS: Record<Form, (site: Site, random: Random) => Built> = {
  church: churchOn,
  castle: castleOn,
  lighthouse: lighthouseOn,
};

/** A tower, with what stands at its foot where there is room. */
export const tower = family({
  name: 'tower',
  says: 'A church tower with its nave, a castle with battlements, or a lighthouse on its rock.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.45 }, height: { share: 0.75 } },
  made: {
    cut: 'outline, and openings where they are large enough',
    scored: 'joints, string courses, doors',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const site = siteOf(plot, values.form as Form, values.girth, values.lit, random.branch('site'));
  const built = BUILDERS[values.form as Form](site, random.branch('built'));
  const bed = rectangle(site.left, -0.5, site.right - site.left, plot.root + 0.5);
  const body = creased(union([bed, ...built.solids]), CREASE_MM);
  const holes = union(wholeHoles(built.holes, plot.frame));
  const card = subtract(body, [holes]);
  const ground = rectangle(site.left - 5, 0, site.right - site.left + 10, plot.root + 5);
  const face = subtract(offset(card, -JOINT_CLEAR_MM), [ground, ...built.bare]);
  const joints = jointsOn(
    face,
    {
      masonry: 'stone',
      courseMm: STONE_MM,
      anchors: built.anchors,
      coverage: values.coverage,
      fineness: plot.fineness,
    },
    random.branch('face'),
  );
  const lines = keptClear(built.lines, subtract(card, [ground]), CLEAR_MM);
  return { body, holes, scores: [...lines, ...joints], reliefs: [] };
}

function siteOf(plot: Plot, form: Form, girth: number, lit: boolean, random: Random): Site {
  const { width, height, smallestWeb: web } = plot;
  const wanted = Math.max(LEAST_WEBS * web, mix(...GIRTH[form], girth) * height);
  const half = Math.min(wanted, (OF_PLOT * width) / 2);
  const hand = random.branch('hand').chance(0.5) ? 1 : -1;
  const nave = height * random.branch('nave').between(...NAVE);
  const porch = height * random.branch('porch').between(...PORCH);
  const ends = endsOf(plot);
  const reach = (side: -1 | 1): number => {
    const end = side === 1 ? ends.right : -ends.left;
    return side * Math.max(half, Math.min(end, half + longest(side)));
  };
  // A castle's walls and a rock run as far as the plot does; a church has a nave and a porch.
  const longest = (side: -1 | 1): number =>
    form !== 'church' ? Infinity : side === hand ? nave : porch;
  return { plot, half, left: reach(-1), right: reach(1), hand, lit };
}
