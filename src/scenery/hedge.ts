import { subtract, union } from '../geometry/boolean/boolean.js';
import { contourArea, regionBounds } from '../geometry/measure.js';
import { regionOf } from '../geometry/pen.js';
import { reversed } from '../geometry/transform.js';
import type { Cubics, Region } from '../geometry/types.js';
import { shapeOf } from './brick/craft.js';
import { family, type Growth } from './family.js';
import { tied } from './grass/tidy.js';
import { archHedge } from './hedge/arch.js';
import { ballHedge } from './hedge/ball.js';
import { blossom } from './hedge/blossom.js';
import { clearOf } from './hedge/clear.js';
import { levelEdge, roundEdge } from './hedge/clipped.js';
import { footGaps } from './hedge/foot.js';
import { looseEdge } from './hedge/loose.js';
import { hedgeOutline, type Stretch } from './hedge/outline.js';
import { rimGrowth } from './hedge/rim.js';
import { type Room, roomOf } from './hedge/room.js';
import { ballShade, blockShade } from './hedge/shade.js';
import { lightSlits } from './hedge/slits.js';
import { clumps, type Shade } from './hedge/texture.js';
import { caught } from './net.js';
import type { Random } from './random.js';

const PARAMETERS = {
  form: {
    kind: 'choice',
    options: ['straight', 'tapered', 'round', 'ball', 'loose', 'arch'],
    default: 'straight',
    says: 'Clipped level, leaning in, rounded or to balls on a block, left to grow, or level with an arch to walk through.',
  },
  balls: {
    kind: 'number',
    default: 2,
    min: 1,
    max: 5,
    whole: true,
    says: 'How many clipped balls stand on a ball hedge.',
  },
  light: {
    kind: 'choice',
    options: ['left', 'right'],
    default: 'left',
    says: 'Where the light comes from; slits and texture gather on the other side.',
  },
  slits: {
    kind: 'number',
    default: 4,
    min: 0,
    max: 6,
    whole: true,
    says: 'Slim gaps low on the shade side of a clipped hedge; a loose one shows its stems instead.',
  },
  texture: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How thickly its shade is scored with leaves, 0 for none.',
  },
  blossom: {
    kind: 'choice',
    options: ['none', 'scored', 'cut'],
    default: 'none',
    says: 'Flowers in small clusters, as scored rings or as holes.',
  },
} as const;

/** A hedge before it is textured. */
interface Shape {
  readonly body: Region;
  readonly holes: readonly Cubics[];
  readonly shade: Shade;
}

export const hedge = family({
  name: 'hedge',
  says: 'A hedge, clipped to planes, rounds or balls, with an arch to walk through, or left to grow.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.55 }, height: { mm: 32 } },
  made: {
    cut: 'its outline, slits of light and the stems at its foot',
    scored: 'leaf clumps and the shade side',
    embossed: null,
  },
  stance: 'upright',
  parameters: PARAMETERS,
  grow: (plot, values, random) => {
    const room = roomOf(plot, values.light);
    const shape =
      values.form === 'loose'
        ? looseShape(room, random)
        : clippedShape(room, values.form, values.balls, values.slits, random);
    const card = [...shape.body.contours, ...shape.holes];
    const flowers =
      values.blossom === 'none' ? [] : blossom(room, card, shape.shade, random.branch('blossom'));
    const bare = [...card, ...flowers];
    const strokes = clumps(room, bare, shape.shade, values.texture, random.branch('texture'));
    const cut = values.blossom === 'cut';
    const growth: Growth = {
      body: shape.body,
      holes: { contours: cut ? [...shape.holes, ...flowers] : shape.holes },
      scores: cut ? strokes : [...flowers.map((cubics) => ({ cubics })), ...strokes],
      reliefs: [],
    };
    return caught(growth, plot);
  },
});

function looseShape(room: Room, random: Random): Shape {
  const line = looseEdge(room, random.branch('shape'));
  const core = hedgeOutline(room, [{ line, anchor: 0.5 }], random.branch('leaves'));
  const growth = rimGrowth(room, line, random.branch('rim'));
  const leafy = union([core, ...growth].map((contour) => regionOf(contour)));
  const gaps = footGaps(room, regionOf(core), random.branch('foot'));
  const { smallestWeb, smallestHole } = room.plot;
  const fineness = { smallestWeb, smallestHole, eyelet: smallestHole };
  const { contours } = tied(subtract(leafy, [gaps]), fineness);
  return {
    body: { contours: contours.filter((c) => contourArea(c) > 0) },
    holes: contours.filter((c) => contourArea(c) < 0).map(reversed),
    shade: blockShade(room),
  };
}

function clippedShape(
  room: Room,
  form: 'straight' | 'tapered' | 'round' | 'ball' | 'arch',
  balls: number,
  slits: number,
  random: Random,
): Shape {
  const own = random.branch('shape');
  const topped = form === 'ball' ? ballHedge(room, balls, own) : null;
  const arched = form === 'arch' ? archHedge(room, own) : null;
  const stretches = (topped ?? arched)?.stretches ?? [
    { line: plainEdge(room, form, own), anchor: 0.5 },
  ];
  const body = regionOf(hedgeOutline(room, stretches, random.branch('leaves')));
  const openings = topped?.crescents ?? arched?.openings.map((c) => shapeOf(c).contours[0]) ?? [];
  const { smallestWeb } = room.plot;
  const open = clearOf([...body.contours, ...openings], 1.6 * smallestWeb + 0.6);
  const light = lightSlits(room, slits, open, random.branch('slits'));
  return {
    body,
    holes: [...openings, ...(arched ? light.filter((slit) => isSeen(room, slit)) : light)],
    shade: topped ? ballShade(room, topped.balls) : blockShade(room),
  };
}

/** Whether a slit lies a web within what is seen: beside a passage it may be crowded to the jamb. */
function isSeen({ seen, plot }: Room, slit: Cubics): boolean {
  const { minX, maxX } = regionBounds({ contours: [slit] });
  return minX > seen.minX + plot.smallestWeb && maxX < seen.maxX - plot.smallestWeb;
}

const plainEdge = (room: Room, form: string, random: Random): Stretch['line'] =>
  form === 'round'
    ? roundEdge(room, random)
    : levelEdge(room, form === 'tapered' ? 'tapered' : 'upright', random);
