import { describe, expect, it } from 'vitest';
import { drawn, inked, losses } from './pages.js';

const SQUARE = '<rect x="20" y="20" width="40" height="40"/>';
const clipped = (clipPath: string, shape = 'clip-path="url(#c)"'): string =>
  `<clipPath id="c" ${clipPath}</clipPath><g ${shape}>${SQUARE}</g>`;

// Clip paths: CSS Masking Level 1, section 5.
describe('a clip path', () => {
  it.each([
    ['keeps what lies in it', '><rect width="30" height="100"/>', 400],
    ['keeps nothing where it is empty', '>', 0],
    [
      'unites its shapes',
      '><rect width="30" height="100"/><rect x="25" width="10" height="99"/>',
      600,
    ],
    ['has its own transform', 'transform="translate(25)"><rect width="5" height="99"/>', 200],
    ['counts no strokes', '><path d="M0 30H99" stroke="red" stroke-width="9"/>', 0],
    ['counts no fill', '><rect width="30" height="99" fill="none" opacity="0"/>', 400],
    ['passes over the hidden', '><rect width="30" height="99" visibility="hidden"/>', 0],
    ['passes over the undisplayed', '><rect width="30" height="99" display="none"/>', 0],
    [
      'follows clip-rule',
      ' clip-rule="evenodd"><path d="M0 0h99v99h-99zM30 30h10v10h-10z"/>',
      1500,
    ],
    [
      'ignores fill-rule',
      ' fill-rule="evenodd"><path d="M0 0h99v99h-99zM30 30h10v10h-10z"/>',
      1600,
    ],
    [
      'measures in the box of what it clips',
      'clipPathUnits="objectBoundingBox"><rect x=".25" width=".5" height="50%"/>',
      400,
    ],
  ])('%s', async (_, clipPath, area) => {
    expect(await inked(clipped(clipPath))).toBeCloseTo(area, 3);
  });

  it('stands in the user units of what it clips', async () => {
    const scaled = 'transform="scale(.5)" clip-path="url(#c)"';
    expect(await inked(clipped('><rect width="30" height="99"/>', scaled))).toBeCloseTo(100, 3);
  });

  it('is clipped itself, as are its shapes', async () => {
    const inner =
      '<clipPath id="a"><rect y="30" width="99" height="10"/></clipPath><clipPath id="c" ' +
      'clip-path="url(#a)"><rect width="30" height="99"/><rect id="r" x="40" width="10" height="99" ' +
      `clip-path="url(#b)"/></clipPath><clipPath id="b"><rect y="35" width="99" height="99"/></clipPath>`;
    expect(await inked(`${inner}<g clip-path="url(#c)">${SQUARE}</g>`)).toBeCloseTo(150, 3);
  });

  it('adds to those further out and to viewports', async () => {
    const inner =
      '<clipPath id="a"><rect width="30" height="99"/></clipPath><clipPath id="b"><rect y="50" ' +
      `width="99" height="99"/></clipPath><g clip-path="url(#a)"><svg width="25" overflow="hidden">` +
      `<g clip-path="url(#b)">${SQUARE}</g></svg></g>`;
    expect(await inked(inner)).toBeCloseTo(50, 3);
  });

  it('takes shapes by use, but no groups', async () => {
    const inner =
      '<defs><rect id="r" width="30" height="99"/><g id="g"><rect width="99" height="99"/></g></defs>' +
      '<clipPath id="c"><use href="#r" x="5"/><use href="#g"/><g/></clipPath>';
    const drawing = await drawn(`${inner}<g clip-path="url(#c)">${SQUARE}</g>`);
    expect(losses(drawing)).toEqual({ 'g in clipPath': 2 });
    expect(await inked(`${inner}<g clip-path="url(#c)">${SQUARE}</g>`)).toBeCloseTo(600, 3);
  });

  it('that is not there clips nothing, which is said', async () => {
    const none = await drawn(`<g clip-path="url(#gone)">${SQUARE}</g><g clip-path="circle(5)"/>`);
    expect(losses(none)).toEqual({ 'clip-path': 2 });
    expect(await inked(`<g clip-path="url(#gone)">${SQUARE}</g>`)).toBeCloseTo(1600, 6);
  });
});
