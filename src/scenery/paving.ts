import { intersect } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { lengthInside, lineLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { smoothContour } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import { type Bounds, EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { cellsInside } from './brick/cells.js';
import { handDrawn, mix } from './brick/craft.js';
import { CLEAR_MM } from './brick/frame-wall.js';
import { drawBeds } from './brick/joints.js';
import { type Anchor, type Box, patches } from './brick/patches.js';
import { family, type Growth, type Plot } from './family.js';
import { type Ground, groundOf, jointsOf, KINDS, type Kind } from './paving/rows.js';
import type { Random } from './random.js';

/** How much smaller the backdrop's paving is than the front's. */
const FINER_AT_BACK = 0.28;
const LEAST_SEEN = 0.4;
/** Flags are this much deeper than setts. */
const DEEP: Record<Kind, number> = { setts: 1, flags: 1.6, cobbles: 0.95 };
const SHY_MM = 0.35;
const WANDER_MM = 0.15;
const SHORTEST_STROKE_MM = 1;
/** Air round a cobble, mm, and how far its outline is off an oval. */
const COBBLE_APART_MM = 0.45;
const COBBLE_UNEVEN = 0.1;
const COBBLE_POINTS = 8;

const parameters = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'setts',
    says: 'Squared setts in rows, large flags, or round cobbles.',
  },
  row: {
    kind: 'length',
    default: 4.5,
    min: 3,
    max: 12,
    says: 'Depth of the row of setts nearest to the reader; flags are deeper.',
  },
  depth: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How far the ground runs away: 0 seen from above, 1 much smaller towards the window.',
  },
  coverage: {
    kind: 'number',
    default: 0.7,
    min: 0.1,
    max: 1,
    says: 'Share of the ground whose stones are drawn.',
  },
} as const;

/** Paving on the card under the window. */
export const paving = family({
  name: 'paving',
  says: 'Setts, flags or cobbles on the frame under the window, smaller towards it.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: null, scored: 'joints or cobbles, in patches', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

/** One stone, its corners on the far and the near edge of its row. */
interface Sett extends Box {
  readonly row: number;
  readonly far: readonly [number, number];
  readonly near: readonly [number, number];
}

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const kind = values.kind as Kind;
  const { card, bounds } = plot.frame;
  const rowMm = values.row * DEEP[kind] * (1 - FINER_AT_BACK * plot.fineness);
  const floor = rectangle(bounds.minX, 0, bounds.maxX - bounds.minX, Math.max(0.1, bounds.maxY));
  const face = intersect(offset(card, -CLEAR_MM), floor);
  const nothing = { body: EMPTY_REGION, holes: EMPTY_REGION, reliefs: [] };
  if (face.contours.length === 0) return { ...nothing, scores: [] };

  const ground = groundOf(bounds.maxY, rowMm, values.depth);
  const laid = settsOn(ground, kind, bounds, rowMm, random.branch('laid'));
  const seen = cellsInside(laid, face, LEAST_SEEN);
  const anchors = anchorsOf(bounds, rowMm);
  const shown = patches(seen, anchors, values.coverage, rowMm, random.branch('patches'));
  const luck = random.branch('joints');
  const scores = kind === 'cobbles' ? cobbles(shown, face, luck) : joints(shown, face, luck);
  return { ...nothing, scores };
}

function settsOn(
  { rows, scaleAt }: Ground,
  kind: Kind,
  bounds: Bounds,
  rowMm: number,
  random: Random,
): Sett[] {
  const farthest = scaleAt(rows[rows.length - 1].y0);
  const reach = Math.max(-bounds.minX, bounds.maxX) / farthest;
  const places = jointsOf(kind, rows.length, reach, rowMm, random);
  return rows.flatMap(({ y0, y1 }, row) =>
    places[row].slice(1).map((right, i): Sett => {
      const at = (y: number) => [places[row][i] * scaleAt(y), right * scaleAt(y)] as const;
      const [far, near] = [at(y0), at(y1)];
      const x0 = Math.min(far[0], near[0]);
      return { row, far, near, x0, x1: Math.max(far[1], near[1]), y0, y1 };
    }),
  );
}

/** Joints gather in the corners nearest to the reader, and fade towards the window. */
function anchorsOf({ minX, maxX, maxY }: Bounds, rowMm: number): Anchor[] {
  const corner = (x0: number, x1: number, pull: number): Anchor => ({
    x0,
    x1,
    y0: maxY,
    y1: maxY,
    reach: 5 * rowMm,
    pull,
  });
  return [corner(minX, minX, 0.6), corner(maxX, maxX, 0.6), corner(minX, maxX, 0.25)];
}

function joints(setts: readonly Sett[], face: Region, random: Random): Line[] {
  const drawn = new Set<string>();
  const lines = setts.flatMap((s) =>
    [0, 1].flatMap((side) => {
      const [far, near] = [s.far[side], s.near[side]];
      const key = `${s.row} ${near.toFixed(2)}`;
      if (drawn.has(key)) return [];
      drawn.add(key);
      const t = SHY_MM / (s.y1 - s.y0);
      const ends = [t, 1 - t].map((u) => ({ x: mix(far, near, u), y: mix(s.y0, s.y1, u) }));
      return [handDrawn(ends, WANDER_MM, random.branch(key))];
    }),
  );
  const cross = linesInside(lines, face).filter((l) => lineLength(l) >= SHORTEST_STROKE_MM);
  return [...drawBeds(setts, face, random.branch('beds')), ...cross];
}

/** A round stone in each place, wholly in sight or not drawn. */
function cobbles(setts: readonly Sett[], face: Region, random: Random): Line[] {
  return setts
    .map((s) => {
      const luck = random.branch(`${s.row} ${s.near[0].toFixed(1)}`);
      const [left, right] = [0, 1].map((side) => (s.far[side] + s.near[side]) / 2);
      const rx = (right - left) / 2 - COBBLE_APART_MM;
      const ry = (s.y1 - s.y0) / 2 - COBBLE_APART_MM;
      const turn = luck.between(0, 360);
      const points = Array.from({ length: COBBLE_POINTS }, (_, k) => {
        const a = ((turn + (k * 360) / COBBLE_POINTS) * Math.PI) / 180;
        const far = 1 - luck.between(0, COBBLE_UNEVEN);
        return {
          x: (left + right) / 2 + rx * far * Math.cos(a),
          y: (s.y0 + s.y1) / 2 + ry * far * Math.sin(a),
        };
      });
      return { cubics: smoothContour(points) };
    })
    .filter((ring) => lengthInside(ring, face) > lineLength(ring) - 0.01);
}
