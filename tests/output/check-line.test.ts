import { parseSync } from 'svgson';
import { describe, expect, it } from 'vitest';
import { pieceSvg } from '../../src/output/svg.js';
import { pieceFiles, sheetFiles } from '../../src/output/svg-files.js';
import { STARTING } from '../../src/process/starting.js';
import { LAYER_COLOURS } from '../../src/scene/layer-colours.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { absoluteForm } from '../geometry/path/absolute-form.js';
import { bridge, gate, plainPiece, sky, spine } from '../process/lock-pieces.js';

const process = STARTING.press;
const pieces = [bridge, gate, sky, spine('spine-left', 8)];
const files = [
  ...pieces.flatMap((piece) => pieceFiles(piece)),
  ...nest(pieces, process).sheets.flatMap((sheet) =>
    sheetFiles(sheetJob(sheet, { process, ballMm: 1 }), { process, colours: LAYER_COLOURS }),
  ),
];

/** The check lines in the guide layer, their ends and the page they lie on. */
function checkLines(svg: string) {
  const root = parseSync(svg);
  const [, , width, height] = root.attributes.viewBox.split(' ').map(Number);
  const guides = root.children.filter(({ attributes }) => attributes.id === 'guide');
  const lines = guides
    .flatMap((guide) => guide.children)
    .filter(({ attributes }) => attributes['data-kind'] === 'check')
    .map(({ attributes }) => {
      const [, x0, y0, x1, y1] =
        /^M(\S+) (\S+)L(\S+) ([^\sL]+)$/.exec(absoluteForm(attributes.d)) ?? [];
      return { x0: Number(x0), y0: Number(y0), x1: Number(x1), y1: Number(y1) };
    });
  return { width, height, lines };
}

/** The page and the line of a plain card of that size. */
const onCard = (width: number, height: number) =>
  checkLines(pieceSvg(plainPiece('lamp', width, height), 'front'));

describe('the check line', () => {
  it.each(files.map(({ path, text }) => [path, text]))('is there once in %s', (_, text) => {
    const { width, height, lines } = checkLines(text);
    expect(lines).toHaveLength(1);
    const [{ x0, y0, x1, y1 }] = lines;
    // In the file's own millimetres, to its last place.
    expect(Math.hypot(x1 - x0, y1 - y0).toFixed(3)).toBe('100.000');
    for (const x of [x0, x1]) expect(x > 0 && x < width).toBe(true);
    for (const y of [y0, y1]) expect(y > 0 && y < height).toBe(true);
  });

  it('lies level along the lower edge wherever it has the room', () => {
    expect(onCard(187, 135)).toEqual({
      width: 187,
      height: 135,
      lines: [{ x0: 43, y0: 131, x1: 143, y1: 131 }],
    });
    expect(onCard(104, 60).lines).toEqual([{ x0: 2, y0: 56, x1: 102, y1: 56 }]);
  });

  it('stands upright on what is narrow but high', () => {
    expect(onCard(103.9, 206)).toEqual({
      width: 103.9,
      height: 206,
      lines: [{ x0: 4, y0: 53, x1: 4, y1: 153 }],
    });
  });

  it('has a page made larger to the right and below for what is small', () => {
    expect(onCard(40, 30)).toEqual({
      width: 104,
      height: 38,
      lines: [{ x0: 2, y0: 34, x1: 102, y1: 34 }],
    });
    expect(pieceSvg(plainPiece('lamp', 40, 30), 'front')).toContain('d="M0 0h40v30H0Z"');
    expect(onCard(150, 5)).toMatchObject({ width: 150, height: 8 });
    expect(onCard(5, 150)).toMatchObject({ width: 8, height: 150 });
  });

  it('keeps its length where the page is no whole number of millimetres', () => {
    for (const width of [187.333, 120.0005, 133.3335, 5 * 25.4]) {
      const [{ x0, x1 }] = onCard(width, 80.0005).lines;
      expect(x1 - x0).toBe(100);
    }
  });
});
