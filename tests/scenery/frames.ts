import { windowOutline } from '../../src/book/window-outline.js';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { EMPTY_REGION } from '../../src/geometry/types.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { WindowForm } from '../../src/scene/scene.js';
import type { Family, Plot } from '../../src/scenery/family.js';
import { randomFrom } from '../../src/scenery/random.js';
import { type Draw, drawnValues, LIMITS } from './draws.js';
import { cardWith, clearance, grown } from './plots.js';

const SHAPES = ['rectangle', 'rounded', 'arch', 'pointed', 'circle', 'ellipse', 'none'] as const;
export type FrameShape = (typeof SHAPES)[number];

/** A panel with a margin of card round a window of the shape; origin at the window's foot. */
export function framePlot(
  shape: FrameShape,
  width: number,
  height: number,
  changes: Partial<Plot> & { marginMm?: number } = {},
): Plot {
  const { marginMm = 18, ...rest } = changes;
  const panel = rectangle(
    -width / 2 - marginMm,
    -height - marginMm,
    width + 2 * marginMm,
    height + 2 * marginMm,
  );
  const form = { shape, radius: 6 } as WindowForm;
  const window =
    shape === 'none' ? EMPTY_REGION : windowOutline(form, -width / 2, -height, width, height);
  return {
    side: 'sill',
    width: width + 2 * marginMm,
    height: height + marginMm,
    root: marginMm,
    smallestWeb: 1.5,
    smallestHole: 2,
    fineness: 0.3,
    frame: {
      card: window.contours.length > 0 ? subtract(panel, [window]) : panel,
      bounds: regionBounds(panel),
      window,
    },
    ...rest,
  };
}

/** The draw of this number: window, margins, limits, values and seed all follow from it. */
export function frameDrawOf(family: Family, n: number): Draw {
  const luck = randomFrom('frame', family.name, n);
  const shape = luck.pick(SHAPES);
  const [smallestWeb, smallestHole] = luck.pick(LIMITS);
  const width = luck.between(30, 160);
  const least = shape === 'pointed' ? 0.95 * width : shape === 'arch' ? 0.6 * width : 26;
  const height = shape === 'circle' ? width : luck.between(least, Math.max(least, 130));
  const marginMm = luck.between(6, 30);
  const fineness = luck.next();
  const plot = framePlot(shape, width, height, { marginMm, smallestWeb, smallestHole, fineness });
  const values = drawnValues(family, luck);
  const label = JSON.stringify({ n, shape, width, height, smallestWeb, fineness, values });
  return { growth: grown(family, plot, values, n), plot, label };
}

/**
 * What keeps a frame from being cut: one piece with the card, no neck too narrow, no hole too small,
 * scores clear of every cut. Where there is no window nothing is cut.
 */
export function frameFaultsOf({ growth, plot }: Pick<Draw, 'growth' | 'plot'>): string[] {
  const card = cardWith(plot, growth);
  const faults: string[] = [];
  if (plot.frame.window.contours.length === 0) {
    if (growth.body.contours.length > 0) faults.push('cut without a window');
  } else {
    const parts = components(card).length;
    if (parts !== 1) faults.push(`${parts} parts`);
    const narrow = narrowWebs(card, plot.smallestWeb - 0.02).filter((p) => p.kind !== 'tip');
    faults.push(...narrow.map(({ widthMm, kind }) => `${kind} of ${widthMm.toFixed(2)} mm`));
    faults.push(...smallHoles(card, plot.smallestHole - 0.02).map(() => 'a hole too small'));
  }
  if (growth.scores.length > 0 && clearance(growth.scores, card) < 1.48) {
    faults.push('a score too near to a cut');
  }
  return faults;
}
