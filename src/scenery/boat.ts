import { subtract } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import { pen, smoothLine } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { hullOf, KINDS, type Kind, type Kit, kitOf, strakes } from './boat/kit.js';
import { VESSELS } from './boat/vessels.js';
import { keptClear, shapeOf } from './brick/craft.js';
import { CLEAR_MM, finished, levelOf } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';

const parameters = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'narrowboat',
    says: 'What boat it is: a canal boat, a skiff with oars, a sloop, or a fishing boat.',
  },
  crew: {
    kind: 'flag',
    default: false,
    says: 'Somebody aboard.',
  },
  load: {
    kind: 'number',
    default: 0.2,
    min: 0,
    max: 1,
    says: 'How deep it lies in the water: 0 light, 1 laden.',
  },
  ripples: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'Wavelets along the hull and ripples scored on the frame under it, 0 for none.',
  },
} as const;

/** A boat on the water. */
export const boat = family({
  name: 'boat',
  says: 'A boat afloat on the sill: a narrowboat, a rowing, sailing or fishing boat.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { mm: 70 }, height: { mm: 34 } },
  made: {
    cut: 'hull, cabin, windows, sails and rigging',
    scored: 'planks, seams of the sails, ripples',
    embossed: null,
  },
  parts: ['hull', 'sails'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const vessel = VESSELS[values.kind as Kind];
  const hand = random.branch('way').chance(0.5) ? -1 : 1;
  const kit = kitOf(plot, vessel.design, values.load, levelOf(plot), hand);
  const hull = hullOf(kit, vessel.sheer, vessel.stern, vessel.bow);
  const above = vessel.above(kit, values.crew, random.branch('above'));
  const water = waterUnder(kit, vessel.stern[0], vessel.bow[0], values.ripples, random);
  const planks = strakes(kit, hull, vessel.sheer, random.branch('strakes'));
  const growth = finished(
    {
      solids: [hull, ...water, ...above.solids],
      cuts: above.cuts,
      lines: [...planks, ...above.lines],
      parts: { hull: [hull], sails: above.sails ?? [] },
    },
    plot,
    { x: 0, y: plot.root },
  );
  const ripples = ripplesBy(kit, values.ripples, random.branch('ripples'));
  return { ...growth, scores: [...growth.scores, ...onFrame(ripples, plot, growth.body)] };
}

/** Wavelets stand up this much, mm, and are this many times as long. */
const WAVE_MM = [0.5, 1.5] as const;
const WAVE_LONG = [4.5, 7] as const;

/** The bed that holds the hull in the frame, and wavelets where stem and stern meet the water. */
function waterUnder(kit: Kit, stern: number, bow: number, much: number, random: Random): Region[] {
  const [a, b] = [kit.at(stern, 0).x, kit.at(bow, 0).x];
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const bed = rectangle(from, 0, to - from, kit.plot.root);
  if (much === 0) return [bed];
  const waves = [a, b, a + (b - a) * 0.08, b - (b - a) * 0.05].map((x, i) => {
    const luck = random.branch(`wave ${i}`);
    const high = (WAVE_MM[0] + (WAVE_MM[1] - WAVE_MM[0]) * much) * luck.between(0.7, 1.2);
    const half = (high * luck.between(...WAVE_LONG)) / 2;
    return shapeOf(
      pen(x - half, 0.4)
        .curveTo(x - half * 0.4, 0.2, x - half * 0.4, -high, x, -high)
        .curveTo(x + half * 0.4, -high, x + half * 0.4, 0.2, x + half, 0.4)
        .close(),
    );
  });
  return [bed, ...waves];
}

/** Broken level strokes on the frame under the boat, longer toward the reader. */
function ripplesBy({ plot, level }: Kit, much: number, random: Random): Line[] {
  const rows = Math.round(much * (2 + level));
  return Array.from({ length: rows * 3 }, (_, i) => {
    const luck = random.branch(i);
    const row = Math.floor(i / 3);
    const y = 2.4 + row * 2.1 + luck.between(-0.4, 0.4);
    const x = plot.width * luck.between(-0.5, 0.42);
    const long = (5 + 3 * row) * luck.between(0.7, 1.4);
    const bow = luck.between(-0.2, 0.2);
    return smoothLine([
      { x, y },
      { x: x + long / 2, y: y + bow },
      { x: x + long, y },
    ]);
  });
}

/** Scores where they lie on the frame, or anywhere but on the boat where there is no window. */
function onFrame(lines: readonly Line[], plot: Plot, body: Region): Line[] {
  if (lines.length === 0) return [];
  const { card, window } = plot.frame;
  const free = window.contours.length > 0 ? card : subtract(card, [offset(body, 0.5)]);
  return keptClear(lines, free, CLEAR_MM);
}
