import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { checkBook } from '../../src/check/check.js';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components, distanceTo } from '../../src/geometry/components.js';
import { flatten, lineLength, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { composePanel } from '../../src/panel/compose.js';
import { fillEyelets } from '../../src/panel/heal.js';
import type { Panel } from '../../src/panel/panel.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { Scene, SceneElement } from '../../src/scene/scene.js';
import { elementOf, TEST_FAMILIES } from '../support/families.js';
import { sceneWith } from '../support/scene.js';

const LIMITS = PROCESS_LIMITS.knife;

function composed(scenery: SceneElement[], changes: Partial<Scene> = {}) {
  const scene = sceneWith({ scenery, ...changes });
  const book = planBook(scene);
  const panels = book.panels.map((plan) => composePanel(scene, book, plan, TEST_FAMILIES, LIMITS));
  const pieces = bookPieces(book, panels);
  return {
    scene,
    book,
    panels,
    findings: checkBook({ scene, book, panels, pieces, limits: LIMITS }),
  };
}

const bare = composed([]);
const frameArea = regionArea(bare.panels[0].card);
const ends = (panel: Panel) =>
  panel.scores.flatMap(({ line }) => {
    const c = line.cubics;
    return [
      { x: c[0], y: c[1] },
      { x: c[c.length - 2], y: c[c.length - 1] },
    ];
  });

describe('a block that grows from each side', () => {
  it.each([
    ['sill', { minX: 85, maxX: 105, minY: 90, maxY: 120 }],
    ['head', { minX: 85, maxX: 105, minY: 15, maxY: 45 }],
    ['left', { minX: 42.5, maxX: 72.5, minY: 57.5, maxY: 77.5 }],
    ['right', { minX: 117.5, maxX: 147.5, minY: 57.5, maxY: 77.5 }],
  ] as const)('%s', (side, box) => {
    const { panels } = composed([elementOf({ element: 'post', side })]);
    const added = regionArea(panels[0].card) - frameArea;
    expect(added).toBeCloseTo(20 * 30, 3);
    expect(components(panels[0].card)).toHaveLength(1);
    // The window is one contour; its box shows where the block stands.
    const window = regionBounds({ contours: [panels[0].card.contours[1]] });
    expect(window.maxX - window.minX).toBeCloseTo(105, 3);
    const inner = flatten(panels[0].card.contours[1], 0.01).filter(
      (p) => p.x > 43 && p.x < 147 && p.y > 15.5 && p.y < 119.5,
    );
    for (const p of inner) {
      expect(p.x).toBeGreaterThanOrEqual(box.minX - 1e-3);
      expect(p.x).toBeLessThanOrEqual(box.maxX + 1e-3);
      expect(p.y).toBeGreaterThanOrEqual(box.minY - 1e-3);
      expect(p.y).toBeLessThanOrEqual(box.maxY + 1e-3);
    }
  });

  it('changes nothing outside the window', () => {
    const { panels, book } = composed([elementOf({ element: 'egg', side: 'right' })]);
    expect(regionBounds(panels[0].card)).toEqual(regionBounds(book.panels[0].blank));
  });
});

describe('an egg across the jamb', () => {
  const { panels, book } = composed([
    elementOf({ element: 'egg', side: 'left', width: { from: { mm: 30 }, to: { mm: 30 } } }),
  ]);
  const panel = panels[0];
  const jamb = book.panels[0].window?.x ?? 0;

  it('is pressed on the frame and cut in the window as one curve, within 0.3 mm', () => {
    // Where the cut outline leaves the jamb: corners of the card on the jamb's line.
    const corners = flatten(panel.card.contours[1], 0.01).filter(
      (p) => Math.abs(p.x - jamb) < 1e-3,
    );
    const top = Math.min(...corners.map((p) => p.y).filter((y) => y > 16));
    const meeting = ends(panel).filter((p) => Math.abs(p.x - jamb) < 1);
    expect(meeting.length).toBeGreaterThan(0);
    const gaps = meeting.map((p) => Math.hypot(p.x - jamb, p.y - top));
    expect(Math.min(...gaps)).toBeLessThanOrEqual(0.3);
    // ... and does not nick the edge.
    expect(Math.min(...gaps)).toBeGreaterThan(0.1);
  });

  it('has no pressed line on top of a cut', () => {
    for (const { line } of panel.scores) {
      const near = flatten(line.cubics, 0.05).filter(
        (p) => (distanceTo(panel.card, p)?.distanceMm ?? 0) < 0.19,
      );
      expect(near).toEqual([]);
    }
  });

  it('keeps its pressed half between hinge and window', () => {
    for (const { line } of panel.scores) {
      for (const p of flatten(line.cubics, 0.05)) {
        expect(p.x).toBeGreaterThanOrEqual(book.keep.minX - 1e-6);
        expect(p.x).toBeLessThanOrEqual(jamb + 1e-6);
      }
    }
  });

  it('can be pressed as a relief instead, or left off the frame', () => {
    const one = (frame: SceneElement['frame']) =>
      composed([elementOf({ element: 'egg', side: 'left', frame })]).panels[0];
    const raised = one('raise');
    expect(raised.reliefs.map((r) => r.side)).toEqual(['raised']);
    expect(regionArea(raised.reliefs[0].region)).toBeGreaterThan(100);
    expect(raised.scores).toEqual([]);
    expect(one('sink').reliefs.map((r) => r.side)).toEqual(['sunk']);
    expect(one('none')).toMatchObject({ reliefs: [], scores: [] });
  });
});

describe('a block flush with the jamb', () => {
  it('doubles no line along the window’s edge', () => {
    // Its left side lies exactly on the jamb.
    const { panels } = composed([
      elementOf({ element: 'post', at: { from: { mm: 10 }, to: { mm: 10 } } }),
    ]);
    const along = panels[0].scores.filter(({ line }) =>
      flatten(line.cubics, 0.1).every((p) => Math.abs(p.x - 42.5) < 0.5),
    );
    expect(along).toEqual([]);
  });
});

describe('scores on the card', () => {
  it('stop short of every cut by the clearance', () => {
    const { panels } = composed([elementOf({ element: 'post' })]);
    const detail = panels[0].scores.filter(({ line }) => Math.abs(line.cubics[0] - 95) < 1e-6);
    expect(detail).toHaveLength(1);
    for (const p of flatten(detail[0].line.cubics, 0.05)) {
      expect(distanceTo(panels[0].card, p)?.distanceMm).toBeGreaterThan(
        LIMITS.scoreClearance - 0.02,
      );
    }
    // From the block's top, less the clearance, down to the panel's foot margin.
    expect(lineLength(detail[0].line)).toBeCloseTo(30 - 1.5 + 13, 1);
  });

  it('of an element behind are hidden by the body in front', () => {
    const behind = elementOf({ element: 'post' });
    const front = elementOf({
      element: 'post',
      id: 'front',
      height: { from: { mm: 10 }, to: { mm: 10 } },
    });
    const { panels } = composed([behind, front]);
    const onFront = panels[0].scores.filter(
      ({ line }) =>
        Math.abs(line.cubics[0] - 95) < 1e-6 &&
        Math.max(line.cubics[1], line.cubics[line.cubics.length - 1]) > 111,
    );
    expect(onFront).toHaveLength(1);
  });
});

describe('a ball that hangs in the air', () => {
  const ball = (heal: SceneElement['heal']) =>
    composed([
      elementOf({
        element: 'ball',
        heal,
        height: { from: { mm: 40 }, to: { mm: 40 } },
      }),
    ]);

  it('is an error with its place and size', () => {
    const found = ball('error').findings.filter((f) => f.rule === 'drop-out');
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      severity: 'error',
      where: { piece: 'panel-01', x: 95, y: 80 },
      unit: 'mm2',
    });
    expect(found[0].measured).toBeCloseTo(Math.PI * (100 - 25), 0);
    expect(found[0].message).toMatch(
      /20 x 20 mm falls out of panel-01, 95 mm from its left and 80/,
    );
  });

  it('is tied in by the shortest sound bridge', () => {
    const { panels, findings } = ball('bridge');
    expect(components(panels[0].card)).toHaveLength(1);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
    const added = regionArea(panels[0].card) - frameArea - Math.PI * 75;
    // The ball's foot is 30 mm above the sill; a strip at least one web wide reaches that far.
    expect(added).toBeGreaterThan(30 * LIMITS.smallestWeb);
    expect(added).toBeLessThan(30 * LIMITS.smallestWeb * 2.5);
  });

  it('is left out when asked', () => {
    const { panels } = ball('drop');
    expect(regionArea(panels[0].card)).toBeCloseTo(frameArea, 6);
  });
});

describe('an element carried through the panels', () => {
  it('keeps its place of the front panel and changes evenly', () => {
    const { panels, book } = composed([
      elementOf({
        element: 'post',
        panels: [1, 2, 3],
        at: { from: { share: 0.3 }, to: { share: 0.3 } },
        height: { from: { mm: 30 }, to: { mm: 20 } },
      }),
    ]);
    const bareAreas = bare.panels.map((p) => regionArea(p.card));
    [30, 25, 20].forEach((height, i) => {
      expect(regionArea(panels[i].card) - bareAreas[i]).toBeCloseTo(20 * height, 2);
      const sill = (book.panels[i].window?.y ?? 0) + (book.panels[i].window?.height ?? 0);
      const top = flatten(panels[i].card.contours[1], 0.01).filter(
        (p) => p.y > 70 && p.y < sill - 1 && p.x > 55 && p.x < 95,
      );
      expect(Math.min(...top.map((p) => p.x))).toBeCloseTo(42.5 + 0.3 * 105 - 10, 3);
    });
  });
});

describe('the same scene', () => {
  it('gives the same card, and another element beside it changes nothing of the first', () => {
    const egg = elementOf({ element: 'egg', at: { from: { share: 0.25 }, to: { share: 0.25 } } });
    const post = elementOf({ element: 'post', at: { from: { share: 0.8 }, to: { share: 0.8 } } });
    const once = composed([egg]).panels[0];
    expect(composed([egg]).panels[0]).toEqual(once);
    const withPost = composed([egg, post]).panels[0];
    const left = (panel: Panel) =>
      panel.card.contours
        .flatMap((c) => [...flatten(c, 0.01)])
        .filter((p) => p.x > 50 && p.x < 90 && p.y > 40 && p.y < 119.9);
    expect(left(withPost)).toEqual(left(once));
    expect(composed([egg], { seed: 2 }).panels[0]).not.toEqual(once);
  });
});

describe('the backdrop', () => {
  it('has no window: its scenery is pressed, placed as seen through the deepest window', () => {
    const { panels } = composed([elementOf({ element: 'egg', panels: [5] })]);
    expect(panels[4].card.contours).toHaveLength(1);
    expect(panels[4].scores.length).toBeGreaterThan(0);
    const deepest = bare.book.panels[3].window;
    const sill = (deepest?.y ?? 0) + (deepest?.height ?? 0);
    for (const p of ends(panels[4])) expect(p.y).toBeLessThanOrEqual(sill + 1e-6);
  });
});

describe('holes that cannot be cut', () => {
  const hole = (width: number, height: number) => {
    const card = subtract(rectangle(0, 0, 60, 60), [rectangle(20, 20, width, height)]);
    return fillEyelets(card, LIMITS).contours.length - 1;
  };
  // Smallest slot of a knife 1 mm, smallest hole 2 mm: common practice, no source.
  it('too small or too thin are filled, others stay', () => {
    expect(hole(1.2, 1.2)).toBe(0);
    expect(hole(0.9, 12)).toBe(0);
    expect(hole(1.1, 12)).toBe(1);
    expect(hole(2, 2)).toBe(1);
  });
});
