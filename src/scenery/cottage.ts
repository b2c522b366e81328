import { subtract, union } from '../geometry/boolean/boolean.js';
import { offset } from '../geometry/offset/offset.js';
import type { Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { handCut, keptClear, mix } from './brick/craft.js';
import { jointsOn } from './brick/facing.js';
import type { Anchor } from './brick/patches.js';
import { chimneyOf } from './cottage/chimney.js';
import { doorOf, windowOf } from './cottage/openings.js';
import {
  type Block,
  type Built,
  type House,
  joinBuilt,
  setOutHouse,
  VIEWS,
  type View,
} from './cottage/plan.js';
import { gableOf, leanToOf, slopeOf } from './cottage/roof.js';
import { family, type Growth, type Plot } from './family.js';
import { caught } from './net.js';
import type { Random } from './random.js';

const CLEAR_MM = 1;
const JOINT_CLEAR_MM = 1.75;
const WANDER_MM = 0.25;
/** A far house has finer courses than a wall close by; closer lines would tear. */
const COURSE_MM = 2.6;
/** Sills of the upper windows below the eaves, mm at full size. */
const UPPER_FLOOR_MM = 8.3;
/** Neighbouring walls lap into one another, mm, so that no slit is left between them. */
const LAP_MM = 1;

const parameters = {
  view: {
    kind: 'choice',
    options: VIEWS,
    default: 'eaves',
    says: 'The side that is seen: the long front under the eaves, or the gable.',
  },
  sag: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How far the ridge sags: 0 straight, 1 very old.',
  },
  hipped: {
    kind: 'flag',
    default: false,
    says: 'The roof falls to the ends too.',
  },
  coverage: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'Share of the walls whose joints are drawn.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** A lock keeper's brick cottage. */
export const cottage = family({
  name: 'cottage',
  says: 'A brick cottage under slates, with chimneys, windows and a lower wing.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { mm: 45 }, height: { mm: 50 } },
  made: {
    cut: 'outline, and panes where they are large enough',
    scored: 'joints, slates, frames of doors and windows',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const house = setOutHouse(plot, values.view as View, values.sag, random.branch('plan'));
  const roofs = roofsOf(house, values.hipped, random.branch('roofs'));
  const stacks = chimneysOf(house, values.hipped, random.branch('chimneys'));
  const openings = openingsOf(house, random.branch('openings'));
  const walls = wallsOf(house, random.branch('walls'));
  const body = union([...walls, ...roofs.solids, ...stacks.solids]);
  const holes = union(openings.holes);
  const card = subtract(body, [holes]);
  const lines = [...roofs.lines, ...stacks.lines, ...openings.lines];
  const face = subtract(offset(subtract(union(walls), [holes]), -JOINT_CLEAR_MM), [
    ...roofs.solids,
    ...openings.bare,
  ]);
  const joints = jointsOn(
    face,
    {
      masonry: 'brick',
      courseMm: COURSE_MM,
      anchors: [...openings.anchors, ...cornersOf(house)],
      coverage: values.coverage,
      fineness: plot.fineness,
    },
    random.branch('face'),
  );
  const scores = [...keptClear(lines, card, CLEAR_MM), ...joints];
  return caught({ body, holes, scores, reliefs: [] }, plot);
}

function roofsOf(house: House, hipped: boolean, random: Random): Built {
  const { main, wing, view } = house;
  if (view === 'eaves') {
    const slope = slopeOf(house, main, hipped, random.branch('main'));
    return joinBuilt(wing ? [slope, leanToOf(house, wing, random.branch('wing'))] : [slope]);
  }
  const gable = gableOf(house, main, random.branch('main'));
  return joinBuilt(wing ? [slopeOf(house, wing, hipped, random.branch('wing')), gable] : [gable]);
}

function chimneysOf(house: House, hipped: boolean, random: Random): Built {
  const { main, wing, plot, size, hand, view } = house;
  const inset = hipped ? 0.38 : random.between(0.11, 0.16);
  const width = main.x1 - main.x0;
  // The tall stack stands on the end away from the wing, or behind the gable's point.
  const tall =
    view === 'eaves'
      ? hand === 1
        ? main.x0 + inset * width
        : main.x1 - inset * width
      : mix(main.x0, main.x1, 0.5 - hand * random.between(0.1, 0.14));
  const foot = view === 'eaves' ? main.ridge + 4 * size : mix(main.ridge, main.eaves, 0.45);
  const stacks = [chimneyOf(house, tall, foot, -plot.height, random.branch('tall'))];
  if (view === 'eaves' && !hipped && random.branch('second').chance(0.65)) {
    const x = hand === 1 ? main.x1 - 0.1 * width : main.x0 + 0.1 * width;
    const top = -plot.height * random.between(0.93, 0.97);
    stacks.push(chimneyOf(house, x, foot, top, random.branch('short')));
  } else if (view === 'gable' && wing) {
    const x = mix(wing.x0, wing.x1, hand === 1 ? 0.84 : 0.16);
    const top = wing.ridge - 6.5 * size;
    stacks.push(chimneyOf(house, x, wing.ridge + 3 * size, top, random.branch('wing')));
  }
  return joinBuilt(stacks);
}

function openingsOf(house: House, random: Random): Built {
  const { main, wing, view, size } = house;
  const at = (b: Block, share: number) => mix(b.x0, b.x1, share);
  const parts: Built[] = [];
  const window = (b: Block, share: number, sill: number, width: number, height: number) =>
    parts.push(
      windowOf(
        house,
        {
          x: at(b, share),
          sill: sill * size,
          width: width * size,
          height: height * size,
          wall: b,
        },
        random.branch(`window ${parts.length}`),
      ),
    );
  const upper = main.eaves / size + UPPER_FLOOR_MM;
  if (view === 'eaves') {
    parts.push(doorOf(house, at(main, random.between(0.485, 0.515)), random.branch('door')));
    for (const share of [0.21, 0.79]) {
      window(main, share, -4.4, 6.5, 6.5);
      window(main, share, upper, 6.5, 5.4);
    }
    if (wing) window(wing, 0.5, -4.6, 6.5, 5.8);
    return joinBuilt(parts);
  }
  const door = random.chance(0.5) ? 0.28 : 0.72;
  parts.push(doorOf(house, at(main, door), random.branch('door')));
  window(main, 1 - door, -4.4, 6.5, 6.8);
  window(main, 0.5, upper - 1.2, 6.5, 6.5);
  if (wing) window(wing, 0.55, -4.6, 6.5, 6);
  return joinBuilt(parts);
}

/** All standing brick, down into the frame. */
function wallsOf(house: House, random: Random): Region[] {
  const { main, wing, plot, view, hand } = house;
  const wallUnder = (b: Block, top: readonly { x: number; y: number }[]) => [
    { x: b.x0, y: 0.5 },
    ...top,
    { x: b.x1, y: 0.5 },
  ];
  const level = (b: Block) => [
    { x: b.x0, y: b.eaves - 0.5 },
    { x: b.x1, y: b.eaves - 0.5 },
  ];
  const peaked = (b: Block) => [
    { x: b.x0, y: b.eaves },
    { x: (b.x0 + b.x1) / 2, y: b.ridge + 0.7 },
    { x: b.x1, y: b.eaves },
  ];
  const sloping = (b: Block) => {
    const [l, r] = hand === 1 ? [b.ridge, b.eaves] : [b.eaves, b.ridge];
    return [
      { x: b.x0, y: l + 0.7 },
      { x: b.x1, y: r + 0.7 },
    ];
  };
  const outlines = [wallUnder(main, view === 'eaves' ? level(main) : peaked(main))];
  if (wing) {
    const lap = hand === 1 ? { ...wing, x0: wing.x0 - LAP_MM } : { ...wing, x1: wing.x1 + LAP_MM };
    outlines.push(wallUnder(lap, view === 'eaves' ? sloping(lap) : level(lap)));
  }
  const x0 = Math.min(main.x0, wing?.x0 ?? main.x0);
  const x1 = Math.max(main.x1, wing?.x1 ?? main.x1);
  outlines.push([
    { x: x0, y: 0 },
    { x: x1, y: 0 },
    { x: x1, y: plot.root },
    { x: x0, y: plot.root },
  ]);
  return outlines.map((o, i) => handCut(o, WANDER_MM, random.branch(i)));
}

/** Joints gather at the quoins, from the ground up. */
function cornersOf({ main, wing, size }: House): Anchor[] {
  const xs = [main.x0, main.x1, ...(wing ? [wing.x0, wing.x1] : [])];
  return xs.map((x) => ({
    x0: x,
    y0: main.eaves * 0.6,
    x1: x,
    y1: 0,
    reach: 4 * size,
    pull: 0.55,
  }));
}
