import type { LayerColours } from '../scene/layer-colours.js';
import type { ProcessLimits } from '../scene/scene.js';
import type { Face } from './layers.js';

/** One machine with its settings for one kind of card. Lengths in mm, speeds in mm/s. */
export type Process = KnifeProcess | LaserProcess | PressProcess;

/** What every process has. */
export interface ProcessBase {
  /** Such as `laser`, or the name of the maker's own file. */
  readonly name: string;
  readonly limits: ProcessLimits;
  readonly bed: Bed;
  /** The faces of the card that it can work, where card can be turned over to the same stops. */
  readonly faces: readonly Face[];
  /** What is done first, what last. */
  readonly order: readonly WorkedOperation[];
  readonly operations: Readonly<Record<WorkedOperation, OperationSettings>>;
  readonly motion: Motion;
  /** Folds as one light line, or as short cuts with ties between. */
  readonly folds: FoldStyle;
  readonly nibs: Nibs;
  readonly rates: Rates;
}

/** A blade that is dragged on a swivel. */
export interface KnifeProcess extends ProcessBase {
  readonly kind: 'knife';
  readonly blade: Blade;
  readonly relief: StylusRelief;
}

export interface LaserProcess extends ProcessBase {
  readonly kind: 'laser';
  /** Full width of what the beam burns away. */
  readonly kerfMm: number;
  /** Plain straight edges that two pieces have in common are cut once. */
  readonly sharedEdges: boolean;
  /** The card lies face down, mirrored, so that soot settles on its back. */
  readonly faceDown: boolean;
  readonly relief: EngravedRelief;
  readonly heat: Heat;
}

/** Dies in a press, or a knife in the hand: the lines as they are designed. */
export interface PressProcess extends ProcessBase {
  readonly kind: 'press';
}

/** Operations that work the card; guides are only looked at. */
export type WorkedOperation = Exclude<keyof LayerColours, 'guide'>;

export interface OperationSettings {
  /** How often each line is gone over. */
  readonly passes: number;
  readonly speedMmS: number;
  /** Stroke colour in the files; null: ours. The scene's own colours come before it. */
  readonly stroke: string | null;
}

export const CORNERS = ['top left', 'top right', 'bottom left', 'bottom right'] as const;
export type Corner = (typeof CORNERS)[number];

/** The mat or bed that a sheet lies on. */
export interface Bed {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Kept free at its edges: no path may come nearer. */
  readonly marginMm: number;
  /** Where sheets are laid up and the head comes from. */
  readonly origin: Corner;
}

/** How the head moves, for order and time. */
export interface Motion {
  /** Between two paths. */
  readonly travelMmS: number;
  readonly accelerationMmS2: number;
  /** Lifting and setting down the tool, or switching the beam, once for each path. */
  readonly liftS: number;
  /** How far a corner may be rounded at speed: more is faster. */
  readonly cornerMm: number;
  /** Laying up a sheet, turning it over, or changing the tool: once for each. */
  readonly stopS: number;
}

export type FoldStyle =
  | { readonly how: 'line' }
  | { readonly how: 'perforation'; readonly cutMm: number; readonly tieMm: number };

/** Uncut bits that hold a part in its sheet. */
export interface Nibs {
  /** To each closed cut; 0 for none. */
  readonly count: number;
  readonly widthMm: number;
}

export interface Blade {
  /** How far the tip trails the axis that it swivels on. */
  readonly offsetMm: number;
  /** How far a closed cut runs on past its start. */
  readonly overcutMm: number;
  /** The files swing the blade round corners; for machines that do not. */
  readonly compensate: boolean;
}

export const STYLUS_HATCHES = ['outline', 'rings', 'hatch', 'cross', 'stipple', 'none'] as const;
export type StylusHatch = (typeof STYLUS_HATCHES)[number];

/** Relief pressed with a ball. */
export interface StylusRelief {
  readonly how: StylusHatch;
  /** Of hatching, anticlockwise from the card's width. */
  readonly angleDeg: number;
  /** From stroke to stroke in diameters of the ball. */
  readonly apartBalls: number;
}

export const ENGRAVINGS = ['hatch', 'contour', 'none'] as const;
export type Engraving = (typeof ENGRAVINGS)[number];

/** Relief burnt into the card's face. */
export interface EngravedRelief {
  readonly how: Engraving;
  readonly angleDeg: number;
  /** From line to line. */
  readonly apartMm: number;
}

/** What keeps fine lace from scorching. */
export interface Heat {
  /** Of two cuts one after the other, no two points should come nearer than this where it can be
   * helped. */
  readonly apartMm: number;
  /** Cut length in mm for each mm2 of card and holes beyond which lace scorches. */
  readonly densestPerMm: number;
}

/** The maker's own prices, in a currency of their own; nothing is priced while all are 0. */
export interface Rates {
  readonly currency: string;
  /** For each order, whatever its size. */
  readonly setUp: number;
  /** For each hour that the machine runs. */
  readonly hour: number;
  /** For each sheet of card. */
  readonly sheet: number;
  /** Copies of the book that a quote lists. */
  readonly quantities: readonly number[];
}
