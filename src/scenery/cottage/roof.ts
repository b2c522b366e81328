import { offset } from '../../geometry/offset/offset.js';
import { pen } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { cellsInside, wallCells } from '../brick/cells.js';
import { handCut, handDrawn, mix, shapeOf } from '../brick/craft.js';
import { drawJoints } from '../brick/joints.js';
import { type Anchor, patches } from '../brick/patches.js';
import type { Random } from '../random.js';
import { type Block, type Built, type House, NOTHING } from './plan.js';

const WANDER_MM = 0.2;
/** Eaves and verges stand out this far, and their edge is this deep, mm at full size. */
const OVERHANG_MM = 1;
const EDGE_MM = 1.5;
/** Each verge leans in by this share of the roof's length, so that the roof is not a box. */
const LEAN = [0.035, 0.06] as const;
/** A hip leans in by this share of the roof's height. */
const HIP = 0.55;
/** A slate's height in sight, mm on the front panel, and its width as a share of that. */
const SLATE_MM = 2.3;
const SLATE_WIDE = 1.2;
const FINER_AT_BACK = 0.25;
const SLATE_COVERAGE = 0.5;
const CLEAR_MM = 1.3;

/** A roof seen from the side: its outline, its edges and its slates. */
export function slopeOf(house: House, block: Block, hipped: boolean, random: Random): Built {
  const { size, sag } = house;
  const out = OVERHANG_MM * size;
  const deep = Math.max(house.bar * 0.9, EDGE_MM * size);
  const [left, right] = [block.x0 - out, block.x1 + out];
  const lean = hipped
    ? HIP * (block.eaves - block.ridge)
    : (right - left) * random.between(...LEAN);
  const [top, foot] = [block.ridge, block.eaves];
  // A sagging roof dips a little off its middle.
  const dip = mix(left, right, random.between(0.4, 0.6));
  const [ridgeL, ridgeR] = [left + lean, right - lean];
  const ridge = (down: number) =>
    pen(ridgeL + down * 0.3, top + down).smoothTo([
      { x: dip, y: top + down + sag },
      { x: ridgeR - down * 0.3, y: top + down },
    ]);
  const outline = ridge(0)
    .lineTo(right, foot - deep)
    .lineTo(right, foot)
    .lineTo(left, foot)
    .lineTo(left, foot - deep)
    .close();
  const region = shapeOf(outline);
  const bounds = { left, right, foot: foot - deep, top: top + 2 * size };
  return {
    ...NOTHING,
    solids: [region],
    lines: [
      ridge(1.7 * size).line(),
      handDrawn(
        [
          { x: left + 1, y: foot - deep },
          { x: dip, y: foot - deep },
        ],
        WANDER_MM,
        random.branch('eaves'),
      ),
      ...slates(house, region, bounds, random.branch('slates')),
    ],
  };
}

/** Slates half over one another, drawn in patches from the eaves and the verges. */
function slates(
  house: House,
  roof: Region,
  { left, right, foot, top }: { left: number; right: number; foot: number; top: number },
  random: Random,
): Line[] {
  const course = SLATE_MM * (1 - FINER_AT_BACK * house.plot.fineness);
  const courses = Math.floor((foot - top) / course);
  if (courses < 1) return [];
  const wall = { x0: left, x1: right, foot, courses, courseMm: (foot - top) / courses };
  const cells = wallCells('stretcher', wall, course * SLATE_WIDE);
  const face = offset(roof, -CLEAR_MM);
  const anchors: Anchor[] = [left, right].map((x) => ({
    x0: x,
    y0: foot,
    x1: mix(x, (left + right) / 2, 0.3),
    y1: foot,
    reach: 7 * house.size,
    pull: 0.6,
  }));
  const seen = cellsInside(cells, face, 0.3);
  const shown = patches(seen, anchors, SLATE_COVERAGE, course, random);
  return drawJoints(shown, face, random);
}

/** The verges of a gable: two boards along the slopes. */
export function gableOf(house: House, block: Block, random: Random): Built {
  const { size } = house;
  const out = OVERHANG_MM * size;
  const deep = Math.max(house.bar, EDGE_MM * size * 1.15);
  const apex = { x: (block.x0 + block.x1) / 2, y: block.ridge };
  const y = block.eaves + out * 0.9;
  const left = vergeUnder(apex, { x: block.x0 - out, y }, deep);
  const right = vergeUnder(apex, { x: block.x1 + out, y }, deep);
  const outline = [left.foot, apex, right.foot, right.under, right.top, left.under];
  const lines = [left, right].map((side, i) =>
    handDrawn([side.top, side.under], WANDER_MM, random.branch(`under ${i}`)),
  );
  return { ...NOTHING, solids: [handCut(outline, WANDER_MM, random.branch('verges'))], lines };
}

/** The lower edge of a verge board, square to the slope at its foot. */
function vergeUnder(apex: Point, foot: Point, deep: number) {
  const length = Math.hypot(foot.x - apex.x, foot.y - apex.y);
  const [ux, uy] = [(foot.x - apex.x) / length, (foot.y - apex.y) / length];
  return {
    foot,
    under: { x: foot.x - uy * deep * Math.sign(ux), y: foot.y + Math.abs(ux) * deep },
    top: { x: apex.x, y: apex.y + deep / Math.abs(ux) },
  };
}

/** A lean-to's single slope, falling from the main wall to its own eaves. */
export function leanToOf(house: House, wing: Block, random: Random): Built {
  const { hand, size } = house;
  const out = OVERHANG_MM * size;
  const deep = Math.max(house.bar * 0.95, EDGE_MM * size);
  const [inner, outer] = hand === 1 ? [wing.x0, wing.x1] : [wing.x1, wing.x0];
  const high = { x: inner - hand * 0.6, y: wing.ridge };
  const low = { x: outer + hand * out, y: wing.eaves };
  const under = [
    { x: low.x, y: low.y + deep },
    { x: high.x, y: high.y + deep * 1.1 },
  ];
  return {
    ...NOTHING,
    solids: [handCut([high, low, ...under], WANDER_MM, random)],
    lines: [handDrawn([...under].reverse(), WANDER_MM, random.branch('under'))],
  };
}
