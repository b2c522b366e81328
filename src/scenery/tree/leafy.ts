import { subtract, union } from '../../geometry/boolean/boolean.js';
import { containsPoint } from '../../geometry/components.js';
import { contourArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Point, Region } from '../../geometry/types.js';
import { keptClear } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { type LeafForm, TIP_RADIUS_MM } from '../leaf.js';
import type { Random } from '../random.js';
import { type Branch, branchTable, type Joint, twigsOf, WOOD_SPARE, wood } from './branches.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { edgeLeaves } from './foliage.js';
import { opennessFor, shown } from './layers.js';
import type { TreeValues } from './parameters.js';
import { partsOf } from './parts.js';
import { CLEARANCE_MM, scoresOn, sprigsOn } from './scores.js';
import { barkDashes, barkLines, collarAt } from './trunk.js';
import { type Tuft, tuftLayer } from './tufts.js';

/** A leafy tree before it is drawn. Lengths in mm. */
export interface LeafyPlan {
  readonly foot: Point;
  /** The trunk's first fork and all that grows from it. */
  readonly first: Joint;
  /** In laying order: the last lies in front. */
  readonly tufts: readonly Tuft[];
  readonly trunkThickness: number;
  readonly leaf: LeafForm;
  /** How its bark is scored: along the trunk (usual) or in short dashes across it. */
  readonly bark?: 'along' | 'dashes';
}

export const leafyBranches = (plan: LeafyPlan, plot: Plot, exponent: number): Branch[] =>
  branchTable(plan.foot, plan.first, plan.trunkThickness, exponent, plot.smallestWeb * WOOD_SPARE);

/** Leaves of a tree at the back are this much smaller than of one in front. */
const FINER = 0.25;
/** A leaf that shows is this many smallest webs long and wide at least. */
const LEAST_LEAF = { length: 2.7, width: 1.6 };

/** A leaf's form from its shares of the tree's size. */
export function leafForm(
  plot: Plot,
  share: { length: number; width: number; widest: number },
): LeafForm {
  const scale = sizeOf(plot) * (1 - FINER * plot.fineness);
  return {
    length: Math.max(share.length * scale, LEAST_LEAF.length * plot.smallestWeb),
    width: Math.max(share.width * scale, LEAST_LEAF.width * plot.smallestWeb),
    widest: share.widest,
    tipRadius: TIP_RADIUS_MM,
  };
}

/** From gaps that hardly show to gaps as wide as half a lobe. */
const OPENNESS: readonly [number, number] = [0.1, 0.65];

export function drawLeafy(plan: LeafyPlan, plot: Plot, values: TreeValues, random: Random): Growth {
  const size = sizeOf(plot);
  const table = leafyBranches(plan, plot, values.exponent);
  const layers = plan.tufts.map(tuftLayer);
  const openness = opennessFor(layers, wood(table), size, values.light, OPENNESS);
  const mass = withoutCrumbs(shown(layers, openness), size);
  const leaves = edgeLeaves(mass, layers, openness, plan.leaf, plot.smallestHole);
  const collar = collarAt(table[0], plot, random.branch('collar'));
  const kept = borne(table, mass);
  const drawn = union([mass, leaves, wood(kept), { contours: [collar] }]);
  const { body, holes } = cutSafe(drawn, plot, plan.foot);
  const marks = random.branch('bark');
  const bark = plan.bark === 'dashes' ? [] : barkLines(table[0], marks);
  const dashes = plan.bark === 'dashes' ? barkDashes(table[0], marks) : [];
  const card = subtract(body, [holes]);
  const twigs = twigsOf(table).filter((b) => kept.includes(b));
  const sprigs = sprigsOn(twigs, random.branch('sprigs'));
  const scores = [...scoresOn(body, holes, bark, sprigs), ...keptClear(dashes, card, CLEARANCE_MM)];
  return { body, holes, scores, reliefs: [], parts: partsOf(card, table[0], collar) };
}

/** The branches without twigs whose clump the gaps have taken: they would be bare stumps. */
function borne(table: readonly Branch[], mass: Region): Branch[] {
  const bare = twigsOf(table).filter((b) => !containsPoint(mass, b.points[b.points.length - 1]));
  return table.filter((b) => !bare.includes(b));
}

/** Foliage thinner than twice this share of the size looks like torn card. */
const SLIVER = 0.018;
/** Pieces of less area, in sizes squared, look like litter caught in the boughs. */
const CRUMB = 0.006;

function withoutCrumbs(mass: Region, size: number): Region {
  const round = offset(offset(mass, -SLIVER * size), SLIVER * size);
  const isLarge = (area: number): boolean => Math.abs(area) > CRUMB * size * size;
  return { contours: round.contours.filter((c) => isLarge(contourArea(c))) };
}
