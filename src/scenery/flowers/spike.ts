import type { Cubics, Line } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import { arcLine, ribbon, taper } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { type Grain, type HeadDrawing, type HeadPlace, placedIn } from './head.js';

/** From bell to bell on one side, in smallest webs and holes, and at the least as a share. */
const PITCH = { webs: 1.2, holes: 0.55, share: 0.13 };
/** Bells hang at the foot of the spike and stand up at its top: degrees off the axis. */
const HANG_DEG = [104, 48] as const;

/** Bells up both sides of a tapering axis, alternating, smaller toward the top. */
export function spike(place: HeadPlace, grain: Grain, random: Random): HeadDrawing {
  const { half, length } = place;
  const { smallestWeb: web, smallestHole: hole, fineness } = grain;
  const pitch = Math.max(
    (PITCH.webs * web + PITCH.holes * hole) * mix(1.2, 1, fineness),
    PITCH.share * length * mix(1.2, 0.8, fineness),
  );
  const at = placedIn(place);
  const bend = random.between(-0.25, 0.25) * half;
  const middleAt = (t: number) => bend * t * t;
  const core = Math.max(0.55 * web, 0.46 * half);
  const top = length - 0.6 * web;
  const axis = { from: at(0, 0), control: at(0.5 * top, 0), to: at(top, bend) };
  const card: Cubics[] = [ribbon(axis, taper(core, 0.58 * web, 1.5), 'round')];
  const scores: Line[] = [];
  const rows = Math.floor((0.94 * length) / pitch);
  for (let row = 0; row < rows; row++) {
    for (const side of [-1, 1]) {
      const luck = random.branch(`${row} ${side}`);
      const t = ((row + (side > 0 ? 0.5 : 0) + 0.2 + luck.between(-0.1, 0.1)) * pitch) / length;
      if (t > 0.95) continue;
      const reach = half * mix(1, 0.4, t ** 1.4) * luck.between(0.9, 1.08);
      const mouth = Math.max(0.57 * web, 0.44 * pitch * mix(1, 0.8, t));
      if (reach < mouth + 0.1 * core) continue;
      const a = (mix(...HANG_DEG, t) * Math.PI) / 180;
      const far = reach - mouth;
      const from = at(t * length, middleAt(t));
      const control = at(t * length + 0.3 * far, middleAt(t) + side * 0.6 * far);
      const to = at(t * length + far * Math.cos(a), middleAt(t) + side * far);
      const bell = { from, control, to };
      card.push(ribbon(bell, taper(0.57 * web, mouth, 1), 'round'));
      if (luck.chance(0.6)) scores.push(arcLine(bell, 0.1, 0.8));
    }
  }
  return { card, holes: [], scores, bosses: [] };
}
