import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { checkBook } from '../../src/check/check.js';
import type { Finding } from '../../src/check/finding.js';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { markPolylined } from '../../src/geometry/polylined.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, translation } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import { composePanel } from '../../src/panel/compose.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { ProcessName, Scene, SceneElement } from '../../src/scene/scene.js';
import { elementOf } from '../support/families.js';
import { CARD, sceneWith } from '../support/scene.js';

/** Findings of a scene, with the front panel's card changed by hand where asked. */
function findings(
  changes: Partial<Scene> = {},
  alter = (card: Region): Region => card,
  scenery: readonly SceneElement[] = [],
): Finding[] {
  const scene = sceneWith(changes);
  const book = planBook(scene);
  const limits = PROCESS_LIMITS[scene.process as ProcessName];
  const panels = book.panels.map((plan, i) => {
    const panel = composePanel(scene, book, plan, new Map(), limits);
    return i === 0 ? { ...panel, card: alter(panel.card) } : panel;
  });
  return checkBook({
    scene: { ...scene, scenery },
    book,
    panels,
    pieces: bookPieces(book, panels),
    limits,
  });
}
const PLANT = elementOf({ element: 'post' });
const ofRule = (rule: string, list: Finding[]) => list.filter((f) => f.rule === rule);
const graded = ['#202020', '#484848', '#787878', '#a8a8a8', '#d8d8d8'].map((colour) => ({
  ...CARD,
  colour,
}));

/** A strip of card across the window (x 42.5 to 147.5), cut down to `web` over 6 mm. */
const stripOf = (web: number) => (card: Region) =>
  subtract(union([card, rectangle(40, 60, 110, 8)]), [rectangle(92, 60 - 1, 6, 8 - web + 1)]);

describe('a sound book', () => {
  it('gives no finding', () => {
    expect(findings({ cards: graded })).toEqual([]);
  });
});

describe('narrow webs', () => {
  // Smallest webs of a knife (1.5 mm) and a laser (1 mm): common practice, no source.
  it('just at the limit are let be', () => {
    expect(ofRule('narrow-web', findings({}, stripOf(1.52)))).toEqual([]);
    expect(ofRule('narrow-web', findings({ process: 'laser' }, stripOf(1.02)))).toEqual([]);
  });

  it('below it are a warning with place, width and length', () => {
    const [web, ...rest] = ofRule('narrow-web', findings({}, stripOf(1.2)));
    expect(rest).toEqual([]);
    expect(web).toMatchObject({ severity: 'warning', wanted: 1.5, unit: 'mm' });
    expect(web.measured).toBeCloseTo(1.2, 1);
    expect(web.where.piece).toBe('panel-01');
    expect(web.where.x).toBeGreaterThan(91);
    expect(web.where.x).toBeLessThan(99);
    expect(web.where.y).toBeGreaterThan(66);
    expect(web.where.y).toBeLessThan(68.1);
    expect(web.message).toMatch(/web of panel-01 is 1\.2\d* mm wide over \d+(\.\d+)? mm/);
  });

  it('that tear are an error: half the limit, or two calipers of thick card', () => {
    expect(ofRule('narrow-web', findings({}, stripOf(0.6)))[0].severity).toBe('error');
    const thick = { ...CARD, caliperMm: 0.65 };
    const cards = Array.from({ length: 5 }, () => thick);
    expect(ofRule('narrow-web', findings({ cards }, stripOf(1.2)))[0].severity).toBe('error');
  });
});

describe('openings below the limits', () => {
  // Smallest slot of a knife 1 mm, smallest hole 2 mm: common practice, no source.
  const found = (...openings: Region[]) =>
    ofRule(
      'below-limits',
      findings({}, (card) => subtract(card, openings)),
    );

  it('just at the limit are let be', () => {
    expect(found(rectangle(20, 112.5, 12, 1.05), circle(60, 128, 1.01))).toEqual([]);
  });

  it('are warnings, the worst of each piece, with how many there are', () => {
    const [slot, ...none] = found(rectangle(22, 20, 8, 0.8), rectangle(22, 40, 8, 0.6));
    expect(none).toEqual([]);
    expect(slot).toMatchObject({ severity: 'warning', wanted: 1, unit: 'mm' });
    expect(slot.measured).toBeCloseTo(0.6, 1);
    expect(slot.where.y).toBeCloseTo(40.3, 0);
    expect(slot.message).toMatch(/A slot of panel-01 .* \(and 1 more are too small\); .* 1 mm\./);
    const holes = found(circle(60, 128, 0.9), circle(80, 128, 0.8), circle(90, 128, 1.5));
    expect(holes).toMatchObject([{ severity: 'warning', measured: 1.6, where: { x: 80, y: 128 } }]);
  });

  it('are a hint where the gap opens at both its ends', () => {
    const waist = union([circle(30, 30, 2.5), rectangle(29, 31, 0.7, 8), circle(30, 40, 2.5)]);
    const [gap, ...none] = found(waist);
    expect(none).toEqual([]);
    expect(gap).toMatchObject({ severity: 'hint', wanted: 1 });
    expect(gap.measured).toBeCloseTo(0.7, 1);
  });
});

describe('drop-outs', () => {
  it('are errors with size and place, each of them', () => {
    const list = findings({}, (card) =>
      union([card, rectangle(60, 40, 10, 6), rectangle(100, 70, 4, 4)]),
    );
    const loose = ofRule('drop-out', list);
    expect(loose.map((f) => [f.where.x, f.where.y, f.measured])).toEqual([
      [65, 43, 60],
      [102, 72, 16],
    ]);
    expect(loose.every((f) => f.severity === 'error')).toBe(true);
    // Errors come first.
    expect(list.slice(0, 2)).toEqual(loose);
  });
});

describe('the open angle', () => {
  // Between 60 and 100 degrees a concertina stands by itself: common practice, no source.
  const at = (angleDeg: number) =>
    ofRule('open-angle', findings({ spine: { angleDeg, tab: 12, scoring: 'both' } }));
  const atPitch = (pitch: number) =>
    ofRule('open-angle', findings({ spine: { pitch, tab: 8, scoring: 'both' } }));
  it('is let be from 60 to 100 degrees', () => {
    for (const angle of [60.01, 80, 99.99]) expect(at(angle)).toEqual([]);
  });
  it('is a warning when slack or springy, with the pitch that cures it', () => {
    // d = 2 p sin(theta / 2): 20 = 2 p sin 50 gives p = 13.05.
    expect(at(130)[0]).toMatchObject({ severity: 'warning', measured: 130, wanted: 100 });
    expect(at(130)[0].cure).toMatch(/angle from 60 to 100 degrees/);
    expect(atPitch(11)[0].cure).toMatch(/at least 13\.05 mm/);
    expect(atPitch(23)[0].cure).toMatch(/at most 20 mm/);
  });
});

describe('end tabs', () => {
  it('narrowed to hide behind the jamb are told', () => {
    const windows = {
      first: { shape: 'rectangle' as const, radius: 0, width: 136, height: 100 },
      step: { width: 10, height: 5 },
      hold: [],
    };
    const [tab] = ofRule('tab-width', findings({ windows }));
    // Jamb 27, pitch 16, 1 mm to spare.
    expect(tab).toMatchObject({ severity: 'hint', measured: 10, wanted: 12 });
  });
});

describe('relief where a tab is glued', () => {
  // Pitch 16, tab 12: the strip behind panel 1 runs from 16 to 28 mm.
  const withRelief = (x: number) => {
    const scene = sceneWith();
    const book = planBook(scene);
    const limits = PROCESS_LIMITS.knife;
    const panels = book.panels.map((plan) => composePanel(scene, book, plan, new Map(), limits));
    const region = rectangle(x, 40, 6, 10);
    panels[0] = { ...panels[0], reliefs: [{ region, side: 'raised', depthMm: 0.3 }] };
    const pieces = bookPieces(book, panels);
    return ofRule('relief-under-tab', checkBook({ scene, book, panels, pieces, limits }));
  };
  it('is a hint with its area and place; beside the tab it is let be', () => {
    expect(withRelief(20)).toHaveLength(1);
    expect(withRelief(20)[0]).toMatchObject({ measured: 60, where: { x: 22, y: 45 } });
    expect(withRelief(30)).toEqual([]);
  });
});

describe('deeper edges', () => {
  it('that do not show past the one in front are a hint', () => {
    const windows = {
      first: { shape: 'rectangle' as const, radius: 0, width: 100, height: 90 },
      step: { width: 0, height: 0 },
      hold: [],
    };
    // Similar triangles: w k - w = 100 * 20 / 400 = 5, half of it each side.
    const shown = (reading: number) =>
      ofRule('edge-shows', findings({ windows, readingDistance: reading }));
    expect(shown(400)).toEqual([]);
    expect(shown(700)[0]).toMatchObject({ severity: 'hint', measured: 1.43, wanted: 2 });
  });
});

describe('the view through all windows', () => {
  const windows = {
    first: { shape: 'rectangle' as const, radius: 0, width: 100, height: 100 },
    step: { width: 0, height: 0 },
    hold: [],
  };
  /** With card over the middle of the front window, as wide as a share of what is seen there. */
  const curtained = (share: number) => {
    // Similar triangles: the last of four windows, 60 mm behind the first, looks 400 / 460 as wide.
    const width = share * 100 * (400 / 460);
    const curtain = rectangle(95 - width / 2, 10, width, 115);
    const cover = (card: Region) => union([card, curtain]);
    return ofRule('open-view', findings({ windows }, cover, [PLANT]));
  };

  it('is a hint where little of it is left open', () => {
    expect(curtained(0.79)).toEqual([]);
    const [hint, ...rest] = curtained(0.9);
    expect(rest).toEqual([]);
    expect(hint).toMatchObject({ severity: 'hint', wanted: 20, unit: '%' });
    expect(hint.measured).toBeCloseTo(10, 1);
  });

  it('is a hint where next to nothing grows into it', () => {
    expect(curtained(0.16)).toEqual([]);
    expect(curtained(0.05)[0]).toMatchObject({ severity: 'hint', wanted: 85 });
    expect(ofRule('open-view', findings({ windows }))).toEqual([]);
  });
});

describe('cards', () => {
  it('of one lightness are a hint', () => {
    const list = ofRule('lightness', findings());
    // Once a book, however many pairs there are.
    expect(list).toHaveLength(1);
    expect(list[0].message).toMatch(/panels 1 and 2 differ by 0 in lightness \(and 3 other pairs/);
    expect(list[0]).toMatchObject({ severity: 'hint', measured: 0, wanted: 8, unit: 'L*' });
  });
});

describe('outlines whose curves were lost', () => {
  it('are told of, wherever the card was moved or cut since', () => {
    const hole = rectangle(20, 20, 5, 5);
    markPolylined(hole.contours);
    const there = moveRegion(hole, translation(3, 4));
    const found = ofRule(
      'polyline-outline',
      findings({}, (card) => subtract(card, [there])),
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 'hint', measured: 0.01, unit: 'mm' });
    expect(found[0].message).toMatch(/outline of panel-01/);
  });
});
