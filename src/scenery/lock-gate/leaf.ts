import type { Line, Region } from '../../geometry/types.js';
import { handCut, handDrawn, mix, rounded } from '../brick/craft.js';
import type { Random } from '../random.js';
import { alongFor, gearPlaceOf, type Hand, onLeaf, type Stand, showsOpen } from './stand.js';

/** Timber drawn: solid parts, openings and lines, before they are joined. */
export interface Timber {
  readonly solids: readonly Region[];
  readonly holes: readonly Region[];
  readonly lines: readonly Line[];
}

export const joinTimber = (parts: readonly Timber[]): Timber => ({
  solids: parts.flatMap((p) => p.solids),
  holes: parts.flatMap((p) => p.holes),
  lines: parts.flatMap((p) => p.lines),
});

/** Hand's wander on edges and drawn lines, mm. */
const WANDER_MM = 0.18;
/** A rail's height as a share of the gate's; never below the narrowest timber. */
const RAIL_SHARE = 0.055;
/** Rails are long: the hand wanders further on them, and distance thins them. */
const RAIL_SLACK = 1.25;
/** Heights of the rails as shares of the leaf: closer where the water presses harder. */
const RAILS = [0, 0.3, 0.64, 1];
const BAYS = RAILS.length - 1;
/** A knee bracket's size as a share of its opening. */
const KNEE = 0.42;
/** From plank to plank on the card, mm. */
const PLANK_MM = [2.1, 3.1] as const;
/** How far lines of planks stop short of the rail, mm. */
const SHY_MM = 0.45;
/** Corners of openings are rounded as by a gouge, mm. */
const CORNER_MM = 0.5;

/** One leaf below its balance beam: posts, rails, planks, and bays left open at the top. */
export function leafOf(stand: Stand, hand: Hand, open: number, random: Random): Timber {
  const bays = baysOf(stand);
  const at = (a: number, up: number) => onLeaf(stand, hand, a, up);
  const upright = (a0: number, a1: number, high: number, label: string) =>
    handCut(
      [at(a0, -stand.plot.root), at(a1, -stand.plot.root), at(a1, high), at(a0, high)],
      WANDER_MM,
      random.branch(label),
    );
  const { topRail, beam } = stand.up;
  // Swung right back, a short leaf shows less than can be cut: then its thickness is seen as well.
  const sheet = Math.max(stand.leaf, alongFor(stand, RAIL_SLACK * stand.timber, stand.leaf));
  const solids = [
    upright(0, sheet, topRail, 'sheet'),
    upright(-0.6, stand.heel, beam, 'heel'),
    upright(stand.mitre, stand.leaf, beam, 'mitre'),
  ];
  const gear = gearPlaceOf(stand);
  const beside = gear.along + alongFor(stand, gear.inner, gear.along);
  if (!showsOpen(stand, beside, stand.mitre)) solids.push(upright(0, sheet, beam, 'boards'));

  const openBays = Math.round(open * BAYS);
  const holes: Region[] = [];
  const lines: Line[] = framingLines(stand, bays.slice(0, BAYS - openBays), at, random);
  bays.forEach((bay, i) => {
    const luck = random.branch(`bay ${i}`);
    const cut = i >= BAYS - openBays ? bayHoles(stand, bay, at, luck) : [];
    holes.push(...cut);
    if (cut.length === 0) lines.push(...planks(stand, bay, at, luck));
  });
  return { solids, holes, lines };
}

/** Bottom and top of each bay between the rails, from the water up, mm. */
interface Bay {
  readonly low: number;
  readonly high: number;
}

function baysOf({ timber, height, up }: Stand): Bay[] {
  const rail = Math.max(RAIL_SLACK * timber, RAIL_SHARE * height);
  const levels = RAILS.map((t) => mix(0, up.topRail, t));
  return Array.from({ length: BAYS }, (_, i) => ({
    low: levels[i] + (i === 0 ? rail : rail / 2),
    high: levels[i + 1] - (i === BAYS - 1 ? rail : rail / 2),
  }));
}

type Place = (along: number, up: number) => { x: number; y: number };

/** Rails and posts are drawn where planks lie between them; elsewhere the openings show them. */
function framingLines(stand: Stand, planked: readonly Bay[], at: Place, random: Random): Line[] {
  if (planked.length === 0) return [];
  const { heel, mitre } = stand;
  const top = planked[planked.length - 1].high;
  const rails = planked
    .flatMap((b) => [b.low, b.high])
    .map((up, i) =>
      handDrawn([at(heel, up), at(mitre, up)], WANDER_MM, random.branch(`rail ${i}`)),
    );
  const posts = [heel, mitre].map((a, i) =>
    handDrawn([at(a, 0), at(a, top)], WANDER_MM, random.branch(`post ${i}`)),
  );
  return [...rails, ...posts];
}

/** Openings of a bay with muntins between; none where it is too small to cut. */
function bayHoles(stand: Stand, bay: Bay, at: Place, random: Random): Region[] {
  const { smallestHole } = stand.plot;
  const wide = Math.abs(at(stand.heel, 0).x - at(stand.mitre, 0).x);
  const tall = bay.high - bay.low;
  const wanted = random.whole(2, 3);
  const count = Math.min(
    wanted,
    Math.floor((wide + stand.timber) / (1.6 * smallestHole + stand.timber)),
  );
  if (tall < smallestHole * 1.1 || count < 1) return [];
  const bar = alongFor(stand, stand.timber, (stand.heel + stand.mitre) / 2);
  const pitch = (stand.mitre - stand.heel + bar) / count;
  return Array.from({ length: count }, (_, i) => {
    const a0 = stand.heel + i * pitch;
    const a1 = a0 + pitch - bar;
    // Knee brackets in the leaf's outer corners carry the walkway.
    const knee = Math.min(KNEE * tall, KNEE * (a1 - a0));
    const corners = [
      ...(i === 0 ? [at(a0, bay.high - knee), at(a0 + knee, bay.high)] : [at(a0, bay.high)]),
      ...(i === count - 1
        ? [at(a1 - knee, bay.high), at(a1, bay.high - knee)]
        : [at(a1, bay.high)]),
      at(a1, bay.low),
      at(a0, bay.low),
    ];
    return rounded(handCut(corners, WANDER_MM, random.branch(i)), CORNER_MM);
  });
}

function planks(stand: Stand, bay: Bay, at: Place, random: Random): Line[] {
  const lines: Line[] = [];
  let a = stand.heel;
  for (let i = 0; ; i++) {
    const luck = random.branch(i);
    a += alongFor(stand, luck.between(...PLANK_MM), a);
    if (a > stand.mitre - alongFor(stand, PLANK_MM[0] * 0.6, a)) return lines;
    const low =
      bay.low + SHY_MM + (luck.chance(0.25) ? luck.between(0, 0.3) * (bay.high - bay.low) : 0);
    const high =
      bay.high - SHY_MM - (luck.chance(0.2) ? luck.between(0, 0.3) * (bay.high - bay.low) : 0);
    lines.push(handDrawn([at(a, low), at(a + luck.between(-0.1, 0.1), high)], WANDER_MM, luck));
  }
}
