import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { carriedLength, carriedShare, carriedValues } from '../../src/panel/carry.js';
import type { SceneElement } from '../../src/scene/scene.js';
import { elementOf } from '../support/families.js';
import { sceneWith } from '../support/scene.js';

const element = (panels: number[], values: SceneElement['values'] = {}): SceneElement =>
  elementOf({
    element: 'hedge',
    panels,
    width: { from: { mm: 60 }, to: { mm: 40 } },
    height: { from: { mm: 30 }, to: { share: 0.2 } },
    values,
  });

/** Panels 20 mm apart, the eye 400 mm before the first. */
const BOOK = planBook(sceneWith({ panels: 6, spacing: 20, readingDistance: 400 }));

describe('an element carried through panels 2 to 5', () => {
  const hedge = element([2, 3, 4, 5], { wind: { from: 0, to: 9 }, form: 'loose', blossom: true });

  it('goes evenly from the first panel to the last', () => {
    expect([2, 3, 4, 5].map((panel) => carriedShare(BOOK, hedge, panel))).toEqual([
      0,
      1 / 3,
      2 / 3,
      1,
    ]);
    expect(carriedLength(hedge.width, 0.5, 100)).toBe(50);
  });

  it('goes from a length to a share of each panel’s own window', () => {
    expect(carriedLength(hedge.height, 0, 90)).toBe(30);
    expect(carriedLength(hedge.height, 1, 90)).toBeCloseTo(18, 9);
  });

  it('carries numbers and keeps words and flags', () => {
    expect(carriedValues(hedge, 1 / 3)).toEqual({ wind: 3, form: 'loose', blossom: true });
  });

  it('skips panels by their place in the book, not in the list', () => {
    expect(carriedShare(BOOK, element([1, 2, 5]), 2)).toBe(0.25);
  });

  it('stays at its front value in a single panel', () => {
    expect(carriedShare(BOOK, element([3]), 3)).toBe(0);
  });
});

describe('an element carried in perspective', () => {
  const running = (from: number, to: number, panels: number[]): SceneElement => ({
    ...element(panels),
    carry: 'perspective',
    height: { from: { mm: from }, to: { mm: to } },
  });
  const heights = (e: SceneElement): number[] =>
    e.panels.map((panel) => carriedLength(e.height, carriedShare(BOOK, e, panel), 100));

  // W = w (D + z) / D: 100 mm at 400 mm from the eye hides 105, 110, 115 mm at 20, 40, 60 mm behind
  // it (similar triangles).
  it('keeps what seems as high everywhere as it is', () => {
    const seen = heights(running(100, 115, [1, 2, 3, 4]));
    for (const [k, mm] of [100, 105, 110, 115].entries()) expect(seen[k]).toBeCloseTo(mm, 9);
  });

  // The apparent size of equal things is as 1 over their distance (similar triangles).
  it('is seen as equal things at distances that grow evenly', () => {
    const far = heights(running(40, 12, [2, 3, 4, 5])).map((mm, k) => (420 + 20 * k) / mm);
    const steps = far.slice(1).map((d, k) => d - far[k]);
    for (const step of steps) expect(step).toBeCloseTo(steps[0], 9);
  });

  it('shrinks most in front', () => {
    const seen = heights(running(40, 12, [2, 3, 4, 5]));
    const steps = seen.slice(1).map((mm, k) => seen[k] - mm);
    expect(steps[0]).toBeGreaterThan(steps[1]);
    expect(steps[1]).toBeGreaterThan(steps[2]);
  });

  it('runs straight to its vanishing point, as seen from the reading distance', () => {
    const hedge: SceneElement = {
      ...running(40, 12, [2, 3, 4, 5]),
      at: { from: { mm: -50 }, to: { mm: -15 } },
    };
    const tops = hedge.panels.map((panel, k) => {
      const share = carriedShare(BOOK, hedge, panel);
      const scale = 420 / (420 + 20 * k);
      return {
        x: carriedLength(hedge.at, share, 100) * scale,
        y: carriedLength(hedge.height, share, 100) * scale,
      };
    });
    const [a, b] = [tops[0], tops[3]];
    for (const { x, y } of tops) {
      const off = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
      expect(Math.abs(off) / Math.hypot(b.x - a.x, b.y - a.y)).toBeLessThan(0.5);
    }
  });

  it('goes evenly where the height does not change', () => {
    const e = running(30, 30, [1, 2, 3]);
    expect(carriedShare(BOOK, e, 2)).toBeCloseTo(0.5, 12);
  });
});
