import { rectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { handDrawn, wholeHoles } from '../brick/craft.js';
import { chimneyOf } from '../cottage/chimney.js';
import { doorOf, windowOf } from '../cottage/openings.js';
import { type Built, joinBuilt, NOTHING, type Scale } from '../cottage/plan.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { atticWindow } from './gable.js';
import { columnAt, type Front } from './plan.js';

/** Windows are this high for their floor, and this wide for their height and their bay. */
const HIGH = 0.6;
const WIDE = 0.72;
const OF_BAY = 0.64;
/** A sill is this far up its floor. */
const SILL = 0.2;
/** A door in heights of the drawing it is taken from: 9 to its top, 13 with its light. */
const DOOR_HIGH = 15;
const DOOR_WIDE = 4.6;
const LINE_CLEAR_MM = 1.6;
const WANDER_MM = 0.15;
/** The least that a scored window may measure, mm: two lines and room between. */
const LEAST_SCORED_MM = 2;

/** Windows on every floor, a door in one bay of the ground floor, a round light in the gable. */
export function openingsOf(
  front: Front,
  body: Region,
  plot: Plot,
  lit: boolean,
  random: Random,
): Built {
  const built: Built[] = [];
  const door = random.branch('door').whole(0, front.columns - 1);
  front.floors.forEach((floor, level) => {
    for (let k = 0; k < front.columns; k++) {
      const luck = random.branch(`${level} ${k}`);
      built.push(
        level === 0 && k === door
          ? doorIn(front, plot, k, lit, luck)
          : windowIn(front, plot, floor, k, lit, luck),
      );
    }
  });
  const attic = atticWindow(front, body, plot);
  if (attic) {
    built.push(lit ? { ...NOTHING, holes: [attic], bare: [attic] } : scoredOutline(attic));
  }
  const all = joinBuilt(built);
  return { ...all, holes: wholeHoles(all.holes, plot.frame) };
}

const scaleOf = (plot: Plot, size: number): Scale => ({
  plot,
  size,
  bar: plot.smallestWeb * 1.08 + 0.1,
  shy: LINE_CLEAR_MM,
});

function windowIn(
  front: Front,
  plot: Plot,
  floor: Front['floors'][number],
  column: number,
  lit: boolean,
  random: Random,
): Built {
  const { smallestWeb: web } = plot;
  const bay = (front.x1 - front.x0) / front.columns;
  const height = Math.min(HIGH * floor.height, floor.height - 1.45 * web);
  const room = Math.min(bay - 1.4 * web, OF_BAY * bay);
  const width = Math.min(room, Math.max(WIDE * height, 1.15 * plot.smallestHole));
  const sill = floor.foot - Math.min(SILL * floor.height, floor.height - height - 0.7 * web);
  const x = columnAt(front, column);
  if (lit) {
    const scale = scaleOf(plot, floor.height / 11);
    return windowOf(scale, { x, sill, width, height, wall: front }, random);
  }
  if (Math.min(width, height) < LEAST_SCORED_MM) return NOTHING;
  const outline = rectangle(x - width / 2, sill - height, width, height);
  return { ...scoredOutline(outline), lines: frameLines(x, sill, width, height, random) };
}

/** A window drawn with its frame and its bars. */
function frameLines(x: number, sill: number, wide: number, high: number, random: Random): Line[] {
  const [l, r, top] = [x - wide / 2, x + wide / 2, sill - high];
  const frame = [
    { x: l, y: sill },
    { x: l, y: top },
    { x: r, y: top },
    { x: r, y: sill },
    { x: l, y: sill },
  ];
  const lines = [handDrawn(frame, WANDER_MM, random)];
  if (wide > 3.4) {
    const bar = [top + 0.5, sill - 0.5].map((y) => ({ x, y }));
    lines.push(handDrawn(bar, WANDER_MM, random.branch('bar')));
  }
  return lines;
}

const scoredOutline = (outline: Region): Built => ({
  ...NOTHING,
  lines: outline.contours.map((cubics) => ({ cubics })),
  bare: [outline],
});

function doorIn(front: Front, plot: Plot, column: number, lit: boolean, random: Random): Built {
  const bay = (front.x1 - front.x0) / front.columns;
  const size = Math.min(
    front.floors[0].height / DOOR_HIGH,
    (bay - 2.4 * plot.smallestWeb - 0.4) / DOOR_WIDE,
  );
  const door = doorOf(scaleOf(plot, size), columnAt(front, column), random);
  if (lit) return door;
  const light = door.holes.flatMap((hole) => hole.contours.map((cubics) => ({ cubics })));
  return { ...door, holes: [], lines: [...door.lines, ...light] };
}

/** A chimney beside a pitched or a flat roof's middle, or none where there is no room. */
export function stackOn(front: Front, plot: Plot, random: Random): Built {
  const { gable, x0, x1, eaves, top } = front;
  const chance = random.chance(0.75);
  const off = (random.chance(0.5) ? 1 : -1) * random.between(0.16, 0.22);
  const size = Math.min(-top / 60, (x1 - x0) / 32);
  const room = 0.3 * (x1 - x0) - Math.max(2.2 * plot.smallestWeb, 4.6 * size) / 2;
  if (!chance || gable !== 'pitched' || room < 1.3 * plot.smallestHole) return NOTHING;
  const rise = eaves - top;
  const x = (x0 + x1) / 2 + off * (x1 - x0);
  const roof = top + 2 * Math.abs(off) * rise;
  const high = Math.max(top, roof - Math.max(0.4 * rise, 7 * size));
  if (roof - high < 3 * plot.smallestWeb) return NOTHING;
  return chimneyOf(scaleOf(plot, size), x, roof + 0.25 * rise, high, random);
}
