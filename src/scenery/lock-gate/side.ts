import { roundedRectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { handCut, handDrawn, shape } from '../brick/craft.js';
import { COURSE_MM, jointsOn } from '../brick/facing.js';
import type { Random } from '../random.js';
import type { Hand, Stand } from './stand.js';

/** Joints keep clear of the wall's end and of the plain stone of the hollow quoin, mm. */
const CLEAR_MM = 1.6;
const QUOIN_MM = 2.6;
/** Beds keep this far below the drawn underside of the coping: nearer, it looks drawn twice. */
const APART_MM = 1;
/** A narrower face is left plain. */
const NARROWEST_FACE_MM = 7;
const COVERAGE = 0.55;
/** The coping stands out over the wall, mm. */
const OVERHANG_MM = 0.8;

export interface Wall {
  readonly solids: readonly Region[];
  readonly lines: readonly Line[];
}

/** The lock side that a leaf is hung from: brick under a stone coping, with a mooring post. */
export function sideOf(stand: Stand, hand: Hand, random: Random): Wall {
  const { height, half, plot } = stand;
  const inner = half - 0.4;
  const outer = hand < 0 ? -stand.ends.left : stand.ends.right;
  const top = -stand.up.coping;
  const cope = Math.max(stand.timber, 0.06 * height);
  const at = (x: number, y: number) => ({ x: hand * x, y });
  const wall = shape([at(inner, plot.root), at(inner, top), at(outer, top), at(outer, plot.root)]);
  const coping = handCut(
    [
      at(inner - OVERHANG_MM, top + cope),
      at(inner - OVERHANG_MM, top),
      at(outer, top),
      at(outer, top + cope),
    ],
    0.25,
    random.branch('coping'),
  );
  const lines = [
    handDrawn([at(inner, top + cope), at(outer, top + cope)], 0.2, random.branch('under')),
    ...copingJoints(stand, hand, top, cope, random.branch('stones')),
    ...bricks(stand, hand, top + cope, random.branch('bricks')),
  ];
  const bollard = bollardOf(stand, hand, top, random.branch('bollard'));
  return { solids: [wall, coping, ...bollard], lines };
}

function copingJoints(stand: Stand, hand: Hand, top: number, cope: number, random: Random): Line[] {
  const lines: Line[] = [];
  let x = stand.half + random.between(4, 7);
  for (let i = 0; x < stand.plot.width / 2 - 2; i++) {
    lines.push(
      handDrawn(
        [
          { x: hand * x, y: top },
          { x: hand * x, y: top + cope },
        ],
        0.1,
        random,
      ),
    );
    x += random.branch(i).between(6, 9);
  }
  return lines;
}

/** Brickwork under the coping, dense at the hollow quoin and under the stones. */
function bricks(stand: Stand, hand: Hand, top: number, random: Random): Line[] {
  const { half, plot } = stand;
  const inner = half + QUOIN_MM;
  const outer = plot.width / 2 - CLEAR_MM;
  if (outer - inner < NARROWEST_FACE_MM) return [];
  const at = (x: number, y: number) => ({ x: hand * x, y });
  const foot = plot.root - CLEAR_MM;
  const high = top + APART_MM;
  const face = shape([at(inner, high), at(outer, high), at(outer, foot), at(inner, foot)]);
  const x = hand * inner;
  const anchors = [
    { x0: x, y0: top, x1: x, y1: 0, reach: 7, pull: 0.5 },
    { x0: x, y0: top, x1: hand * outer, y1: top, reach: 5, pull: 0.3 },
  ];
  return jointsOn(
    face,
    {
      masonry: 'brick',
      courseMm: COURSE_MM.brick,
      anchors,
      coverage: COVERAGE,
      fineness: plot.fineness,
    },
    random,
  );
}

/** A mushroom-headed mooring post on one lock side or the other. */
function bollardOf(stand: Stand, hand: Hand, top: number, random: Random): Region[] {
  const { half, plot, timber, height } = stand;
  const room = plot.width / 2 - half;
  if (room < 12 || !random.chance(0.6)) return [];
  const x = hand * (half + room * random.between(0.5, 0.7));
  const w = Math.max(timber, 0.05 * height);
  const h = 0.07 * height;
  return [
    roundedRectangle(x - w / 2, top - h, w, h + 1, 0.3),
    roundedRectangle(x - w * 0.8, top - h - 0.4, w * 1.6, Math.max(timber * 0.8, 1.2), 0.6),
  ];
}
