import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { checkBook } from '../../src/check/check.js';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { perimeter, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { offset } from '../../src/geometry/offset/offset.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { inOrder, moveRegion, scaling, translation } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import { narrowestWeb, narrowSlots, narrowWebs } from '../../src/geometry/width/webs.js';
import { composePanel } from '../../src/panel/compose.js';
import type { Piece } from '../../src/panel/piece.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { stencilsOf } from '../../src/panel/stencil-forms.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import { asRun } from '../../src/process/prepare.js';
import type { Relief } from '../../src/scenery/family.js';
import { CARD, sceneWith } from '../support/scene.js';

const BOARD = { ...CARD, name: 'greyboard', caliperMm: 0.3 };
const STENCILS = { card: BOARD, clearance: 1.5 };
const LIMITS = PROCESS_LIMITS.knife;
/** 1.5 calipers of 0.3 mm card. */
const CLEARANCE_MM = 0.45;
const WIDTH = 190;

const relief = (region: Region, more: Partial<Relief> = {}): Relief => ({
  region,
  side: 'raised',
  depthMm: 0.3,
  ...more,
});

/** A ring round a balance beam's pivot: a middle that falls out of its stencil. */
const RING = subtract(circle(95, 65, 12), [circle(95, 65, 7)]);

/** A book whose second panel is pressed as said. */
function pressed(reliefs: readonly Relief[], choice = STENCILS) {
  const scene = sceneWith({ stencils: choice });
  const book = planBook(scene);
  const panels = book.panels.map((plan, i) => {
    const panel = composePanel(scene, book, plan, new Map(), LIMITS);
    return i === 1
      ? { ...panel, reliefs, stencils: stencilsOf(reliefs, plan, choice, LIMITS) }
      : panel;
  });
  const pieces = bookPieces(book, panels);
  const checked = { scene, book, panels, pieces, limits: LIMITS };
  return { blank: book.panels[1].blank, panels, pieces, findings: checkBook(checked) };
}

const named = (pieces: readonly Piece[], name: string): Piece => {
  const found = pieces.find((piece) => piece.name === name);
  if (!found) throw new Error(`no ${name} among ${pieces.map((piece) => piece.name).join(', ')}`);
  return found;
};
const plates = (pieces: readonly Piece[]) =>
  pieces.filter(({ folder }) => folder === 'stencils').map(({ name, copies }) => [name, copies]);
const ofRule = (found: ReturnType<typeof pressed>, rule: string) =>
  found.findings.filter((finding) => finding.rule === rule);
const turnedOver = (region: Region) =>
  moveRegion(region, inOrder(scaling(-1, 1), translation(WIDTH, 0)));

/** What lies in one of two regions only, mm2. */
const difference = (a: Region, b: Region) =>
  regionArea(subtract(a, [b])) + regionArea(subtract(b, [a]));

describe('the opening of a stencil', () => {
  it('is the form grown by 1.5 calipers all round', () => {
    const beam = rectangle(60, 50, 40, 30);
    const { blank, pieces } = pressed([relief(beam)]);
    const opening = subtract(blank, [named(pieces, 'panel-02-raised-stencil').card]);
    // Steiner's formula for convex forms, A + P r + pi r^2: convex geometry, from memory.
    const wanted = 1200 + 140 * CLEARANCE_MM + Math.PI * CLEARANCE_MM ** 2;
    expect(Math.abs(regionArea(opening) - wanted)).toBeLessThan(0.005 * 143);
    expect(regionArea(named(pieces, 'panel-02-raised-form-1').card)).toBeCloseTo(1200, 6);
  });

  it('follows the clearance that the scene asks for', () => {
    const { blank, pieces } = pressed([relief(circle(90, 60, 10))], { ...STENCILS, clearance: 3 });
    const opening = subtract(blank, [named(pieces, 'panel-02-raised-stencil').card]);
    expect(Math.abs(regionArea(opening) - Math.PI * 10.9 ** 2)).toBeLessThan(0.005 * 70);
  });
});

describe('stencil and counter plate', () => {
  // Not symmetrical, so that a plate drawn the wrong way round shows.
  const form = union([rectangle(50, 40, 30, 8), rectangle(50, 40, 8, 24)]);

  it.each([
    ['raised', 'stencil'],
    ['sunk', 'form'],
  ] as const)(
    'of %s relief: the %s lies mirrored, the other as the front shows it',
    (side, mirrored) => {
      const { blank, pieces } = pressed([relief(form, { side })]);
      const opening = subtract(blank, [named(pieces, `panel-02-${side}-stencil`).card]);
      const wanted = offset(form, CLEARANCE_MM);
      const drawn = mirrored === 'stencil' ? turnedOver(opening) : opening;
      expect(difference(drawn, wanted)).toBeLessThan(0.005 * perimeter(wanted));
      // The form's place is scored on the counter plate.
      const counter = named(pieces, `panel-02-${side}-counter`);
      const scored = counter.scores.filter(({ line }) => line.cubics[0] > 30);
      const place = regionBounds({ contours: scored.map(({ line }) => line.cubics) });
      const { minX, minY, maxX, maxY } = regionBounds(
        mirrored === 'form' ? turnedOver(form) : form,
      );
      expect(place).toEqual({ minX, minY, maxX, maxY });
    },
  );

  it('have the very outline of the panel, so that all lie flush in one corner', () => {
    const { blank, pieces } = pressed([relief(form)]);
    for (const name of ['panel-02-raised-stencil', 'panel-02-raised-counter']) {
      const { card, width, height } = named(pieces, name);
      const outer = { contours: card.contours.slice().sort((a, b) => b.length - a.length) };
      expect(regionBounds(outer)).toEqual(regionBounds(blank));
      expect([width, height]).toEqual([WIDTH, 135]);
    }
    const panel = named(pieces, 'panel-02').card;
    expect(regionBounds(panel)).toEqual(regionBounds(blank));
    // One board of stencil, its counter plate, a base, and one to spare.
    expect(named(pieces, 'stencil-corner').copies).toBe(4);
  });

  it('take so many layers of board as the relief is deep', () => {
    const reliefs = [
      relief(rectangle(40, 40, 40, 30), { depthMm: 0.3 }),
      relief(rectangle(50, 48, 12, 12), { depthMm: 0.92 }),
      relief(circle(120, 60, 8), { depthMm: 0.62 }),
    ];
    const { blank, pieces } = pressed(reliefs);
    expect(plates(pieces)).toEqual([
      ['panel-02-raised-stencil-3', 1],
      ['panel-02-raised-stencil-2', 1],
      ['panel-02-raised-stencil-1', 1],
      ['panel-02-raised-counter', 1],
      ['panel-02-raised-form-1', 1],
      ['panel-02-raised-form-2', 1],
      ['panel-02-raised-form-3', 1],
      ['panel-02-raised-form-4', 1],
      ['panel-02-raised-form-5', 1],
      ['stencil-corner', 6],
    ]);
    const open = (n: number) =>
      subtract(blank, [named(pieces, `panel-02-raised-stencil-${n}`).card]);
    expect([1, 2, 3].map((n) => components(open(n)).length)).toEqual([2, 2, 1]);
    expect(regionArea(subtract(open(2), [open(1)]))).toBeLessThan(0.01);
    expect(regionArea(subtract(open(3), [open(2)]))).toBeLessThan(0.01);
    // The second layer of the deep form is glued to the first, which bears its place.
    expect(named(pieces, 'panel-02-raised-form-1').scores).toHaveLength(1);
  });

  it('repeat a layer rather than draw it again', () => {
    const { pieces } = pressed([relief(circle(90, 60, 9), { depthMm: 0.9 })]);
    expect(plates(pieces)).toEqual([
      ['panel-02-raised-stencil', 3],
      ['panel-02-raised-counter', 1],
      ['panel-02-raised-form-1', 3],
      ['stencil-corner', 6],
    ]);
  });
});

describe('what would fall out of a stencil', () => {
  it('is a piece of its own on a base that bears its place', () => {
    const found = pressed([relief(RING)]);
    expect(plates(found.pieces)).toEqual([
      ['panel-02-raised-stencil-base', 1],
      ['panel-02-raised-stencil', 1],
      ['panel-02-raised-island-1', 1],
      ['panel-02-raised-counter', 1],
      ['panel-02-raised-form-1', 1],
      ['stencil-corner', 4],
    ]);
    const area = (name: string) => regionArea(named(found.pieces, name).card);
    const opening = Math.PI * (12.45 ** 2 - 6.55 ** 2);
    const board = area('panel-02-raised-stencil') + area('panel-02-raised-island-1');
    expect(Math.abs(board + opening - regionArea(found.blank))).toBeLessThan(0.6);
    const base = named(found.pieces, 'panel-02-raised-stencil-base');
    const places = base.scores.filter(({ line }) => line.cubics[0] > 30);
    expect(regionBounds({ contours: places.map(({ line }) => line.cubics) }).minX).toBeCloseTo(
      WIDTH - 95 - 6.55,
      2,
    );
    expect(ofRule(found, 'drop-out')).toEqual([]);
    for (const { card } of found.pieces) expect(components(card)).toHaveLength(1);
  });

  it('is pressed over where it is too small to be handled', () => {
    const eye = subtract(circle(95, 65, 9), [circle(95, 65, 1.8)]);
    const found = pressed([relief(eye)]);
    expect(named(found.pieces, 'panel-02-raised-form-1').card.contours).toHaveLength(1);
    expect(ofRule(found, 'stencil-filled')[0]).toMatchObject({ measured: 10.18, severity: 'hint' });
  });
});

describe('forms near each other', () => {
  const pair = (gap: number) =>
    pressed([relief(rectangle(50, 40, 20, 30)), relief(rectangle(70 + gap, 40, 20, 30))]);
  const holes = (found: ReturnType<typeof pressed>) =>
    named(found.pieces, 'panel-02-raised-stencil').card.contours.length - 1;

  it('share an opening where the board between would be narrower than the process holds', () => {
    // Smallest web of a knife, 1.5 mm: common practice, no source. Clearances take 0.9 of the gap.
    expect([2.3, 2.5].map((gap) => holes(pair(gap)))).toEqual([1, 2]);
    expect(
      narrowestWeb(named(pair(2.5).pieces, 'panel-02-raised-stencil').card, 3)?.widthMm,
    ).toBeCloseTo(1.6, 2);
    // A circle of the least gap, 2.4 mm, reaches into the gap's ends by a segment of its own:
    // r^2 acos(d / r) - d c / 2 with d = sqrt(r^2 - c^2 / 4); circle geometry, from memory.
    const d = Math.sqrt(1.2 ** 2 - 1.15 ** 2);
    const segment = 1.2 ** 2 * Math.acos(d / 1.2) - d * 1.15;
    expect(ofRule(pair(2.3), 'stencil-filled')[0].measured).toBeCloseTo(2.3 * 30 - 2 * segment, 1);
    expect(ofRule(pair(2.5), 'stencil-filled')).toEqual([]);
  });

  it('are joined soundly where they only just miss each other', () => {
    for (const gap of [0.1, 0.8, 1.6, 2.2]) {
      const found = pressed([relief(circle(60, 60, 10)), relief(circle(80 + gap, 60, 10))]);
      const form = named(found.pieces, 'panel-02-raised-form-1').card;
      expect(narrowWebs(form, 1.5)).toEqual([]);
      expect(narrowSlots(form, 2.4).filter(({ kind }) => kind === 'neck')).toEqual([]);
      expect(holes(found)).toBe(1);
    }
  });
});

describe('forms that are too small to press', () => {
  it('are left out and told of, with place and amount', () => {
    const found = pressed([
      relief(rectangle(50, 40, 20, 12)),
      relief(rectangle(100, 40, 1.4, 30)),
      relief(rectangle(120, 60, 2, 2)),
    ]);
    expect(plates(found.pieces).map(([name]) => name)).toContain('panel-02-raised-form-1');
    expect(plates(found.pieces).map(([name]) => name)).not.toContain('panel-02-raised-form-2');
    const [left, ...rest] = ofRule(found, 'stencil-left-out');
    expect(rest).toEqual([]);
    expect(left).toMatchObject({ severity: 'warning', measured: 46, unit: 'mm2' });
    expect(left.where).toMatchObject({ piece: 'panel-02', x: 100.7, y: 55 });
    expect(left.message).toMatch(/^2 parts of the raised relief of panel-02, 46 mm2 in all/);
  });

  it('lose what is too narrow of them and keep the rest', () => {
    const found = pressed([relief(union([circle(60, 60, 8), rectangle(66, 59.6, 30, 0.8)]))]);
    const { card } = named(found.pieces, 'panel-02-raised-form-1');
    expect(regionArea(card) / (Math.PI * 64)).toBeCloseTo(1, 2);
    expect(ofRule(found, 'stencil-left-out')[0].measured).toBeGreaterThan(20);
  });

  it('leave nothing to cut where all of a panel is too small', () => {
    const found = pressed([relief(rectangle(100, 40, 1, 30))]);
    expect(plates(found.pieces)).toEqual([]);
    expect(ofRule(found, 'stencil-left-out')).toHaveLength(1);
    expect(asRun(named(found.pieces, 'panel-02')).reliefs).toEqual([]);
  });

  it('are as wide as 2 calipers of thick card', () => {
    const scene = sceneWith({ stencils: STENCILS });
    const plan = planBook(scene).panels[1];
    const thick = { ...plan, card: { ...plan.card, caliperMm: 1 } };
    const bar = (width: number) =>
      stencilsOf([relief(rectangle(60, 40, width, 30))], thick, STENCILS, LIMITS)[0].terraces
        .length;
    expect([1.9, 2.1].map(bar)).toEqual([0, 1]);
  });
});

describe('what else is told of stencils', () => {
  it('is a pattern that no stencil can press', () => {
    const strokes = [{ cubics: new Float64Array([50, 50, 55, 50, 60, 50, 65, 50]) }];
    const found = pressed([relief(rectangle(40, 40, 40, 30), { strokes })]);
    expect(ofRule(found, 'stencil-pattern')[0]).toMatchObject({ measured: 1, severity: 'hint' });
    expect(plates(found.pieces)).toHaveLength(4);
  });

  it('is board that presses far deeper than drawn', () => {
    const of = (caliperMm: number) =>
      ofRule(
        pressed([relief(circle(90, 60, 9))], { ...STENCILS, card: { ...BOARD, caliperMm } }),
        'stencil-depth',
      );
    expect(of(0.6)).toEqual([]);
    expect(of(1)[0]).toMatchObject({ measured: 1, wanted: 0.3, severity: 'hint' });
  });

  it('is that there is nothing to press', () => {
    expect(ofRule(pressed([]), 'stencil-without')[0]).toMatchObject({ severity: 'hint' });
  });

  it('is nothing for a sound form', () => {
    const found = pressed([relief(circle(90, 60, 9))]);
    expect(found.findings.filter(({ rule }) => rule.startsWith('stencil'))).toEqual([]);
  });
});

describe('a panel with stencils', () => {
  it('keeps its relief as designed, and takes none to the machine', () => {
    const { pieces } = pressed([relief(circle(90, 60, 9))]);
    const panel = named(pieces, 'panel-02');
    expect(panel.reliefs).toHaveLength(1);
    expect(asRun(panel).reliefs).toEqual([]);
    const other = { ...panel, pressedBy: undefined };
    expect(asRun(other)).toBe(other);
  });
});
