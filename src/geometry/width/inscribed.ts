import { nearestChord, OUTLINE_TOLERANCE_MM, type Outline } from '../outline.js';

/**
 * Samples round a region's outline, each with the largest circle of card that touches the outline
 * there: its diameter is how wide the card is at that place. Samples lie in order round each
 * contour; contour k owns those from `first[k]` up to `first[k + 1]`. A reflex corner, which no
 * circle of card touches at one direction only, has a fan of samples on one spot.
 *
 * After J. Ma, S. W. Bae and S. Choi, 3D medial axis point approximation using nearest neighbors
 * and the normal field, The Visual Computer 28 (2012): the circle shrinks until it is empty.
 */
export interface EdgeSamples {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Unit normal, into the card. */
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly contour: Int32Array;
  readonly first: Int32Array;
  readonly chord: Int32Array;
  /** Length of outline (mm) that the sample stands for: 0 in a fan. */
  readonly stretchMm: Float64Array;
  /** Length of outline (mm) from the contour's start to the sample. */
  readonly alongMm: Float64Array;
  /** Diameter of the circle, Infinity where it reaches the cap. */
  readonly widthMm: Float64Array;
  /** The sample where the circle touches the outline again; -1 where it reaches the cap. */
  readonly opposite: Int32Array;
  /** Distance from the sample to that second touching point. */
  readonly acrossMm: Float64Array;
}

/** A turn of the outline away from the card sharper than this is a reflex corner. */
const REFLEX_RAD = (10 * Math.PI) / 180;
/** Angle between the samples of a fan: a neck between two corners is seen within half of it. */
const FAN_STEP_RAD = (15 * Math.PI) / 180;
/** Outline beside the sample may poke this far into a circle: more than chords on a bulge do. */
const POKE_MM = 5 * OUTLINE_TOLERANCE_MM;
/** ... but no more than this share of the radius, or small circles would not shrink. */
const POKE_SHARE = 0.1;
/** Outline that faces the sample may poke in by this (mm): more makes horns' points look wide. */
const FACING_POKE_MM = 1e-4;
/** Places of the outline nearer to each other than this (mm) touch. */
const TOUCHING_MM = 1e-6;
/** Shrinkings at most; 3 to 6 are usual, and a circle cut short is only too large. */
const SHRINKINGS = 40;

/** Samples about every `spacingMm`, with circles of a diameter up to `capMm`. */
export function edgeSamples(outline: Outline, spacingMm: number, capMm: number): EdgeSamples {
  const places = placesAlong(outline, spacingMm);
  const { count, x, y, nx, ny } = places;
  const widthMm = new Float64Array(count).fill(Infinity);
  const acrossMm = new Float64Array(count);
  const opposite = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s++) {
    let radius = capMm / 2;
    for (let k = 0; k < SHRINKINGS; k++) {
      const [cx, cy] = [x[s] + nx[s] * radius, y[s] + ny[s] * radius];
      const foot = nearestChord(outline, cx, cy, radius - FACING_POKE_MM);
      if (foot === null) break;
      const mayPoke = Math.min(POKE_MM, POKE_SHARE * radius);
      if (foot.distanceMm >= radius - mayPoke && !faces(outline, foot.chord, nx[s], ny[s])) break;
      const dx = foot.x - x[s];
      const dy = foot.y - y[s];
      acrossMm[s] = Math.hypot(dx, dy);
      opposite[s] = sampleAt(places, foot.chord, foot.fraction, x[s], y[s]);
      // Where the outline touches itself there is no card at all.
      const touches = acrossMm[s] < TOUCHING_MM;
      radius = touches ? 0 : acrossMm[s] ** 2 / (2 * (dx * nx[s] + dy * ny[s]));
      widthMm[s] = 2 * radius;
      if (touches) break;
    }
  }
  makeMutual(widthMm, acrossMm, opposite);
  return { ...places, widthMm, acrossMm, opposite };
}

/** Whether a chord's card lies on the side from which a normal into card comes. */
const faces = ({ ax, ay, bx, by }: Outline, k: number, nx: number, ny: number): boolean =>
  nx * (ay[k] - by[k]) + ny * (bx[k] - ax[k]) < 0;

/** Two samples share one circle, and the finer of the two views of it is the truer one. */
function makeMutual(widthMm: Float64Array, acrossMm: Float64Array, opposite: Int32Array): void {
  for (let s = 0; s < opposite.length; s++) {
    const o = opposite[s];
    if (o < 0 || widthMm[o] <= widthMm[s]) continue;
    widthMm[o] = widthMm[s];
    acrossMm[o] = acrossMm[s];
    opposite[o] = s;
  }
}

type Places = Pick<
  EdgeSamples,
  'count' | 'x' | 'y' | 'nx' | 'ny' | 'contour' | 'first' | 'chord' | 'stretchMm' | 'alongMm'
> & {
  /** First sample of each chord's own, after the fan at its start, and of its fan. */
  readonly own: Int32Array;
  readonly fan: Int32Array;
  readonly outline: Outline;
};

function placesAlong(outline: Outline, spacingMm: number): Places {
  const { ax, ay, bx, by, first: firstChord } = outline;
  const chords = ax.length;
  const columns: number[][] = Array.from({ length: 8 }, () => []);
  const put = (...values: number[]): void => {
    for (let k = 0; k < 8; k++) columns[k].push(values[k]);
  };
  const heading = (k: number): number => Math.atan2(by[k] - ay[k], bx[k] - ax[k]);
  const own = new Int32Array(chords + 1);
  const fan = new Int32Array(chords + 1);
  const first = new Int32Array(firstChord.length);
  for (let q = 0; q + 1 < firstChord.length; q++) {
    let along = 0;
    for (let k = firstChord[q]; k < firstChord[q + 1]; k++) {
      const before = k === firstChord[q] ? firstChord[q + 1] - 1 : k - 1;
      fan[k] = columns[0].length;
      for (const h of fanHeadings(heading(before), heading(k))) {
        put(ax[k], ay[k], -Math.sin(h), Math.cos(h), q, k, 0, along);
      }
      own[k] = columns[0].length;
      const [dx, dy] = [bx[k] - ax[k], by[k] - ay[k]];
      const length = Math.hypot(dx, dy);
      const steps = Math.ceil(length / spacingMm);
      for (let j = 0; j < steps; j++) {
        const f = (j + 0.5) / steps;
        const [x, y] = [ax[k] + f * dx, ay[k] + f * dy];
        put(x, y, -dy / length, dx / length, q, k, length / steps, along + f * length);
      }
      along += length;
    }
    first[q + 1] = columns[0].length;
  }
  fan[chords] = own[chords] = columns[0].length;
  const [x, y, nx, ny, contour, chord, stretchMm, alongMm] = columns;
  return {
    count: x.length,
    x: new Float64Array(x),
    y: new Float64Array(y),
    nx: new Float64Array(nx),
    ny: new Float64Array(ny),
    contour: new Int32Array(contour),
    chord: new Int32Array(chord),
    stretchMm: new Float64Array(stretchMm),
    alongMm: new Float64Array(alongMm),
    first,
    own,
    fan,
    outline,
  };
}

/** The headings of a fan between two chords, both included; none where the corner is not reflex. */
function fanHeadings(from: number, to: number): number[] {
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  if (turn >= -REFLEX_RAD) return [];
  const steps = Math.ceil(-turn / FAN_STEP_RAD);
  return Array.from({ length: steps + 1 }, (_, j) => from + (turn * j) / steps);
}

/** A touching point this near to a chord's end (share of the chord) touches the corner there. */
const CORNER_SHARE = 1e-6;

/** The sample that stands for a place on a chord; at a corner, the one that looks at (x, y). */
function sampleAt(
  { own, fan, outline, nx, ny, x: sx, y: sy }: Places,
  chord: number,
  fraction: number,
  x: number,
  y: number,
): number {
  const contour = outline.contour[chord];
  const isLast = chord + 1 === outline.first[contour + 1];
  const after = isLast ? outline.first[contour] : chord + 1;
  const corner = fraction < CORNER_SHARE ? chord : fraction > 1 - CORNER_SHARE ? after : undefined;
  if (corner !== undefined && own[corner] > fan[corner]) {
    let best = fan[corner];
    for (let s = best; s < own[corner]; s++) {
      const looks = (k: number): number => nx[k] * (x - sx[k]) + ny[k] * (y - sy[k]);
      if (looks(s) > looks(best)) best = s;
    }
    return best;
  }
  const count = fan[chord + 1] - own[chord];
  return own[chord] + Math.min(count - 1, Math.floor(fraction * count));
}
