import { subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { rounded } from './brick/craft.js';
import { family, type Growth, type Plot, type Relief } from './family.js';
import { fitToCut } from './land/fit.js';
import type { Random } from './random.js';
import { bandOf } from './stars/band.js';
import { netOf, stringsOf } from './stars/hung.js';
import type { Wanted } from './stars/places.js';
import { starShape } from './stars/star.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['strings', 'net', 'cut'],
    default: 'strings',
    says: 'Stars on strings, in a net of threads, or cut as holes in a band of sky; on a backdrop all are drawn.',
  },
  shape: {
    kind: 'choice',
    options: ['star', 'round', 'mixed'],
    default: 'star',
    says: 'Stars with points, small rounds, or both.',
  },
  points: {
    kind: 'number',
    whole: true,
    default: 5,
    min: 4,
    max: 6,
    says: 'How many points a star has.',
  },
  count: {
    kind: 'number',
    whole: true,
    default: 18,
    min: 3,
    max: 40,
    says: 'How many stars are wanted; fewer where there is no room for them.',
  },
  size: {
    kind: 'number',
    default: 0.2,
    min: 0,
    max: 1,
    says: 'How large the stars are: 0 as small as can be cut, 1 a few great ones.',
  },
  raised: {
    kind: 'flag',
    default: false,
    says: 'The stars pressed up from the card, where they are not holes.',
  },
} as const;

/** Radius of a middling star as a share of the plot's mean size. */
const RADIUS = [0.045, 0.15] as const;
/** Least radius of a star in webs, and of one that is a hole in holes. */
const LEAST = { card: 3.1, hole: 1.4 } as const;
const RELIEF_MM = 0.35;
/** A raised star keeps this clear of its own edge, mm. */
const CLEAR_MM = 1.2;

/** Stars hung from the head. */
export const stars = family({
  name: 'stars',
  says: 'Stars hung from the head on strings or in a net, or pierced in a band of sky.',
  sides: ['head'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 0.6 } },
  made: {
    cut: 'stars and threads, or holes in a band of sky',
    scored: 'their outlines where there is no window',
    embossed: 'stars raised, where asked',
  },
  parts: ['stars', 'threads'],
  parameters,
  stance: 'turned',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const { smallestWeb, smallestHole } = plot;
  const isCut = values.form === 'cut';
  const mean = Math.sqrt(plot.width * plot.height);
  const least = isCut ? LEAST.hole * smallestHole : LEAST.card * smallestWeb;
  const wanted: Wanted = {
    ...values,
    least,
    radius: Math.max(1.15 * least, (RADIUS[0] + (RADIUS[1] - RADIUS[0]) * values.size) * mean),
    apart: isCut ? 1.6 * smallestWeb : smallestHole + 1.2 * smallestWeb,
  };
  return isCut ? pierced(plot, wanted, values.raised, random) : hung(plot, wanted, values, random);
}

function hung(
  plot: Plot,
  wanted: Wanted,
  { form, raised }: ValuesOf<typeof parameters>,
  random: Random,
): Growth {
  const { stars, threads } = (form === 'net' ? netOf : stringsOf)(plot, wanted, random);
  const shapes = stars.map(starShape);
  const drawn = union([threads, ...shapes]);
  const { body, holes } = fitToCut(drawn, plot, stars[0]);
  const own = union(shapes);
  return {
    body,
    holes,
    scores: [],
    reliefs: raised ? raise(own, subtract(body, [holes])) : [],
    parts: { stars: own, threads: subtract(threads, [own]) },
  };
}

function pierced(plot: Plot, wanted: Wanted, raised: boolean, random: Random): Growth {
  const { sky, stars } = bandOf(plot, wanted, random);
  const { body } = fitToCut(sky, plot);
  const shapes = union(stars.map((s) => rounded(starShape(s), 0.2 * plot.smallestHole)));
  const isOpen = plot.frame.window.contours.length > 0;
  return {
    body,
    holes: shapes,
    scores: [],
    reliefs: raised && !isOpen ? raise(shapes, shapes) : [],
    parts: { stars: shapes, threads: EMPTY_REGION },
  };
}

function raise(shapes: Region, card: Region): Relief[] {
  const region = offset(shapes, -CLEAR_MM);
  if (region.contours.length === 0 || card.contours.length === 0) return [];
  return [{ region, side: 'raised', depthMm: RELIEF_MM }];
}
