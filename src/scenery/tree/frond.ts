import type { Cubics, Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { leaf, TIP_RADIUS_MM } from '../leaf.js';
import { alongSmooth, limb } from '../limb.js';
import type { Random } from '../random.js';
import { degrees, turnBetween } from './angles.js';

/** A palm's leaf: its rib from the heart over its crest to its tip. Lengths in mm. */
export interface Frond {
  readonly path: readonly Point[];
  /** Half the angle at the heart that it has to itself, in radians. */
  readonly half: number;
  readonly random: Random;
}

/** A leaflet is so wide in smallest webs, and leaves so much room to the next in smallest holes. */
const LEAFLET = { webs: 1.15, holes: 0.85, holesForLight: 2, share: 0.042 };
/** Leaflets stand off the rib by this at the frond's foot and at its tip. */
const OFF_DEG: readonly [number, number] = [62, 28];
/** A frond with room for fewer leaflets to a side is drawn as a split blade. */
const LEAST_LEAFLETS = 4;
/** Leaflets begin this far along the rib: nearer the heart they would close the light. */
const FROM = 0.34;
/** Their length for the room that the frond has to itself: little near the heart, more outside. */
const LEAFLET_LONG = 1.05;
const STEPS = 30;
const DOWN_DEG = 90;

/** The frond as a rib with a comb of leaflets to either side, or as a blade split into a few. */
export function frondContours(
  { path, half, random }: Frond,
  plot: Plot,
  size: number,
  light: number,
): Cubics[] {
  const web = plot.smallestWeb;
  const line = alongSmooth(path, STEPS / 3);
  const lengths = [0];
  for (let i = 1; i < line.length; i++) {
    lengths.push(lengths[i - 1] + Math.hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y));
  }
  const long = lengths[lengths.length - 1];
  const at = (f: number): number =>
    Math.max(
      1,
      lengths.findIndex((l) => l >= f * long),
    );
  const apart =
    LEAFLET.webs * web + (LEAFLET.holes + LEAFLET.holesForLight * light) * plot.smallestHole;
  const pitch = Math.max(apart, LEAFLET.share * size * (0.7 + 1.5 * light));
  const count = Math.floor(((0.98 - FROM) * long) / pitch);
  const isBlade = count < LEAST_LEAFLETS;
  const rib = limb(
    [0, 0.25, 0.5, 0.75, 0.97].map((f) => ({
      ...line[f === 0 ? 0 : at(f)],
      thickness: isBlade
        ? Math.max(1.2 * web, 0.7 * half * long * Math.sin(Math.PI * (0.1 + 0.82 * f)))
        : web * (1.7 - 0.6 * f),
    })),
  );
  const leaflets: Cubics[] = [];
  const each = Math.max(3, count);
  for (const side of [-1, 1]) {
    for (let k = 0; k < each; k++) {
      const own = random.branch(`leaflet ${side} ${k}`);
      const f = FROM + ((0.98 - FROM) * (k + 0.5 + own.between(-0.12, 0.12))) / each;
      const i = Math.min(line.length - 1, at(f));
      const [a, b] = [line[i - 1], line[i]];
      const heading = degrees(Math.atan2(b.y - a.y, b.x - a.x));
      const off = OFF_DEG[0] + (OFF_DEG[1] - OFF_DEG[0]) * f;
      const stands = heading + side * off;
      const hung = stands + 0.3 * turnBetween(stands, DOWN_DEG);
      const full = LEAFLET_LONG * half * long * Math.min(1.2 * f, 1, 1.9 - 1.4 * f);
      const length = Math.max(full * own.between(0.9, 1.1), 2.4 * web);
      const width = Math.max(LEAFLET.webs * web, (isBlade ? 0.5 : 0.34) * pitch);
      const form = { length, width, widest: 0.38, tipRadius: TIP_RADIUS_MM };
      leaflets.push(leaf(form, b, hung));
    }
  }
  const [a, b] = [line[at(0.9)], line[line.length - 1]];
  const heading = degrees(Math.atan2(b.y - a.y, b.x - a.x));
  const tip = { length: 0.2 * long + web, width: 1.3 * web, widest: 0.4, tipRadius: TIP_RADIUS_MM };
  return [rib, ...leaflets, leaf(tip, a, heading)];
}
