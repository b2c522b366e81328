import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { isFree, roundedLine } from './outline.js';
import type { Room } from './room.js';

/** Common practice, no source: sides lean in by 2 to 4 degrees, arrises are 1 to 2 mm round. */
export const BATTER_DEG = [2, 4] as const;
export const ARRIS_MM = [1, 2] as const;
/** A hedge cut narrow to let light to its foot; more and it reads as a roof. */
const TAPER_DEG = [9, 13] as const;
/** What a tapered hedge keeps of its width at the top. */
const LEAST_TOP = 0.45;

const offsetAt = (heightMm: number, degrees: number) =>
  heightMm * Math.tan((degrees * Math.PI) / 180);

/** The edge of a hedge with a level top, left to right: upright or leaning well in. */
export function levelEdge(room: Room, lean: 'upright' | 'tapered', random: Random): Line {
  const [least, greatest] = lean === 'upright' ? BATTER_DEG : TAPER_DEG;
  const { width, height } = room;
  const most = ((1 - LEAST_TOP) / 2) * width;
  const left = Math.min(most, offsetAt(height, random.between(least, greatest)));
  const right = Math.min(most, offsetAt(height, random.between(least, greatest)));
  const radius = random.between(...ARRIS_MM);
  const top = -height;
  const corners = [];
  if (isFree(room, 'left')) {
    corners.push({ x: room.leftX, y: 0 }, { x: room.leftX + left, y: top, radius });
  } else corners.push({ x: room.leftX, y: top });
  if (isFree(room, 'right')) {
    corners.push({ x: room.rightX - right, y: top, radius }, { x: room.rightX, y: 0 });
  } else corners.push({ x: room.rightX, y: top });
  return roundedLine(corners);
}

/** Where the sides of a rounded hedge end and its top begins, as a share of its height. */
const SHOULDER = [0.4, 0.5] as const;
/** A dome as wide as high is nearly an ellipse; a long one keeps a flatter back. */
/** Places on each half of a dome: enough that the smooth line through them shows no flats. */
const DOME_STEPS = 14;
const ROUNDEST = 2.15;
const FLATTEST = 3.2;

/** The edge of a hedge with a rounded top, left to right. */
export function roundEdge(room: Room, random: Random): Line {
  const { width, height, leftX } = room;
  const shoulder = height * random.between(...SHOULDER);
  const crestX = leftX + width * random.between(0.44, 0.56);
  const left = dome(room, 'left', crestX, shoulder, random.between(...BATTER_DEG));
  const right = dome(room, 'right', crestX, shoulder, random.between(...BATTER_DEG));
  return smoothLine([...left, { x: crestX, y: -height }, ...right.reverse()]);
}

/** Half of the edge from the foot (or the jamb) to just short of the crest. */
function dome(
  room: Room,
  end: 'left' | 'right',
  crestX: number,
  shoulder: number,
  batterDeg: number,
): Point[] {
  const sign = end === 'left' ? -1 : 1;
  const footX = end === 'left' ? room.leftX : room.rightX;
  const free = isFree(room, end);
  // A rooted end runs into the jamb before its dome has fallen far.
  const reach = free ? Math.abs(footX - crestX) - offsetAt(shoulder, batterDeg) : room.width;
  const rise = room.height - shoulder;
  const power = Math.max(ROUNDEST, Math.min(FLATTEST, 1.8 + (0.35 * reach) / rise));
  const points: Point[] = free ? [{ x: footX, y: 0 }] : [];
  for (let i = 0; i < DOME_STEPS; i++) {
    const angle = ((Math.PI / 2) * i) / DOME_STEPS;
    const x = crestX + sign * reach * Math.cos(angle) ** (2 / power);
    const y = -shoulder - rise * Math.sin(angle) ** (2 / power);
    if (free || sign * (x - footX) <= 0) points.push({ x, y });
  }
  return free ? points : [{ x: footX, y: points[0].y }, ...points];
}
