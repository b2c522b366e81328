import { describe, expect, it } from 'vitest';
import { components } from '../../src/geometry/components.js';
import { boundsOf, lineLength, regionArea } from '../../src/geometry/measure.js';
import { EMPTY_REGION, type Line } from '../../src/geometry/types.js';
import { openingOf } from '../../src/scenery/brick/opening.js';
import { PARTS } from '../../src/scenery/brick/parts.js';
import { randomFrom } from '../../src/scenery/random.js';
import { coursedStones, type Stone } from '../../src/scenery/stone/coursed.js';
import { meshOver } from '../../src/scenery/stone/mesh.js';
import { stone } from '../../src/scenery/stone.js';
import { clearance, grown, plotWith, WINDOWS, type WindowName } from './plots.js';
import { expectSeeded } from './standing.js';

const windows = Object.keys(WINDOWS) as WindowName[];
const box = (line: Line) => boundsOf([line.cubics]);
const middleX = (line: Line) => (box(line).minX + box(line).maxX) / 2;
const middleY = (line: Line) => (box(line).minY + box(line).maxY) / 2;

/** Coursed stones round each window, a few seeds and sizes. */
function eachWall(look: (stones: readonly Stone[], label: string) => void): void {
  for (const window of windows) {
    const { bounds, window: outline } = plotWith(window).frame;
    for (const courseMm of [3, 4.5, 8]) {
      for (let seed = 0; seed < 4; seed++) {
        const stones = coursedStones(bounds, openingOf(outline), courseMm, randomFrom(seed));
        look(stones, `${window} ${courseMm} ${seed}`);
      }
    }
  }
}

describe('coursed stonework', () => {
  it('laps every cross joint by 0.4 of a course over the one below', () => {
    // EN 1996-1-1, 8.1.4.1 (units up to 250 mm high: 0.4 of the height), from memory.
    let short = 0;
    let all = 0;
    eachWall((stones) => {
      const courses = new Map<number, Stone[]>();
      for (const s of stones) courses.set(s.course, [...(courses.get(s.course) ?? []), s]);
      for (const [course, row] of courses) {
        for (const s of row) {
          // A joint with the wall's edge or the opening is none.
          if (!row.some((t) => Math.abs(t.x1 - s.x0) < 1e-9)) continue;
          const below = courses.get(course - 1) ?? [];
          const joints = below.filter((b) => below.some((t) => Math.abs(t.x1 - b.x0) < 1e-9));
          const lap = Math.min(...joints.map((b) => Math.abs(b.x0 - s.x0)));
          all++;
          if (lap < 0.4 * (s.y1 - s.y0) - 1e-6) short++;
        }
      }
    });
    expect(all).toBeGreaterThan(3000);
    expect(short).toBe(0);
  });

  it('has no stone shorter than half its height, and few longer than three times', () => {
    // Common practice, no source.
    eachWall((stones, label) => {
      const long = stones.filter((s) => s.at === 'wall').map((s) => (s.x1 - s.x0) / (s.y1 - s.y0));
      if (long.length === 0) return;
      expect(Math.min(...long), label).toBeGreaterThan(0.5);
      expect(long.filter((l) => l > 3).length / long.length, label).toBeLessThan(0.25);
    });
  });

  it('has long and short quoins by turns', () => {
    // Common practice, no source.
    const { bounds, window } = plotWith('rectangle').frame;
    const stones = coursedStones(bounds, openingOf(window), 4.5, randomFrom(3));
    const left = stones.filter((s) => s.at === 'opening' && Math.abs(s.x1 + 48) < 1e-9);
    expect(left.length).toBeGreaterThan(20);
    const steps = left.slice(1).map((s, i) => s.x0 - left[i].x0);
    expect(Math.min(...steps.map(Math.abs))).toBeGreaterThan(0.3 * 4.5);
    expect(steps.slice(1).every((step, i) => step * steps[i] < 0)).toBe(true);
  });

  it('keeps beds level through the wall and gauges them with sill and head', () => {
    eachWall((stones, label) => {
      if (!label.startsWith('rectangle')) return;
      const tops = new Set(stones.map((s) => s.y0.toFixed(6)));
      expect(tops.has((0).toFixed(6))).toBe(true);
      expect(tops.has((-130).toFixed(6))).toBe(true);
      expect(tops.size).toBe(new Set(stones.map((s) => s.course)).size);
    });
  });
});

describe('rubble', () => {
  it('meets three stones in a corner, never four', () => {
    // Common practice, no source: four joints in one point look like tiles and are weak.
    for (let seed = 0; seed < 12; seed++) {
      const { corners, edges } = meshOver(
        { minX: -70, maxX: 70, minY: -100, maxY: 30 },
        6.5,
        4.5,
        randomFrom(seed),
      );
      const degree = new Array<number>(corners.length).fill(0);
      for (const { ends } of edges) for (const k of ends) degree[k]++;
      expect(Math.max(...degree)).toBe(3);
      const apart = edges.map(({ ends: [a, b] }) =>
        Math.hypot(corners[a].x - corners[b].x, corners[a].y - corners[b].y),
      );
      expect(Math.min(...apart)).toBeGreaterThan(0.15 * 4.5);
      expect(edges.length).toBeGreaterThan(1000);
    }
  });

  it('has no two stones alike', () => {
    const mesh = meshOver({ minX: -70, maxX: 70, minY: -100, maxY: 30 }, 6.5, 4.5, randomFrom(1));
    const sides = new Map<number, number>();
    for (const { corners } of mesh.cells) {
      sides.set(corners.length, (sides.get(corners.length) ?? 0) + 1);
    }
    expect([4, 5, 6, 7].every((n) => (sides.get(n) ?? 0) > 5)).toBe(true);
  });
});

describe('stone', () => {
  it('adds no card and stops 1.5 to 2 mm short of every cut edge', () => {
    // Common practice, no source.
    for (const window of ['arch', 'circle'] as const) {
      for (const kind of ['coursed', 'rubble']) {
        const plot = plotWith(window);
        const growth = grown(stone, plot, { kind, coverage: 1 });
        expect(growth.body).toEqual(EMPTY_REGION);
        expect(growth.scores.length).toBeGreaterThan(150);
        const least = clearance(growth.scores, plot.frame.card);
        expect(least).toBeGreaterThanOrEqual(1.5);
        expect(least).toBeLessThanOrEqual(2.1);
      }
    }
  });

  it('draws every joint once and none through', () => {
    for (const kind of ['coursed', 'rubble']) {
      const { scores } = grown(stone, plotWith('arch'), { kind, coverage: 1 });
      const middles = scores.map((l) => ({ x: middleX(l), y: middleY(l) }));
      let nearest = Infinity;
      middles.forEach((a, i) => {
        for (const b of middles.slice(i + 1)) {
          nearest = Math.min(nearest, Math.hypot(a.x - b.x, a.y - b.y));
        }
      });
      expect(nearest).toBeGreaterThan(0.35);
      // The back of the arch is the longest stroke, and it bends.
      expect(Math.max(...scores.map(lineLength))).toBeLessThan(86);
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(stone, plotWith('arch'));
  });

  it('draws no beds of rubble, and beds of courses', () => {
    const level = (kind: string) =>
      grown(stone, plotWith('none'), { kind, coverage: 1 }).scores.filter(
        (l) => box(l).maxX - box(l).minX > 12 && box(l).maxY - box(l).minY < 0.4,
      ).length;
    expect(level('coursed')).toBeGreaterThan(50);
    expect(level('rubble')).toBe(0);
  });

  it('draws fewer joints of larger stones, and more with more coverage', () => {
    for (const kind of ['coursed', 'rubble']) {
      const drawn = (given: Record<string, number>) =>
        grown(stone, plotWith('rectangle'), { kind, ...given }).scores.length;
      expect(drawn({ course: 3 })).toBeGreaterThan(1.5 * drawn({ course: 7 }));
      expect(drawn({ coverage: 0.9 })).toBeGreaterThan(1.4 * drawn({ coverage: 0.4 }));
    }
  });

  it('keeps to its part', () => {
    for (const kind of ['coursed', 'rubble']) {
      const all = grown(stone, plotWith('rectangle'), { kind, coverage: 1 }).scores.length;
      for (const part of PARTS) {
        const { scores } = grown(stone, plotWith('rectangle'), { kind, part, coverage: 1 });
        if (part !== 'surround' || kind === 'coursed') expect(scores.length).toBeGreaterThan(20);
        expect(scores.length).toBeLessThanOrEqual(all);
        for (const line of scores) {
          if (part === 'sill') expect(middleY(line)).toBeGreaterThan(-4);
          if (part === 'left') expect(middleX(line)).toBeLessThan(-30);
        }
      }
    }
  });

  it('presses stones up or down, apart from one another', () => {
    for (const kind of ['coursed', 'rubble']) {
      for (const [work, side] of [
        ['raise', 'raised'],
        ['sink', 'sunk'],
      ]) {
        const { scores, reliefs } = grown(stone, plotWith('rectangle'), { kind, work });
        expect(scores).toEqual([]);
        expect(new Set(reliefs.map((r) => r.side))).toEqual(new Set([side]));
        const areas = reliefs.flatMap((r) => components(r.region).map(regionArea));
        expect(areas.length).toBeGreaterThan(60);
        expect(Math.max(...areas)).toBeLessThan(110);
      }
    }
  });
});
