import { describe, expect, it } from 'vitest';
import { checkBook } from '../../src/check/check.js';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import { designBook } from '../../src/output/design-book.js';
import type { Plot } from '../../src/scenery/family.js';
import { lettering } from '../../src/scenery/lettering.js';
import { randomFrom } from '../../src/scenery/random.js';
import { plotAt } from './draws.js';
import { expectFitToCut } from './each-draw.js';
import { grown, plotWith, written } from './plots.js';

const TEXTS = ['Raree', 'LOCK 24', 'Tide pool', 'Night train', 'Pine; "halt"', 'Ångström-fïx'];
const FONTS = ['roman', 'sans', 'script'];

/** Sizes, limits, sides and forms drawn at random. */
function eachWord(draws: number, look: (n: number, plot: Plot, values: Values) => void): void {
  for (let n = 0; n < draws; n++) {
    const luck = randomFrom('word', n);
    const [smallestWeb, smallestHole, smallestSlot] = luck.pick([
      [1, 1, 0.2],
      [1.5, 2, 1],
      [3, 3, 3],
    ]);
    const plot = plotAt(luck.pick(['sill', 'head'] as const), {
      width: luck.between(20, 150),
      height: luck.between(6, 90),
      root: 10,
      smallestWeb,
      smallestHole,
      smallestSlot,
    });
    const values = {
      text: luck.pick(TEXTS),
      font: luck.pick(FONTS),
      line: luck.pick(['straight', 'arc'] as const),
      rise: luck.between(0, 20),
    };
    look(n, plot, values);
  }
}

type Values = Record<string, string | number>;

const scene = (more: string): string =>
  [
    'panels: 3',
    'panel: { width: 140, height: 110 }',
    'window: { width: 80, height: 50, step: 2 }',
    'scenery:',
    `  - { element: lettering, panels: 1, ${more} }`,
  ].join('\n');

describe('lettering', () => {
  it('stands as one piece fit to cut, whatever the word, font, size and process', () => {
    eachWord(20, (n, plot, values) => {
      const growth = grown(lettering, plot, { ...values, work: 'stand' }, n);
      expectFitToCut(growth, plot, JSON.stringify({ n, ...values, height: plot.height }));
    });
  }, 300_000);

  it('cuts a stencil that leaves the frame in one piece, clear of its edges, or says why not', () => {
    let cut = 0;
    eachWord(14, (n, base, values) => {
      const frame = { ...base, root: 30, height: Math.min(base.height, 22) };
      const growth = grown(lettering, frame, { ...values, work: 'cut' }, n);
      const label = JSON.stringify({ n, ...values });
      if (!growth.pierced) {
        expect(growth.faults?.[0].message, label).toMatch(/too small to cut out|no room/);
        return;
      }
      cut++;
      const card = subtract(frame.frame.card, [growth.pierced]);
      expect(components(card).length, label).toBe(1);
      const webs = narrowWebs(card, frame.smallestWeb - 0.02).filter((p) => p.kind !== 'tip');
      expect(webs, label).toEqual([]);
      expect(smallHoles(card, frame.smallestHole - 0.02), label).toEqual([]);
      expect(regionArea(intersect(growth.pierced, frame.frame.window)), label).toBe(0);
    });
    expect(cut).toBeGreaterThan(3);
  }, 300_000);

  it('reads the right way round on the head, and in capitals where it hangs', () => {
    const plot = plotAt('head', { width: 100, height: 22, smallestWeb: 1, smallestHole: 1 });
    const small = grown(lettering, plot, { text: 'lock', work: 'stand' });
    const capitals = grown(lettering, plot, { text: 'LOCK', work: 'stand' });
    expect(written({ ...small, faults: [] })).toBe(written({ ...capitals, faults: [] }));
    // A plot on the head is mirrored: the foot of an L, at its right, is far from the bar there.
    const l = grown(lettering, plot, { text: 'L', font: 'sans', work: 'stand' });
    const { minY, maxX } = regionBounds(l.body);
    expect(minY).toBeCloseTo(-22, 0);
    const foot = { minX: 0, x: maxX, y: minY };
    const low = l.body.contours.flatMap((c) =>
      Array.from({ length: c.length / 2 }, (_, i) => i * 2)
        .filter((i) => c[i + 1] < foot.y + 1)
        .map((i) => c[i]),
    );
    expect(Math.max(...low)).toBeGreaterThan(0.5);
  });

  it('scores and raises the same letters that it is asked for', () => {
    const plot = plotWith('rectangle', { height: 12, width: 80, root: 30 });
    const score = grown(lettering, plot, { work: 'score', text: 'oo' });
    expect(score.scores).toHaveLength(4);
    expect(score.body.contours).toHaveLength(0);
    const emboss = grown(lettering, plot, { work: 'emboss', text: 'oo' });
    expect(components(emboss.reliefs[0].region)).toHaveLength(2);
    expect(emboss.reliefs[0].side).toBe('raised');
  });

  it('rises on an arc, and follows the edge of a round window', () => {
    const box = (window: 'rectangle' | 'circle', given: Values) => {
      const plot = plotWith(window, { height: 8, width: 80, root: 40 });
      const { reliefs } = grown(lettering, plot, { work: 'emboss', text: 'HHHHHHH', ...given });
      const { minY, maxY } = regionBounds(reliefs[0].region);
      return maxY - minY;
    };
    const straight = box('rectangle', { line: 'straight' });
    expect(straight).toBeCloseTo(8, 0);
    expect(box('rectangle', { line: 'arc', rise: 3 })).toBeGreaterThan(straight + 2);
    expect(box('rectangle', { line: 'arc', rise: 0 })).toBeCloseTo(straight, 1);
    expect(box('circle', { line: 'edge' })).toBeGreaterThan(straight + 2);
  });

  it('sets a line that is too long for its width smaller', () => {
    const plot = plotWith('rectangle', { height: 15, width: 40, root: 40 });
    const { reliefs } = grown(lettering, plot, { work: 'emboss', text: 'A long line of text' });
    const { minX, maxX } = regionBounds(reliefs[0].region);
    expect(maxX - minX).toBeLessThanOrEqual(40.1);
    expect(maxX - minX).toBeGreaterThan(36);
  });

  it('is a finding, with the least height, where letters are too small to be cut', async () => {
    const { findings, panels } = await designBook(
      scene('work: cut, text: Lock gates, side: head, width: 40, height: 5'),
      'lock.yaml',
    );
    const found = findings.find((f) => f.rule === 'drawn-amiss')!;
    expect(found.severity).toBe('error');
    expect(found.wanted).toBeGreaterThan(found.measured);
    expect(found.message).toContain(`${found.wanted} mm high`);
    expect(panels[0].scores.length).toBeGreaterThan(0);
  });

  it('is a finding where a glyph or a font is missing', async () => {
    const first = async (more: string) =>
      (await designBook(scene(more), 'lock.yaml')).findings[0].message;
    expect(await first('text: "Tide → pool"')).toContain('"→" (U+2192)');
    expect(await first('font: romen')).toContain('did you mean "roman"');
  });

  it('is cut through the card of its panel, which stays in one piece without a fault', async () => {
    const design = (work: string) =>
      designBook(scene(`work: ${work}, text: LOCK, font: sans, height: 12`), 'lock.yaml');
    const [cut, scored] = (await Promise.all([design('cut'), design('score')])).map(
      (d) => d.panels[0].card,
    );
    expect(components(cut)).toHaveLength(1);
    expect(regionArea(scored) - regionArea(cut)).toBeGreaterThan(100);
    const { scene: read, book, panels, pieces } = await design('cut');
    const limits = { smallestWeb: 1.5, smallestSlot: 1, smallestHole: 2, scoreClearance: 1.5 };
    const errors = checkBook({ scene: read, book, panels, pieces, limits }).filter(
      (f) => f.severity === 'error',
    );
    expect(errors).toEqual([]);
  });
});
