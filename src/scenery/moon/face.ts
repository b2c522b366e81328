import { pen } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';
import type { Disc, Form } from './disc.js';

/** What is worked on the disc: lines to score, or rounds to press. */
export interface Face {
  readonly lines: readonly Line[];
  readonly rounds: readonly Region[];
}

/** Craters wanted and tried for, their radii in the disc's, and the card between two, mm. */
const CRATERS = 6;
const TRIES = 40;
const CRATER = [0.1, 0.24] as const;
const APART_MM = 1.2;
/** A crater smaller than this is a dent, mm. */
const LEAST_MM = 1.1;
/** A crater's rim is drawn on its shaded side only. */
const RIM_DEG = [150, 235] as const;

/** Craters on a moon, two swirling rings on a sun; `shadeDeg` is where rims are drawn. */
export const faceOf = (disc: Disc, form: Form, random: Random): Face =>
  form === 'sun' ? swirl(disc, random) : cratersOf(disc, random);

function cratersOf({ centre, radius }: Disc, random: Random): Face {
  const craters: (Point & { radius: number })[] = [];
  const shade = random.between(20, 70);
  for (let i = 0; i < TRIES && craters.length < CRATERS; i++) {
    const luck = random.branch(i);
    const r = Math.max(
      LEAST_MM,
      radius * (luck.next() ** 1.4 * (CRATER[1] - CRATER[0]) + CRATER[0]),
    );
    const far = Math.sqrt(luck.next()) * (radius - r - 1.6);
    const a = luck.between(0, 2 * Math.PI);
    const at = { x: centre.x + far * Math.cos(a), y: centre.y + far * Math.sin(a), radius: r };
    const fits = craters.every((c) => Math.hypot(c.x - at.x, c.y - at.y) > c.radius + r + APART_MM);
    if (far > 0 && fits) craters.push(at);
  }
  const lines = craters.map((c, i): Line => {
    const luck = random.branch(`rim ${i}`);
    const sweep = luck.between(...RIM_DEG);
    const start = ((shade - sweep / 2 + luck.between(-15, 15)) * Math.PI) / 180;
    return pen(c.x + c.radius * Math.cos(start), c.y + c.radius * Math.sin(start))
      .arcAround(c.x, c.y, sweep)
      .line();
  });
  return { lines, rounds: craters.map((c) => circle(c.x, c.y, c.radius)) };
}

/** Rings of a sun: radius in the disc's and how far round. */
const RINGS = [
  { radius: 0.7, sweepDeg: 290 },
  { radius: 0.42, sweepDeg: 250 },
] as const;
const LEAST_RING_MM = 1.2;

function swirl({ centre, radius }: Disc, random: Random): Face {
  const start = random.between(0, 360);
  const rings = RINGS.filter((ring) => ring.radius * radius > LEAST_RING_MM);
  const lines = rings.map((ring, i): Line => {
    const a = ((start + 200 * i) * Math.PI) / 180;
    const r = ring.radius * radius;
    return pen(centre.x + r * Math.cos(a), centre.y + r * Math.sin(a))
      .arcAround(centre.x, centre.y, ring.sweepDeg)
      .line();
  });
  return { lines, rounds: [circle(centre.x, centre.y, 0.66 * radius)] };
}
