import { beforeAll, describe, expect, it } from 'vitest';
import type { Page } from '../../src/output/page.js';
import { sheetPage } from '../../src/output/pages.js';
import { pagePdf } from '../../src/output/pdf/page-pdf.js';
import { svgDocument } from '../../src/output/svg-document.js';
import { STARTING } from '../../src/process/starting.js';
import { LAYER_COLOURS } from '../../src/scene/layer-colours.js';
import { type FaceJob, sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { A2, bridge, gate, LETTER, plainPiece, sky, spine } from '../process/lock-pieces.js';
import { describeWith, run } from '../support/tools.js';
import { ink, type Picture, paintedPdf, paintedSvg, shareMet } from './ink.js';
import { contentsOf, type Found, layersOf, pathsOfPdf, pathsOfSvg, strayMm } from './read-back.js';

/** What cannot be seen or cut is not told apart. */
const TOLERANCE_MM = 0.01;

interface Case {
  readonly name: string;
  readonly job: FaceJob;
  readonly page: Page;
  readonly svg: string;
}

const PIECES = [
  ...[bridge, { ...gate, copies: 2 }].map((piece) => ({ ...piece, stock: A2 })),
  ...[sky, spine('spine-left', 8)],
  { ...plainPiece('lamp', 30, 20), stock: LETTER },
];

const CASES: Case[] = (['knife', 'laser', 'press'] as const).flatMap((kind) => {
  const process = STARTING[kind];
  return nest(PIECES, process).sheets.flatMap((sheet) =>
    sheetJob(sheet, { process, ballMm: 1 }).faces.map((job) => {
      const page = sheetPage(sheet, job, process);
      const svg = svgDocument(page, LAYER_COLOURS);
      return { name: `${kind}, ${sheet.name}, ${job.face}`, job, page, svg };
    }),
  );
});
const eachCase = CASES.map((one) => [one.name, one] as const);

const pdfOf = ({ page }: Case) => pagePdf(page, LAYER_COLOURS, 'Lock at dusk');

/** The worst stray of all that a job asks for, which must be found layer by layer, in order. */
function worstStray({ steps, guides, register }: FaceJob, found: readonly Found[]): number {
  const asked = [
    ...steps.map(({ operation, marks }) => ({ operation, marks })),
    { operation: 'guide' as const, marks: [...guides, ...register] },
  ];
  const strays = asked.flatMap(({ operation, marks }) => {
    const paths = found.filter(({ layer }) => layer === operation);
    // Only the check line and its two ticks are there beside what the job says.
    expect(paths.length, operation).toBe(marks.length + (operation === 'guide' ? 3 : 0));
    return marks.map(({ cubics, closed }, i) => strayMm(cubics, closed, paths[i].path));
  });
  expect(strays.length).toBeGreaterThan(0);
  return Math.max(...strays);
}

describe('a sheet as SVG, read by another program', () => {
  it.each(eachCase)('is what the machine is to do: %s', (_, { job, svg }) => {
    expect(worstStray(job, pathsOfSvg(svg))).toBeLessThan(TOLERANCE_MM);
  });

  it('would be found out if a line were a hair off', () => {
    const { job, svg } = CASES[0];
    const moved = pathsOfSvg(svg).map(({ layer, path }) => {
      path.translate([0.011, 0]);
      return { layer, path };
    });
    expect(worstStray(job, moved)).toBeGreaterThan(TOLERANCE_MM);
  });
});

describe('a sheet as PDF', () => {
  it.each(eachCase)('has a layer for each operation, in working order: %s', async (_, one) => {
    const pdf = await pdfOf(one);
    const names = [...one.job.steps.map(({ operation }) => operation), 'guide'];
    expect(layersOf(pdf)).toEqual(names);
    const [content] = contentsOf(pdf);
    expect([...content.matchAll(/\/OC \/(\w+) BDC/g)].map(([, name]) => name)).toEqual(names);
  });

  it('dashes valleys and mountains as drawings do, and nothing else', async () => {
    // Valley dashed, mountain dash-dot: Yoshizawa-Randlett system. Elements in line widths, from
    // memory: dash 12, gap 3, dot 0.5 (ISO 128-20:1996, types 02 and 10); here of a 0.25 mm line.
    const DASHED = { valley: '[3 0.75] 0 d', mountain: '[3 0.75 0.125 0.75] 0 d' };
    const dashesIn = async (one: Case) =>
      [...contentsOf(await pdfOf(one))[0].matchAll(/\[.*\] 0 d/g)].map(([found]) => found);
    for (const one of CASES) {
      const folds = one.job.steps.find(({ operation }) => operation === 'fold')?.marks ?? [];
      const kinds = new Set(folds.map(({ kind }) => kind));
      const wanted = Object.entries(DASHED).flatMap(([k, d]) =>
        kinds.has(k as 'valley') ? [d] : [],
      );
      expect(new Set(await dashesIn(one)), one.name).toEqual(new Set(wanted));
    }
  });

  it('has a check line of 100.000 mm among its guides', async () => {
    for (const one of CASES) {
      const [content] = contentsOf(await pdfOf(one));
      const guide = content.slice(content.indexOf('/OC /guide BDC'));
      const lengths = [...guide.matchAll(/(\S+) (\S+) m\n(\S+) (\S+) l\nS/g)].map((m) => {
        const [x0, y0, x1, y1] = m.slice(1).map(Number);
        return Math.hypot(x1 - x0, y1 - y0).toFixed(3);
      });
      expect(lengths.filter((length) => length === '100.000')).toHaveLength(1);
    }
  });

  it('is the same, byte for byte, each time, and tells no date and no id', async () => {
    const [once, again] = [await pdfOf(CASES[0]), await pdfOf(CASES[0])];
    expect(Buffer.compare(once, again)).toBe(0);
    expect(Buffer.from(once).toString('latin1')).not.toMatch(/CreationDate|ModDate|\/ID\b/);
  });
});

describeWith(['pdfinfo', 'pdftocairo', 'pdftoppm'], 'a sheet as PDF, read by poppler', () => {
  it('is as large as its sheet', async () => {
    for (const one of CASES) {
      const told = run('pdfinfo', ['-'], await pdfOf(one)).toString();
      const [, width, height] = /Page size: +([\d.]+) x ([\d.]+) pts/.exec(told) ?? [];
      // 1 in = 25.4 mm = 72 points: ISO 32000-1, 8.3.2.3. A4 is 595.2756 x 841.8898.
      expect(Number(width)).toBeCloseTo((one.page.width * 72) / 25.4, 2);
      expect(Number(height)).toBeCloseTo((one.page.height * 72) / 25.4, 2);
      expect(told).toMatch(/Title: +Lock at dusk/);
      expect(told).not.toMatch(/Date:/);
    }
  });

  it.each(eachCase)('is what the machine is to do: %s', async (_, one) => {
    const found = pathsOfPdf(await pdfOf(one), LAYER_COLOURS);
    expect(worstStray(one.job, found)).toBeLessThan(TOLERANCE_MM);
    const lengths = found.filter((f) => f.layer === 'guide').map(({ path }) => path.length);
    expect(Math.min(...lengths.map((length) => Math.abs(length - 100)))).toBeLessThan(0.005);
  });

  describe('as pixels at 300 dpi, folds left out', () => {
    const page = CASES.find(({ name }) => name.startsWith('laser, sheet-02'))!.page;
    const solid = { ...page, layers: page.layers.filter((l) => l.operation !== 'fold') };
    let pdf: Picture;
    let svg: Picture;
    beforeAll(async () => {
      pdf = paintedPdf(await pagePdf(solid, LAYER_COLOURS, 'Lock at dusk'));
      svg = paintedSvg(svgDocument(solid, LAYER_COLOURS));
    });

    it('has ink where the SVG has it, to the pixel', () => {
      expect(ink(svg)).toBeGreaterThan(5000);
      expect(shareMet(pdf, svg)).toBeGreaterThan(0.999);
      expect(shareMet(svg, pdf)).toBeGreaterThan(0.999);
    });

    it('would be found out if it were a quarter of a millimetre off', () => {
      const moved = { ...svg, isInk: (x: number, y: number) => svg.isInk(x - 3, y - 3) };
      expect(shareMet(moved, pdf)).toBeLessThan(0.9);
    });
  });
});
