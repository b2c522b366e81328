import { describe, expect, it } from 'vitest';
import { subtract } from '../../../src/geometry/boolean/boolean.js';
import { flatten, lineBounds, lineLength, regionBounds } from '../../../src/geometry/measure.js';
import { offset } from '../../../src/geometry/offset/offset.js';
import { pen, regionOf } from '../../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../../src/geometry/primitives.js';
import type { Line, Point, Region } from '../../../src/geometry/types.js';
import { TEXTURES, type TextureName } from '../../../src/scene/scene.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { keptApart } from '../../../src/scenery/texture/apart.js';
import { textureLines } from '../../../src/scenery/texture/texture.js';
import { clearance } from '../plots.js';

const REGIONS: Record<string, Region> = {
  sheet: rectangle(-30, -50, 60, 45),
  pierced: subtract(rectangle(0, 0, 60, 50), [circle(20, 20, 9), circle(45, 30, 6)]),
  leaf: regionOf(pen(0, 0).quadTo(30, -35, 60, 0).quadTo(30, 22, 0, 0).close()),
  parts: { contours: [...ellipse(0, 0, 14, 9).contours, ...rectangle(20, -8, 9, 30).contours] },
};

const draw = (region: Region, texture: TextureName, spacing = 1, seed = 1): Line[] =>
  textureLines(region, texture, spacing, randomFrom(seed, 'texture'));

/** A stroke as points 0.05 mm apart at most. */
function dotted({ cubics }: Line): Point[] {
  const points = flatten(cubics, 0.002);
  return points.slice(1).flatMap((b, i) => {
    const a = points[i];
    const parts = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 0.05);
    return Array.from({ length: parts + 1 }, (_, k) => ({
      x: a.x + (k / parts) * (b.x - a.x),
      y: a.y + (k / parts) * (b.y - a.y),
    }));
  });
}

/** Least distance between points of different strokes, mm; every pair of near strokes is looked at. */
function leastBetween(lines: readonly Line[]): number {
  const strokes = lines.map((line) => ({ dots: dotted(line), box: lineBounds(line) }));
  let least = Infinity;
  strokes.forEach((p, i) => {
    for (const q of strokes.slice(i + 1)) {
      const dx = Math.max(p.box.minX - q.box.maxX, q.box.minX - p.box.maxX);
      const dy = Math.max(p.box.minY - q.box.maxY, q.box.minY - p.box.maxY);
      if (Math.max(dx, dy) > Math.min(3, least)) continue;
      for (const a of p.dots) {
        for (const b of q.dots) least = Math.min(least, Math.hypot(a.x - b.x, a.y - b.y));
      }
    }
  });
  return least;
}

describe.each(TEXTURES)('%s', (texture) => {
  it.each(Object.keys(REGIONS))(
    'keeps strokes a ball apart and clear of the edge on %s',
    (name) => {
      for (const spacing of [0.8, 1, 1.6]) {
        const lines = draw(REGIONS[name], texture, spacing);
        expect(lines.length).toBeGreaterThan(4);
        // Points 0.05 mm apart on either stroke measure at most 0.001 mm too much.
        expect(leastBetween(lines)).toBeGreaterThanOrEqual(spacing - 0.01);
        expect(clearance(lines, REGIONS[name])).toBeGreaterThanOrEqual(spacing - 0.01);
      }
    },
  );

  it('fills every part of its region', () => {
    const region = rectangle(0, 0, 60, 60);
    const lines = draw(region, texture);
    for (let x = 0; x < 60; x += 15) {
      for (let y = 0; y < 60; y += 15) {
        const here = lines
          .flatMap(dotted)
          .filter((p) => p.x >= x && p.x < x + 15 && p.y >= y && p.y < y + 15);
        // At least 2 cm of stroke on each 15 mm square.
        expect(here.length * 0.05, `${x} ${y}`).toBeGreaterThan(20);
      }
    }
  });

  it('draws finer for a finer ball, the same for one seed', () => {
    const total = (spacing: number) =>
      draw(REGIONS.sheet, texture, spacing).reduce((sum, l) => sum + lineLength(l), 0);
    expect(total(0.8)).toBeGreaterThan(1.3 * total(1.6));
    const text = (seed: number) =>
      JSON.stringify(draw(REGIONS.sheet, texture, 1, seed).map((l) => Array.from(l.cubics)));
    expect(text(3)).toBe(text(3));
    expect(text(3)).not.toBe(text(4));
  });

  it('gives nothing where there is no room', () => {
    expect(draw(rectangle(0, 0, 40, 1.9), texture)).toEqual([]);
    expect(draw({ contours: [] }, texture)).toEqual([]);
  });
});

describe('textures by themselves', () => {
  const sheet = rectangle(0, 0, 80, 60);
  const turned = (line: Line): number => {
    const { minX, maxX, minY, maxY } = lineBounds(line);
    return (maxX - minX) / (maxX - minX + (maxY - minY));
  };

  it('lays brick in stretcher bond, three courses to a brick', () => {
    // Coordinating size 225 x 75 mm, half lap (BS 4729, stretcher bond).
    const lines = draw(sheet, 'brick');
    const perpends = lines.filter((l) => turned(l) < 0.5).map(lineBounds);
    const beds = lines.filter((l) => turned(l) > 0.5).map(lineBounds);
    const course = 3.6;
    for (const bed of beds) {
      const y = (bed.minY + bed.maxY) / 2 / course;
      expect(Math.abs(y - Math.round(y)) * course).toBeLessThan(0.1);
    }
    for (const p of perpends) {
      const row = Math.floor((p.minY + p.maxY) / 2 / course);
      const place = (p.minX + p.maxX) / 2 / (3 * course) - (row % 2) / 2;
      expect(Math.abs(place - Math.round(place)) * course).toBeLessThan(0.1);
    }
    expect(perpends.length).toBeGreaterThan(60);
  });

  it('draws water level and longer below, bark upright', () => {
    const waves = draw(sheet, 'water');
    expect(Math.min(...waves.map(turned))).toBeGreaterThan(0.7);
    const mean = (lines: readonly Line[]) =>
      lines.reduce((sum, l) => sum + lineLength(l), 0) / lines.length;
    const far = waves.filter((l) => lineBounds(l).maxY < 20);
    const near = waves.filter((l) => lineBounds(l).minY > 40);
    expect(mean(near)).toBeGreaterThan(1.3 * mean(far));
    const furrows = draw(sheet, 'bark').filter((l) => lineLength(l) > 3);
    expect(Math.max(...furrows.map(turned))).toBeLessThan(0.5);
  });

  it('weaves linen of as much warp as weft', () => {
    const threads = draw(sheet, 'linen');
    const weft = threads.filter((l) => turned(l) > 0.5).length;
    expect(weft / threads.length).toBeGreaterThan(0.45);
    expect(weft / threads.length).toBeLessThan(0.55);
  });

  it('keeps the strokes of a smaller region in a larger one', () => {
    const small = rectangle(10, 10, 40, 30);
    const inner = offset(small, -6);
    const inside = (lines: readonly Line[]) =>
      new Set(
        lines
          .filter((l) => {
            const { minX, maxX, minY, maxY } = lineBounds(l);
            const b = regionBounds(inner);
            return minX > b.minX && maxX < b.maxX && minY > b.minY && maxY < b.maxY;
          })
          .map((l) => Array.from(l.cubics, (v) => v.toFixed(6)).join()),
      );
    for (const texture of ['stipple', 'brick', 'linen'] as const) {
      const [few, many] = [inside(draw(small, texture)), inside(draw(sheet, texture))];
      const shared = [...few].filter((key) => many.has(key)).length;
      expect(shared / few.size, texture).toBeGreaterThan(0.7);
    }
  });
});

describe('strokes kept apart', () => {
  const level = (y: number, x0 = 0, x1 = 10) => pen(x0, y).lineTo(x1, y).line();

  it('drops what crosses or crowds a stroke before it, and nothing else', () => {
    const across = pen(5, -5).lineTo(5, 5).line();
    const lines = [
      level(0),
      level(0.99),
      across,
      level(1),
      level(2),
      level(0, 10.9, 15),
      level(0, 11, 15),
    ];
    expect(keptApart(lines, 1)).toEqual([lines[0], lines[3], lines[4], lines[6]]);
  });
});
