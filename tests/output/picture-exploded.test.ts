import { describe, expect, it } from 'vitest';
import { polyline } from '../../src/geometry/pen.js';
import { explodedSvg } from '../../src/output/picture/exploded.js';
import { foldDashes } from '../../src/output/picture/fold-marks.js';
import { absoluteForm } from '../geometry/path/absolute-form.js';
import { emptyBook } from './picture-book.js';

const { book, panels } = emptyBook();
const svg = explodedSvg(book, panels);

const places = (text: string) =>
  [...text.matchAll(/<g id="laid-panel-(\d+)" transform="translate\(([\d.]+) ([\d.]+)\)"/g)].map(
    ([, number, x, y]) => ({ number: Number(number), x: Number(x), y: Number(y) }),
  );

describe('exploded picture', () => {
  it('lays every panel down once, front first', () => {
    expect(places(svg).map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
  });

  it('lays no panel over another, and all within the picture', () => {
    const [minX, minY, width, height] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '')
      .split(' ')
      .map(Number);
    const all = places(svg);
    for (const p of all) {
      expect(p.x).toBeGreaterThan(minX);
      expect(p.x + book.width).toBeLessThan(minX + width);
      expect(p.y + book.height).toBeLessThan(minY + height);
      for (const q of all) {
        const apart = Math.abs(p.x - q.x) > book.width || Math.abs(p.y - q.y) > book.height;
        expect(p === q || apart).toBe(true);
      }
    }
  });

  it.each([1, 2, 3, 4, 6, 7, 12])('places %d panels', (count) => {
    const some = emptyBook(Array.from({ length: count }, () => '#8899aa'));
    const all = places(explodedSvg(some.book, some.panels));
    expect(new Set(all.map(({ x, y }) => `${x} ${y}`)).size).toBe(count);
  });

  it('shows whole cards, flaps and all', () => {
    const d = /<path id="panel-1" d="([^"]*)"/.exec(svg)?.[1] ?? '';
    const xs = [...absoluteForm(d).matchAll(/[ML](-?[\d.]+) /g)].map((m) => Number(m[1]));
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([1.5, 148.5]);
  });

  // Yoshizawa-Randlett system: valley dashed, mountain dash-dot.
  it('marks the hinges: mountains on all panels but the backdrop', () => {
    const mountains = [...svg.matchAll(/<path class="mountain" d="([^"]*)"/g)];
    const valleys = [...svg.matchAll(/<path class="valley" d="([^"]*)"/g)];
    expect(mountains).toHaveLength(4);
    expect(valleys).toHaveLength(1);
    for (const [, d] of [...mountains, ...valleys]) {
      expect(absoluteForm(d)).toBe('M15 0L15 190M135 0L135 190');
    }
  });

  // ISO 128-20:1996, element lengths in line widths, from memory: dash 12, gap 3, dot 0.5 at most.
  it('dashes folds by the standard, at a line width of 0.5 mm', () => {
    expect(foldDashes('valley')).toEqual([6, 1.5]);
    expect(foldDashes('mountain')).toEqual([6, 1.5, 0.25, 1.5]);
    expect(svg).toContain('stroke-width="0.5" stroke-dasharray="6 1.5 0.25 1.5"');
  });

  it('marks a fold of the panel itself, and leaves details as grooves', () => {
    const across = (y: number) =>
      polyline([
        { x: 40, y },
        { x: 60, y },
      ]);
    const folded = {
      ...panels[0],
      scores: [
        { line: across(170), kind: 'valley' as const },
        { line: across(180), kind: 'detail' as const },
      ],
    };
    const drawn = explodedSvg(book, [folded]);
    expect(drawn).toMatch(/class="valley" d="M40 170h20"/);
    expect(drawn).not.toMatch(/class="\w+" d="[^"]*M40 180/);
    expect(drawn.match(/d="M40 180h20"/g)).toHaveLength(2);
  });

  it('is the same every time', () => {
    expect(explodedSvg(book, panels)).toBe(svg);
    expect(svg).not.toMatch(/<text|NaN|Infinity|undefined/);
  });
});
