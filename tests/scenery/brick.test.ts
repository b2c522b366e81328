import { describe, expect, it } from 'vitest';
import { linesInside } from '../../src/geometry/clip-lines.js';
import { components } from '../../src/geometry/components.js';
import { boundsOf, regionArea } from '../../src/geometry/measure.js';
import { EMPTY_REGION, type Line } from '../../src/geometry/types.js';
import { level } from '../../src/scenery/brick/cells.js';
import { BONDS } from '../../src/scenery/brick/courses.js';
import { PARTS } from '../../src/scenery/brick/parts.js';
import { brick } from '../../src/scenery/brick.js';
import { clearance, grown, plotWith, WINDOWS, type WindowName, written } from './plots.js';

/** Drawn joints wander by this much off their line, mm. */
const HAND_MM = 0.12;

const box = (line: Line) => boundsOf([line.cubics]);
const isBed = (line: Line) => {
  const b = box(line);
  return b.maxY - b.minY < 3 * HAND_MM && b.maxX - b.minX > 0.9;
};
const isPerpend = (line: Line) => {
  const b = box(line);
  return b.maxX - b.minX < 3 * HAND_MM && b.maxY - b.minY > 0.9;
};
const middleY = (line: Line) => (box(line).minY + box(line).maxY) / 2;
const middleX = (line: Line) => (box(line).minX + box(line).maxX) / 2;

describe('joints as score lines', () => {
  const windows = Object.keys(WINDOWS) as WindowName[];

  it('adds no card and stops 1.5 to 2 mm short of every cut edge', () => {
    // Common practice, no source.
    for (const name of windows) {
      const plot = plotWith(name);
      const growth = grown(brick, plot, { coverage: 1, bond: 'flemish' });
      expect(growth.body).toEqual(EMPTY_REGION);
      expect(growth.scores.length).toBeGreaterThan(150);
      const least = clearance(growth.scores, plot.frame.card);
      expect(least).toBeGreaterThanOrEqual(1.5);
      expect(least).toBeLessThanOrEqual(2);
    }
  });

  it('draws every joint once', () => {
    for (const bond of BONDS) {
      const { scores } = grown(brick, plotWith('arch'), { coverage: 1, bond });
      const beds = scores.filter(isBed);
      const perpends = scores.filter(isPerpend);
      for (const [i, a] of beds.entries()) {
        for (const b of beds.slice(i + 1)) {
          if (Math.abs(middleY(a) - middleY(b)) > 1) continue;
          const overlap = Math.min(box(a).maxX, box(b).maxX) - Math.max(box(a).minX, box(b).minX);
          expect(overlap).toBeLessThan(0.01);
        }
      }
      for (const [i, a] of perpends.entries()) {
        for (const b of perpends.slice(i + 1)) {
          if (Math.abs(middleX(a) - middleX(b)) > 0.6) continue;
          const overlap = Math.min(box(a).maxY, box(b).maxY) - Math.max(box(a).minY, box(b).minY);
          expect(overlap).toBeLessThan(0.01);
        }
      }
    }
  });

  it('keeps courses level and at one height, gauged with the window', () => {
    const { scores } = grown(brick, plotWith('rectangle'), { coverage: 1, course: 3.5 });
    const course = 130 / Math.round(130 / (3.5 * (1 - 0.28 * 0.3)));
    for (const bed of scores.filter(isBed)) {
      const offCourse = middleY(bed) / course - Math.round(middleY(bed) / course);
      // The back of the flat arch is level too, and lies where it will.
      if (middleY(bed) < -131 && Math.abs(offCourse) * course > HAND_MM) continue;
      expect(Math.abs(offCourse) * course).toBeLessThanOrEqual(HAND_MM);
    }
  });

  it('stands perpends between two beds, plumb every second course', () => {
    const plot = plotWith('rectangle');
    const { scores } = grown(brick, plot, { coverage: 1, part: 'sill', bond: 'english' });
    const perpends = scores.filter(isPerpend);
    expect(perpends.length).toBeGreaterThan(40);
    const course = 130 / Math.round(130 / (3.5 * (1 - 0.28 * 0.3)));
    const rows = new Map<number, number[]>();
    for (const p of perpends) {
      const row = Math.floor(middleY(p) / course);
      expect(box(p).minY).toBeGreaterThan(row * course);
      expect(box(p).maxY).toBeLessThan((row + 1) * course);
      rows.set(row, [...(rows.get(row) ?? []), middleX(p)]);
    }
    // The course right under the window is bare there: it would run into the cut.
    for (const row of [...rows.keys()].filter((r) => r > 0)) {
      for (const x of rows.get(row + 2) ?? []) {
        const off = rows.get(row)!.map((other) => Math.abs(other - x));
        expect(Math.min(...off)).toBeLessThanOrEqual(2 * HAND_MM);
      }
    }
  });

  it('breaks every bed, so that none folds a jamb or the sill', () => {
    for (const name of ['rectangle', 'arch', 'circle'] as const) {
      const plot = plotWith(name);
      const { scores } = grown(brick, plot, { coverage: 1 });
      const beds = scores.filter(isBed);
      expect(beds.length).toBeGreaterThan(100);
      for (const bed of beds) {
        const { minX, maxX } = box(bed);
        expect(maxX - minX).toBeLessThan(41);
        // The card's own width where the bed lies: a good part of it must stay unscored.
        const y = middleY(bed);
        const across = linesInside([level(-80, 80, y)], plot.frame.card).map(box);
        const here = across.find((r) => r.minX < middleX(bed) && middleX(bed) < r.maxX)!;
        expect(maxX - minX).toBeLessThan(0.75 * (here.maxX - here.minX));
      }
    }
  });

  it('draws about the share of the wall that is asked for', () => {
    const length = (coverage: number) =>
      grown(brick, plotWith('none', { fineness: 1 }), { coverage }).scores.filter(isPerpend).length;
    const all = length(1);
    // A patch's rim has perpends on both sides of its bricks: a little more than the share.
    expect(length(0.5) / all).toBeGreaterThan(0.48);
    expect(length(0.5) / all).toBeLessThan(0.66);
    expect(length(0.2) / all).toBeLessThan(0.32);
  });

  it('is denser at the corners than in the middle', () => {
    const { scores } = grown(brick, plotWith('none', { fineness: 0 }), { coverage: 0.4 });
    const near = (x: number, y: number, r: number) =>
      scores.filter((l) => Math.abs(middleX(l) - x) < r && Math.abs(middleY(l) - y) < r).length;
    const corners = near(-58, -153, 12) + near(58, -153, 12) + near(-58, 23, 12) + near(58, 23, 12);
    expect(corners).toBeGreaterThan(near(0, -65, 24));
  });

  it('keeps to its part', () => {
    const counts = PARTS.map((part) => {
      const plot = plotWith('rectangle');
      const { scores } = grown(brick, plot, { part, coverage: 1 });
      for (const line of scores.filter(isPerpend)) {
        const [x, y] = [middleX(line), middleY(line)];
        if (part === 'sill') expect(y).toBeGreaterThan(0);
        if (part === 'head') expect(y).toBeLessThan(-129);
        if (part === 'left') expect(x).toBeLessThan(-40);
        if (part === 'right') expect(x).toBeGreaterThan(40);
        if (part === 'jambs') expect(Math.abs(x)).toBeGreaterThan(40);
        if (part === 'base') expect(y).toBeGreaterThan(35 - 7 * 3.5);
        if (part === 'surround') expect(Math.abs(x)).toBeLessThan(48 + 12);
      }
      return scores.length;
    });
    expect(Math.min(...counts)).toBeGreaterThan(20);
    expect(Math.max(...counts)).toBe(counts[PARTS.indexOf('all')]);
  });
});

describe('the arch over the opening', () => {
  const steep = (line: Line) => !isBed(line) && !isPerpend(line);

  it('radiates from the centre of a round head', () => {
    const { scores } = grown(brick, plotWith('arch'), { part: 'surround', coverage: 1 });
    const centre = { x: 0, y: -82 };
    const joints = scores.filter((l) => steep(l) && l.cubics.length === 8);
    expect(joints.length).toBeGreaterThan(25);
    for (const { cubics } of joints) {
      const [x0, y0] = cubics;
      const [x1, y1] = cubics.slice(-2);
      const turn =
        Math.atan2(y1 - centre.y, x1 - centre.x) - Math.atan2(y0 - centre.y, x0 - centre.x);
      expect(Math.abs(turn)).toBeLessThan(0.01);
      expect(Math.hypot(x0 - centre.x, y0 - centre.y)).toBeGreaterThan(48 + 1.5);
    }
  });

  it('has one joint at the apex of a pointed head and a key stone over a round one', () => {
    const at = (name: WindowName, y: number) =>
      grown(brick, plotWith(name), { part: 'surround', coverage: 1 }).scores.filter(
        (l) => Math.abs(middleX(l)) < 0.2 && middleY(l) < y && isPerpend(l),
      ).length;
    expect(at('pointed', -143)).toBe(1);
    expect(at('arch', -130)).toBe(0);
  });

  it('leans the joints of a flat arch outward, the same to both sides', () => {
    const { scores } = grown(brick, plotWith('rectangle'), { part: 'surround', coverage: 1 });
    const joints = scores.filter((l) => steep(l) && middleY(l) < -130);
    expect(joints.length).toBeGreaterThan(10);
    const right = joints.filter((l) => middleX(l) > 3);
    for (const { cubics } of right) {
      const [foot, head] =
        cubics[1] > cubics[cubics.length - 1] ? [0, cubics.length - 2] : [cubics.length - 2, 0];
      expect(cubics[head]).toBeGreaterThan(cubics[foot]);
    }
    expect(Math.abs(right.length - joints.filter((l) => middleX(l) < -3).length)).toBeLessThan(2);
  });
});

describe('pressed bricks', () => {
  it('are raised or sunk, apart from one another and clear of cut edges', () => {
    const plot = plotWith('rectangle');
    for (const [work, side] of [
      ['raise', 'raised'],
      ['sink', 'sunk'],
    ] as const) {
      const growth = grown(brick, plot, { work, coverage: 0.5 });
      expect(growth.scores).toEqual([]);
      expect(growth.reliefs.map((r) => r.side)).toEqual([side, side]);
      const [wall] = growth.reliefs;
      expect(components(wall.region).length).toBeGreaterThan(80);
      const lines = wall.region.contours.map((cubics) => ({ cubics }));
      expect(clearance(lines, plot.frame.card)).toBeGreaterThanOrEqual(1.5);
      // A stretcher of 3.2 mm courses is 9.6 x 3.2 less the joint of 0.8.
      const areas = components(wall.region).map(regionArea);
      expect(Math.max(...areas)).toBeLessThan(30);
      expect(Math.min(...areas)).toBeGreaterThan(3);
    }
  });
});

describe('seeds', () => {
  it('draws the same bytes for one seed, others for another', () => {
    const draw = (seed: number) => written(grown(brick, plotWith('arch'), {}, seed));
    expect(draw(5)).toBe(draw(5));
    expect(draw(5)).not.toBe(draw(6));
  });

  it('draws a sibling on a panel a little larger: most joints in place', () => {
    const keys = (changes: object) =>
      grown(brick, plotWith('rectangle', changes), { part: 'jambs' }).scores.map(
        (l) => `${Math.round(middleX(l))} ${Math.round(middleY(l))}`,
      );
    const one = new Set(keys({ fineness: 0.3 }));
    const two = keys({ fineness: 0.304 });
    expect(two.filter((k) => one.has(k)).length / two.length).toBeGreaterThan(0.7);
  });
});
