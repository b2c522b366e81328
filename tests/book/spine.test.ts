import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { cellDepth, foldReach, innerFolds, openAngle } from '../../src/book/spine.js';
import { sceneWith } from '../support/scene.js';

// Elementary trigonometry of a zigzag of pitch p at inside angle theta (derived):
// d = 2 p sin(theta / 2), h = p cos(theta / 2), (d / 2)^2 + h^2 = p^2.
describe('a zigzag of pitch 15', () => {
  it.each([
    [30, 7.7646],
    [60, 15],
    [90, 21.2132],
    [120, 25.9808],
    [180, 30],
  ])('opened to %d degrees is %d deep a cell', (angle, depth) => {
    expect(cellDepth(15, angle)).toBeCloseTo(depth, 4);
  });

  it.each([
    [30, 14.4889],
    [60, 12.9904],
    [90, 10.6066],
    [120, 7.5],
    [180, 0],
  ])('opened to %d degrees reaches %d to the side', (angle, reach) => {
    expect(foldReach(15, angle)).toBeCloseTo(reach, 4);
  });

  it('keeps half the depth and the reach on a circle of the pitch', () => {
    for (const angle of [10, 47, 90, 133, 170]) {
      const half = cellDepth(15, angle) / 2;
      expect(half ** 2 + foldReach(15, angle) ** 2).toBeCloseTo(225, 9);
    }
  });

  it('stands at 83.6206 degrees for a spacing of 20', () => {
    expect(openAngle(15, 20)).toBeCloseTo(83.6206, 4);
  });
});

describe('the spine of M panels', () => {
  it('has M - 1 cells, 2 (M - 1) faces and one fold fewer, signs alternating', () => {
    for (const panels of [2, 5, 6, 9]) {
      const { spine } = planBook(
        sceneWith({ panels, windows: { ...smallWindows, first: { ...smallWindows.first } } }),
      );
      expect(spine.cells).toBe(panels - 1);
      expect(spine.faces).toBe(2 * (panels - 1));
      expect(spine.folds).toHaveLength(spine.faces - 1);
      for (let i = 0; i < spine.folds.length; i++) {
        expect(spine.folds[i]).toBe(i % 2 === 0 ? 'mountain' : 'valley');
      }
    }
  });

  it('of five panels has 4 mountains and 3 valleys, 144 long with pitch 15 and tabs of 12', () => {
    const { spine } = planBook(sceneWith({ spine: { pitch: 15, tab: 12, scoring: 'both' } }));
    expect(spine.faces).toBe(8);
    expect(spine.lengthMm).toBeCloseTo(144, 9);
    expect(innerFolds(8).filter((f) => f === 'mountain')).toHaveLength(4);
    expect(innerFolds(8).filter((f) => f === 'valley')).toHaveLength(3);
  });

  it('total depth of ten faces of 15 at 60 degrees is 75', () => {
    const { spine, spacing } = planBook(
      sceneWith({ panels: 6, spacing: 15, spine: { angleDeg: 60, tab: 12, scoring: 'both' } }),
    );
    expect(spine.pitchMm).toBeCloseTo(15, 9);
    expect(spine.cells * spacing).toBeCloseTo(75, 9);
  });

  it('keeps the inner folds 124.0192 apart when opened to 60 degrees on outer folds 150 apart', () => {
    expect(150 - 2 * foldReach(15, 60)).toBeCloseTo(124.0192, 4);
  });

  it('chooses a pitch on the half millimetre that stands between 60 and 100 degrees', () => {
    for (const spacing of [8, 12.3, 20, 27, 31]) {
      const { spine } = planBook(sceneWith({ spacing, panel: { width: 260, height: 135 } }));
      expect(spine.pitchMm * 2).toBeCloseTo(Math.round(spine.pitchMm * 2), 9);
      expect(spine.angleDeg).toBeGreaterThan(60);
      expect(spine.angleDeg).toBeLessThanOrEqual(80.0001);
    }
  });

  it('refuses a pitch that cannot span the spacing, and says what would', () => {
    expect(() => planBook(sceneWith({ spine: { pitch: 10, tab: 12, scoring: 'both' } }))).toThrow(
      /pitch of 10 mm cannot span a spacing of 20 mm.*at least 16 mm/,
    );
  });
});

const smallWindows = {
  first: { shape: 'rectangle' as const, radius: 0, width: 100, height: 90 },
  step: { width: 4, height: 4 },
  hold: [],
};
