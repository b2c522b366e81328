import { describe, expect, it } from 'vitest';
import { regionArea } from '../../../src/geometry/measure.js';
import { importSvg } from '../../../src/geometry/svg/import.js';
import { boxOf, drawn, inked, losses, page } from './pages.js';

/** The relative excess of a circle drawn by four cubics over its true area, at most. */
const CIRCLE = 6e-4;
const near = (area: number, expected: number): void =>
  expect(Math.abs(area / expected - 1)).toBeLessThan(CIRCLE);

// Basic shapes: SVG 2, chapter 10.
describe('basic shapes', () => {
  it('circle and ellipse', async () => {
    near(await inked('<circle cx="50" cy="50" r="20"/>'), 400 * Math.PI);
    near(await inked('<ellipse cx="50" cy="50" rx="30" ry="20"/>'), 600 * Math.PI);
    near(await inked('<ellipse cx="50" cy="50" ry="20"/>'), 400 * Math.PI);
    expect(await boxOf(page('<circle cx="50" cy="40" r="20"/>'))).toEqual([30, 20, 70, 60]);
  });

  // Radii: SVG 2, section 10.2. What is cut off a corner is (1 - pi / 4) rx ry.
  it.each([
    ['', 0, 0],
    ['rx="5"', 5, 5],
    ['ry="5"', 5, 5],
    ['rx="5" ry="auto"', 5, 5],
    ['rx="10" ry="4"', 10, 4],
    ['rx="90" ry="4"', 20, 4],
    ['rx="90"', 20, 15],
    ['rx="0" ry="9"', 0, 9],
    ['rx="10%" ry="4%"', 10, 4],
  ])('rect with %s', async (radii, rx, ry) => {
    const area = 40 * 30 - 4 * (1 - Math.PI / 4) * rx * ry;
    near(await inked(`<rect x="3" y="4" width="40" height="30" ${radii}/>`), area);
  });

  // Shoelace area of an L of 600: CRC Standard Mathematical Tables (from memory).
  it('polygon and polyline, both filled', async () => {
    const points = '0,0 40,0 40,10 10,10 10,30 0,30';
    expect(await inked('<polygon points="5-5 45-5 45 5 15+5,15 25 5 25"/>')).toBeCloseTo(600, 6);
    expect(await inked(`<polygon points="${points}"/>`)).toBeCloseTo(600, 6);
    expect(await inked(`<polyline points=" ${points.replaceAll(',', ' ')} "/>`)).toBeCloseTo(
      600,
      6,
    );
    expect(await inked(`<path d="M${points}"/>`)).toBeCloseTo(600, 6);
  });

  it('take their measures from style sheets too', async () => {
    const inner = '<style>circle{r:20px}</style><circle cx="50" cy="50" style="cx:40px" r="3"/>';
    expect(await boxOf(page(inner))).toEqual([20, 30, 60, 70]);
    expect(await inked(`<path style="d:path('M0 0H10V10z')"/>`)).toBeCloseTo(50, 9);
  });

  it('draw nothing without a size', async () => {
    const inner =
      '<rect width="9"/><rect height="9"/><circle/><circle r="0"/><ellipse rx="0" ry="5"/>' +
      '<polygon/><polyline points=""/><path/><path d=""/><path d="none"/><line x2="9"/>';
    expect((await drawn(inner)).shapes).toEqual([]);
  });

  it.each([
    '<rect width="-1" height="5"/>',
    '<circle r="-1"/>',
    '<rect width="1..5" height="3"/>',
    '<rect width="1e999" height="3"/>',
    '<circle r="3ex"/>',
    '<polygon points="0 0 5"/>',
    '<polygon points="0 0 5 x"/>',
    '<g opacity="half"/>',
    '<path d="M0 0h9" stroke="red" stroke-width="thick"/>',
    '<path d="M0 0h9" stroke="red" stroke-width="-2"/>',
    '<path d="M0 0h9" stroke="red" stroke-miterlimit=".5"/>',
    '<path d="M0 0h9" stroke="red" stroke-dasharray="3 -1"/>',
  ])('are refused with numbers that cannot be: %s', async (inner) => {
    await expect(drawn(inner)).rejects.toThrow(/^<\w+> on line 1: [\w-]+="/);
  });

  it('are refused far off the page', async () => {
    await expect(drawn('<rect id="sky" width="3e300" height="3"/>')).rejects.toThrow(
      '<rect id="sky"> on line 1 reaches 1.00e+300 mm from the corner of the page',
    );
  });
});

describe('paths', () => {
  // Faulty data ends in an error, since a maker would not see what is missing.
  it('name the place of a fault in their data', async () => {
    await expect(drawn('<path id="roof" d="M0 0L5 5 x"/>')).rejects.toThrow(
      '<path id="roof"> on line 1: its path data "M0 0L5 5 x" cannot be read at character 10: "x"',
    );
  });

  it('with faults that are never drawn do no harm', async () => {
    const { shapes } = await drawn('<defs><path d="M0 0 x"/></defs><path d="M0 0h9v9z"/>');
    expect(shapes).toHaveLength(1);
  });

  // Fill rules: SVG 2, section 13.4.2. Two nested squares in the same direction.
  it('follow the fill rule', async () => {
    const d = 'M0 0h30v30h-30zM10 10h10v10h-10z';
    expect(await inked(`<path d="${d}"/>`)).toBeCloseTo(900, 6);
    expect(await inked(`<path d="${d}" fill-rule="evenodd"/>`)).toBeCloseTo(800, 6);
    expect(await inked(`<path d="${d}" style="fill-rule:evenodd"/>`)).toBeCloseTo(800, 6);
    const opposed = 'M0 0h30v30h-30zM10 10v10h10v-10z';
    expect(await inked(`<path d="${opposed}"/>`)).toBeCloseTo(800, 6);
  });
});

describe('structure', () => {
  it('keeps order, ids, classes and groups', async () => {
    const { shapes } = await drawn(
      '<g id="gate"><g><a id="leaf"><rect id="beam" class="oak  old" width="9" height="9"/></a></g>' +
        '<circle r="3"/></g><use id="twin" href="#beam"/>',
    );
    const seen = shapes.map(({ id, classes, groups }) => ({ id, classes, groups }));
    expect(seen).toEqual([
      { id: 'beam', classes: ['oak', 'old'], groups: ['gate', 'leaf'] },
      { id: null, classes: [], groups: ['gate'] },
      { id: 'beam', classes: ['oak', 'old'], groups: ['twin'] },
    ]);
  });

  // use and symbol: SVG 2, sections 5.5 and 5.6.
  it('draws what use refers to', async () => {
    const defs =
      '<defs><rect id="r" width="10" height="10"/><symbol id="s" viewBox="0 0 10 10"><use ' +
      'href="#r"/></symbol><svg id="v" width="20" height="20"><use href="#r"/></svg></defs>';
    const box = (use: string): Promise<number[]> => boxOf(page(defs + use));
    expect(await box('<use href="#r" x="5" y="6"/>')).toEqual([5, 6, 15, 16]);
    expect(await box('<use xlink:href="#r" transform="scale(2)" x="5"/>')).toEqual([10, 0, 30, 20]);
    expect(await box('<use href="#s"/>')).toEqual([0, 0, 100, 100]);
    expect(await box('<use href="#s" width="30" height="20" x="1"/>')).toEqual([6, 0, 26, 20]);
    expect(await box('<use href="#v" width="5"/>')).toEqual([0, 0, 5, 10]);
    expect(await box('<use href="#r" width="5"/>')).toEqual([0, 0, 10, 10]);
  });

  it('lets what is used take over the style of its use', async () => {
    const { shapes } = await drawn(
      '<g fill="red"><path id="p" d="M0 0h9v9z"/><path id="q" fill="lime" d="M0 0h9v9z"/></g>' +
        '<g fill="blue"><use href="#p"/><use href="#q"/></g>',
    );
    expect(shapes.map((s) => s.fill)).toEqual(['#ff0000', '#00ff00', '#0000ff', '#00ff00']);
  });

  // switch and conditions: SVG 2, sections 5.8 and 5.9.
  it('draws the first child of a switch that applies', async () => {
    const inner =
      '<switch><rect requiredExtensions="urn:x" width="1" height="1"/><foreignObject/>' +
      '<rect systemLanguage="fr, eo" width="2" height="2"/><rect systemLanguage="de, en-GB" ' +
      'width="3" height="3"/><rect width="4" height="4"/></switch>';
    expect(await inked(inner)).toBeCloseTo(9, 9);
  });

  it('reads a prefix for SVG, and lets other vocabularies be', async () => {
    const { shapes, warnings } = await importSvg(
      '<s:svg xmlns:s="http://www.w3.org/2000/svg" xmlns:e="urn:editor" width="9mm" height="9mm">' +
        '<e:view e:zoom="2"><e:path d="?"/></e:view><s:rect width="9" height="9" e:lock="1"/></s:svg>',
    );
    expect([shapes.length, warnings]).toEqual([1, []]);
  });

  it('reads character references, CDATA and past comments', async () => {
    const { shapes } = await importSvg(
      `\uFEFF<?xml version="1.0"?>\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "svg11.dtd">\n` +
        '<!-- <svg> > -->\n<svg width="9" height="9"><!-- <path d="?"/> --><style><![CDATA[ #a>b' +
        '{fill:red} path{fill:blue} ]]></style><path id="a&amp;&#98;&#x63;" d="M0&#32;0h9v9z"/></svg>\n',
    );
    expect(shapes.map(({ id, fill }) => [id, fill])).toEqual([['a&bc', '#0000ff']]);
  });
});

describe('what is left out', () => {
  it('is named, with the first place and the cure', async () => {
    const drawing = await drawn(
      '<text id="sign">Lock 3</text>\n<image href="data:image/png;base64,AA"/><image/><text/>\n<g ' +
        'mask="url(#m)" filter="url(#f)" style="mix-blend-mode:multiply"><path d="M0 0h9v9z" ' +
        'marker-end="url(#a)"><animate/></path></g><script/><foreignObject/><blob/>' +
        '<g opacity=".5"/><defs><text/></defs><g display="none"><text/></g>',
    );
    expect(losses(drawing)).toEqual({
      text: 2,
      image: 2,
      mask: 1,
      filter: 1,
      'mix-blend-mode': 1,
      marker: 1,
      animate: 1,
      script: 1,
      foreignObject: 1,
      blob: 1,
      opacity: 1,
    });
    expect(drawing.warnings[0].message).toBe(
      '<text id="sign"> on line 1 and 1 more: text is left out. Convert it to paths first.',
    );
    expect(drawing.warnings[1].message).toContain('<image> on line 2 and 1 more');
    expect(drawing.shapes).toHaveLength(1);
  });

  it('of gradients and patterns is all but the shape', async () => {
    const drawing = await drawn(
      '<linearGradient id="dusk"/><pattern id="brick"/><path fill="url(#dusk)" d="M0 0h9v9z"/>' +
        '<path fill="url(#brick) #abc" d="M0 0h9v9z"/><path fill="url(#gone)" d="M0 0h9v9z"/>' +
        '<path fill="url(#gone) red" d="M0 0h9v9z"/>',
    );
    expect(drawing.shapes.map((s) => s.fill)).toEqual(['#000000', '#aabbcc', '#ff0000']);
    expect(losses(drawing)).toEqual({ linearGradient: 1, pattern: 1, paint: 2 });
    expect(regionArea(drawing.shapes[0].region)).toBeCloseTo(40.5, 9);
  });

  it('of a use is said where it refers to nothing', async () => {
    expect(losses(await drawn('<use href="#gone"/><use/>'))).toEqual({ use: 2 });
  });
});
