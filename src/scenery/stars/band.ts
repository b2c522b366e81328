import { smoothLine } from '../../geometry/pen.js';
import type { Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { groundOf, landUnder, levelsOf } from '../land/ground.js';
import type { Random } from '../random.js';
import { strewn, type Wanted } from './places.js';
import type { Star } from './star.js';

/** A band of sky from the head and the stars to be pierced in it. */
export interface Band {
  readonly sky: Region;
  readonly stars: readonly Star[];
}

/** The band's lower edge wanders between these shares of the height. */
const EDGE = [0.72, 1] as const;
/** A band lower than this many of the least stars has no room for waves. */
const LOW_STARS = 9;
const WAVES = 4;

/** A band whose lower edge hangs in uneven shallow waves, with stars well inside it. */
export function bandOf(plot: Plot, wanted: Wanted, random: Random): Band {
  const ground = groundOf(plot);
  const { left, right } = ground;
  const shallowest = plot.height < LOW_STARS * wanted.least ? 0.95 : EDGE[0];
  const points = Array.from({ length: WAVES + 1 }, (_, k) => {
    const luck = random.branch(`wave ${k}`);
    const t = (k + (k > 0 && k < WAVES ? luck.between(-0.25, 0.25) : 0)) / WAVES;
    const isEnd = (k === 0 && ground.freeLeft) || (k === WAVES && ground.freeRight);
    const deep = isEnd ? 0 : k % 2 === 1 ? EDGE[1] : luck.between(shallowest, EDGE[1]);
    return { x: left + t * (right - left), y: -plot.height * deep };
  });
  const edge = smoothLine(points);
  const levelAt = levelsOf(edge);
  const rim = wanted.apart;
  const box = {
    minX: -plot.width / 2 + rim,
    minY: -plot.height + rim,
    maxX: plot.width / 2 - rim,
    maxY: -rim,
  };
  const stars = strewn(box, wanted, random.branch('places')).filter((s) =>
    [-1, 0, 1].every((k) => s.y - s.radius - rim > levelAt(s.x + k * (s.radius + rim))),
  );
  return { sky: landUnder(edge, plot.root), stars };
}
