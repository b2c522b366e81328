import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/scene/read.js';
import { elements } from './elements.js';

const read = (text: string) => readScene(text, { file: 'lock.yaml', elements });

const LOCK = `# A canal lock in the evening.
title: Lock at dusk
seed: 11
process: laser
panel: { width: 200, height: 140 }
panels: 6
spacing: 25
reading: 350
window:
  shape: arch
  width: 110
  height: 95
  sill: 25
  step: { width: 10, height: 8 }
  hold: [sill, left]
spine: { angle: 80, tab: 15, scoring: front, card: slate }
cards: [slate, "#e8b04a", ivory]
stocks:
  slate: { colour: "#20243C", grammage: 300, sheet: A3, margin: 8 }
scenery:
  - hedge
  - id: towpath-hedge
    element: hedge
    panels: 2 to 4
    at: 30%
    width: 60
    height: { from: 34, to: 50% }
    lift: -3
    mirror: true
    seed: 5
    frame: raise
    heal: bridge
    form: loose
    bumps: { from: 1, to: 1/16 in }
    stems: 7
    flowers: true
  - element: tree
    panels: [3, 1]
  - element: tree
    side: sill
    at: { from: start, to: -10% }
`;

describe('readScene', () => {
  it('makes a book of three lines', () => {
    const { scene } = read('title: Tide pool\npanels: 4\nscenery: [hedge, tree]\n');
    expect(scene).toMatchObject({
      title: 'Tide pool',
      unit: 'mm',
      seed: 1,
      process: 'knife',
      panel: { width: 190, height: 135 },
      panels: 4,
      spacing: 20,
      readingDistance: 400,
      windows: {
        first: { shape: 'rounded', radius: 6 },
        step: { width: 10, height: 10 },
        hold: [],
      },
      spine: { tab: 12, scoring: 'both' },
    });
    expect(scene.cards).toHaveLength(4);
    expect(scene.spineCard).toBe(scene.cards[0]);
    expect(scene.scenery.map(({ id, panels }) => [id, panels])).toEqual([
      ['hedge-1', [1, 2, 3]],
      ['tree-1', [1, 2, 3]],
    ]);
  });

  it('has a default for everything', () => {
    const { scene } = read('seed: 1\n');
    expect(scene.title).toBe('Untitled book');
    expect(scene.panels).toBe(5);
    expect(scene.scenery).toEqual([]);
  });

  it('reads the format', () => {
    const { scene } = read(LOCK);
    expect(scene).toMatchObject({
      title: 'Lock at dusk',
      seed: 11,
      process: 'laser',
      panel: { width: 200, height: 140 },
      panels: 6,
      spacing: 25,
      readingDistance: 350,
      spine: { angleDeg: 80, tab: 15, scoring: 'front' },
    });
    expect(scene.windows).toEqual({
      first: { shape: 'arch', radius: 0, width: 110, height: 95, sill: 25 },
      step: { width: 10, height: 8 },
      hold: ['sill', 'left'],
    });
  });

  it('takes stroke colours by operation', () => {
    expect(read('strokes: { cut: "#112233", fold: navy }\n').scene.strokes).toEqual({
      cut: '#112233',
      fold: '#000080',
    });
    expect(() => read('strokes: { cutt: "#112233" }\n')).toThrow(/"cutt".*"cut"/);
  });

  it('looks up stocks and colours', () => {
    const { scene } = read(LOCK);
    const slate = {
      name: 'slate',
      colour: '#20243c',
      gramsPerM2: 300,
      // ISO 534: 300 g/m2 x 1.25 cm3/g.
      caliperMm: 0.375,
      sheet: { name: 'A3', width: 297, height: 420 },
      margin: 8,
    };
    expect(scene.spineCard).toEqual(slate);
    expect(scene.cards[0]).toEqual(slate);
    expect(scene.cards.map((card) => card.name)).toEqual([
      'slate',
      '#e8b04a',
      'ivory',
      'ivory',
      'ivory',
      'ivory',
    ]);
  });

  it('reads an element with its own parameters, plain values held throughout', () => {
    expect(read(LOCK).scene.scenery[1]).toEqual({
      id: 'towpath-hedge',
      path: ['scenery', 1],
      element: 'hedge',
      panels: [2, 3, 4],
      side: 'sill',
      at: { from: { share: 0.3 }, to: { share: 0.3 } },
      width: { from: { mm: 60 }, to: { mm: 60 } },
      height: { from: { mm: 34 }, to: { share: 0.5 } },
      lift: { from: { mm: -3 }, to: { mm: -3 } },
      mirror: true,
      seed: 5,
      frame: 'raise',
      carry: 'straight',
      corner: null,
      along: null,
      snug: null,
      pair: false,
      scatter: null,
      stands: 'across',
      detail: 'auto',
      group: null,
      treat: [],
      pattern: null,
      loose: null,
      heal: 'bridge',
      values: {
        form: 'loose',
        batter: { from: 3, to: 3 },
        stems: { from: 7, to: 7 },
        bumps: { from: 1, to: 25.4 / 16 },
        flowers: true,
      },
    });
  });

  it('takes sizes, side and place from the element when the scene says none', () => {
    const [, , onJamb, onSill] = read(LOCK).scene.scenery;
    expect(onJamb).toMatchObject({
      id: 'tree-1',
      panels: [1, 3],
      side: 'left',
      at: { from: { share: 1 }, to: { share: 1 } },
      width: { from: { mm: 40 }, to: { mm: 40 } },
      height: { from: { share: 0.8 }, to: { share: 0.8 } },
      frame: 'score',
      heal: 'error',
      carry: 'straight',
      values: { lean: { from: 5, to: 5 } },
    });
    expect(onSill).toMatchObject({
      id: 'tree-2',
      side: 'sill',
      at: { from: { share: 0 }, to: { share: -0.1 } },
    });
    const { scene } = read('scenery: [hedge]\n');
    expect(scene.scenery[0]!.at).toEqual({ from: { share: 0.5 }, to: { share: 0.5 } });
  });

  it('reads a list of windows, one for each panel but the backdrop', () => {
    const { scene } = read(
      'panels: 3\nwindow:\n  - { shape: circle, width: 90 }\n  - { head: 20 }\n',
    );
    expect(scene.windows).toEqual([
      { shape: 'circle', radius: 0, width: 90 },
      { shape: 'rounded', radius: 6, head: 20 },
    ]);
  });

  it('turns every bare length into millimetres, defaults and bounds too', () => {
    const { scene } = read(
      'unit: in\npanel: { width: 8, height: 5 1/2 }\nspacing: 3/4\nwindow: { step: 0.25, sill: 2 cm }\n' +
        'stocks: { card: { colour: navy, sheet: { width: 12, height: 12 } } }\ncards: card\n' +
        'scenery: [{ element: hedge, width: 2, bumps: 0.1 }]\n',
    );
    expect(scene.panel.width).toBeCloseTo(203.2, 9);
    expect(scene.panel.height).toBeCloseTo(139.7, 9);
    expect(scene.spacing).toBeCloseTo(19.05, 9);
    expect(scene.readingDistance).toBe(400);
    expect(scene.windows).toMatchObject({
      first: { sill: 20, radius: 6 },
      step: { width: 6.35, height: 6.35 },
    });
    expect(scene.cards[4]!.sheet.width).toBeCloseTo(304.8, 9);
    expect(scene.cards[4]!.margin).toBe(6);
    expect(scene.scenery[0]).toMatchObject({
      width: { from: { mm: 50.8 } },
      height: { from: { mm: 30 } },
      values: { bumps: { from: 2.54, to: 2.54 } },
    });
  });

  it('accepts the bounds that its messages show', () => {
    for (const panel of ['1.575', '47.244']) {
      expect(() => read(`unit: in\npanel: { width: ${panel} }\n`)).not.toThrow();
    }
  });

  it('lets values be repeated by alias', () => {
    const { scene } = read(
      'scenery:\n  - element: hedge\n    height: &tall { from: 34, to: 26 }\n' +
        '  - element: tree\n    height: *tall\n',
    );
    expect(scene.scenery[1]!.height).toEqual(scene.scenery[0]!.height);
  });

  it('gives the same scene every time', () => {
    expect(read(LOCK).scene).toEqual(read(LOCK).scene);
  });

  it('refuses elements whose parameters hide a key that all elements have', () => {
    const odd = { ...elements[1]!, parameters: { seed: elements[1]!.parameters.lean! } };
    expect(() => readScene('seed: 1\n', { file: 'x', elements: [odd] })).toThrow(/key "seed"/);
  });
});

describe('locate', () => {
  const { locate } = read(LOCK);

  it.each([
    [['title'], 2, 8],
    [['panel', 'height'], 5, 30],
    [['window'], 9, 1],
    [['window', 'width'], 11, 10],
    [['cards', 1], 17, 16],
    [['stocks', 'slate'], 19, 10],
    [['scenery', 0], 21, 5],
    [['scenery', 1, 'height', 'to'], 27, 29],
    [['scenery', 2], 37, 5],
  ])('finds %j at %d:%d', (path, line, column) => {
    expect(locate(path)).toEqual({ line, column });
  });

  it('gives what would hold it for what the file does not say', () => {
    expect(locate(['window', 'jamb'])).toEqual(locate(['window']));
    expect(locate(['scenery', 0, 'height', 'from'])).toEqual(locate(['scenery', 0]));
    expect(locate(['nowhere', 3])).toEqual({ line: 2, column: 1 });
  });
});
