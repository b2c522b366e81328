import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { union } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { drawElement } from '../../src/panel/draw.js';
import { NOTHING_OPENED } from '../../src/panel/place/place.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { GroupBox, Scene, SceneElement } from '../../src/scene/scene.js';
import type { Family } from '../../src/scenery/family.js';
import { hedge } from '../../src/scenery/hedge.js';
import { elementOf, TEST_FAMILIES } from '../support/families.js';
import { sceneWith } from '../support/scene.js';

const steady = <T>(value: T) => ({ from: value, to: value });
const POST = TEST_FAMILIES.get('post') as Family;
const EGG = TEST_FAMILIES.get('egg') as Family;

/** Where the bodies stand, in the front panel of a book unless said otherwise. */
function boxes(
  changes: Partial<SceneElement>,
  family: Family = POST,
  panel = 1,
  scene: Partial<Scene> = {},
) {
  const element = elementOf({ element: family.name, ...changes });
  const whole = sceneWith({ scenery: [element], ...scene });
  const book = planBook(whole);
  const plan = book.panels[panel - 1];
  const setting = {
    scene: whole,
    book,
    plan,
    limits: PROCESS_LIMITS.knife,
    opened: NOTHING_OPENED,
  };
  return drawElement(setting, element, family).map(({ growth }) => regionBounds(growth.body));
}

// The front window of the plain scene: 42.5..147.5 across, 15..120 down.
const LEFT = 42.5;
const RIGHT = 147.5;
const SILL = 120;

describe('an element placed along its side', () => {
  it('takes up a stretch that is said from end to end', () => {
    const [box] = boxes({ along: { from: { share: 0 }, to: { share: 0.4 } } });
    expect([box.minX, box.maxX]).toEqual([LEFT, expect.closeTo(LEFT + 0.4 * 105, 6)]);
  });

  it('stands snug against either neighbour of its side', () => {
    expect(boxes({ snug: 'start' })[0].minX).toBeCloseTo(LEFT, 6);
    expect(boxes({ snug: 'end' })[0].maxX).toBeCloseTo(RIGHT, 6);
    expect(boxes({ side: 'left', snug: 'start' })[0].minY).toBeCloseTo(15, 6);
    expect(boxes({ side: 'right', snug: 'end' })[0].maxY).toBeCloseTo(SILL, 6);
  });

  it('stands snug in a round window where that is as wide at half its height', () => {
    const windows = {
      first: { shape: 'circle', radius: 0, width: 100, height: 100 },
      step: { width: 10, height: 10 },
      hold: [],
    } as const;
    const [box] = boxes({ snug: 'start', height: steady({ mm: 40 }) }, POST, 1, { windows });
    // 20 mm above the foot of a circle of radius 50: half a chord is sqrt(50² - 30²) = 40.
    expect(box.minX).toBeCloseTo(95 - 40, 0);
  });

  it('fills a corner when it stands upright', () => {
    const [box] = boxes({ side: 'sill', corner: 'end' }, EGG);
    expect(box.maxX).toBeCloseTo(RIGHT, 0);
    expect(box.maxY).toBeGreaterThan(SILL);
  });

  it('points out of a corner when it is turned to its side', () => {
    for (const [side, corner, dx, dy] of [
      ['sill', 'start', 1, -1],
      ['sill', 'end', -1, -1],
      ['head', 'start', 1, 1],
      ['head', 'end', -1, 1],
    ] as const) {
      const [box] = boxes({ side, corner });
      const x = corner === 'start' ? LEFT : RIGHT;
      const y = side === 'sill' ? SILL : 15;
      // A post of 20 x 30 mm turned by half a right angle reaches (30 + 10) / √2 out both ways.
      const reach = (30 + 10) * Math.SQRT1_2;
      expect(dx > 0 ? box.maxX - x : x - box.minX).toBeCloseTo(reach, 6);
      expect(dy > 0 ? box.maxY - y : y - box.minY).toBeCloseTo(reach, 6);
    }
  });

  it('stands twice, as in a mirror, when it is a pair', () => {
    const [a, b] = boxes({ pair: true, at: steady({ share: 0.2 }) });
    expect((a.minX + b.maxX) / 2).toBeCloseTo(95, 6);
    expect(boxes({ pair: true, side: 'left' })).toHaveLength(2);
    const [left, right] = boxes({ pair: true, side: 'left' });
    expect(left.minX + right.maxX).toBeCloseTo(190, 6);
  });

  it('is scattered over its stretch, none nearer to the next than the gap', () => {
    const scatter = { count: 5, gap: 3, sizes: { from: 0.6, to: 1 } };
    for (const seed of [0, 1, 2, 3, 4]) {
      const all = boxes({ scatter, width: steady({ mm: 15 }), seed });
      expect(all).toHaveLength(5);
      expect(all[0].minX).toBeGreaterThan(LEFT);
      expect(all[4].maxX).toBeLessThan(RIGHT);
      for (let i = 1; i < all.length; i++) {
        expect(all[i].minX - all[i - 1].maxX).toBeGreaterThanOrEqual(3 - 1e-9);
      }
      const widths = all.map((box) => box.maxX - box.minX);
      expect(Math.max(...widths) - Math.min(...widths)).toBeGreaterThan(0.5);
    }
  });

  it('says how many too many are scattered', () => {
    const scatter = { count: 9, gap: 3, sizes: { from: 1, to: 1 } };
    expect(() => boxes({ scatter })).toThrow(/9 of post-1 with 3 mm between them need 204 mm/);
  });
});

describe('a group', () => {
  const group: GroupBox = {
    panels: [1, 2, 3],
    carry: 'straight',
    side: 'sill',
    at: steady({ share: 0.5 }),
    width: { from: { mm: 80 }, to: { mm: 40 } },
    height: { from: { mm: 60 }, to: { mm: 30 } },
    lift: steady({ mm: 0 }),
    mirror: false,
  };
  const member = {
    group,
    panels: [1, 2, 3],
    at: steady({ share: 0.25 }),
    width: steady({ mm: 20 }),
  };

  it('places its members in its box and lets all their lengths shrink with it', () => {
    const [front] = boxes(member);
    expect([front.minX, front.maxX]).toEqual([expect.closeTo(65, 6), expect.closeTo(85, 6)]);
    const [back] = boxes(member, POST, 3);
    expect([back.minX, back.maxX]).toEqual([expect.closeTo(80, 6), expect.closeTo(90, 6)]);
    expect((back.minX + back.maxX) / 2).toBeCloseTo(95 - 20 + 10, 6);
  });

  it('is shown as in a mirror', () => {
    const [box] = boxes({ ...member, group: { ...group, mirror: true } });
    expect([box.minX, box.maxX]).toEqual([expect.closeTo(105, 6), expect.closeTo(125, 6)]);
  });
});

describe('a hedge carried in perspective', () => {
  const running: Partial<SceneElement> = {
    element: 'hedge',
    panels: [1, 2, 3, 4],
    carry: 'perspective',
    height: { from: { mm: 40 }, to: { mm: 20 } },
    width: steady({ mm: 60 }),
    values: Object.fromEntries(
      Object.entries(hedge.parameters).map(([key, p]) => [
        key,
        typeof p.default === 'number' ? steady(p.default) : p.default,
      ]),
    ),
  };

  // Seen from the reading distance (400 mm) a card z mm behind the front one is smaller by
  // 400 / (400 + z) (similar triangles); what runs straight away from the eye has its tops on a line.
  it('shows one top line from panel to panel, as drawn with all its leaves', () => {
    const drawn = [1, 2, 3, 4].map((panel) => {
      const [box] = boxes(running, hedge as Family, panel);
      const foot = planFoot(panel);
      return (foot - box.minY) * (400 / (400 + 20 * (panel - 1)));
    });
    const inverse = drawn.map((height) => 1 / height);
    const steps = inverse.slice(1).map((value, i) => value - inverse[i]);
    const mean = (inverse[3] - inverse[0]) / 3;
    for (const [i, height] of drawn.entries()) {
      expect(Math.abs(height - 1 / (inverse[0] + mean * i))).toBeLessThan(0.5);
    }
    expect(Math.min(...steps)).toBeGreaterThan(0);
  });

  const planFoot = (panel: number): number => {
    const { window } = planBook(sceneWith()).panels[panel - 1];
    return (window?.y ?? 0) + (window?.height ?? 0);
  };
});

describe('the order of detail', () => {
  it('asks for coarse or fine drawing by panel, or as the element says', () => {
    const seen: number[] = [];
    const spy: Family = {
      ...POST,
      grow: (plot, values, random) => {
        seen.push(plot.fineness);
        return POST.grow(plot, values, random);
      },
    };
    boxes({}, spy, 1, { detail: 'coarse in front' });
    boxes({}, spy, 1, { detail: 'fine in front' });
    boxes({}, spy, 3, { detail: 'even' });
    boxes({ detail: 'fine' }, spy, 1);
    expect(seen).toEqual([0, 1, 0.5, 1]);
  });
});

describe('a union of scattered elements', () => {
  it('stands apart', () => {
    const scatter = { count: 3, gap: 5, sizes: { from: 1, to: 1 } };
    const element = elementOf({ element: 'post', scatter });
    const scene = sceneWith({ scenery: [element] });
    const book = planBook(scene);
    const setting = {
      scene,
      book,
      plan: book.panels[0],
      limits: PROCESS_LIMITS.knife,
      opened: NOTHING_OPENED,
    };
    const bodies = drawElement(setting, element, POST).map(({ growth }) => growth.body);
    expect(components(union(bodies))).toHaveLength(3);
  });
});
