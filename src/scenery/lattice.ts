import { subtract, union } from '../geometry/boolean/boolean.js';
import { outlineLines } from '../geometry/clip-lines.js';
import { offset, stroke } from '../geometry/offset/offset.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { family, type Growth, type Plot } from './family.js';
import { CLEAR_MM } from './land/ground.js';
import { diamonds, panes, radial } from './lattice/bars.js';
import { tracery } from './lattice/tracery.js';
import { fitInWindow, inWindow } from './window/fit.js';
import { inOpening } from './window/growth.js';
import { type Opening, openingFor } from './window/opening.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['panes', 'diamonds', 'gothic', 'radial'],
    default: 'panes',
    says: 'Rectangular panes, diamonds, gothic tracery, or rays and rings for round windows.',
  },
  pane: {
    kind: 'length',
    default: 20,
    min: 6,
    max: 60,
    says: 'Width of a pane, light or ray; evened out so that whole ones fill the window.',
  },
  bar: {
    kind: 'length',
    default: 1.6,
    min: 0.8,
    max: 8,
    says: 'Width of the bars; never less than the process can cut.',
  },
  fill: {
    kind: 'number',
    default: 1,
    min: 0.2,
    max: 1,
    says: 'Share of the height that is filled, from the head down: 1 for all of the window.',
  },
  rim: {
    kind: 'flag',
    default: true,
    says: 'A line round the window, as of the frame that the bars are set in.',
  },
} as const;

/** A window filled with glazing bars. */
export const lattice = family({
  name: 'lattice',
  says: 'Glazing bars that fill the window: panes, diamonds, gothic tracery or a wheel.',
  sides: ['head'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: 'the panes between the bars', scored: 'a line round the window', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

/** A hair more than what is left standing of the finest parts once a drawing is made fit to cut. */
const AMPLE = 1.065;
/** The rim's line lies this far out, mm. */
const RIM_MM = CLEAR_MM + 0.4;
/** Bars aslant leave less room between them than they are apart along the head. */
const ASLANT = 1.4;
/** A pane is at least so wide: that many smallest holes beside its bar. */
const LEAST_PANE_HOLES = 1.6;

function grow(plot: Plot, values: ValuesOf<typeof parameters>): Growth {
  const opening = openingFor(plot);
  const { window, bounds } = opening;
  const bar = Math.max(values.bar, AMPLE * plot.smallestWeb);
  const least = bar + LEAST_PANE_HOLES * plot.smallestHole;
  const pane = Math.max(values.pane, values.form === 'diamonds' ? ASLANT * least : least);
  const bars = barsOf(values.form, opening, pane, bar);
  const foot = bounds.minY + values.fill * (bounds.maxY - bounds.minY);
  const all = stroke(bars, bar, { cap: 'butt' });
  const card = fitInWindow(inWindow([filled(all, opening, foot, bar)], window), window, plot);
  const rim: Line[] = values.rim ? outlineLines(offset(window, RIM_MM)) : [];
  return inOpening(plot, opening, card, rim);
}

function barsOf(form: string, opening: Opening, pane: number, bar: number): Line[] {
  switch (form) {
    case 'diamonds':
      return diamonds(opening.bounds, pane);
    case 'gothic':
      return tracery(opening, pane, bar);
    case 'radial':
      return radial(opening, pane, bar);
    default:
      return panes(opening.bounds, pane);
  }
}

/** What of the bars lies over the foot, closed there by a bar of its own where they end early. */
function filled(bars: Region, { bounds }: Opening, foot: number, bar: number): Region {
  const { minX, maxX, maxY } = bounds;
  if (foot > maxY - 2 * bar) return bars;
  const width = maxX - minX + 20;
  const below = rectangle(minX - 10, foot, width, maxY - foot + 20);
  return union([subtract(bars, [below]), rectangle(minX - 10, foot - bar, width, bar)]);
}
