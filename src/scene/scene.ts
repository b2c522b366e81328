import type { LayerColours } from './layer-colours.js';
import type { Extent, Side } from './parameter.js';

/** Exactly what the scene file says, defaults filled in, every length in millimetres. */
export interface Scene {
  readonly title: string;
  readonly unit: Unit;
  /** Everything random in the book follows from this number. */
  readonly seed: number;
  /** A process of ours, or the path of a settings file from the scene's folder. */
  readonly process: ProcessName | SettingsFile;
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
  readonly detail: DetailOrder;
  /** Diameter of the ball that patterns are pressed with. */
  readonly ballMm: number;
  /** Later ones stand in front of earlier ones. */
  readonly scenery: readonly SceneElement[];
  readonly backings: readonly Backing[];
  /** Null: relief is pressed by the machine's own tool. */
  readonly stencils: StencilChoice | null;
  /** Stroke colours in the files that are not as the process has them. */
  readonly strokes: Partial<LayerColours>;
}

export const UNITS = ['mm', 'cm', 'in'] as const;
export type Unit = (typeof UNITS)[number];

export const PROCESSES = ['knife', 'laser', 'press'] as const;
export type ProcessName = (typeof PROCESSES)[number];

/** A file with the settings of the maker's own machine. */
export type SettingsFile = `${string}.yaml` | `${string}.yml`;

export const isSettingsFile = (said: string): said is SettingsFile => /.\.ya?ml$/.test(said);

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

/** Patterns that pressed areas can be filled with. */
export const TEXTURES = ['stipple', 'brick', 'bark', 'water', 'linen'] as const;
export type TextureName = (typeof TEXTURES)[number];

/** What can be done of a part of an element. */
export const WORKS = ['cut', 'score', 'raise', 'sink', 'none'] as const;
export type Work = (typeof WORKS)[number];

/**
 * Parts that every element has: where it stands, and halves and quarters of its own box, the finer
 * ones last.
 */
export const ZONES = [
  'window',
  'frame',
  'left half',
  'right half',
  'upper half',
  'lower half',
  'upper left quarter',
  'upper right quarter',
  'lower left quarter',
  'lower right quarter',
] as const;
export type Zone = (typeof ZONES)[number];

/** A part treated apart from the rest: a zone, or a part that its family names. */
export interface Treatment {
  readonly part: string;
  readonly work: Work;
}

/** Where an element may stand: in the window, on the frame, or across the edge of both. */
export const STANDS = ['across', 'window', 'frame'] as const;
export type Stand = (typeof STANDS)[number];

/** How fine an element's detail is; `auto` follows the book's order of detail. */
export const DETAILS = ['auto', 'coarse', 'medium', 'fine'] as const;
export type Detail = (typeof DETAILS)[number];

/** Where in the book detail is coarse and where fine. */
export const DETAIL_ORDERS = ['coarse in front', 'fine in front', 'even'] as const;
export type DetailOrder = (typeof DETAIL_ORDERS)[number];

/** The ends of an edge: left and right of sill and head, top and foot of a jamb. */
export const ENDS = ['start', 'end'] as const;
export type End = (typeof ENDS)[number];

/** Several of one element along its side, none overlapping another. */
export interface Scatter {
  readonly count: number;
  /** Least gap between neighbours, mm. */
  readonly gap: number;
  /** Sizes drawn between these, as shares of the size said. */
  readonly sizes: { readonly from: number; readonly to: number };
}

/** How a loose piece is held off its panel. */
export const MOUNTS = ['flat', 'pad', 'spacer'] as const;
export type Mount = (typeof MOUNTS)[number];

/** How the place of a loose piece is shown on its panel. */
export const PLACE_MARKS = ['guide', 'score'] as const;
export type PlaceMark = (typeof PLACE_MARKS)[number];

/** An element cut as a piece of its own and glued to its panel. */
export interface Loose {
  /** Null: the card of its panel. */
  readonly card: Stock | null;
  /** Before the panel or behind it, as the reader looks. */
  readonly place: 'front' | 'behind';
  readonly mount: Mount;
  /** How far the mount holds it off, mm; 0 when flat. */
  readonly standOff: number;
  /** How far its foot runs on over the panel's card to be glued, mm. */
  readonly glue: number;
  readonly mark: PlaceMark;
  readonly copies: number;
}

/** Card, paper or film glued behind holes, hidden but for them. */
export interface Backing {
  /** Unique in the scene. */
  readonly id: string;
  readonly panels: readonly number[];
  readonly card: Stock;
  /** The id of an element whose holes it closes; null for the window itself. */
  readonly behind: string | null;
  /** Only the holes of this part of the element; null for all. */
  readonly part: string | null;
  /** How far it runs on behind the card to be glued, mm. */
  readonly glue: number;
  readonly mark: PlaceMark;
}

/** A box that the members of a group are measured in and that is carried as one element is. */
export interface GroupBox {
  readonly panels: readonly number[];
  readonly carry: Carry;
  readonly side: Side;
  readonly at: Carried<Extent>;
  readonly width: Carried<Extent>;
  readonly height: Carried<Extent>;
  readonly lift: Carried<Extent>;
  readonly mirror: boolean;
}

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

/** Plates of board between which relief is pressed by hand or in a roller press. */
export interface StencilChoice {
  /** The board; it is built up in as many layers as a relief is deep. */
  readonly card: Stock;
  /** How much larger than the form its opening is all round, in calipers of the pressed card. */
  readonly clearance: number;
}

/** A value that may change evenly from the first to the last panel that an element runs through. */
export type Carried<T> = { readonly from: T; readonly to: T };

/** One element of scenery as the scene asks for it. */
export interface SceneElement {
  /** Unique in the scene; its random stream follows from it. */
  readonly id: string;
  /** Where the file says it. */
  readonly path: readonly (string | number)[];
  /** The family's name. */
  readonly element: string;
  /** Panel numbers it stands in, ascending, 1 = front. */
  readonly panels: readonly number[];
  readonly carry: Carry;
  readonly side: Side;
  /** The end of its side in whose corner it is rooted; null along the side. */
  readonly corner: End | null;
  /** Its middle, along the side from the left (sill, head) or from the top (jambs). */
  readonly at: Carried<Extent>;
  /** The stretch of the side that it takes up; it then sets middle and width. */
  readonly along: { readonly from: Extent; readonly to: Extent } | null;
  /** The end of its side whose neighbouring edge it is moved up against; null: as `at` says. */
  readonly snug: End | null;
  readonly width: Carried<Extent>;
  readonly height: Carried<Extent>;
  /** Lifts its foot off the window's edge into the window; negative sinks it into the frame. */
  readonly lift: Carried<Extent>;
  readonly mirror: boolean;
  /** A second one stands opposite, as in a mirror. */
  readonly pair: boolean;
  readonly scatter: Scatter | null;
  readonly stands: Stand;
  readonly detail: Detail;
  /** The group whose box its place and size refer to; null: the window. */
  readonly group: GroupBox | null;
  /** Another number draws another plant of the same kind. */
  readonly seed: number;
  /** What is done of it where it stands on the frame. */
  readonly frame: FrameWork;
  /** Parts treated otherwise, later ones over earlier ones. */
  readonly treat: readonly Treatment[];
  /** Pattern of what is raised or sunk of it; null: plain. */
  readonly pattern: TextureName | null;
  readonly loose: Loose | null;
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
