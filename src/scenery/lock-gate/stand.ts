import type { Point } from '../../geometry/types.js';
import { endsOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

/** Angle of a closed leaf to the line across the chamber: a rise of about one in three. */
const MITRE_DEG = 18;
/** The leaves never turn quite out of sight: fully open they still show their edge. */
const OPEN_DEG = 80;
/** The eye's distance in gate widths, and its height as a share of the gate: low, as from a boat. */
const EYE_DISTANCE = 1.7;
const EYE_HEIGHT = 0.34;
/** Room for the butt's end grain, in plot heights. */
const BUTT = 0.03;
/** Heights over the water as shares of the plot's height. */
const COPING = [0.5, 0.555] as const;
const TOP_RAIL = [0.56, 0.59] as const;
const BEAM = 0.74;
const HANDRAIL = 0.97;
/** Half the beam's thickness at the heel, as a share of the height. */
const HALF_BEAM = 0.065;
/** An opening is left only where it is this many smallest holes wide or more. */
const OPEN_HOLES = 1.15;
const GEAR_SHARE = [0.2, 0.32] as const;
const GEAR_WIDTH = 0.065;
/** Posts on the card at a gate of 40 mm; never below the narrowest timber. */
const FULL_HEIGHT_MM = 40;
const HEEL_MM = 3.2;
const MITRE_MM = 2.4;
/** A post never takes more than this share of the leaf. */
const POST_SHARE = 0.3;
/** Closed leaves run into one another by this, mm, so that the mitre is one piece of card. */
const MITRE_LAP_MM = 0.4;

/** How the gate stands on its plot: sizes in mm at the plane of the heel posts. */
export interface Stand {
  readonly plot: Plot;
  readonly height: number;
  readonly shut: boolean;
  /** Heights over the water: of the lock sides, the leaf, the beam's middle and the handrail. */
  readonly up: {
    readonly coping: number;
    readonly topRail: number;
    readonly beam: number;
    readonly handrail: number;
  };
  /** Half the chamber's width: from the middle to a heel post. */
  readonly half: number;
  /** Length of a leaf, and how far along it the heel post ends and the mitre post begins. */
  readonly leaf: number;
  readonly heel: number;
  readonly mitre: number;
  /** What the beam reaches out beyond the heel post. */
  readonly tail: number;
  /** Where the lock sides end, behind the jambs if they reach them. */
  readonly ends: { readonly left: number; readonly right: number };
  /** The leaf's angle to the line across the chamber, radians. */
  readonly angle: number;
  /** Where the gear would stand along the leaf, as a share of it. */
  readonly gear: number;
  /** Narrowest timber worth drawing: the process's web and a little for the hand. */
  readonly timber: number;
}

export function standOf(plot: Plot, opening: number, beams: number, random: Random): Stand {
  const { height } = plot;
  const closed = (MITRE_DEG * Math.PI) / 180;
  const d = plot.width * EYE_DISTANCE;
  const ends = endsOf(plot);
  const edge = Math.min(-ends.left, ends.right) - BUTT * height;
  // With tail = beams * half, its near end comes to stand on the plot's edge when closed:
  // half (1 + beams cos) / (1 - beams half sin / d) = edge.
  const reach = 1 + beams * Math.cos(closed);
  const half = edge / (reach + edge * ((beams * Math.sin(closed)) / d));
  const leaf = half / Math.cos(closed);
  const ajar = ((MITRE_DEG + (OPEN_DEG - MITRE_DEG) * opening) * Math.PI) / 180;
  const gap = 2 * (half - leaf * Math.cos(ajar));
  const shut = gap < OPEN_HOLES * plot.smallestHole;
  const timber = plot.smallestWeb * 1.1 + 0.1;
  const stand = {
    plot,
    height,
    shut,
    up: heightsOf(plot, random.branch('heights')),
    half,
    leaf: leaf + (shut ? MITRE_LAP_MM : 0),
    tail: half * beams,
    ends,
    angle: shut ? closed : ajar,
    gear: random.branch('gear').between(...GEAR_SHARE),
    timber,
  };
  const size = height / FULL_HEIGHT_MM;
  const heel = alongFor(stand, Math.max(timber, HEEL_MM * size), 1);
  const mitre = alongFor(stand, Math.max(timber, MITRE_MM * size), leaf);
  return {
    ...stand,
    heel: Math.min(POST_SHARE * leaf, heel),
    mitre: stand.leaf - Math.min(POST_SHARE * leaf, mitre),
  };
}

/** On a low gate the beam lies on the leaf: the gap between them could not be cut. */
function heightsOf({ height, smallestHole }: Plot, random: Random): Stand['up'] {
  const coping = random.between(...COPING);
  const topRail = random.between(...TOP_RAIL);
  const gap = (BEAM - HALF_BEAM - topRail) * height;
  const apart = gap >= OPEN_HOLES * smallestHole;
  return {
    coping: (apart ? coping : BEAM) * height,
    topRail: (apart ? topRail : BEAM) * height,
    beam: BEAM * height,
    handrail: HANDRAIL * height,
  };
}

/** -1 draws the left leaf, 1 the right one. */
export type Hand = -1 | 1;

/**
 * A point of a leaf on the plot: `along` mm from the heel towards the mitre (negative: out along
 * the beam), `up` mm over the water, seen in perspective.
 */
export function onLeaf(
  { half, angle, plot, height }: Pick<Stand, 'half' | 'angle' | 'plot' | 'height'>,
  hand: Hand,
  along: number,
  up: number,
): Point {
  const d = plot.width * EYE_DISTANCE;
  const eye = height * EYE_HEIGHT;
  const scale = d / (d + along * Math.sin(angle));
  return {
    x: hand * (half - along * Math.cos(angle)) * scale,
    y: -(eye + (up - eye) * scale),
  };
}

/** How many mm along the leaf show as `mm` on the card, near `along`. */
export function alongFor(
  stand: Pick<Stand, 'half' | 'angle' | 'plot' | 'height'>,
  mm: number,
  along: number,
): number {
  const a = onLeaf(stand, 1, along - 0.5, 0);
  const b = onLeaf(stand, 1, along + 0.5, 0);
  return mm / Math.max(1e-3, Math.abs(a.x - b.x));
}

/** Where the paddle gear stands, and how far it spreads to either side on the card, mm. */
export interface GearPlace {
  readonly along: number;
  readonly width: number;
  /** Towards the mitre, over the beam. */
  readonly inner: number;
}

/** The gear keeps an opening to the heel post that can be cut, or else stands against it. */
export function gearPlaceOf(stand: Stand): GearPlace {
  const { leaf, heel, height, timber, plot } = stand;
  const width = Math.max(timber, GEAR_WIDTH * height);
  const apart =
    heel + alongFor(stand, 0.45 * width + timber + OPEN_HOLES * plot.smallestHole, heel);
  const along = apart < 0.45 * leaf ? Math.max(apart, stand.gear * leaf) : heel;
  return { along, width, inner: 0.96 * width };
}

/** Whether `from`..`to` along the leaf shows wide enough to be left open. */
export const showsOpen = (stand: Stand, from: number, to: number): boolean =>
  to > from &&
  Math.abs(onLeaf(stand, 1, from, 0).x - onLeaf(stand, 1, to, 0).x) >=
    OPEN_HOLES * stand.plot.smallestHole;
