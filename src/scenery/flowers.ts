import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { regionOf } from '../geometry/pen.js';
import { type Cubics, EMPTY_REGION, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { bank } from './bank.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { bedHeight, type Stem, tuftsOf } from './flowers/bed.js';
import { daisy } from './flowers/daisy.js';
import { HEADS, type HeadDrawing } from './flowers/head.js';
import { basalLeaves, stemLeaves } from './flowers/leaves.js';
import { spike } from './flowers/spike.js';
import { tulip } from './flowers/tulip.js';
import { umbel } from './flowers/umbel.js';
import { ribbon, spindle, taper, wayOn } from './grass/ribbon.js';
import { creased } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';

const parameters = {
  kind: {
    kind: 'choice',
    options: [...HEADS, 'mixed'],
    default: 'mixed',
    says: 'Flat umbels, spikes of bells, daisies, tulips, or all of them mixed.',
  },
  leaves: {
    kind: 'choice',
    options: ['alternate', 'opposite'],
    default: 'alternate',
    says: 'Leaves on the stems by turns left and right, or in pairs.',
  },
  leafy: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How many leaves there are: 0 few at the foot only, 1 a thicket.',
  },
  bloom: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How closely flowers stand: 0 a few single ones, 1 a full border.',
  },
  sway: {
    kind: 'number',
    default: 4,
    min: -25,
    max: 25,
    says: 'How far the stems lean along the edge, in degrees; positive to the right.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** A flowering border. */
export const flowers = family({
  name: 'flowers',
  says: 'A flowering border: umbels, spikes, daisies or tulips on leafy stems, in tufts.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.33 } },
  made: {
    cut: 'stems, leaves and flower heads; florets of large daisies',
    scored: 'ribs of leaves, petals of tulips',
    embossed: 'florets of smaller daisies',
  },
  parts: ['blossom', 'leaf'],
  parameters,
  stance: 'turned',
  grow,
});

const DRAW = { daisy, spike, tulip, umbel } as const;
/** Creases between pieces are rounded to this. */
const CREASE_MM = 0.4;
const PRESS_DEPTH_MM = 0.3;
/** Pressed florets keep this clear of cut edges. */
const BOSS_CLEAR_MM = 0.8;

function grow(plot: Plot, values: Values, random: Random): Growth {
  const tufts = tuftsOf(plot, values, random.branch('bed'));
  const stems = tufts.flatMap((t) => t.stems);
  const heads = stems.map((stem) => headOf(stem, plot, random.branch(`head ${stem.key}`)));
  const leaves = tufts.flatMap((tuft) => [
    ...basalLeaves(tuft, plot, values.leafy, random.branch(`foot ${tuft.key}`)),
    ...tuft.stems.flatMap((stem) =>
      stemLeaves(stem, plot, values.leafy, values.leaves, random.branch(`leaves ${stem.key}`)),
    ),
  ]);
  const low = Math.max(0.7, Math.min(1.6, 0.06 * bedHeight(plot)));
  const ground = bank(plot, low, Math.min(3, 1.9 * low), random.branch('bank'));
  const green = together([...stems.map(stalk), ...leaves.map((l) => l.outline)]);
  const colour = together(heads.flatMap((h) => h.card));
  const mass = creased(union([regionOf(ground), green, colour]), CREASE_MM);
  const florets = heads.flatMap((h) => h.holes);
  const { body, holes } = fitToCut(subtract(mass, florets), plot);
  const card = subtract(body, [holes]);
  const scores = [
    ...leaves.filter((_, i) => i % 4 === 0).map((l) => l.rib),
    ...heads.flatMap((h) => h.scores),
  ];
  const bosses = heads.flatMap((h) => h.bosses);
  return {
    body,
    holes,
    scores: keptClear(scores, card, CLEAR_MM),
    reliefs: pressed(bosses, card),
    parts: { blossom: intersect(colour, body), leaf: intersect(subtract(green, [colour]), body) },
  };
}

/** Bosses that the card holds whole. */
function pressed(bosses: readonly Region[], card: Region): Growth['reliefs'] {
  if (bosses.length === 0) return [];
  const region = intersect(union(bosses), offset(card, -BOSS_CLEAR_MM));
  return region.contours.length > 0 ? [{ region, side: 'raised', depthMm: PRESS_DEPTH_MM }] : [];
}

const together = (contours: readonly Cubics[]): Region =>
  contours.length > 0 ? union(contours.map((c) => regionOf(c))) : EMPTY_REGION;

const stalk = ({ arc, widthMm }: Stem): Cubics =>
  ribbon(arc, taper(0.56 * widthMm, 0.46 * widthMm, 1));

function headOf(stem: Stem, plot: Plot, random: Random): HeadDrawing {
  const { arc, half, length, widthMm } = stem;
  const way = wayOn(arc, 1);
  if (stem.isBud) return { card: [bud(stem)], holes: [], scores: [], bosses: [] };
  const place = {
    neck: { x: arc.to.x - 0.3 * widthMm * way.x, y: arc.to.y - 0.3 * widthMm * way.y },
    headingDeg: (Math.atan2(way.y, way.x) * 180) / Math.PI,
    half,
    length,
  };
  return DRAW[stem.kind](place, plot, random);
}

/** A closed bud on the stem's end. */
function bud({ arc, half, length, widthMm }: Stem): Cubics {
  const way = wayOn(arc, 1);
  const at = (mm: number) => ({ x: arc.to.x + mm * way.x, y: arc.to.y + mm * way.y });
  const long = Math.max(Math.min(length, 2.6 * half), 2.4 * widthMm);
  return ribbon(
    { from: at(-0.2 * widthMm), control: at(long / 2), to: at(long) },
    spindle(0.5 * widthMm, Math.max(0.7 * half, 0.95 * widthMm), 0.42),
    'round',
  );
}
