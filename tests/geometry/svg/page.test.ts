import { describe, expect, it } from 'vitest';
import { importSvg } from '../../../src/geometry/svg/import.js';
import { boxOf, drawn, losses, page } from './pages.js';

const size = async (attributes: string): Promise<number[]> => {
  const { widthMm, heightMm } = await importSvg(page('', attributes));
  return [widthMm, heightMm].map((v) => Math.round(v * 1e4) / 1e4);
};

// 1in = 2.54cm = 25.4mm = 101.6Q = 72pt = 6pc = 96px: CSS Values and Units Level 4, section 6.2.
describe('the size of the page', () => {
  it.each([
    ['width="210mm" height="297mm"', [210, 297]],
    ['width="1in" height="2.54cm"', [25.4, 25.4]],
    ['width="72pt" height="6pc"', [25.4, 25.4]],
    ['width="96px" height="101.6Q"', [25.4, 25.4]],
    ['width="210" height="96"', [55.5625, 25.4]],
    ['width=" 1e2mm " height="+.5in"', [100, 12.7]],
    ['viewBox="0 0 96 48"', [25.4, 12.7]],
    ['width="50mm" viewBox="0 0 100 60"', [50, 30]],
    ['height="30mm" viewBox="0 0 100 60"', [50, 30]],
    ['width="100%" height="100%" viewBox="0 0 96 48"', [25.4, 12.7]],
    ['width="auto" height="30mm" viewBox="0 0 100 60"', [50, 30]],
  ])('%s', async (attributes, mm) => {
    expect(await size(attributes)).toEqual(mm);
  });

  it('is a guess, said to be one, where nothing tells it', async () => {
    const drawing = await importSvg(page('<rect width="96" height="96"/>', ''));
    expect(losses(drawing)).toEqual({ size: 1 });
    expect(await boxOf(page('<rect width="96" height="96"/>', ''))).toEqual([0, 0, 25.4, 25.4]);
  });

  it.each(['width="-5"', 'width="0mm"', 'height="3em"', 'width="wide"', 'viewBox="0 0 10"'])(
    'is refused as %s',
    async (attributes) => {
      await expect(importSvg(page('', attributes))).rejects.toThrow(/^<svg> on line 1: /);
    },
  );

  it('keeps millimetres to the last digit where a user unit is one', async () => {
    const attributes = 'width="210mm" height="297mm" viewBox="0 0 210 297"';
    const { shapes } = await importSvg(page('<path d="M.1 .2h.3v.7z"/>', attributes));
    const numbers = [...shapes[0].region.contours[0]];
    expect(numbers).toEqual(expect.arrayContaining([0.1, 0.2, 0.4]));
  });

  it('does not clip what lies beyond it', async () => {
    expect(await boxOf(page('<rect x="-20" width="150" height="10"/>'))).toEqual([-20, 0, 130, 10]);
  });
});

// preserveAspectRatio: SVG 2, section 8.6. A viewBox of 10 x 20 in a viewport of 40 x 40: the
// smaller scale is 2, which leaves 20 across; the larger is 4, which lets 40 stand over below.
describe('preserveAspectRatio', () => {
  const box = (value: string): Promise<number[]> =>
    boxOf(
      page(
        '<rect width="10" height="20"/>',
        `width="40mm" height="40mm" viewBox="0 0 10 20" preserveAspectRatio="${value}"`,
      ),
    );

  it.each([
    ['none', [0, 0, 40, 40]],
    ['xMinYMin', [0, 0, 20, 40]],
    ['xMidYMin meet', [10, 0, 30, 40]],
    ['xMaxYMin meet', [20, 0, 40, 40]],
    ['xMidYMid', [10, 0, 30, 40]],
    ['xMinYMin slice', [0, 0, 40, 80]],
    ['xMinYMid slice', [0, -20, 40, 60]],
    ['xMaxYMax slice', [0, -40, 40, 40]],
  ])('%s', async (value, expected) => {
    expect(await box(value)).toEqual(expected);
  });

  it.each(['xMin', 'xmidymid', 'meet', 'xMidYMid fit'])('refuses %s', async (value) => {
    await expect(box(value)).rejects.toThrow(/preserveAspectRatio=".*" is not understood/);
  });
});

describe('inner viewports', () => {
  it('clip what overflows them, unless it may be seen', async () => {
    const inner = (overflow: string): string =>
      page(
        `<svg x="10" y="20" width="30" height="40" ${overflow}><rect x="20" width="80" height="10"/></svg>`,
      );
    expect(await boxOf(inner(''))).toEqual([30, 20, 40, 30]);
    expect(await boxOf(inner('overflow="hidden"'))).toEqual([30, 20, 40, 30]);
    expect(await boxOf(inner('overflow="visible"'))).toEqual([30, 20, 110, 30]);
    expect(await boxOf(inner('style="overflow:visible"'))).toEqual([30, 20, 110, 30]);
  });

  // Percentages refer to the nearest viewport: SVG 2, section 8.9.
  it('are what percentages refer to', async () => {
    const inner =
      '<svg x="10%" y="20" width="50%" height="40" viewBox="0 0 20 16"><rect x="50%" y="25%" ' +
      'width="25%" height="50%"/></svg>';
    expect(await boxOf(page(inner))).toEqual([35, 30, 47.5, 50]);
  });

  it('draw nothing where they have no size', async () => {
    expect((await drawn('<svg width="0"><rect width="9" height="9"/></svg>')).shapes).toEqual([]);
  });
});

// Transforms: SVG 2, section 8.5; the first of a list is the outermost.
describe('transforms', () => {
  const box = (transform: string): Promise<number[]> =>
    boxOf(page(`<rect width="10" height="20" transform="${transform}"/>`));

  it.each([
    ['', [0, 0, 10, 20]],
    ['none', [0, 0, 10, 20]],
    ['translate(5)', [5, 0, 15, 20]],
    ['translate(5,6)', [5, 6, 15, 26]],
    ['scale(2)', [0, 0, 20, 40]],
    ['scale(2 .5)', [0, 0, 20, 10]],
    ['rotate(90)', [-20, 0, 0, 10]],
    ['rotate(90 10 10)', [0, 0, 20, 10]],
    ['skewX(45)', [0, 0, 30, 20]],
    ['skewY(45)', [0, 0, 10, 30]],
    ['matrix(0 1 -1 0 30 5)', [10, 5, 30, 15]],
    ['translate(5)scale(2)', [5, 0, 25, 40]],
    ['scale(2) , translate(5)', [10, 0, 30, 40]],
    ['translate(10 10) rotate(90) translate(-10-10)', [0, 0, 20, 10]],
  ])('%s', async (transform, expected) => {
    expect(await box(transform)).toEqual(expected);
  });

  it('may stand in a style, with units', async () => {
    const inner =
      '<rect width="10" height="20" style="transform: translate(5px, 6px) rotate(.25turn)"/>';
    expect(await boxOf(page(inner))).toEqual([-15, 6, 5, 16]);
  });

  it('nest', async () => {
    const inner =
      '<g transform="translate(50)"><g transform="scale(2)"><rect width="10" height="5" ' +
      'transform="translate(1)"/></g></g>';
    expect(await boxOf(page(inner))).toEqual([52, 0, 72, 10]);
  });

  it('that flatten the plane leave nothing', async () => {
    const { shapes } = await drawn('<g transform="scale(0 1)"><rect width="9" height="9"/></g>');
    expect(shapes).toEqual([]);
  });

  it.each(['rotate(a)', 'rotate(1 2)', 'spin(3)', 'scale(1) x', 'matrix(1 2 3)', 'translate(1'])(
    'are refused as %s',
    async (transform) => {
      await expect(box(transform)).rejects.toThrow(/^<rect> on line 1: transform=/);
    },
  );
});
