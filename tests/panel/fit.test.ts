import { parseSync } from 'svgson';
import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { pieceSvg } from '../../src/output/svg.js';
import { composePanel } from '../../src/panel/compose.js';
import type { Piece } from '../../src/panel/piece.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { isPressedFrom } from '../../src/process/layers.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { Scene } from '../../src/scene/scene.js';
import { absoluteForm } from '../geometry/path/absolute-form.js';
import { CARD, sceneWith } from '../support/scene.js';

interface Fold {
  readonly x: number;
  readonly kind: string;
}

/** All upright folds of a piece as its written files give them, in front coordinates, by x. */
function foldsInFiles(piece: Piece): Fold[] {
  const folds = foldsIn(pieceSvg(piece, 'front'));
  if (isPressedFrom(piece, 'back')) {
    for (const { x, kind } of foldsIn(pieceSvg(piece, 'back'))) {
      folds.push({ x: piece.width - x, kind });
    }
  }
  return folds.sort((a, b) => a.x - b.x);
}

function foldsIn(svg: string): Fold[] {
  const score = parseSync(svg).children.find((g) => g.attributes.id === 'score');
  const fold = score?.children.find((g) => g.attributes.id === 'fold');
  return (fold?.children ?? []).map((node) => {
    const data = absoluteForm(node.attributes.d);
    const match = /^M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)$/.exec(data);
    if (!match) throw new Error(`not a straight fold: ${node.attributes.d}`);
    expect(Number(match[1])).toBeCloseTo(Number(match[3]), 6);
    return { x: Number(match[1]), kind: node.attributes['data-kind'] };
  });
}

/** Folded up: x outward from the book's middle plane is taken off W / 2, z runs back. */
function foldedStrip(folds: readonly Fold[], theta: number, innerX: number) {
  const places: { x: number; z: number }[] = [{ x: innerX, z: 0 }];
  let outward = true;
  for (let i = 1; i < folds.length; i++) {
    const face = folds[i].x - folds[i - 1].x;
    const last = places[places.length - 1];
    const reach = face * Math.cos(theta / 2);
    places.push({
      x: last.x + (outward ? -reach : reach),
      z: last.z + face * Math.sin(theta / 2),
    });
    outward = !outward;
  }
  return places;
}

const designed = (changes: Partial<Scene> = {}) => {
  const scene = sceneWith(changes);
  const book = planBook(scene);
  const panels = book.panels.map((plan) =>
    composePanel(scene, book, plan, new Map(), PROCESS_LIMITS.knife),
  );
  return { book, pieces: bookPieces(book, panels) };
};

const named = (pieces: readonly Piece[], name: string): Piece => {
  const piece = pieces.find((p) => p.name === name);
  if (!piece) throw new Error(`no piece ${name}`);
  return piece;
};

describe('the written pieces of a book fit each other', () => {
  const { book, pieces } = designed({ spine: { pitch: 15, tab: 12, scoring: 'both' } });
  const right = foldsInFiles(named(pieces, 'spine-right'));
  const left = foldsInFiles(named(pieces, 'spine-left'));
  const panelNames = book.panels.map((p) => `panel-0${p.number}`);

  it('both strips have equal pitch, number and phase, the left one mirrored', () => {
    const width = named(pieces, 'spine-left').width;
    const mirrored = left.map(({ x, kind }) => ({ x: width - x, kind })).reverse();
    expect(mirrored.map((f) => f.kind)).toEqual(right.map((f) => f.kind));
    mirrored.forEach((f, i) => {
      expect(f.x).toBeCloseTo(right[i].x, 3);
    });
  });

  it('the strip folds alternate between the two end folds, which are mountains', () => {
    expect(right.map((f) => f.kind)).toEqual([
      'mountain',
      ...['mountain', 'valley', 'mountain', 'valley', 'mountain', 'valley', 'mountain'],
      'mountain',
    ]);
  });

  it('an inner fold meets each panel’s hinge in every state, W - 2 p apart', () => {
    for (const name of panelNames) {
      const hinges = foldsInFiles(named(pieces, name));
      expect(hinges).toHaveLength(2);
      expect(hinges[0].x).toBeCloseTo(15, 3);
      expect(hinges[1].x).toBeCloseTo(190 - 15, 3);
    }
    for (const angle of [0.01, 40, 83.6206, 120, 179]) {
      const theta = (angle * Math.PI) / 180;
      const places = foldedStrip(right, theta, 15);
      const spacing = 2 * 15 * Math.sin(theta / 2);
      for (let panel = 0; panel < 5; panel++) {
        expect(places[2 * panel].x).toBeCloseTo(15, 2);
        expect(places[2 * panel].z).toBeCloseTo(panel * spacing, 2);
      }
    }
  });

  it('opens to the spacing at the angle that the plan states', () => {
    const places = foldedStrip(right, (book.spine.angleDeg * Math.PI) / 180, 15);
    book.panels.forEach((panel, i) => {
      expect(places[2 * i].z).toBeCloseTo(panel.depthMm, 2);
    });
  });

  it('closes into a block exactly W wide', () => {
    const outer = foldedStrip(right, 0, 15).map((p) => p.x);
    expect(Math.min(...outer)).toBeCloseTo(0, 2);
  });

  it('flaps are pitch - 1.5 wide, so that they never reach the outer fold', () => {
    for (const name of panelNames) {
      const box = regionBounds(named(pieces, name).card);
      expect(15 - box.minX).toBeCloseTo(13.5, 3);
      expect(box.maxX - (190 - 15)).toBeCloseTo(13.5, 3);
    }
  });

  it('flaps fold back on every panel but the backdrop, whose flaps fold forward', () => {
    const kinds = panelNames.map((name) => foldsInFiles(named(pieces, name)).map((f) => f.kind));
    expect(
      kinds
        .slice(0, -1)
        .flat()
        .every((k) => k === 'mountain'),
    ).toBe(true);
    expect(kinds.at(-1)).toEqual(['valley', 'valley']);
  });

  it('a groove is always on the outside of its fold: valleys are in the back files alone', () => {
    for (const piece of pieces) {
      expect(foldsIn(pieceSvg(piece, 'front')).every((f) => f.kind === 'mountain')).toBe(true);
    }
    expect(foldsIn(pieceSvg(named(pieces, 'panel-05'), 'back'))).toHaveLength(2);
    expect(foldsIn(pieceSvg(named(pieces, 'spine-left'), 'back'))).toHaveLength(3);
  });

  it('end tabs hide behind the front panel’s jamb', () => {
    const tab = right[0].x;
    const window = book.panels[0].window;
    expect(15 + tab).toBeLessThan(window?.x ?? 0);
  });

  it('panels and strips are of one height, and the hinges run from edge to edge', () => {
    for (const piece of pieces) {
      const box = regionBounds(piece.card);
      expect(box.maxY - box.minY).toBeCloseTo(135, 6);
    }
  });
});

describe('folds scored from the front alone', () => {
  const { pieces } = designed({ spine: { pitch: 15, tab: 12, scoring: 'front' } });
  it('need no back files', () => {
    for (const piece of pieces) expect(isPressedFrom(piece, 'back')).toBe(false);
    expect(foldsInFiles(named(pieces, 'spine-left'))).toHaveLength(9);
  });
});

describe('a strip longer than its sheet', () => {
  const { book, pieces } = designed({
    panels: 9,
    windows: {
      first: { shape: 'rectangle', radius: 0, width: 105, height: 105 },
      step: { width: 5, height: 5 },
      hold: [],
    },
    spine: { pitch: 15, tab: 12, scoring: 'both' },
  });
  const parts = pieces.filter((p) => p.name.startsWith('spine-right'));

  it('is split into parts that fit the sheet', () => {
    expect(book.spine.lengthMm).toBeCloseTo(16 * 15 + 24, 6);
    expect(parts.map((p) => p.name)).toEqual(['spine-right-1', 'spine-right-2']);
    const usable = CARD.sheet.width - 2 * CARD.margin;
    for (const part of parts) expect(part.width).toBeLessThanOrEqual(usable);
  });

  it('joins in a lap behind a face that carries no flap, and loses no face or fold', () => {
    const kinds = parts.map((part) => foldsInFiles(part).map((f) => f.kind));
    // All folds of the whole strip, each in exactly one part.
    expect(kinds.flat()).toEqual([
      'mountain',
      ...Array.from({ length: 15 }, (_, i) => (i % 2 === 0 ? 'mountain' : 'valley')),
      'mountain',
    ]);
    // The second part begins with its lap and the valley that it folds at.
    expect(kinds[1][0]).toBe('valley');
    const lap = foldsInFiles(parts[1])[0].x;
    expect(lap).toBeCloseTo(13.5, 3);
    // The first part ends with the back face that the lap is glued to, free of the next fold.
    const lastFold = foldsInFiles(parts[0]).at(-1) as Fold;
    expect(lastFold.kind).toBe('mountain');
    expect(parts[0].width - lastFold.x).toBeCloseTo(14.5, 3);
  });

  it('that no two faces of fit is told', () => {
    const tiny = { ...CARD, sheet: { name: 'A7', width: 74, height: 105 } };
    expect(() => designed({ spineCard: tiny, spacing: 34 })).toThrow(
      /two faces and a tab take .* mm, and the sheet leaves 62.0 mm/,
    );
  });
});
