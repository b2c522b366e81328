import { pen } from '../../geometry/pen.js';
import type { Bounds, Line, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';

/** From furrow to furrow, in spacings. */
const PITCH = 2.3;
/** A lens: half its width and length in spacings, and how far it pushes furrows aside, in pitches. */
const LENS = { width: 1.45, length: 6.5, felt: 3.2 };
/** Lenses lie this far apart: in pitches across and in spacings along. */
const LENSES = { across: 4, along: 17 };
/** All furrows sway together by this much, over this length, in spacings. */
const SWAY = { width: 0.8, length: 9 };
/** A furrow's strokes and the gaps between them, in spacings. */
const STROKE = [9, 24] as const;
const GAP = [1.3, 3] as const;
const STEP = 1.5;

/** Bark: upright furrows that sway together, break off, and part round lenses. */
export function bark(box: Bounds, spacing: number, random: Random): Line[] {
  const pitch = PITCH * spacing;
  const lenses = lensesIn(box, spacing, random);
  const phase = random.branch('sway').between(0, 2 * Math.PI);
  const place = (x: number, y: number): Point => {
    const sway = SWAY.width * spacing * Math.sin(phase + y / (SWAY.length * spacing));
    const pushed = lenses.reduce((sum, lens) => sum + push(lens, x, y, spacing), 0);
    return { x: x + pushed + sway, y };
  };
  const furrows: Line[] = [];
  const reach = 2 * pitch;
  for (
    let k = Math.floor((box.minX - reach) / pitch);
    k <= Math.ceil((box.maxX + reach) / pitch);
    k++
  ) {
    furrows.push(...furrow(k, pitch, box, spacing, place, random.branch(`furrow ${k}`)));
  }
  const hearts = lenses.map((lens) => {
    const half = 0.42 * LENS.length * spacing;
    const points = [-half, -half / 3, half / 3, half].map((mm) => place(lens.x, lens.y + mm));
    return pen(points[0].x, points[0].y).smoothTo(points.slice(1)).line();
  });
  return [...furrows, ...hearts];
}

/** One furrow in strokes; they follow from its number alone, from far above any box. */
function furrow(
  k: number,
  pitch: number,
  { minY, maxY }: Bounds,
  spacing: number,
  place: (x: number, y: number) => Point,
  random: Random,
): Line[] {
  const strokes: Line[] = [];
  // Strokes are counted in stretches of fixed length, so that a taller box keeps them.
  const stretch = (STROKE[1] + GAP[1]) * spacing;
  // No two furrows break at one level: a row of breaks would be where the card folds.
  const start = random.branch('start').next();
  for (let n = Math.floor(minY / stretch) - 2; n <= Math.ceil(maxY / stretch); n++) {
    const luck = random.branch(n);
    const first = luck.between(...STROKE) * spacing;
    const gap = luck.between(...GAP) * spacing;
    const from = (n + start) * stretch + luck.between(0.6, 1.2) * spacing;
    const until = (n + 1 + start) * stretch - 0.6 * spacing;
    for (const [a, b] of [
      [from, from + first],
      [from + first + gap, until],
    ]) {
      if (b - a < 2 * spacing) continue;
      const steps = Math.max(2, Math.ceil((b - a) / (STEP * spacing)));
      const points = Array.from({ length: steps + 1 }, (_, i) =>
        place((k + 0.5) * pitch, a + (i / steps) * (Math.min(b, until) - a)),
      );
      strokes.push(pen(points[0].x, points[0].y).smoothTo(points.slice(1)).line());
    }
  }
  return strokes;
}

/** Lenses strewn on a grid of their own, midway between two furrows. */
function lensesIn({ minX, minY, maxX, maxY }: Bounds, spacing: number, random: Random): Point[] {
  const pitch = PITCH * spacing;
  const [wide, high] = [LENSES.across * pitch, LENSES.along * spacing];
  const lenses: Point[] = [];
  for (let column = Math.floor(minX / wide) - 1; column <= Math.ceil(maxX / wide); column++) {
    for (let row = Math.floor(minY / high) - 1; row <= Math.ceil(maxY / high); row++) {
      const luck = random.branch(`lens ${column} ${row}`);
      const shift = Math.abs(column % 2) * 0.5;
      if (!luck.chance(0.75)) continue;
      lenses.push({
        x: (column * LENSES.across + luck.whole(1, 2)) * pitch,
        y: (row + 0.5 + shift + luck.between(-0.12, 0.12)) * high,
      });
    }
  }
  return lenses;
}

/** How far a lens pushes a furrow aside: most beside it, less for every furrow further off. */
function push(lens: Point, x: number, y: number, spacing: number): number {
  const along = (y - lens.y) / (LENS.length * spacing);
  if (Math.abs(along) >= 1 || x === lens.x) return 0;
  const aside = x - lens.x;
  const bulge = (1 - along * along) ** 2;
  const fade = Math.exp(-Math.max(0, Math.abs(aside) / (PITCH * spacing) - 0.5) / LENS.felt);
  return Math.sign(aside) * LENS.width * spacing * bulge * fade;
}
