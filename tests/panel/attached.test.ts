import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { checkBook } from '../../src/check/check.js';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { containsPoint } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { closedThickness } from '../../src/panel/closed-thickness.js';
import { composePanel } from '../../src/panel/compose.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { isPressedFrom } from '../../src/process/layers.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import { STARTING } from '../../src/process/starting.js';
import type { Backing, Loose, Scene } from '../../src/scene/scene.js';
import { nest } from '../../src/sheet/nest.js';
import { elementOf, TEST_FAMILIES } from '../support/families.js';
import { CARD, sceneWith } from '../support/scene.js';

const LIMITS = PROCESS_LIMITS.knife;
const RED = { ...CARD, name: 'red', colour: '#c0452f' };

const loose = (changes: Partial<Loose> = {}): Loose => ({
  card: RED,
  place: 'front',
  mount: 'flat',
  standOff: 0,
  glue: 6,
  mark: 'guide',
  copies: 1,
  ...changes,
});

const backing = (changes: Partial<Backing> = {}): Backing => ({
  id: 'backing-1',
  panels: [1],
  card: RED,
  behind: null,
  part: null,
  glue: 4,
  mark: 'guide',
  ...changes,
});

function made(changes: Partial<Scene>) {
  const scene = sceneWith(changes);
  const book = planBook(scene);
  const panels = book.panels.map((plan) => composePanel(scene, book, plan, TEST_FAMILIES, LIMITS));
  const pieces = bookPieces(book, panels);
  const findings = checkBook({ scene, book, panels, pieces, limits: LIMITS });
  return { book, panels, pieces, findings };
}

const bare = made({});
const post = (changes: Partial<Loose> = {}) =>
  made({ scenery: [elementOf({ element: 'post', id: 'post', loose: loose(changes) })] });

describe('a loose piece', () => {
  it('leaves its panel uncut and becomes a piece of its own stock', () => {
    const { panels, pieces } = post();
    expect(regionArea(panels[0].card)).toBeCloseTo(regionArea(bare.panels[0].card), 6);
    const piece = pieces.find(({ name }) => name === 'post-p1');
    expect(piece).toMatchObject({ folder: 'loose', copies: 1, stock: { name: 'red' } });
    // 20 x 30 mm and 6 mm to be glued.
    expect(regionArea(piece!.card)).toBeCloseTo(20 * 36, 6);
  });

  it('marks its place on the panel where it will hide the mark', () => {
    const { panels } = post();
    const [piece] = panels[0].attached;
    expect(regionArea(subtract(piece.glue, [piece.card]))).toBe(0);
    expect(regionArea(subtract(piece.glue, [panels[0].card]))).toBe(0);
    expect(panels[0].guides.length).toBe(bare.panels[0].guides.length + 1);
    const scored = post({ mark: 'score' }).panels[0];
    expect(scored.scores).toHaveLength(1);
    expect(scored.guides.length).toBe(bare.panels[0].guides.length);
  });

  it('is marked from behind when it is glued there', () => {
    const { pieces } = post({ mark: 'score', place: 'behind' });
    expect(isPressedFrom(pieces[0], 'back')).toBe(true);
  });

  it('is cut as often as asked, on a sheet of its own stock', () => {
    const { pieces } = post({ copies: 3 });
    const { sheets } = nest(pieces, STARTING.knife);
    const red = sheets.filter(({ stock }) => stock.name === 'red');
    expect(red.flatMap(({ placements }) => placements)).toHaveLength(3);
  });

  it('stands on as many layers of card as the pad is thick', () => {
    const { pieces } = post({ mount: 'pad', standOff: 2 });
    const pad = pieces.find(({ name }) => name === 'post-p1-pad');
    // 2 mm of card 0.3 mm thick.
    expect(pad?.copies).toBe(7);
    expect(pad?.stock.name).toBe('red');
  });

  it('stands on strips folded to and fro', () => {
    const { pieces } = post({ mount: 'spacer', standOff: 5 });
    const strip = pieces.find(({ name }) => name === 'post-p1-spacer');
    expect(strip?.scores.map(({ kind }) => kind)).toEqual(['mountain', 'valley']);
    const { minY, maxY } = regionBounds(strip!.card);
    expect(maxY - minY).toBeCloseTo(6 + 5 + 6, 6);
  });

  it('thickens the closed book by its card and its mount', () => {
    const thickness = ({ book, panels }: typeof bare) => closedThickness(book, panels);
    // T = N (t + r) + M t with r = t / 2, N = 8 faces, M = 5 panels, t = 0.3: 3.6 + 1.5, the worked
    // example of the closed concertina (derived).
    expect(thickness(bare)).toBeCloseTo(5.1, 9);
    expect(thickness(post({ mount: 'pad', standOff: 2 }))).toBeCloseTo(5.1 + 2.3, 9);
  });

  it('is reported when nothing holds it', () => {
    const floating = made({
      scenery: [
        elementOf({
          element: 'ball',
          id: 'ball',
          loose: loose(),
          height: { from: { mm: 50 }, to: { mm: 50 } },
        }),
      ],
    });
    const ofGlue = (findings: typeof floating.findings) =>
      findings.filter(({ rule }) => rule === 'glue-zone');
    expect(ofGlue(floating.findings)).toMatchObject([
      { rule: 'glue-zone', severity: 'error', measured: 0, where: { piece: 'ball-p1' } },
    ]);
    expect(ofGlue(post().findings)).toEqual([]);
  });
});

describe('a backing', () => {
  it('closes the window, hidden but for it', () => {
    const { panels, book } = made({ backings: [backing()] });
    const [{ card }] = panels[0].attached;
    const window = book.panels[0].window!.outline;
    expect(regionArea(subtract(window, [card]))).toBeLessThan(1e-6);
    expect(regionBounds(card).minX).toBeCloseTo(42.5 - 4, 3);
    expect(regionArea(subtract(card, [window, panels[0].card]))).toBeLessThan(1e-6);
  });

  it('closes the holes of one element alone', () => {
    const ball = elementOf({
      element: 'ball',
      id: 'ball',
      width: { from: { mm: 40 }, to: { mm: 40 } },
      height: { from: { mm: 10 }, to: { mm: 10 } },
    });
    const { panels } = made({ scenery: [ball], backings: [backing({ behind: 'ball' })] });
    const [piece, ...others] = panels[0].attached;
    expect(others).toEqual([]);
    const open = subtract(piece.card, [panels[0].card]);
    // A hole of 20 mm across, 10 mm over the sill, and 4 mm of card round it to be glued.
    expect(containsPoint(open, { x: 95, y: 110 })).toBe(true);
    expect(regionArea(intersect(piece.card, panels[0].card))).toBeGreaterThan(100);
    expect(regionBounds(piece.card).minY).toBeCloseTo(110 - 10 - 4, 1);
  });
});
