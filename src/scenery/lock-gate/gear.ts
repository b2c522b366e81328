import { outlineLines } from '../../geometry/clip-lines.js';
import { pen } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Point } from '../../geometry/types.js';
import { handCut, shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import type { Timber } from './leaf.js';
import { gearPlaceOf, type Hand, onLeaf, type Stand } from './stand.js';

/** How high the stand and the rack rise, as shares of the height. */
const STAND_TOP = 0.9;
const RACK_TOP = [0.93, 1.04] as const;
const TOOTH_MM = 1.9;
const TOOTH_DEPTH_MM = 0.6;
/** The rack is toothed from its head down to the beam. */
const TOOTHED_FROM = 0.81;

/** Paddle gear: a stand on the top rail, a toothed rack drawn up beside it, and its pinion. */
export function gearOf(stand: Stand, hand: Hand, random: Random): Timber {
  const { height, timber } = stand;
  const { along, width } = gearPlaceOf(stand);
  const foot = onLeaf(stand, hand, along, stand.up.topRail);
  const up = (share: number) => foot.y + stand.up.topRail - share * height;
  const base = foot.y + 0.5;
  const post = handCut(
    [
      { x: foot.x - width * 0.62, y: base },
      { x: foot.x - width * 0.45, y: up(STAND_TOP) },
      { x: foot.x + width * 0.45, y: up(STAND_TOP) },
      { x: foot.x + width * 0.62, y: base },
    ],
    0.12,
    random,
  );
  const raised = random.between(...RACK_TOP);
  const rack = shapeOf(
    rackOutline(
      { x: foot.x + hand * width * 0.45, y: base },
      up(raised),
      up(TOOTHED_FROM),
      hand,
      timber,
    ),
  );
  const pinion = { x: foot.x - hand * width * 0.1, y: up(0.855) };
  const boss = circle(pinion.x, pinion.y, width * 0.86);
  return {
    solids: [post, rack, boss],
    holes: [],
    lines: outlineLines(circle(pinion.x, pinion.y, width * 0.3)),
  };
}

/** A bar from foot to top, the outer side of its upper part cut into teeth. */
function rackOutline(foot: Point, top: number, toothed: number, hand: Hand, width: number) {
  const out = foot.x + hand * width;
  const tip = out + hand * TOOTH_DEPTH_MM;
  const p = pen(foot.x, foot.y).lineTo(foot.x, top).lineTo(tip, top);
  const teeth = Math.max(1, Math.floor((toothed - top) / TOOTH_MM));
  const pitch = (toothed - top) / teeth;
  for (let i = 0; i < teeth; i++) {
    const y = top + i * pitch;
    p.lineTo(tip, y + 0.42 * pitch)
      .lineTo(out, y + 0.6 * pitch)
      .lineTo(out, y + 0.85 * pitch);
    if (i + 1 < teeth) p.lineTo(tip, y + pitch);
  }
  return p.lineTo(out, foot.y).close();
}
