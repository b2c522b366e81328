import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { type Random, randomFrom } from '../../src/scenery/random.js';
import { cardWith, grown } from './plots.js';

/** Smallest web and hole of laser, knife and press, mm. */
export const LIMITS = [
  [1, 1],
  [1.5, 2],
  [3, 3],
] as const;

/** A window of 160 x 130 mm in a card, seen from the middle of one of its sides. */
export function plotAt(side: Plot['side'], size: Partial<Plot>): Plot {
  const onJamb = side === 'left' || side === 'right';
  const x = side === 'left' ? 0 : side === 'right' ? -160 : -80;
  const y = onJamb ? -115 : -130;
  const sheet = rectangle(x - 90, y - 40, 340, 210);
  const window = rectangle(x, y, 160, 130);
  return {
    side,
    width: 60,
    height: 30,
    root: onJamb ? 55 : 10,
    smallestWeb: 1.5,
    smallestHole: 2,
    fineness: 0.3,
    frame: { card: subtract(sheet, [window]), bounds: regionBounds(sheet), window },
    ...size,
  };
}

/** Every parameter drawn, its ends more often than what lies between them. */
export const drawnValues = (family: Family, luck: Random) =>
  Object.fromEntries(
    Object.entries(family.parameters).map(([key, p]) => {
      if (p.kind === 'choice') return [key, luck.pick(p.options)];
      if (p.kind === 'flag') return [key, luck.chance(0.5)];
      if (p.kind === 'text' || p.kind === 'file') return [key, p.default];
      const end = luck.next();
      if (end < 0.3) return [key, end < 0.15 ? p.min : p.max];
      const whole = p.kind === 'number' && p.whole;
      return [key, whole ? luck.whole(p.min, p.max) : luck.between(p.min, p.max)];
    }),
  );

/** One thing drawn, the room that it was given, and what was asked for, in words. */
export interface Draw {
  readonly growth: Growth;
  readonly plot: Plot;
  readonly label: string;
}

/** The draw of this number: size, limits, side, values and seed all follow from it. */
export function drawOf(family: Family, n: number): Draw {
  const luck = randomFrom('draw', family.name, n);
  const [smallestWeb, smallestHole] = luck.pick(LIMITS);
  const side = luck.pick(family.sides);
  const width = luck.between(10, 150);
  const height = luck.between(6, side === 'sill' || side === 'head' ? 110 : 90);
  const fineness = luck.next();
  // What is turned to its side finds the window above its foot, as along a sill.
  const seen = family.stance === 'turned' ? 'sill' : side;
  const plot = plotAt(seen, { side, width, height, smallestWeb, smallestHole, fineness });
  const values = drawnValues(family, luck);
  const label = JSON.stringify({ n, side, width, height, smallestWeb, values });
  return { growth: grown(family, plot, values, n), plot, label };
}

/** What keeps a draw from being cut: one piece, rooted, no neck or part too narrow, no small hole. */
export function faultsOf({ growth, plot }: Pick<Draw, 'growth' | 'plot'>): string[] {
  const card = cardWith(plot, growth);
  const parts = components(subtract(growth.body, [growth.holes])).length;
  const inFrame = components(card).length;
  const narrow = narrowWebs(card, plot.smallestWeb - SLACK_MM).filter((p) => p.kind !== 'tip');
  const small = smallHoles(card, plot.smallestHole - SLACK_MM);
  const box = regionBounds(growth.body);
  // Upright on a jamb, a foot runs in behind the jamb; all else stands on what lies below, or is
  // carried from jamb to jamb as a moon by its band of cloud.
  const window = regionBounds(plot.frame.window);
  const standsBelow = window.maxY < SLACK_MM;
  const behindJamb = plot.side === 'right' ? box.maxX : -box.minX;
  const behindBoth = Math.min(window.minX - box.minX, box.maxX - window.maxX);
  const hangs = box.maxY < 0 && behindBoth > LEAST_ROOT_MM;
  const isRooted = standsBelow
    ? hangs || (box.maxY > LEAST_ROOT_MM && box.maxY < plot.root + 0.5)
    : behindJamb > LEAST_ROOT_MM;
  return [
    ...(parts === 1 ? [] : [`${parts} parts`]),
    ...(inFrame === 1 ? [] : [`${inFrame} parts with its frame`]),
    ...narrow.map(({ widthMm, kind }) => `${kind} of ${widthMm.toFixed(2)} mm`),
    ...small.map(() => 'a hole too small'),
    ...(isRooted ? [] : ['not rooted']),
  ];
}

const SLACK_MM = 0.02;
/** How deep a foot must run into the frame to read as one with it. */
const LEAST_ROOT_MM = 2;
