import type { Line, Region } from '../../geometry/types.js';
import type { Anchor } from '../brick/patches.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const VIEWS = ['eaves', 'gable'] as const;
export type View = (typeof VIEWS)[number];

/** One box of the house, mm; y negative upward from the ground. */
export interface Block {
  readonly x0: number;
  readonly x1: number;
  readonly eaves: number;
  readonly ridge: number;
}

/** What openings and chimneys are drawn by. */
export interface Scale {
  readonly plot: Plot;
  /** 1 for a house 50 mm high: everything drawn by hand follows it. */
  readonly size: number;
  /** Narrowest bar worth cutting: the process's web and a little for the hand. */
  readonly bar: number;
  /** Lines keep this far behind the edge of an opening, mm. */
  readonly shy?: number;
}

/** The house set out on its plot. */
export interface House extends Scale {
  readonly view: View;
  readonly main: Block;
  /** The lower part beside it, or null on a narrow plot. */
  readonly wing: Block | null;
  /** The wing is on the left (-1) or on the right (1). */
  readonly hand: -1 | 1;
  /** How far the ridge sags in its middle, mm. */
  readonly sag: number;
}

/** What a part of the house adds to the drawing. */
export interface Built {
  readonly solids: readonly Region[];
  readonly holes: readonly Region[];
  readonly lines: readonly Line[];
  /** Where wall joints gather. */
  readonly anchors: readonly Anchor[];
  /** Where no wall joints are drawn. */
  readonly bare: readonly Region[];
}

export const NOTHING: Built = { solids: [], holes: [], lines: [], anchors: [], bare: [] };

export const joinBuilt = (parts: readonly Built[]): Built => ({
  solids: parts.flatMap((b) => b.solids),
  holes: parts.flatMap((b) => b.holes),
  lines: parts.flatMap((b) => b.lines),
  anchors: parts.flatMap((b) => b.anchors),
  bare: parts.flatMap((b) => b.bare),
});

/** The house is drawn for a plot of this height. */
const FULL_HEIGHT_MM = 50;
/** No wing on a plot narrower than this, in mm at full size. */
const WING_FROM_MM = 30;
const SAG_MM = 1.6;

export function setOutHouse(plot: Plot, view: View, sag: number, random: Random): House {
  const { width, height } = plot;
  const size = Math.min(height / FULL_HEIGHT_MM, width / 38);
  const hand = random.branch('hand').chance(0.5) ? -1 : 1;
  const luck = random.branch('sizes');
  const eaves = -height * luck.between(0.44, 0.49);
  const ridge = -height * luck.between(0.76, 0.81);
  const share = luck.between(0.62, 0.7);
  const low = eaves * luck.between(0.68, 0.76);
  // The eaves stand out over the walls by about a millimetre on either side.
  const edge = width / 2 - 1;
  const main = { x0: -edge, x1: -edge + 2 * edge * share, eaves, ridge };
  const wing = { x0: main.x1, x1: edge, eaves: low, ridge: low * luck.between(1.42, 1.55) };
  const alone = { x0: -edge, x1: edge, eaves, ridge };
  const drawn = width >= WING_FROM_MM;
  return {
    plot,
    view,
    main: drawn ? turned(main, hand) : alone,
    wing: drawn ? turned(wing, hand) : null,
    hand,
    size,
    bar: plot.smallestWeb * 1.08 + 0.1,
    sag: SAG_MM * size * sag,
  };
}

/** The block as drawn for a wing on the right, or mirrored for one on the left. */
const turned = (b: Block, hand: -1 | 1): Block => (hand === 1 ? b : { ...b, x0: -b.x1, x1: -b.x0 });
