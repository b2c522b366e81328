import { describe, expect, it } from 'vitest';
import { polyline } from '../../src/geometry/pen.js';
import { circle } from '../../src/geometry/primitives.js';
import { previewSvg } from '../../src/output/picture/preview.js';
import type { Panel } from '../../src/panel/panel.js';
import { absoluteForm } from '../geometry/path/absolute-form.js';
import { emptyBook, stock } from './picture-book.js';

const { book, panels } = emptyBook();
const svg = previewSvg(book, panels);

describe('preview', () => {
  it('draws every layer, the deepest first', () => {
    const order = [...svg.matchAll(/<g id="layer-panel-(\d+)"/g)].map((m) => Number(m[1]));
    expect(order).toEqual([5, 4, 3, 2, 1]);
  });

  it('draws layers by their depth, whatever their order in the list', () => {
    expect(previewSvg(book, [...panels].reverse())).toBe(svg);
  });

  it('scales each layer by D / (D + z) about the eye axis', () => {
    const placed = [...svg.matchAll(/<g id="layer-panel-(\d)" transform="matrix\(([^)]*)\)"/g)];
    expect(placed).toHaveLength(5);
    for (const [, number, matrix] of placed) {
      const [a, b, c, d, e, f] = matrix.split(' ').map(Number);
      const scale = 400 / (400 + (Number(number) - 1) * 21.2132);
      expect([b, c, d]).toEqual([0, 0, a]);
      expect(a).toBeCloseTo(scale, 3);
      expect(a * 75 + e).toBeCloseTo(75, 1);
      expect(a * 90 + f).toBeCloseTo(90, 1);
    }
  });

  it('shows no flap: all card ends at the hinges', () => {
    for (let number = 1; number <= 5; number++) {
      const d = new RegExp(`<path id="panel-${number}" d="([^"]*)"`).exec(svg)?.[1] ?? '';
      const xs = [...absoluteForm(d).matchAll(/[ML](-?[\d.]+) -?[\d.]+/g)].map((m) => Number(m[1]));
      expect(Math.min(...xs)).toBeCloseTo(15, 2);
      expect(Math.max(...xs)).toBeCloseTo(135, 2);
    }
  });

  it('casts the shadow of every layer on the next, and none on the first', () => {
    const shadows = [...svg.matchAll(/<filter id="shadow-on-panel-(\d)-of-panel-\d"/g)].map(
      (m) => m[1],
    );
    expect(shadows).toEqual(['5', '4', '3', '2']);
  });

  it('is the same every time, holds no text, and refers to nothing that is missing', () => {
    expect(previewSvg(book, panels)).toBe(svg);
    expect(svg).not.toMatch(/<text|NaN|Infinity|undefined/);
    const ids = new Set([...svg.matchAll(/ id="([^"]*)"/g)].map((m) => m[1]));
    for (const [, ref] of svg.matchAll(/(?:url\(|href=")#([^")]*)/g)) expect(ids).toContain(ref);
  });

  it('draws scores and pressed areas', () => {
    const line = polyline([
      { x: 20, y: 170 },
      { x: 60, y: 170 },
    ]);
    const pressed: Panel = {
      ...panels[0],
      scores: [{ line, kind: 'detail' }],
      reliefs: [{ region: circle(75, 170, 6), side: 'raised', depthMm: 0.3 }],
    };
    const drawn = previewSvg(book, [pressed, ...panels.slice(1)]);
    expect(drawn.match(/d="M20 170h40"/g)).toHaveLength(2);
    expect(drawn).toContain('id="panel-1-press"');
    const sunk = { ...pressed, reliefs: [{ ...pressed.reliefs[0], side: 'sunk' as const }] };
    expect(previewSvg(book, [sunk, ...panels.slice(1)])).not.toBe(drawn);
  });

  it('draws each card in its own colour', () => {
    const other = panels.map((p) => (p.number === 1 ? { ...p, stock: stock('#123456') } : p));
    expect(previewSvg(book, other)).toContain('fill="#123456"');
    expect(svg).not.toContain('#123456');
  });
});
