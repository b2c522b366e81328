import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { components, containsPoint } from '../../geometry/components.js';
import { contourArea, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import { reversed } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { stripsAlongNecks } from '../../geometry/width/strip.js';
import { narrowSlots, narrowWebs, smallHoles } from '../../geometry/width/webs.js';
import { aboveRoot } from '../above-root.js';
import { bodyAndHoles } from '../body-and-holes.js';
import type { Plot } from '../family.js';

/** How far a notch runs on past where it is a smallest hole wide, as a share of that. */
const NOTCH_RUN = 0.35;
/** A hair more than asked, so that what is measured afterwards is never less. */
const HAIR = 1.01;
/** Height over the ground, y down, at which the trunk is sure to be card. */
const HELD_MM = -0.5;

/**
 * The drawing made fit to cut, as body and holes: nothing thinner than the smallest web but short
 * tips, no gap narrower than the smallest hole but short ends of notches, neither in itself nor
 * where it meets the card round the window; nothing below `foot`, and only what hangs together with
 * the trunk that stands on it, or with what holds `held` where that is elsewhere.
 */
export function cutSafe(
  drawn: Region,
  plot: Plot,
  foot: Point,
  held: Point = { x: foot.x, y: HELD_MM },
): { body: Region; holes: Region } {
  const { minX, minY, maxX } = regionBounds(drawn);
  const room = 2 * plot.smallestHole;
  const top = minY - room;
  const sheet = rectangle(minX - room, top, maxX - minX + 2 * room, foot.y - top);
  const sky = blunted(subtract(sheet, [drawn]), plot.smallestHole);
  const sharp = heldPart(subtract(sheet, [sky]), plot.smallestHole, held);
  const mended = softened(union([sharp, ...patchesFor(sharp, plot, ROUGH_ROUNDS)]));
  const alone = heldPart(mended, plot.smallestHole, held);
  const card = heldPart(settled(alone, plot), plot.smallestHole, held);
  return bodyAndHoles(aboveRoot(card, foot.y));
}

/** The card with what it takes to make it sound as it stands in the window's frame. */
function settled(card: Region, plot: Plot): Region {
  const { window } = plot.frame;
  if (window.contours.length === 0)
    return union([card, ...patchesFor(card, plot, ROUNDS, STRIP_ROUNDS)]);
  const panel = union([plot.frame.card, intersect(card, window)]);
  const patches = patchesFor(panel, plot, ROUNDS, STRIP_ROUNDS);
  return union([card, ...patches.map((patch) => intersect(patch, window))]);
}

/** Only what hangs on the card at `held`, its smallest holes filled. */
function heldPart(card: Region, smallestHole: number, held: Point): Region {
  const part = components(card).find((p) => containsPoint(p, held)) ?? { contours: [] };
  const leastArea = (Math.PI / 4) * smallestHole * smallestHole;
  return {
    contours: part.contours.filter((c) => contourArea(c) > 0 || contourArea(c) < -leastArea),
  };
}

/** The sky without what is narrower than a hole, save short ends of notches. */
function blunted(sky: Region, smallestHole: number): Region {
  const r = (smallestHole / 2) * HAIR;
  return intersect(sky, offset(offset(sky, -r), r + NOTCH_RUN * smallestHole));
}

/** Least radius of inner and outer corners: sharper ones tear, and look bitten off. */
const CORNER_MM = 0.35;

/** The region with its inner corners filled and its outer ones rounded. */
const softened = (region: Region): Region =>
  offset(offset(offset(region, CORNER_MM), -2 * CORNER_MM), CORNER_MM);

/** A patch may crowd its neighbours; by the third round little is left to patch. */
const ROUNDS = 5;
/** Before corners are rounded, most of the patching is enough. */
const ROUGH_ROUNDS = 2;

/** Rounds after those, in which webs too long for so many patches are filled along all their length. */
const STRIP_ROUNDS = 3;

/** Card to add where a web, a tip or a gap is still too narrow, or a hole too small. */
function patchesFor(card: Region, limits: Limits, rounds: number, stripRounds = 0): Region[] {
  const patches: Region[] = [];
  let mended = card;
  for (let round = 0; round < rounds + stripRounds; round++) {
    const more =
      round < rounds ? onePatching(mended, limits) : stripsAlongNecks(mended, limits.smallestWeb);
    if (more.length === 0) break;
    patches.push(...more);
    mended = union([mended, ...more]);
  }
  return patches;
}

interface Limits {
  readonly smallestWeb: number;
  readonly smallestHole: number;
}

function onePatching(card: Region, limits: Limits): Region[] {
  const webs = narrowWebs(card, limits.smallestWeb).filter((p) => p.kind !== 'whole');
  const slots = narrowSlots(card, limits.smallestHole);
  const slits = slots.filter((p) => p.kind === 'whole').flatMap((p) => holeAt(card, p.at));
  const small = smallHoles(card, limits.smallestHole).map((h) => h.hole);
  const places = [...webs, ...slots].map((p) => p.at);
  const filled = [...slits, ...small];
  return places.length > 0 ? [...filled, bridges(card, places, limits)] : filled;
}

/** Radius of a bridge's core in webs, and of its fillets, its reach and what shapes it in holes. */
const BRIDGE = { core: 0.56, fillet: 0.6, reach: 1.3, shapedBy: 2 };

/** A bridge's edge lies this far (mm) within the card's, so that the two never run as one. */
const BRIDGE_INSET_MM = 0.02;

/** Card that thickens a web or bridges a gap at each place, rounded into what is round it. */
function bridges(card: Region, places: readonly Point[], limits: Limits): Region {
  const hole = Math.max(limits.smallestHole, limits.smallestWeb);
  const circles = (r: number): Region => union(places.map(({ x, y }) => circle(x, y, r)));
  const near = intersect(card, circles(BRIDGE.shapedBy * hole));
  const joined = union([near, circles(BRIDGE.core * limits.smallestWeb)]);
  const fillet = BRIDGE.fillet * hole;
  const rounded = offset(offset(joined, fillet), -(fillet + BRIDGE_INSET_MM));
  return intersect(rounded, circles(BRIDGE.reach * hole));
}

const holeAt = (card: Region, at: Point): Region[] =>
  card.contours
    .filter((c) => contourArea(c) < 0)
    .map((c) => ({ contours: [reversed(c)] }))
    .filter((hole) => containsPoint(hole, at));
