import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const GABLES = ['mixed', 'stepped', 'curved', 'pitched', 'flat'] as const;
export type GableChoice = (typeof GABLES)[number];
export type Gable = Exclude<GableChoice, 'mixed'>;
const ONE_OF: readonly Gable[] = ['stepped', 'curved', 'pitched', 'flat'];

/** One front of a row, mm; y negative upward from the ground. */
export interface Front {
  readonly gable: Gable;
  readonly x0: number;
  readonly x1: number;
  readonly eaves: number;
  readonly top: number;
  /** Floors from the ground up: the level of each one's foot and its height. */
  readonly floors: readonly { readonly foot: number; readonly height: number }[];
  /** Windows beside each other on a floor. */
  readonly columns: number;
}

/** A front is about this wide for its height, and never narrower than this many webs. */
const WIDE = [0.52, 0.7] as const;
const LEAST_WEBS = 6;
/** Fronts of a row differ in width and height. */
const UNEVEN = 0.14;
const LOWER = 0.16;
/** Eaves as a share of the height. */
const EAVES: Record<Gable, number> = { stepped: 0.7, curved: 0.7, pitched: 0.72, flat: 0.86 };
/** The ground floor is higher than those over it, each of which is a little lower again. */
const GROUND = 1.25;
const DIMINISHING = 0.92;
/** A bay is this wide for a floor's height. */
const BAY = 0.62;
const MOST_COLUMNS = 4;

/** As many fronts as the plot is wide enough for, side by side. */
export function rowOf(plot: Plot, choice: GableChoice, storeys: number, random: Random): Front[] {
  const { width, height, smallestWeb: web } = plot;
  const wanted = Math.max(LEAST_WEBS * web, random.branch('wide').between(...WIDE) * height);
  const count = Math.max(1, Math.round(width / wanted));
  const lone = count === 1 ? Math.min(width, 1.15 * height) : width;
  const parts = Array.from({ length: count }, (_, i) =>
    random.branch(`width ${i}`).between(1 - UNEVEN, 1 + UNEVEN),
  );
  const sum = parts.reduce((a, b) => a + b, 0);
  const tallest = random.branch('tallest').whole(0, count - 1);
  let x0 = -lone / 2;
  let before: Gable | null = null;
  return parts.map((part, i) => {
    const luck = random.branch(`front ${i}`);
    const x1 = x0 + (lone * part) / sum;
    const down = luck.between(0, LOWER);
    const top = -height * (i === tallest ? 1 : 1 - down);
    const pick: Gable = luck.pick(ONE_OF.filter((g) => g !== before));
    const gable: Gable = choice === 'mixed' ? pick : choice;
    before = gable;
    const front = frontOf(plot, gable, x0, x1, top, storeys, luck);
    x0 = x1;
    return front;
  });
}

function frontOf(
  plot: Plot,
  gable: Gable,
  x0: number,
  x1: number,
  top: number,
  storeys: number,
  luck: Random,
): Front {
  const { smallestWeb: web, smallestHole: hole } = plot;
  // A wide front has a low gable rather than a steep one.
  const rise = Math.min(-top * (1 - EAVES[gable]), gable === 'flat' ? Infinity : 0.62 * (x1 - x0));
  const eaves = top + Math.max(rise * luck.between(0.94, 1.06), gable === 'flat' ? 1.3 * web : 0);
  const least = 1.2 * hole + 1.5 * web;
  let floors = floorsOf(-eaves, storeys);
  for (let n = storeys - 1; n >= 1 && floors[floors.length - 1].height < least; n--) {
    floors = floorsOf(-eaves, n);
  }
  const bay = Math.max(BAY * floors[0].height, 1.2 * hole + 1.6 * web);
  const columns = Math.max(1, Math.min(MOST_COLUMNS, Math.floor((x1 - x0 - 0.8 * web) / bay)));
  return { gable, x0, x1, eaves, top, floors, columns };
}

function floorsOf(height: number, storeys: number): Front['floors'] {
  const parts = Array.from({ length: storeys }, (_, i) =>
    i === 0 ? GROUND : DIMINISHING ** (i - 1),
  );
  const sum = parts.reduce((a, b) => a + b, 0);
  let foot = 0;
  return parts.map((part) => {
    const floor = { foot, height: (height * part) / sum };
    foot -= floor.height;
    return floor;
  });
}

/** The middle of a column of windows. */
export const columnAt = ({ x0, x1, columns }: Front, k: number): number =>
  mix(x0, x1, (k + 0.5) / columns);
