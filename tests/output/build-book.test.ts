import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildBookPdf } from '../../src/output/build-book/build-book.js';
import type { Costs } from '../../src/output/build-book/costs.js';
import type { Told } from '../../src/output/build-book/first-page.js';
import { type Block, flow, heightOf } from '../../src/output/build-book/flow.js';
import { rule } from '../../src/output/build-book/leaf.js';
import { BODY, NUMBER, paperFor, TITLE } from '../../src/output/build-book/style.js';
import { toolStop } from '../../src/output/build-book/tool-stop.js';
import { fitted, setText, widthOf, wrapped } from '../../src/output/build-book/typesetting.js';
import { duration, grouped, millimetres, size } from '../../src/output/build-book/words.js';
import { sheetFiles } from '../../src/output/svg-files.js';
import { cautionsFor } from '../../src/process/cautions.js';
import { STARTING } from '../../src/process/starting.js';
import { LAYER_COLOURS } from '../../src/scene/layer-colours.js';
import { sky } from '../process/lock-pieces.js';
import { describeWith, run } from '../support/tools.js';
import { contentsOf, layersOf } from './read-back.js';
import { costsOf, manySheets, PREVIEW, told } from './told-book.js';

const pdfOf = (book: Told, costs: Costs | null = null): Promise<Uint8Array> =>
  buildBookPdf(book, LAYER_COLOURS, PREVIEW, costs);

describe('book.pdf', () => {
  it('is the same, byte for byte, each time, and tells no date and no id', async () => {
    const [once, again] = [await pdfOf(told()), await pdfOf(told())];
    expect(Buffer.compare(once, again)).toBe(0);
    expect(Buffer.from(once).toString('latin1')).not.toMatch(/CreationDate|ModDate|\/ID\b/);
  });

  it('has a check line of 100.000 mm in the layer of guides', async () => {
    const pdf = await pdfOf(told());
    expect(layersOf(pdf)).toEqual(['guide']);
    const guides = contentsOf(pdf).flatMap((c) => c.match(/\/OC \/guide BDC[\s\S]*?EMC/g) ?? []);
    const lengths = guides.map((guide) => {
      const [, x0, y0, x1, y1] = (/(\S+) (\S+) m\n(\S+) (\S+) l/.exec(guide) ?? []).map(Number);
      return Math.hypot(x1 - x0, y1 - y0).toFixed(3);
    });
    expect(lengths.filter((length) => length === '100.000')).toHaveLength(1);
  });

  it('has the working order on the first page only where all of it fits', async () => {
    expect(contentsOf(await pdfOf(told({ pieces: [sky] })))).toHaveLength(1);
    expect(contentsOf(await pdfOf(told()))).toHaveLength(2);
  });

  it('goes on with the costs below the working order only where that saves a page', async () => {
    const pagesOf = async (copies: number, withCosts: boolean): Promise<number> => {
      const book = told({ pieces: [{ ...sky, copies }] });
      return contentsOf(await pdfOf(book, withCosts ? costsOf(book) : null)).length;
    };
    // The costs of so many sheets take two pages by themselves.
    expect([await pagesOf(18, false), await pagesOf(18, true)]).toEqual([2, 4]);
    expect([await pagesOf(20, false), await pagesOf(20, true)]).toEqual([3, 4]);
  });
});

/** A document's words with their boxes in mm, page by page, as poppler finds them. */
function wordsOf(pdf: Uint8Array) {
  const xml = run('pdftotext', ['-bbox', '-', '-'], pdf).toString();
  return xml
    .split('<page ')
    .slice(1)
    .map((page) =>
      [
        ...page.matchAll(/<word xMin="(\S+)" yMin="(\S+)" xMax="(\S+)" yMax="(\S+)">(.*)<\/word>/g),
      ].map(([, xMin, yMin, xMax, yMax, word]) => ({
        word,
        left: (Number(xMin) * 25.4) / 72,
        right: (Number(xMax) * 25.4) / 72,
        middle: ((Number(yMin) + Number(yMax)) * 25.4) / 144,
      })),
    );
}

const textOf = (pdf: Uint8Array): string =>
  run('pdftotext', ['-layout', '-enc', 'UTF-8', '-', '-'], pdf).toString().replaceAll(/\s+/g, ' ');

describeWith(['pdfinfo', 'pdftotext'], 'book.pdf, read by poppler', () => {
  let plain: string;
  beforeAll(async () => {
    plain = textOf(await pdfOf(told(), costsOf(told())));
  });

  it('is A4 for makers in millimetres and Letter for those in inches', async () => {
    const sizeOf = async (unit: 'mm' | 'cm' | 'in') =>
      /Page size: +(.*)/.exec(run('pdfinfo', ['-'], await pdfOf(told({ unit }))).toString())?.[1];
    // ISO 216 and ISO 32000-1, 8.3.2.3: A4 is 595.2756 x 841.8898 points; Letter 612 x 792.
    expect(await sizeOf('mm')).toBe('595.276 x 841.89 pts (A4)');
    expect(await sizeOf('cm')).toBe('595.276 x 841.89 pts (A4)');
    expect(await sizeOf('in')).toBe('612 x 792 pts (letter)');
  });

  it('names the book and its figures', () => {
    expect(plain).toContain('Lock at dusk');
    // The hand-made book: 150 x 190 mm, cells of 30 / sqrt(2) mm, four of them.
    expect(plain).toContain('Closed Closed thickness Open depth Panels 150 × 190 mm');
    expect(plain).toMatch(/84\.9 mm 5, backdrop counted/);
    expect(plain).toMatch(/2 × 8 faces of 15 mm/);
  });

  it('lists every step of every sheet in working order', async () => {
    for (const kind of ['knife', 'laser', 'press'] as const) {
      const book = told({ kind });
      const text = textOf(await pdfOf(book));
      // Nothing had to be left off to fit its column.
      expect(text).not.toContain('…');
      let from = 0;
      for (const { sheet, faces } of book.jobs) {
        let number = 0;
        for (const { face, steps } of faces)
          for (const { operation } of steps) {
            number++;
            const row = new RegExp(
              `${number} ${face} ${operation} .*?${sheet.name}-${number}-${operation}`,
            );
            const at = text.slice(from).search(row);
            expect(at, `${kind} ${sheet.name} ${number}`).toBeGreaterThanOrEqual(0);
            from += at + 1;
          }
      }
    }
  });

  it('says what each step takes, what card is wasted and what copies cost', () => {
    expect(plain).toMatch(/sheet-01 back emboss 12.346 4.321 987 7 min 12 s/);
    expect(plain).toMatch(/Changing tools and turning sheets 4 min 30 s/);
    expect(plain).toMatch(/lock-wall grey \d+ 750 250 25 %/);
    expect(plain).toMatch(/in EUR/);
    expect(plain).toMatch(/12 24 16 h 36 min 25\.00 498\.00 50\.40 573\.40 47\.78/);
  });

  it('speaks of no money where nothing is priced', async () => {
    const text = textOf(await pdfOf(told(), { ...costsOf(told()), quote: [] }));
    expect(text).toMatch(/Card for one book/);
    expect(text).not.toMatch(/Several copies|Set-up|Total Each|EUR/);
  });

  it('has text that can be found whatever its script, and boxes for what the font has not', async () => {
    const text = textOf(await pdfOf(told({ title: 'Čtyři “swans” & 日暮れ' })));
    expect(text).toContain('Čtyři “swans” & 日暮れ');
  });

  it('shows no wrong letter when a title has more than a font can hold', async () => {
    const many = String.fromCodePoint(...Array.from({ length: 300 }, (_, i) => 0x4e00 + i));
    const words = `${many.slice(0, 30)} ${many.slice(30)}`;
    const found = textOf(await pdfOf(told({ title: `Lock ${words}` })));
    for (const c of found.match(/[\u4e00-\u9fff]/g) ?? []) expect(many).toContain(c);
    expect(found).toContain('Lock');
  });

  describe.each(['mm', 'in'] as const)('with more than twenty sheets, in %s', (unit) => {
    const book = told({ unit, pieces: manySheets });
    let pages: ReturnType<typeof wordsOf>;
    beforeAll(async () => {
      pages = wordsOf(await pdfOf(book, costsOf(book)));
    });

    it('runs over to more pages, each with its number and the head of its table', () => {
      expect(book.jobs.length).toBeGreaterThan(20);
      expect(pages.length).toBeGreaterThan(5);
      pages.forEach((words, i) => {
        const foot = words.slice(-3).map(({ word }) => word);
        expect(foot).toEqual([String(i + 1), '/', String(pages.length)]);
      });
      for (const words of pages.slice(1)) {
        expect(words.some(({ word }) => word === 'Operation' || word === 'Copies')).toBe(true);
      }
    });

    it('keeps inside its margins', () => {
      const { left, right, top, bottom, height } = paperFor(unit);
      for (const words of pages) {
        for (const { word, left: x0, right: x1, middle } of words) {
          expect(x0, word).toBeGreaterThan(left - 0.5);
          expect(x1, word).toBeLessThan(right + 0.5);
          expect(middle, word).toBeGreaterThan(top - 1);
          const isFoot = middle > bottom;
          if (isFoot) expect(middle, word).toBeGreaterThan(height - 22);
        }
      }
    });

    it('names the file of every step, in the order of the files', () => {
      const { process } = book;
      const written = book.jobs
        .flatMap((job) => sheetFiles(job, { process, colours: LAYER_COLOURS }))
        .filter((file) => file.path.startsWith('sheets/by-step/'))
        .map((file) => path.basename(file.path));
      const told = pages.flat().filter(({ word }) => word.endsWith('.svg'));
      expect(told.map(({ word }) => word)).toEqual(written);
    });
  });
});

describe('the cautions', () => {
  const readme = readFileSync(path.resolve(import.meta.dirname, '../../README.md'), 'utf8');
  const safety = /## Safety\n([\s\S]*?)\n## /.exec(readme)?.[1].replaceAll(/\s+/g, ' ') ?? '';
  const cautions = (kind: 'knife' | 'laser' | 'press') => cautionsFor(STARTING[kind]).join(' ');

  it('are those of the readme, for each process its own', () => {
    const clauses = (text: string) => text.split(/[.;:] ?/).filter((clause) => clause !== '');
    for (const kind of ['knife', 'laser', 'press'] as const) {
      for (const clause of clauses(cautions(kind))) {
        expect(safety.toLowerCase()).toContain(clause.toLowerCase());
      }
      expect(cautions(kind)).toMatch(/children/);
      expect(cautions(kind)).toMatch(/manual, local law and codes, and trained staff/);
    }
    expect(cautions('laser')).toMatch(/Never leave a running laser.*PVC/);
    expect(cautions('press')).toMatch(/rollers/);
    expect(cautions('knife')).not.toMatch(/laser|rollers/);
  });
});

describe('what is to be done before a step', () => {
  const stops = (kind: 'knife' | 'laser' | 'press') => {
    const steps = [
      { face: 'back', operation: 'emboss' },
      { face: 'front', operation: 'emboss' },
      { face: 'front', operation: 'fold' },
      { face: 'front', operation: 'cut' },
    ] as const;
    return steps.map((step, i) => toolStop(STARTING[kind], step, steps[i - 1]));
  };

  it('is the blade for folds as short cuts, and a mask for a laser that works face down', () => {
    const folds = { how: 'perforation', cutMm: 2, tieMm: 1 } as const;
    const fold = { face: 'front', operation: 'fold' } as const;
    expect(toolStop({ ...STARTING.knife, folds }, fold, undefined)).toBe(
      'Lay down the sheet; fit the blade',
    );
    const down = { ...STARTING.laser, faceDown: true };
    const cut = { face: 'back', operation: 'cut' } as const;
    expect(toolStop(down, cut, fold)).toBe('Turn over; front masked');
    expect(toolStop(down, cut, { face: 'back', operation: 'fold' })).toBe('');
  });

  it('is a tool for the knife and a turn for all', () => {
    expect(stops('knife')).toEqual([
      'Lay down the sheet; fit the ball tool',
      'Turn over',
      'Fit the stylus',
      'Fit the blade',
    ]);
    expect(stops('laser')).toEqual(['Lay down the sheet', 'Turn over', '', '']);
    expect(stops('press')[3]).toBe('Lay up the cutting dies');
  });
});

describe('pages', () => {
  const paper = { ...paperFor('mm'), top: 0, bottom: 100 };
  const block = (heightMm: number, rest: Partial<Block> = {}): Block => ({
    heightMm,
    draw: (top) => [rule(0, heightMm, top, 0.1, '#000000')],
    ...rest,
  });
  /** Each page as the heights of its blocks and where they stand. */
  const laid = (blocks: Block[]) =>
    flow(blocks, paper).map((leaf) =>
      leaf.map((item) => (item.kind === 'rule' ? [item.to[0], item.from[1]] : [])),
    );

  it('end where the next block has no room', () => {
    expect(laid([block(60), block(40), block(10)])).toEqual([
      [
        [60, 0],
        [40, 60],
      ],
      [[10, 0]],
    ]);
  });

  it('keep together what belongs together, if a page can hold it', () => {
    const kept = { keepsNext: true };
    expect(laid([block(50), block(20, kept), block(31)])).toEqual([
      [[50, 0]],
      [
        [20, 0],
        [31, 20],
      ],
    ]);
    expect(laid([block(50), block(60, kept), block(60)])).toEqual([
      [[50, 0]],
      [[60, 0]],
      [[60, 0]],
    ]);
  });

  it('show the head of a table again', () => {
    const head = block(7);
    expect(laid([head, block(90, { head }), block(20, { head })])).toEqual([
      [
        [7, 0],
        [90, 7],
      ],
      [
        [7, 0],
        [20, 7],
      ],
    ]);
    expect(heightOf([head, head])).toBe(14);
  });
});

describe('type', () => {
  it('is kerned: "AV" is narrower than its letters', () => {
    const alone = widthOf('A', TITLE) + widthOf('V', TITLE);
    expect(widthOf('AV', TITLE)).toBeLessThan(alone - 0.3);
  });

  it('sets even figures to one width', () => {
    expect(widthOf('1111', NUMBER)).toBeCloseTo(widthOf('8888', NUMBER), 9);
    expect(widthOf('1111', BODY)).toBeLessThan(widthOf('8888', BODY) - 0.5);
  });

  it('is fitted and wrapped to the room there is', () => {
    const words = 'mooring rings along the lower gate of the lock';
    expect(fitted(words, BODY, 1000)).toBe(words);
    const short = fitted(words, BODY, 30);
    expect(short).toMatch(/^mooring rings.*…$/);
    expect(widthOf(short, BODY)).toBeLessThanOrEqual(30);
    const lines = wrapped(words, BODY, 30);
    expect(lines.join(' ')).toBe(words);
    for (const line of lines) expect(widthOf(line, BODY)).toBeLessThanOrEqual(30);
    expect(setText('', BODY)).toEqual({ characters: [], widthEm: 0 });
  });
});

describe('numbers', () => {
  const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

  it('stand in groups of three', () => {
    expect([0, 999, 1000, 1234567].map((n) => spaced(grouped(n)))).toEqual([
      '0',
      '999',
      '1 000',
      '1 234 567',
    ]);
    expect(spaced(grouped(12345.678, 2))).toBe('12 345.68');
  });

  it('say lengths to the tenth and times as they are read', () => {
    expect([190, 5.04, 84.8528].map(millimetres)).toEqual(['190 mm', '5 mm', '84.9 mm']);
    expect(size(190, 138.5)).toBe('190 × 138.5 mm');
    expect([0, 59.4, 59.6, 750, 3599.7, 3600, 3929, 59760].map(duration)).toEqual([
      '0 s',
      '59 s',
      '1 min 00 s',
      '12 min 30 s',
      '1 h 00 min',
      '1 h 00 min',
      '1 h 05 min',
      '16 h 36 min',
    ]);
  });
});
