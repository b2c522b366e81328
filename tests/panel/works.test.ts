import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { boundsOf, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { composePanel } from '../../src/panel/compose.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { SceneElement } from '../../src/scene/scene.js';
import { elementOf, TEST_FAMILIES } from '../support/families.js';
import { sceneWith } from '../support/scene.js';

function panelWith(changes: Partial<SceneElement>, element = 'post') {
  const scene = sceneWith({ scenery: [elementOf({ element, ...changes })] });
  const book = planBook(scene);
  return composePanel(scene, book, book.panels[0], TEST_FAMILIES, PROCESS_LIMITS.knife);
}
const BARE = regionArea(panelWith({ stands: 'frame', frame: 'none' }).card);
const cutMm2 = (changes: Partial<SceneElement>) => regionArea(panelWith(changes).card) - BARE;

describe('an element treated in parts', () => {
  it('is cut whole in the window when nothing is said', () => {
    expect(cutMm2({})).toBeCloseTo(20 * 30, 3);
  });

  it.each([
    ['left half', 10 * 30],
    ['right half', 10 * 30],
    ['upper half', 20 * 15],
    ['upper left quarter', 20 * 30 - 10 * 15],
    ['window', 0],
  ])('is not cut where its %s is only scored', (part, leftMm2) => {
    expect(cutMm2({ treat: [{ part, work: 'score' }] })).toBeCloseTo(leftMm2, 3);
  });

  it('lets later parts go over earlier ones', () => {
    const treat = [
      { part: 'window', work: 'none' },
      { part: 'left half', work: 'cut' },
    ] as const;
    expect(cutMm2({ treat })).toBeCloseTo(10 * 30, 3);
  });

  it('stands on the frame alone, or in the window alone', () => {
    expect(cutMm2({ stands: 'frame' })).toBeCloseTo(0, 6);
    const across = panelWith({ side: 'left' }, 'egg');
    const within = panelWith({ side: 'left', stands: 'window' }, 'egg');
    expect(across.scores.length).toBeGreaterThan(0);
    expect(within.scores).toEqual([]);
    expect(regionArea(within.card)).toBeCloseTo(regionArea(across.card), 6);
  });

  it('raises a part of what stands on the frame and scores the rest', () => {
    const { reliefs, scores } = panelWith(
      { side: 'left', treat: [{ part: 'upper half', work: 'raise' }] },
      'egg',
    );
    expect(reliefs).toHaveLength(1);
    const raised = regionBounds(reliefs[0].region);
    const scored = boundsOf(scores.map(({ line }) => line.cubics));
    expect(raised.maxY).toBeLessThanOrEqual(scored.minY + 0.5);
    // In the window the egg is cut above the middle no more: it is raised card of the frame alone.
    expect(raised.maxX).toBeLessThanOrEqual(42.5);
  });
});
