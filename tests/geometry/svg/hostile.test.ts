import { describe, expect, it } from 'vitest';
import { drawingRegion, importSvg, SvgImportError } from '../../../src/geometry/svg/import.js';
import { seeded } from '../shapes.js';
import { drawn, page } from './pages.js';

const repeated = (count: number, text: (k: number) => string): string =>
  Array.from({ length: count }, (_, k) => text(k)).join('');

async function errorOf(svg: string): Promise<string> {
  const error = await importSvg(svg, { strokes: 'outlines' }).catch((e: unknown) => e);
  expect(error).toBeInstanceOf(SvgImportError);
  return (error as Error).message;
}

// Well-formedness: Extensible Markup Language 1.0, fifth edition.
describe('text that is no sound XML', () => {
  it.each([
    ['', 'there is no element in it'],
    ['the tide is out', '"the tide is out" stands outside of all elements'],
    ['<html/>', 'outermost element is <html>, not <svg>'],
    ['<svg><g></svg>', 'line 1, </svg> closes nothing: <g> is still open'],
    ['<svg>\n<g>\n', 'line 3, <g> is never closed'],
    ['<svg/></svg>', '</svg> closes nothing: nothing is open'],
    ['<svg/><svg/>', 'a second element stands after the first'],
    ['<svg width=1/>', 'the tag <svg> is not written properly'],
    ['<svg width="1/>', 'the tag <svg> is not written properly'],
    ['<svg a="<"/>', 'the tag <svg> is not written properly'],
    ['<svg a="1" a="2"/>', '<svg> has the attribute "a" twice'],
    ['<svg>a < b</svg>', '"<" starts no element'],
    ['<svg>a & b</svg>', 'is no character reference'],
    ['<svg a="&tide;"/>', '"&tide;"'],
    ['<svg><!-- </svg>', 'a comment is never closed'],
    ['<svg><![CDATA[ </svg>', 'CDATA is never closed'],
    ['<svg><?php </svg>', 'an instruction is never closed'],
    ['<svg><!ELEMENT a></svg>', 'starts neither a comment nor a document type'],
  ])('%j', async (svg, fault) => {
    expect(await errorOf(svg)).toContain(fault);
  });
});

describe('entities and references to other files are refused', () => {
  it.each([
    '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><svg><text>&b;</text></svg>',
    '<!DOCTYPE svg [\n<!ENTITY % x SYSTEM "tide.dtd">]><svg/>',
  ])('%j', async (svg) => {
    expect(await errorOf(svg)).toContain('declares entities');
  });

  it.each([
    '<image href="tide.png"/>',
    '<use xlink:href="tide.svg#pool"/>',
    '<path fill="url(tide.svg#dusk)" d="M0 0"/>',
    '<path style="fill:url( \'//tide/dusk\' )" d="M0 0"/>',
    '<style>@import "tide.css";</style>',
    '<style>@import url(tide.css);</style>',
    '<script href="tide.js"/>',
    '<defs><filter><feImage href="tide.svg"/></filter></defs>',
  ])('%s', async (inner) => {
    expect(await errorOf(page(inner))).toContain('nothing outside of the drawing is fetched');
  });

  it('but for a link round what is drawn, and data within the file', async () => {
    const inner =
      '<a href="tide.html"><rect width="9" height="9"/></a><image href="data:image/png,x"/>';
    expect((await drawn(inner)).shapes).toHaveLength(1);
    expect(await errorOf(`<?xml-stylesheet href="a.css"?>${page('')}`)).toContain('xml-stylesheet');
  });
});

describe('references in circles are refused', () => {
  const RECT = '<rect width="9" height="9"/>';
  it.each([
    '<g id="a"><use href="#a"/></g>',
    '<defs><g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g></defs><use href="#a"/>',
    '<symbol id="a"><use href="#a"/></symbol><use href="#a"/>',
    '<clipPath id="a" clip-path="url(#a)"><rect width="9" height="9"/></clipPath><g clip-path="url(#a)">' +
      `${RECT}</g>`,
    `<clipPath id="a"><use href="#r"/></clipPath><rect id="r" width="9" height="9" clip-path="url(#a)"/>`,
    `<clipPath id="a"><rect width="9" height="9" clip-path="url(#b)"/></clipPath><clipPath id="b"><rect ` +
      `width="9" height="9" clip-path="url(#a)"/></clipPath><g clip-path="url(#a)">${RECT}</g>`,
  ])('%s', async (inner) => {
    expect(await errorOf(page(inner))).toMatch(/refers to .* which refers back to it without end/);
  });
});

describe('files that ask for too much end in an error at once', () => {
  it.each<[string, () => string, RegExp]>([
    ['20 MB', () => page(' '.repeat(20e6)), /has 20.0 million characters; at most 4.0 million/],
    ['1,000 deep', () => page('<g>'.repeat(1e3) + '</g>'.repeat(1e3)), /more than 200 deep/],
    ['100,000 paths', () => page('<path d="M0 0h1v1z"/>'.repeat(1e5)), /more than 20000 elements/],
    [
      'uses of uses',
      () =>
        page(
          `<defs><path id="u0" d="M0 0h1v1z"/>${repeated(
            30,
            (k) => `<g id="u${k + 1}">${`<use href="#u${k}"/>`.repeat(9)}</g>`,
          )}</defs><use href="#u30"/>`,
        ),
      /more than 20000 elements, each counted as often as it is used/,
    ],
    [
      'boxes within boxes',
      () =>
        page(
          '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="1" height="1"/></clipPath>' +
            `${'<g clip-path="url(#c)">'.repeat(150)}${'<path d="M0 0h9v9z"/>'.repeat(500)}${'</g>'.repeat(150)}`,
        ),
      /more than 50000 curves and edges/,
    ],
    [
      'clip paths in a chain',
      () =>
        page(
          `${repeated(
            400,
            (k) =>
              `<clipPath id="c${k}" clip-path="url(#c${k + 1})"><rect width="9" height="9"/></clipPath>`,
          )}<rect width="9" height="9" clip-path="url(#c0)"/>`,
        ),
      /more than 200 deep where/,
    ],
    [
      'a fine clip path on many shapes',
      () =>
        page(
          `<clipPath id="c"><path d="M0 0${repeated(2000, (k) => `L${k % 2 ? 40 : 50} ${k / 20}`)}H0z"/>` +
            `</clipPath><g clip-path="url(#c)">${repeated(300, (k) => `<path d="M${k / 5} 0h1v99z"/>`)}</g>`,
        ),
      /Clipping the drawing takes too much/,
    ],
    ['a long path', () => page(`<path d="M0 0${'h1 '.repeat(5e5)}"/>`), /more than 50000 curves/],
    [
      'a long row of points',
      () => page(`<path d="M0 0${' 1 2'.repeat(9e5)}"/>`),
      /more than 50000/,
    ],
    [
      'a path used often',
      () =>
        page(
          `<path id="p" d="M0 0${repeated(900, (k) => `L${k / 9} ${k % 2}`)}V50H0z"/>${'<use href="#p"/>'.repeat(200)}`,
        ),
      /more than 50000 curves and edges/,
    ],
    [
      'a long style sheet',
      () => page(`<style>${'rect{fill:red}'.repeat(2e5)}</style>`),
      /set more than 5000 properties/,
    ],
    [
      'a tangle',
      () => {
        const random = seeded(5);
        return page(
          `<path d="M0 0${repeated(1500, () => `L${100 * random()} ${100 * random()}`)}z"/>`,
        );
      },
      /too tangled: edges cross in more than 10000 places/,
    ],
  ])('%s', async (_, svg, message) => {
    expect(await errorOf(svg())).toMatch(message);
  });

  it('a weave of bars, when they are united', async () => {
    const bars = repeated(
      170,
      (k) => `<path d="M0 ${k / 2}h99v.2H0z"/><path d="M${k / 2} 0v99h.2V0z"/>`,
    );
    const drawing = await drawn(bars);
    expect(() => drawingRegion(drawing)).toThrow(/The drawing is too tangled/);
  });
});

describe('odd but harmless files', () => {
  it.each<[string, () => string, number]>([
    ['180 deep', () => `${'<g>'.repeat(180)}<rect width="9" height="9"/>${'</g>'.repeat(180)}`, 1],
    [
      'names of built-in properties',
      () =>
        '<constructor/><toString/><rect __proto__="x" width="9" height="9" style="constructor:1;__proto__:2"/>',
      1,
    ],
    [
      'brackets without end',
      () => `<g style="a:${'('.repeat(1e5)}"/><style>${'{'.repeat(1e5)}</style>`,
      0,
    ],
    ['quotes without end', () => `<g style="${"'".repeat(1e5 + 1)}"/>`, 0],
    ['a long list of transforms', () => `<g transform="${'scale(1)'.repeat(5e4)}"/>`, 0],
    ['a long selector', () => `<style>${'.a'.repeat(1e5)}{fill:red}</style>`, 0],
    [
      'a thousand times the same shape',
      () => '<circle cx="50" cy="50" r="20" stroke="#000"/>'.repeat(1000),
      1000,
    ],
  ])('%s', async (_, inner, count) => {
    const drawing = await drawn(inner());
    expect(drawing.shapes).toHaveLength(count);
    expect(drawingRegion(drawing).contours.length).toBe(count > 0 ? 1 : 0);
  });
});
