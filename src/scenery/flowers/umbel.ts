import { circle } from '../../geometry/primitives.js';
import type { Cubics, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import { even, ribbon } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { type Grain, type HeadDrawing, type HeadPlace, placedIn } from './head.js';

/** The outer rays stand off from the axis by this. */
const FAN_DEG = 68;
const RAYS = { least: 3, most: 9 } as const;

/** Rays from one point that bear a flat dome of floret clusters, each leaning on the next. */
export function umbel(place: HeadPlace, grain: Grain, random: Random): HeadDrawing {
  const { half, length } = place;
  const { smallestWeb: web, smallestHole: hole, fineness } = grain;
  const room = (2 * half) / (web + hole * mix(1.8, 1.4, fineness));
  const rays = Math.max(RAYS.least, Math.min(RAYS.most, Math.floor(room) + 1));
  const spacing = (2 * half) / rays;
  const cluster = Math.max(0.5 * spacing, 0.75 * web);
  const at = placedIn(place);
  const card: Cubics[] = [];
  for (let i = 0; i < rays; i++) {
    const luck = random.branch(i);
    const turn = mix(-1, 1, (i + luck.between(-0.14, 0.14)) / (rays - 1));
    const a = (turn * FAN_DEG * Math.PI) / 180;
    const along = (length - cluster) * (0.52 + 0.48 * Math.cos(a)) * luck.between(0.94, 1.04);
    const across = ((half - cluster) * Math.sin(a)) / Math.sin((FAN_DEG * Math.PI) / 180);
    const arc = { from: at(0, 0), control: at(0.55 * along, 0.48 * across), to: at(along, across) };
    card.push(ribbon(arc, even(0.6 * web), 'round'));
    card.push(...florets(at, along, across, cluster, luck));
  }
  return { card, holes: [], scores: [], bosses: [] };
}

/** A cluster of florets: a flat cushion with three or so heads on it. */
function florets(
  at: (along: number, across: number) => Point,
  along: number,
  across: number,
  size: number,
  luck: Random,
): Cubics[] {
  const disc = (u: number, v: number, r: number): Cubics => {
    const { x, y } = at(along + u, across + v);
    return circle(x, y, r).contours[0];
  };
  const small = size * luck.between(0.56, 0.66);
  return [
    disc(0.12 * size, 0, 0.7 * size),
    disc(0.16 * size, -0.62 * size, small),
    disc(0.5 * size, luck.between(-0.15, 0.15) * size, small),
    disc(0.16 * size, 0.62 * size, small),
  ];
}
