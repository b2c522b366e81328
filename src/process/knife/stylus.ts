import { subtract } from '../../geometry/boolean/boolean.js';
import type { Line, Region } from '../../geometry/types.js';
import type { Piece } from '../../panel/piece.js';
import type { Relief } from '../../scenery/family.js';
import type { Mark } from '../layers.js';
import type { StylusRelief } from '../process.js';
import { filled, hatchLines, outlines, rings, stipple } from '../relief-strokes.js';
import type { Stroke } from '../slim.js';
import { ballRoom } from './ball-room.js';

/**
 * A piece's relief as strokes of a ball whose edge stays within what is pressed. Relief with a
 * pattern of its own keeps that. What is pressed twice on one face is pressed once: patterns come
 * before plain relief, and what was drawn first before the rest.
 * @param designed the emboss layer as designed: only the sides that it holds are pressed.
 */
export function stylusMarks(
  { reliefs }: Piece,
  designed: readonly Mark[],
  stylus: StylusRelief,
  ballMm: number,
): Mark[] {
  if (stylus.how === 'none') return [];
  const sides = new Set(designed.map(({ relief }) => relief?.side));
  const worked = reliefs.filter(({ side }) => sides.has(side));
  return worked.flatMap((relief, k): Mark[] => {
    const { side, depthMm } = relief;
    const strokes = relief.strokes
      ? relief.strokes.map(openStroke)
      : strokesIn(alone(worked, k), stylus, ballMm);
    return strokes.map((stroke) => ({ ...stroke, relief: { side, depthMm } }));
  });
}

/** What of a plain relief no other of its side takes. */
function alone(reliefs: readonly Relief[], k: number): Region {
  const { region, side } = reliefs[k];
  const taken = reliefs.filter((r, j) => j !== k && r.side === side && (r.strokes || j < k));
  return taken.length === 0
    ? region
    : subtract(
        region,
        taken.map((r) => r.region),
      );
}

function strokesIn(region: Region, stylus: StylusRelief, ballMm: number): Stroke[] {
  const { room, middles } = ballRoom(region, ballMm);
  const apartMm = stylus.apartBalls * ballMm;
  return [...fill(room, stylus, apartMm), ...middles];
}

function fill(room: Region, { how, angleDeg }: StylusRelief, apartMm: number): Stroke[] {
  switch (how) {
    case 'outline':
      return outlines(room, apartMm);
    case 'rings':
      return rings(room, apartMm);
    case 'hatch':
      return filled(room, apartMm, (part) => hatchLines(part, angleDeg, apartMm));
    case 'cross':
      return filled(room, apartMm, (part) =>
        [angleDeg, angleDeg + 90].flatMap((deg) => hatchLines(part, deg, apartMm)),
      );
    case 'stipple':
      return filled(room, apartMm, (part) => stipple(part, apartMm));
    case 'none':
      return [];
  }
}

const openStroke = ({ cubics }: Line): Stroke => ({ cubics, closed: false });
