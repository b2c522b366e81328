import { Resvg } from '@resvg/resvg-js';
import paper from 'paper-jsdom';
import { type INode, parseSync } from 'svgson';
import { describe, expect, it } from 'vitest';
import { sheetSvg as faceSvg, pieceSvg, type SheetStyle } from '../../src/output/svg.js';
import { sheetFiles as jobFiles, pieceFiles } from '../../src/output/svg-files.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Face } from '../../src/process/layers.js';
import type { WorkedOperation } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { LAYER_COLOURS, type LayerColours } from '../../src/scene/layer-colours.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import type { Sheet } from '../../src/sheet/sheet.js';
import { absoluteForm } from '../geometry/path/absolute-form.js';
import { A2, bridge, gate, plainPiece, sky, spine } from '../process/lock-pieces.js';

const PIECES: readonly Piece[] = [bridge, gate, sky, spine('spine-left', 8)];

// The press runs the lines as they are designed.
const MEANS = { process: STARTING.press, ballMm: 1 };
const STYLE: SheetStyle = { process: STARTING.press, colours: LAYER_COLOURS };

const sheetFor = (...pieces: Piece[]): Sheet => nest(pieces, MEANS.process).sheets[0];
const sheetFiles = (sheet: Sheet) => jobFiles(sheetJob(sheet, MEANS), STYLE);
const sheetSvg = (
  sheet: Sheet,
  face: Face,
  { only, colours = LAYER_COLOURS }: { only?: WorkedOperation; colours?: LayerColours } = {},
): string => {
  const job = sheetJob(sheet, MEANS).faces.find((f) => f.face === face)!;
  return faceSvg(sheet, job, { ...STYLE, colours }, only);
};

const TWO_FACED = sheetFor(
  ...[bridge, { ...gate, copies: 2 }].map((piece) => ({ ...piece, stock: A2 })),
);
const MIRRORED = sheetFor(sky);

const FILES = [
  ...PIECES.flatMap((piece) => pieceFiles(piece)),
  ...[TWO_FACED, MIRRORED, sheetFor(bridge)].flatMap(sheetFiles),
];

const descendants = (node: INode): INode[] => [
  node,
  ...node.children.filter((c) => c.type === 'element').flatMap(descendants),
];
const childrenOf = (node: INode): INode[] => node.children.filter((c) => c.type === 'element');
const idsOf = (node: INode): string[] => childrenOf(node).map((c) => c.attributes.id);
const groupOf = (svg: string, id: string): INode | undefined =>
  descendants(parseSync(svg)).find((n) => n.attributes.id === id);
const pathsIn = (svg: string, id: string): INode[] => {
  const group = groupOf(svg, id);
  return group ? descendants(group).filter((n) => n.name === 'path') : [];
};
const dataIn = (svg: string, id: string): string[] => pathsIn(svg, id).map((p) => p.attributes.d);

/** Every coordinate pair of path data, in absolute coordinates. */
const pairsOf = (d: string): [number, number][] =>
  [...absoluteForm(d).matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);

const FILE_NAMES = FILES.map((file) => file.path);
const each = FILES.map((file) => [file.path, file.text] as const);

describe('every file', () => {
  it('is there under its contracted name, once', () => {
    expect(new Set(FILE_NAMES.slice(0, 7))).toEqual(
      new Set([
        'panels/panel-01.svg',
        'panels/panel-02.svg',
        'panels/panel-02-back.svg',
        'panels/panel-03.svg',
        'panels/panel-03-back.svg',
        'spine/spine-left.svg',
        'spine/spine-left-back.svg',
      ]),
    );
    expect(sheetFiles(TWO_FACED).map((f) => f.path)).toEqual([
      'sheets/sheet-01-back.svg',
      'sheets/sheet-01.svg',
      'sheets/by-step/sheet-01-1-emboss-back.svg',
      'sheets/by-step/sheet-01-2-emboss.svg',
      'sheets/by-step/sheet-01-3-fold.svg',
      'sheets/by-step/sheet-01-4-detail.svg',
      'sheets/by-step/sheet-01-5-cut.svg',
    ]);
    expect(sheetFiles(MIRRORED).map((f) => f.path)).toEqual([
      'sheets/sheet-01.svg',
      'sheets/by-step/sheet-01-1-emboss.svg',
      'sheets/by-step/sheet-01-2-fold.svg',
      'sheets/by-step/sheet-01-3-cut.svg',
    ]);
  });

  it.each(each)('%s has only the contracted groups, in working order', (_, text) => {
    const root = parseSync(text);
    expect(root.name).toBe('svg');
    expect(childrenOf(root).every((c) => c.name === 'g')).toBe(true);
    const ids = idsOf(root);
    expect(ids.length).toBeGreaterThan(0);
    expect(ids).toEqual(['emboss', 'score', 'cut', 'guide'].filter((id) => ids.includes(id)));
    const score = childrenOf(root).find((c) => c.attributes.id === 'score');
    if (score) {
      expect(idsOf(score)).toEqual(['fold', 'detail'].filter((id) => idsOf(score).includes(id)));
    }
    for (const group of descendants(root))
      expect(group.name === 'path' || childrenOf(group).length > 0).toBe(true);
  });

  it.each(each)(
    '%s is plain: lines only, nothing filled, moved, styled or named twice',
    (_, text) => {
      const nodes = descendants(parseSync(text));
      expect(new Set(nodes.map((n) => n.name))).toEqual(new Set(['svg', 'g', 'path']));
      for (const n of nodes) {
        for (const name of ['transform', 'style', 'class', 'clip-path', 'stroke-dasharray']) {
          expect(n.attributes).not.toHaveProperty(name);
        }
        expect(n.attributes.fill ?? 'none').toBe('none');
        expect(n.attributes['stroke-width'] ?? '0.1').toBe('0.1');
      }
      for (const group of childrenOf(nodes[0])) {
        expect(group.attributes).toMatchObject({ fill: 'none', 'stroke-width': '0.1' });
      }
      const ids = nodes.flatMap((n) => (n.attributes.id ? [n.attributes.id] : []));
      expect(new Set(ids).size).toBe(ids.length);
    },
  );

  it.each(each)('%s writes path data as SVG has it, with at most three decimals', (_, text) => {
    // Grammar of path data: SVG 2, section 9.3.9. Plain decimals: common practice, no source.
    const number = String.raw`-?(?:\d+|\d*\.\d{1,3})`;
    // A number after another stands behind a space or is negative.
    const numbers = (count: number): string => `${number}(?:(?: |(?=-))${number}){${count - 1}}`;
    const command = (letters: string, count: number): string =>
      `[${letters}]${numbers(count)}(?:(?: |(?=-))${numbers(count)})*`;
    const commands = [command('Ll', 2), command('HhVv', 1), command('Cc', 6), command('Ss', 4)];
    const grammar = new RegExp(`^M${numbers(2)}(?:${commands.join('|')})+Z?$`);
    for (const n of descendants(parseSync(text))) {
      if (n.name === 'path') expect(n.attributes.d).toMatch(grammar);
    }
  });

  it.each(each)('%s closes every cut and names every fold', (_, text) => {
    for (const d of dataIn(text, 'cut')) expect(d).toMatch(/^M[^M]*Z$/);
    for (const d of dataIn(text, 'emboss')) expect(d).toMatch(/^M[^M]*Z$/);
    for (const p of pathsIn(text, 'fold')) {
      expect(p.attributes['data-kind']).toMatch(/^(mountain|valley)$/);
    }
    for (const p of pathsIn(text, 'emboss')) {
      expect(p.attributes['data-side']).toMatch(/^(raised|sunk)$/);
      expect(Number(p.attributes['data-depth'])).toBeGreaterThan(0);
    }
  });

  it('is the same, byte for byte, when it is written again', () => {
    const again = [
      ...PIECES.flatMap((piece) => pieceFiles(piece)),
      ...[TWO_FACED, MIRRORED, sheetFor(bridge)].flatMap(sheetFiles),
    ];
    expect(again).toEqual(FILES);
  });
});

describe('true size', () => {
  /** The renderer's whole pixels. */
  const size = (svg: string) => {
    const { width, height } = new Resvg(svg, { dpi: 96 });
    return [width, height];
  };
  // Ten times A4, so that a whole pixel is a tenth of one on A4.
  const sky10 = pieceSvg(plainPiece('sky', 2100, 2970), 'front');

  it('is 96/25.4 px a millimetre in a general renderer', () => {
    // 1 in = 25.4 mm = 96 px (CSS Values and Units 3), width and viewBox: SVG 2, chapter 8. So A4 is
    // 793.7008 x 1122.5197 px.
    const [width, height] = size(sky10);
    expect(Math.abs(width - 7937.008)).toBeLessThan(1);
    expect(Math.abs(height - 11225.197)).toBeLessThan(1);
  });

  it('would be lost without the unit: 210 px are 55.5625 mm', () => {
    // Follows from 1 in = 96 px (CSS Values and Units 3): what the unit in width is there for.
    const unitless = sky10.replace('2100mm', '2100').replace('2970mm', '2970');
    const toMm = 25.4 / 96;
    expect(size(unitless)[0] * toMm).toBeCloseTo(555.625, 9);
    expect(Math.abs(size(sky10)[0] * toMm - 2100)).toBeLessThan(toMm);
  });

  it('has its viewBox in mm from the top left', () => {
    const { attributes } = parseSync(pieceSvg(bridge, 'front'));
    expect(attributes).toMatchObject({ width: '187mm', height: '135mm', viewBox: '0 0 187 135' });
    expect(parseSync(sheetSvg(TWO_FACED, 'back')).attributes.viewBox).toBe('0 0 420 594');
  });
});

/** Area in mm2 of closed paths under the even-odd rule, by counting a picture's dark pixels. */
function paintedArea(svg: string, paths: readonly string[], pixelsPerMm: number): number {
  const { attributes } = parseSync(svg);
  const [, , width] = attributes.viewBox.split(' ').map(Number);
  const picture = new Resvg(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${attributes.viewBox}" width="${attributes.width}" height="${attributes.height}">` +
      `<path fill-rule="evenodd" d="${paths.join('')}"/></svg>`,
    { fitTo: { mode: 'width', value: Math.round(width * pixelsPerMm) } },
  ).render();
  // The picture copies its pixels whenever it is asked for them.
  const { pixels } = picture;
  let alpha = 0;
  for (let i = 3; i < pixels.length; i += 4) alpha += pixels[i];
  const scale = picture.width / width;
  return alpha / 255 / scale ** 2;
}

describe('the card', () => {
  // Closed forms: round-topped window w j + pi w^2 / 8 = 2628.318531 for w = 40, j = 50.
  const bridgeArea = 187 * 135 - 2628.318531 - Math.PI * 9 + Math.PI * 25;
  const gateArea = 187 * 135 - (30 * 40 + (Math.PI * 30 ** 2) / 8);

  it('covers its area in a general renderer', () => {
    const svg = pieceSvg(bridge, 'front');
    expect(Math.abs(paintedArea(svg, dataIn(svg, 'cut'), 4) / bridgeArea - 1)).toBeLessThan(0.005);
    const other = pieceSvg(gate, 'front');
    expect(Math.abs(paintedArea(other, dataIn(other, 'cut'), 4) / gateArea - 1)).toBeLessThan(
      0.005,
    );
  });

  it('covers it in a general path library, to the micrometre of the file', () => {
    paper.setup(new paper.Size(10, 10));
    const data = dataIn(pieceSvg(bridge, 'front'), 'cut').join('');
    const path = new paper.CompoundPath(data);
    // Outers and holes run in opposite directions, so signed areas add up to the card.
    expect(Math.abs(path.area) / bridgeArea).toBeCloseTo(1, 4);
    expect(path.children.every((c) => (c as paper.Path).closed)).toBe(true);
  });

  it('covers it on a sheet, every copy', () => {
    const svg = sheetSvg(TWO_FACED, 'front');
    const wanted = bridgeArea + 2 * gateArea;
    expect(Math.abs(paintedArea(svg, dataIn(svg, 'cut'), 3) / wanted - 1)).toBeLessThan(0.005);
  });
});

describe('a piece worked from both sides', () => {
  it('has its cut on the front alone', () => {
    for (const piece of [gate, sky, spine('spine-left', 8)]) {
      expect(groupOf(pieceSvg(piece, 'front'), 'cut')).toBeDefined();
      expect(groupOf(pieceSvg(piece, 'back'), 'cut')).toBeUndefined();
    }
  });

  it('has mountains on the front and valleys on the back, mirrored left to right', () => {
    const strip = spine('spine-left', 8);
    const xs = (face: 'front' | 'back') =>
      dataIn(pieceSvg(strip, face), 'fold').map((d) => pairsOf(d)[0][0]);
    expect(xs('front')).toEqual([27, 57, 87, 117]);
    // 144 mm wide, valleys at 12, 42, 72, 102 and 132 mm as seen from the front.
    expect(xs('back')).toEqual([132, 102, 72, 42, 12]);
  });

  it('carries register marks on both faces that lie on each other when it is turned over', () => {
    const marks = (face: 'front' | 'back') =>
      pathsIn(pieceSvg(gate, face), 'guide')
        .filter((p) => p.attributes['data-kind'] === 'register')
        .map((p) => pairsOf(p.attributes.d));
    expect(marks('front')).toHaveLength(4);
    expect(flipped(marks('back'), 187)).toEqual(sorted(marks('front')));
  });

  it('has none where nothing is worked from the back', () => {
    expect(pieceFiles(bridge).map((f) => f.path)).toEqual(['panels/panel-01.svg']);
    expect(pieceFiles(bridge)[0].text).not.toContain('register');
    // The piece's own guide stays, before the check line and its two ticks.
    expect(dataIn(pieceSvg(bridge, 'front'), 'guide')).toHaveLength(1 + 3);
    expect(dataIn(pieceSvg(bridge, 'front'), 'guide')[0]).toBe('M2 2h6');
  });
});

const sorted = (lines: [number, number][][]): string[] =>
  lines
    .map((line) =>
      line
        .map((p) => p.join(','))
        .sort()
        .join(' '),
    )
    .sort();
const flipped = (lines: [number, number][][], width: number): string[] =>
  sorted(lines.map((line) => line.map(([x, y]) => [Math.round((width - x) * 1000) / 1000, y])));

describe('a sheet', () => {
  const front = sheetSvg(TWO_FACED, 'front');
  const back = sheetSvg(TWO_FACED, 'back');

  it('holds every piece in a group of its own inside its operation', () => {
    const cut = groupOf(front, 'cut')!;
    // In which order is the tour's affair.
    expect(
      childrenOf(cut)
        .map((g) => `${g.attributes['data-piece']} ${g.attributes['data-copy']}`)
        .sort(),
    ).toEqual(['panel-01 1', 'panel-02 1', 'panel-02 2']);
    // Folds of one piece may come at two times.
    const folded = childrenOf(groupOf(front, 'fold')!).map(
      ({ attributes }) => `${attributes['data-piece']} ${attributes['data-copy']}`,
    );
    expect([...new Set(folded)].sort()).toEqual(['panel-01 1', 'panel-02 1', 'panel-02 2']);
    expect(childrenOf(groupOf(front, 'detail')!)).toHaveLength(1);
    expect(childrenOf(groupOf(back, 'emboss')!)).toHaveLength(2);
  });

  it('holds the pieces in place, as its placements say', () => {
    const inOrder = (data: readonly string[]) =>
      data.flatMap(pairsOf).sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
    TWO_FACED.placements.forEach((p) => {
      const own = inOrder(dataIn(pieceSvg(p.piece, 'front'), 'cut'));
      const group = childrenOf(groupOf(front, 'cut')!).find(
        ({ attributes }) =>
          attributes['data-piece'] === p.piece.name && attributes['data-copy'] === String(p.copy),
      )!;
      const placed = inOrder(childrenOf(group).map((n) => n.attributes.d));
      expect(placed).toHaveLength(own.length);
      placed.forEach(([x, y], k) => {
        expect(x).toBeCloseTo(own[k][0] + p.dx, 2);
        expect(y).toBeCloseTo(own[k][1] + p.dy, 2);
      });
    });
  });

  it('cuts on the front alone, after all else', () => {
    expect(idsOf(parseSync(front))).toEqual(['emboss', 'score', 'cut', 'guide']);
    expect(idsOf(parseSync(back))).toEqual(['emboss', 'guide']);
  });

  it('meets itself when it is turned over: marks and outlines lie on each other', () => {
    const marks = (svg: string) =>
      pathsIn(svg, 'guide')
        .filter((p) => p.attributes['data-kind'] === 'register')
        .map((p) => pairsOf(p.attributes.d));
    expect(marks(front)).toHaveLength(4);
    expect(flipped(marks(back), 420)).toEqual(sorted(marks(front)));
    const outlines = pathsIn(back, 'guide').filter((p) => p.attributes['data-kind'] === 'outline');
    // Three cards and the loose post; the cards are rectangles, four points each.
    expect(outlines).toHaveLength(4);
    const cards = (data: string[]) => data.map(pairsOf).filter((pairs) => pairs.length === 4);
    const turned = flipped(cards(outlines.map((p) => p.attributes.d)), 420);
    expect(turned).toHaveLength(3);
    expect(turned).toEqual(sorted(cards(dataIn(front, 'cut'))));
  });

  it('worked from the back alone is one mirrored file, cut and all, without marks', () => {
    const svg = sheetSvg(MIRRORED, 'back');
    expect(idsOf(parseSync(svg))).toEqual(['emboss', 'score', 'cut', 'guide']);
    expect(svg).not.toContain('register');
    const { dx } = MIRRORED.placements[0];
    const xs = dataIn(svg, 'fold').map((d) => pairsOf(d)[0][0]);
    expect(xs.sort((a, b) => b - a)).toEqual([210 - dx - 15, 210 - dx - 172]);
    expect(parseSync(svg).attributes['data-face']).toBe('back');
  });

  it('is divided into steps that together are the whole', () => {
    for (const face of ['front', 'back'] as const) {
      const whole = sheetSvg(TWO_FACED, face);
      for (const id of ['emboss', 'fold', 'detail', 'cut'] as const) {
        const step = sheetSvg(TWO_FACED, face, { only: id });
        expect(dataIn(step, id)).toEqual(dataIn(whole, id));
        const all = descendants(parseSync(step)).filter((n) => n.name === 'path');
        // A step run by itself is laid up by the same register marks, and has the check line.
        const marks = dataIn(step, 'guide');
        expect(marks).toHaveLength(4 + 3);
        expect(dataIn(whole, 'guide')).toEqual(expect.arrayContaining(marks));
        expect(all).toHaveLength(dataIn(whole, id).length + marks.length);
      }
    }
    expect(idsOf(parseSync(sheetSvg(TWO_FACED, 'front', { only: 'fold' })))).toEqual([
      'score',
      'guide',
    ]);
  });
});

describe('colours', () => {
  const strokes = (svg: string) =>
    Object.fromEntries(
      ['emboss', 'fold', 'detail', 'cut', 'guide'].map((id) => [
        id,
        groupOf(svg, id)?.attributes.stroke,
      ]),
    );

  it('stand on the groups', () => {
    expect(strokes(pieceSvg(bridge, 'front'))).toEqual({
      emboss: '#b0812a',
      fold: '#2f6f5e',
      detail: '#5b7fa3',
      cut: '#7a1f4b',
      guide: '#8a8f98',
    });
  });

  it('can be set', () => {
    const svg = pieceSvg(bridge, 'front', { ...LAYER_COLOURS, cut: '#123456' });
    expect(strokes(svg).cut).toBe('#123456');
    expect(svg).not.toContain('#7a1f4b');
  });

  it('and names are escaped', () => {
    const odd = { ...plainPiece('swan & "cob" <1>', 20, 20) };
    const svg = sheetSvg(sheetFor(odd), 'front', {
      colours: { ...LAYER_COLOURS, cut: '"<&' },
    });
    const cut = groupOf(svg, 'cut')!;
    expect(svg).toContain('data-piece="swan &amp; &quot;cob&quot; &lt;1>"');
    expect(cut.attributes.stroke).toBe('&quot;&lt;&amp;');
  });
});
