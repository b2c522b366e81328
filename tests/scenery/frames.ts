import { expect } from 'vitest';
import { windowOutline } from '../../src/book/window-outline.js';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { EMPTY_REGION } from '../../src/geometry/types.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { WindowForm } from '../../src/scene/scene.js';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { randomFrom } from '../../src/scenery/random.js';
import { drawnValues, LIMITS } from './draws.js';
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

/** Draws window shapes, sizes, margins, limits, values and seeds, and looks at what comes of it. */
export function eachFrame(
  family: Family,
  draws: number,
  look: (growth: Growth, plot: Plot, label: string) => void,
): void {
  for (let n = 0; n < draws; n++) {
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
    look(grown(family, plot, values, n), plot, label);
  }
}

/**
 * One piece with the frame, no neck too narrow and no hole too small; scores clear of every cut.
 * Where there is no window nothing is cut, and something is scored or pressed.
 */
export function expectFrameFitToCut(growth: Growth, plot: Plot, label: string): void {
  const card = cardWith(plot, growth);
  if (plot.frame.window.contours.length === 0) {
    expect(growth.body, label).toEqual(EMPTY_REGION);
    expect(growth.scores.length + growth.reliefs.length, label).toBeGreaterThan(0);
  } else {
    expect(components(card).length, label).toBe(1);
    const narrow = narrowWebs(card, plot.smallestWeb - 0.02).filter((p) => p.kind !== 'tip');
    expect(narrow, `${label} web`).toEqual([]);
    expect(smallHoles(card, plot.smallestHole - 0.02), `${label} hole`).toEqual([]);
  }
  if (growth.scores.length > 0) {
    expect(clearance(growth.scores, card), `${label} scores`).toBeGreaterThanOrEqual(1.48);
  }
}
