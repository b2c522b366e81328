import { describe, expect, it } from 'vitest';
import { compareWithResvg } from './agreement.js';

/**
 * Drawings that use one feature each, all in black, against resvg's rendering of them: a renderer
 * of its own, written to SVG 1.1 and 2. Where resvg leaves the standard (it ignores pathLength and
 * takes a curve's handles into its bounding box, for instance) the other tests have the
 * standard's own figures.
 */
const page = (inner: string, attributes = 'viewBox="0 0 120 80"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ` +
  `width="120mm" height="80mm" ${attributes}>${inner}</svg>`;

const FISH = 'M10 40c10-25 45-30 70-5l20-15q-8 20 0 40l-20-15C55 70 20 65 10 40z';
const STAR = 'M60 5L85 75L20 30H100L35 75Z';
const pen = (width: number): string => `fill="none" stroke="#000" stroke-width="${width}"`;
const PEN = pen(6);

const DRAWINGS: Readonly<Record<string, string>> = {
  'path with curves': page(`<path d="${FISH}"/>`),
  'path with smooth curves': page(
    '<path d="M10 40C20 10 40 10 50 40S80 70 90 40s10-20 20 0V75H10zM20 60q10-15 20 0t20 0t20 0z"/>',
  ),
  'arcs of all four kinds': page(
    '<path d="M10 30A20 12 30 0 1 40 30zM50 30A20 12 30 1 1 80 30zM10 60A20 12 30 0 0 40 60z' +
      'M60 60A20 10-20 1 0 90 60zM95 20a1 1 0 0115 5z"/>',
  ),
  'nonzero fill': page(`<path d="${STAR}"/>`),
  'even-odd fill': page(`<path d="${STAR}" fill-rule="evenodd"/>`),
  'open path filled': page('<path d="M10 10L100 20L80 70L30 60"/>'),
  'rounded rectangles': page(
    '<rect x="5" y="5" width="50" height="30" rx="10"/><rect x="60" y="5" width="50" height="30" ' +
      'rx="20" ry="5"/><rect x="5" y="40" width="50" height="30" ry="80"/>' +
      '<rect x="60" y="40" width="50%" height="25%" rx="auto" ry="6"/>',
  ),
  'circle, ellipse and polygon': page(
    '<circle cx="20" cy="20" r="15"/><ellipse cx="70" cy="25" rx="30" ry="12"/>' +
      '<polygon points="10,50 50,45,60 75 -5e0,70"/><polyline points="70 50 110 50 90 75"/>',
  ),
  'nested transforms': page(
    `<g transform="translate(60 40) rotate(25)"><g transform="scale(.5,-.8),skewX(20)">` +
      `<path transform="matrix(1 .1 -.2 1 -60 -40)" d="${FISH}"/></g></g>` +
      '<rect width="20" height="10" transform="rotate(45 100 20) translate(90 15)"/>' +
      '<rect width="10" height="10" transform="skewY(30)"/>',
  ),
  'butt ends and mitred corners': page(`<path d="M15 70L40 15L60 60L75 10L80 70H110" ${PEN}/>`),
  'round ends and corners': page(
    `<path d="M15 70L40 15L60 60L75 10L80 70H110" ${PEN} stroke-linecap="round" stroke-linejoin="round"/>`,
  ),
  'square ends and bevelled corners': page(
    `<path d="M15 70L40 15L60 60L75 10L80 70H110" ${PEN} stroke-linecap="square" stroke-linejoin="bevel"/>`,
  ),
  'a high limit for mitres': page(
    `<path d="M15 70L40 15L60 60L75 10L80 70H110" ${PEN} stroke-miterlimit="12"/>`,
  ),
  'closed strokes': page(
    `<g ${PEN}><rect x="10" y="10" width="40" height="25"/><path d="M70 10h40l-20 30z"/>` +
      '<circle cx="30" cy="60" r="12"/><polygon points="60 50 110 50 100 72"/></g>',
  ),
  'stroked curves': page(`<path d="${FISH}" ${PEN}/>`),
  'stroke under uneven scale': page(
    `<g transform="translate(0 20) scale(1 .4)"><path d="${FISH}" ${pen(12)}/></g>`,
  ),
  'stroke under skew and mirror': page(
    `<path transform="matrix(-.8 .1 .3 .7 95 10)" d="${FISH}" ${PEN} stroke-linejoin="round"/>`,
  ),
  'stroke in tiny units': page(
    `<g transform="scale(100)"><path d="M.1 .1L.5 .7L1 .2" fill="none" stroke="#000" stroke-width=".05"/></g>`,
  ),
  'fill and stroke': page(`<path d="${FISH}" stroke="#000" stroke-width="4"/>`),
  'lines and dots': page(
    `<g ${PEN} stroke-linecap="round"><line x1="10" y1="10" x2="60" y2="30"/><path d="M20 50h0"/>` +
      '<path d="M40 50z"/><path d="M60 50"/><line x1="80" y1="50" x2="80" y2="50"/></g>' +
      `<path d="M100 20L100 20" ${pen(12)} stroke-linecap="square"/>` +
      `<path d="M100 50L100 50" ${pen(12)}/>`,
  ),
  dashes: page(
    `<g ${PEN} stroke-dasharray="12 7"><path d="M10 10H110"/><path d="M10 25H110" ` +
      'stroke-dashoffset="5"/><path d="M10 40H110" stroke-dasharray="9"/>' +
      '<path d="M10 55H110" stroke-dasharray="10 5 2" stroke-dashoffset="-4"/></g>',
  ),
  'dashes on closed curves': page(
    `<circle cx="30" cy="40" r="24" ${PEN} stroke-dasharray="10 6"/>` +
      `<rect x="65" y="15" width="45" height="45" ${PEN} stroke-dasharray="30 10" stroke-dashoffset="15"/>`,
  ),
  'a last dash that runs on into the first': page(
    `<rect x="20" y="20" width="80" height="40" ${PEN} stroke-dasharray="30 10" stroke-dashoffset="10"/>`,
  ),
  'dashes that are dots': page(
    `<path d="M10 20L110 45" ${PEN} stroke-linecap="round" stroke-dasharray="0 12"/>`,
  ),
  'use and symbols': page(
    `<defs><path id="fish" d="${FISH}"/><symbol id="box" viewBox="0 0 10 10"><circle cx="5" cy="5" ` +
      'r="6"/></symbol></defs><use href="#fish" transform="scale(.4)"/><use xlink:href="#fish" ' +
      'x="40" y="30" transform="scale(.5)"/><use href="#box" x="70" y="5" width="40" height="30"/>' +
      '<use href="#box" x="70" y="45" width="10" height="30"/>',
  ),
  'inner viewports': page(
    '<svg x="5" y="5" width="50" height="30" viewBox="0 0 10 10"><circle cx="5" cy="5" r="7"/></svg>' +
      '<svg x="60" y="5" width="50" height="30" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMin slice">' +
      '<circle cx="5" cy="5" r="5"/></svg><svg x="5" y="40" width="50" height="30" overflow="visible">' +
      '<circle cx="40" cy="15" r="15"/></svg><svg x="60" y="40" width="50" height="30" ' +
      'viewBox="0 0 10 10" preserveAspectRatio="none"><circle cx="5" cy="5" r="5"/></svg>',
  ),
  'clip path': page(
    `<clipPath id="c"><circle cx="40" cy="40" r="25"/><rect x="60" y="20" width="40" height="20"/>` +
      `</clipPath><path d="${FISH}" clip-path="url(#c)"/>`,
  ),
  'clip path on a turned group': page(
    `<clipPath id="c" transform="scale(.9)"><path clip-rule="evenodd" d="${STAR}"/></clipPath>` +
      `<g clip-path="url(#c)" transform="rotate(10) translate(5)"><path d="${FISH}"/>` +
      `<path d="M0 70H120" ${PEN}/></g>`,
  ),
  'clip path of clip paths': page(
    '<clipPath id="a"><rect x="20" y="10" width="60" height="60"/></clipPath>' +
      '<clipPath id="b" clip-path="url(#a)"><circle cx="50" cy="40" r="35"/>' +
      '<rect x="80" y="0" width="30" height="80" clip-path="url(#d)"/></clipPath>' +
      '<clipPath id="d"><circle cx="80" cy="40" r="30"/></clipPath>' +
      `<path d="${FISH}" clip-path="url(#b)"/>`,
  ),
  'clip path in units of the box': page(
    '<clipPath id="c" clipPathUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".4"/></clipPath>' +
      `<g transform="rotate(8)"><path d="${STAR}" clip-path="url(#c)"/></g>`,
  ),
  'style sheets': page(
    '<style>/* tide */ rect{fill:none} .seen{fill:#000} #low{display:none} path.seen,.wide{' +
      'stroke:#000;stroke-width:5px} .off{visibility:hidden}</style>' +
      '<rect width="20" height="20"/><rect class="seen" x="25" width="20" height="20"/>' +
      '<rect class="seen" id="low" x="50" width="20" height="20"/>' +
      '<rect class="seen" style="fill:none" x="75" width="20" height="20"/>' +
      '<path class="seen" d="M10 40h30v20z"/><path class="wide off" d="M50 40h30v20z"/>' +
      '<g fill="none" class="wide"><path d="M80 40h30v20z"/></g>',
  ),
  'nothing painted': page(
    '<rect width="20" height="20" fill="none"/><rect width="20" height="20" opacity="0"/>' +
      '<rect width="20" height="20" fill-opacity="0"/><g display="none"><rect width="9" height="9"/></g>' +
      '<rect width="20" height="20" fill="transparent"/><rect x="50" width="20" height="20"/>',
  ),
  'the first that applies': page(
    '<switch><rect width="30" height="30" requiredExtensions="urn:tide"/>' +
      '<rect x="40" width="30" height="30" systemLanguage="eo"/><circle cx="90" cy="40" r="20"/>' +
      '<rect width="120" height="80"/></switch>',
  ),
  'a page that is wider than its drawing': page(
    '<circle cx="20" cy="20" r="20"/>',
    'viewBox="0 0 40 40" preserveAspectRatio="xMinYMid meet"',
  ),
  'a page that cuts its drawing': page(
    '<circle cx="20" cy="20" r="20"/>',
    'viewBox="-5 3 40 30" preserveAspectRatio="xMidYMax slice"',
  ),
};

describe('what is imported agrees with resvg on', () => {
  it.each(Object.entries(DRAWINGS))('%s', async (_, svg) => {
    const { agrees, ...measured } = await compareWithResvg(svg);
    expect({ agrees, ...measured }).toMatchObject({ agrees: true });
  });
});
