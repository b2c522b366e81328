import type { LayerColours } from './layer-colours.js';
import type { Extent, Side } from './parameter.js';

/** Exactly what the scene file says, defaults filled in, every length in millimetres. */
export interface Scene {
  readonly title: string;
  readonly unit: Unit;
  /** Everything random in the book follows from this number. */
  readonly seed: number;
  readonly process: ProcessName;
  readonly panel: { readonly width: number; readonly height: number };
  /** Number of panels, backdrop counted. */
  readonly panels: number;
  /** From one panel to the next in the open book. */
  readonly spacing: number;
  /** From the reader's eye to the front panel. */
  readonly readingDistance: number;
  readonly windows: WindowSeries | readonly WindowChoice[];
  readonly spine: SpineChoice;
  /** The card of each panel, front first, `panels` of them. */
  readonly cards: readonly Stock[];
  readonly spineCard: Stock;
  readonly scenery: readonly SceneElement[];
  readonly layerColours: LayerColours;
}

export const UNITS = ['mm', 'cm', 'in'] as const;
export type Unit = (typeof UNITS)[number];

export const PROCESSES = ['knife', 'laser', 'press'] as const;
export type ProcessName = (typeof PROCESSES)[number];

export const WINDOW_SHAPES = [
  'rectangle',
  'rounded',
  'arch',
  'pointed',
  'circle',
  'ellipse',
] as const;
export type WindowShape = (typeof WINDOW_SHAPES)[number];

export const SCORINGS = ['both', 'front'] as const;
export type Scoring = (typeof SCORINGS)[number];

/** What can be done of an element where it stands on the frame. */
export const FRAME_WORKS = ['score', 'raise', 'sink', 'none'] as const;
export type FrameWork = (typeof FRAME_WORKS)[number];

/** How what changes from panel to panel does so: evenly, or as equal things run away from the eye. */
export const CARRIES = ['straight', 'perspective'] as const;
export type Carry = (typeof CARRIES)[number];

/** What can be done with a part that would fall out. */
export const HEALS = ['error', 'bridge', 'drop'] as const;
export type Heal = (typeof HEALS)[number];

/** The window's form, without its size. */
export interface WindowForm {
  readonly shape: WindowShape;
  /** Corner radius of a rounded window. */
  readonly radius: number;
}

/** What the scene says of one window's size and place; what is left out follows from the rest. */
export interface WindowChoice extends WindowForm {
  readonly width?: number;
  readonly height?: number;
  /** Card above, below and to each side of the window. */
  readonly head?: number;
  readonly sill?: number;
  readonly jamb?: number;
}

/** The front window, and how the deeper ones follow from it. */
export interface WindowSeries {
  readonly first: WindowChoice;
  /** How much narrower and lower each deeper window is, in all (both sides together). */
  readonly step: { readonly width: number; readonly height: number };
  /** The edges that stay where they are while the window shrinks; none: it stays centred. */
  readonly hold: readonly Side[];
}

export interface SpineChoice {
  /** Fold to fold. When left out it follows from the angle. */
  readonly pitch?: number;
  /** Inside angle between neighbouring faces of the open book. */
  readonly angleDeg?: number;
  /** Width of the tab at each end of a strip. */
  readonly tab: number;
  /** `both`: valleys are scored from the back, each groove outside its fold. */
  readonly scoring: Scoring;
}

/** A kind of card and the sheet it comes in. */
export interface Stock {
  readonly name: string;
  /** As #rrggbb. */
  readonly colour: string;
  readonly gramsPerM2: number;
  readonly caliperMm: number;
  /** Grain runs along the sheet's height. */
  readonly sheet: { readonly name: string; readonly width: number; readonly height: number };
  /** Kept free at every edge of the sheet. */
  readonly margin: number;
}

/** A value that may change evenly from the first to the last panel that an element runs through. */
export type Carried<T> = { readonly from: T; readonly to: T };

/** One element of scenery as the scene asks for it. */
export interface SceneElement {
  /** Unique in the scene; its random stream follows from it. */
  readonly id: string;
  /** The family's name. */
  readonly element: string;
  /** Panel numbers it stands in, ascending, 1 = front. */
  readonly panels: readonly number[];
  readonly carry: Carry;
  readonly side: Side;
  /** Its middle, along the side from the left (sill, head) or from the top (jambs). */
  readonly at: Carried<Extent>;
  readonly width: Carried<Extent>;
  readonly height: Carried<Extent>;
  /** Lifts its foot off the window's edge into the window; negative sinks it into the frame. */
  readonly lift: Carried<Extent>;
  readonly mirror: boolean;
  /** Another number draws another plant of the same kind. */
  readonly seed: number;
  /** What is done of it where it stands on the frame. */
  readonly frame: FrameWork;
  /** What is done with a part that would fall out. */
  readonly heal: Heal;
  readonly values: Readonly<Record<string, Carried<number> | string | boolean>>;
}

/** What a process can make in card and what card can stand afterwards, in mm. */
export interface ProcessLimits {
  /** Narrowest card to leave between two cuts. */
  readonly smallestWeb: number;
  /** Narrowest gap to cut between two edges of card. */
  readonly smallestSlot: number;
  /** Smallest diameter of a hole. */
  readonly smallestHole: number;
  /** How far a score keeps from a cut, so that the edge neither tears nor becomes a hinge. */
  readonly scoreClearance: number;
}
