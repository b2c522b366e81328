import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { windowOutline } from '../../src/book/window-outline.js';
import { perimeter, regionArea, regionBounds } from '../../src/geometry/measure.js';
import type { WindowForm, WindowSeries } from '../../src/scene/scene.js';
import { sceneWith } from '../support/scene.js';

const squares: WindowSeries = {
  first: { shape: 'rectangle', radius: 0, width: 105, height: 105 },
  step: { width: 10, height: 10 },
  hold: [],
};

const windowsOf = (changes: Parameters<typeof sceneWith>[0]) =>
  planBook(sceneWith(changes)).panels.flatMap((p) => (p.window ? [p.window] : []));

// Stepping each deeper window by about 10 mm, centred: common practice, no source.
describe('square windows of 105, 95 and 85 on a 190 x 135 panel', () => {
  it('step by 5 on every side when centred', () => {
    const windows = windowsOf({ panels: 4, windows: squares });
    expect(windows.map((w) => w.width)).toEqual([105, 95, 85]);
    expect(windows[0]).toMatchObject({ x: 42.5, y: 15 });
    for (let i = 1; i < windows.length; i++) {
      const [a, b] = [windows[i - 1], windows[i]];
      expect(b.x - a.x).toBeCloseTo(5, 9);
      expect(b.y - a.y).toBeCloseTo(5, 9);
      expect(a.x + a.width - b.x - b.width).toBeCloseTo(5, 9);
      expect(a.y + a.height - b.y - b.height).toBeCloseTo(5, 9);
    }
  });

  it('step at the head alone when the sill is held', () => {
    const windows = windowsOf({ panels: 4, windows: { ...squares, hold: ['sill'] } });
    for (let i = 1; i < windows.length; i++) {
      const [a, b] = [windows[i - 1], windows[i]];
      expect(b.y + b.height).toBeCloseTo(a.y + a.height, 9);
      expect(b.y - a.y).toBeCloseTo(10, 9);
      expect(b.x - a.x).toBeCloseTo(5, 9);
    }
  });

  it('give the same windows when listed by hand', () => {
    const list = [105, 95, 85].map((side) => ({
      shape: 'rectangle' as const,
      radius: 0,
      width: side,
      height: side,
    }));
    expect(windowsOf({ panels: 4, windows: list })).toEqual(
      windowsOf({ panels: 4, windows: squares }),
    );
  });
});

describe('margins', () => {
  it('place the window independently of each other', () => {
    const first = { shape: 'rounded' as const, radius: 6, head: 15, sill: 30, jamb: 40 };
    const [w] = windowsOf({ windows: { ...squares, first } });
    expect(w).toMatchObject({ x: 40, y: 15, width: 110, height: 90 });
  });

  it('that contradict the size are told', () => {
    const first = { ...squares.first, head: 15, sill: 30, height: 100 };
    expect(() => planBook(sceneWith({ windows: { ...squares, first } }))).toThrow(
      /head, height and sill add up to 145 mm, but the panel's height is 135 mm/,
    );
  });
});

describe('windows that cannot be', () => {
  it('too wide for hinge and frame', () => {
    const first = { ...squares.first, width: 180 };
    expect(() => planBook(sceneWith({ windows: { ...squares, first } }))).toThrow(
      /panel 1 is 180 mm wide on a panel of 190 mm; hinge and visible frame need 20 mm/,
    );
  });

  it('larger than the panel', () => {
    const first = { ...squares.first, height: 200 };
    expect(() => planBook(sceneWith({ windows: { ...squares, first } }))).toThrow(
      /leaves -32.5 mm above it/,
    );
  });

  it('stepped away to nothing', () => {
    const step = { width: 40, height: 40 };
    expect(() => planBook(sceneWith({ windows: { ...squares, step } }))).toThrow(
      /panel 4 would be -15 mm wide/,
    );
  });

  it('growing towards the back', () => {
    const list = [80, 90, 70, 60].map((width) => ({ ...squares.first, width, height: 80 }));
    expect(() => planBook(sceneWith({ windows: list }))).toThrow(/windows must not grow/);
  });

  it('an arch lower than itself', () => {
    const first = { shape: 'arch' as const, radius: 0, width: 110, height: 50 };
    expect(() => planBook(sceneWith({ panels: 2, windows: { ...squares, first } }))).toThrow(
      /lower than its own arch of 55 mm/,
    );
  });
});

describe('outlines', () => {
  const form = (shape: WindowForm['shape'], radius = 0): WindowForm => ({ shape, radius });

  it('fill the box they are given', () => {
    for (const shape of ['rectangle', 'rounded', 'arch', 'pointed', 'ellipse'] as const) {
      const box = regionBounds(windowOutline(form(shape, 8), 10, 20, 60, 80));
      expect(box.minX).toBeCloseTo(10, 3);
      expect(box.minY).toBeCloseTo(20, 3);
      expect(box.maxX).toBeCloseTo(70, 3);
      expect(box.maxY).toBeCloseTo(100, 3);
    }
  });

  // Semicircle on straight jambs (elementary): A = w j + pi w^2 / 8, P = w + 2 j + pi w / 2.
  it('round arch of width 40 on jambs of 50', () => {
    const arch = windowOutline(form('arch'), 0, 0, 40, 70);
    expect(Math.abs(regionArea(arch) - 2628.318531)).toBeLessThan(0.5);
    expect(Math.abs(perimeter(arch) - 202.831853)).toBeLessThan(0.05);
  });

  // Equilateral pointed arch of span w (elementary): h = sqrt 3 / 2 w,
  // A = (pi / 3 - sqrt 3 / 4) w^2, arcs 2 pi w / 3.
  it('equilateral pointed arch of span 40', () => {
    const height = (Math.sqrt(3) / 2) * 40;
    expect(height).toBeCloseTo(34.641016, 6);
    const arch = windowOutline(form('pointed'), 0, 0, 40, height);
    expect(Math.abs(regionArea(arch) - 982.695759)).toBeLessThan(0.2);
    expect(Math.abs(perimeter(arch) - 40 - 83.775804)).toBeLessThan(0.02);
  });

  // S. Ramanujan, Modular equations and approximations to pi, 1914 (second ellipse formula).
  it('ellipse of semi-axes 30 and 20', () => {
    const ellipse = windowOutline(form('ellipse'), 0, 0, 60, 40);
    expect(Math.abs(regionArea(ellipse) - 1884.955592)).toBeLessThan(0.6);
    expect(Math.abs(perimeter(ellipse) - 158.654396)).toBeLessThan(0.05);
  });

  it('run clockwise on screen, so that their area is positive', () => {
    for (const shape of ['rectangle', 'rounded', 'arch', 'pointed', 'circle'] as const) {
      expect(regionArea(windowOutline(form(shape, 5), 0, 0, 50, 50))).toBeGreaterThan(0);
    }
  });
});
