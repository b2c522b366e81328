import { describe, expect, it } from 'vitest';
import { planBook } from '../../src/book/plan.js';
import { linesOutside } from '../../src/geometry/clip-lines.js';
import { composePanel } from '../../src/panel/compose.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { pieceLayers } from '../../src/process/layers.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import type { SceneElement } from '../../src/scene/scene.js';
import { elementOf, TEST_FAMILIES } from '../support/families.js';
import { sceneWith } from '../support/scene.js';

function made(changes: Partial<SceneElement>, ballMm = 1) {
  const element = elementOf({ element: 'egg', side: 'left', frame: 'sink', ...changes });
  const scene = sceneWith({ scenery: [element], ballMm });
  const book = planBook(scene);
  const limits = PROCESS_LIMITS.knife;
  const panels = book.panels.map((plan) => composePanel(scene, book, plan, TEST_FAMILIES, limits));
  return { panel: panels[0], piece: bookPieces(book, panels)[0] };
}

describe('a pressed area with a pattern', () => {
  it('is written as the strokes of its pattern, all within the area', () => {
    const { panel, piece } = made({ pattern: 'linen' });
    const [relief] = panel.reliefs;
    const strokes = relief.strokes ?? [];
    expect(strokes.length).toBeGreaterThan(5);
    expect(linesOutside(strokes, relief.region)).toEqual([]);
    const marks = pieceLayers(piece, ['front']).emboss;
    expect(marks).toHaveLength(strokes.length);
    expect(marks.every(({ closed, relief: told }) => !closed && told?.side === 'sunk')).toBe(true);
  });

  it('has fewer strokes for a larger ball', () => {
    const strokes = (ballMm: number) => made({ pattern: 'linen' }, ballMm).panel.reliefs[0].strokes;
    expect(strokes(2)!.length).toBeLessThan(0.7 * strokes(1)!.length);
  });

  it('is written as its outline when no pattern is asked for', () => {
    const { panel, piece } = made({});
    expect(panel.reliefs[0].strokes).toBeUndefined();
    expect(pieceLayers(piece, ['front']).emboss.every(({ closed }) => closed)).toBe(true);
  });
});
