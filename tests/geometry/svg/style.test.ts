import { describe, expect, it } from 'vitest';
import { drawn, losses } from './pages.js';

const D = 'd="M0 0h9v9z"';

const fillsOf = async (inner: string): Promise<(string | null)[]> =>
  (await drawn(inner)).shapes.map((shape) => shape.fill);

// Colours: CSS Color Level 4, sections 5 to 7.
describe('colours', () => {
  it.each([
    ['rebeccapurple', '#663399'],
    ['ReD', '#ff0000'],
    ['#AbC', '#aabbcc'],
    ['#abcd', '#aabbcc'],
    ['#012345', '#012345'],
    ['#01234567', '#012345'],
    ['rgb(255, 0, 127.5)', '#ff0080'],
    ['rgb(100%,50%,0%)', '#ff8000'],
    ['rgb(1 2 3 / 50%)', '#010203'],
    ['rgba(1,2,3,.5)', '#010203'],
    ['rgb(300,-5,0)', '#ff0000'],
    ['hsl(120, 100%, 25%)', '#008000'],
    ['hsl(-60deg 100% 50%)', '#ff00ff'],
    ['currentColor', '#0000ff'],
    ['inherit', '#00ff00'],
    ['initial', '#000000'],
  ])('%s', async (colour, hex) => {
    expect(await fillsOf(`<g fill="lime" color="blue"><path ${D} fill="${colour}"/></g>`)).toEqual([
      hex,
    ]);
  });

  it.each(['none', 'transparent', '#fff0', 'rgba(1,2,3,0)'])(
    '%s paints nothing',
    async (colour) => {
      expect(await fillsOf(`<path ${D} fill="${colour}"/>`)).toEqual([]);
    },
  );

  it('that nobody knows are passed over, which is said', async () => {
    const drawing = await drawn(`<g fill="lime"><path ${D} fill="oak"/></g>`);
    expect(drawing.shapes[0].fill).toBe('#00ff00');
    expect(losses(drawing)).toEqual({ 'fill="oak"': 1 });
  });
});

describe('what paints nothing', () => {
  it.each([
    'opacity="0"',
    'fill-opacity="0"',
    'visibility="hidden"',
    'visibility="collapse"',
    'display="none"',
    'style="opacity:0%"',
  ])('%s', async (attribute) => {
    expect(await fillsOf(`<path ${D} ${attribute}/>`)).toEqual([]);
  });

  it('may be shown again within only where it was hidden', async () => {
    expect(
      await fillsOf(`<g visibility="hidden"><path ${D} visibility="visible"/></g>`),
    ).toHaveLength(1);
    expect(await fillsOf(`<g display="none"><path ${D} display="inline"/></g>`)).toEqual([]);
    expect(await fillsOf(`<g opacity="0"><path ${D} opacity="1"/></g>`)).toEqual([]);
  });
});

// Order of precedence: CSS Cascading Level 4, section 6; SVG 2, section 6.6.
describe('style sheets', () => {
  const fill = async (css: string, attributes: string): Promise<string | null> =>
    (await fillsOf(`<style>${css}</style><path ${D} id="p" class="a b" ${attributes}/>`))[0];

  it.each([
    ['', 'fill="red"', '#ff0000'],
    ['path{fill:lime}', 'fill="red"', '#00ff00'],
    ['*{fill:lime}', 'fill="red"', '#00ff00'],
    ['path{fill:lime}', 'style="fill:red"', '#ff0000'],
    ['path{fill:lime!important}', 'style="fill:red"', '#00ff00'],
    ['path{fill:lime ! important}', 'style="fill:red !important"', '#ff0000'],
    ['.a{fill:red}path{fill:lime}', '', '#ff0000'],
    ['#p{fill:red}.a.b{fill:lime}', '', '#ff0000'],
    ['.a{fill:red}.b{fill:lime}', '', '#00ff00'],
    ['path.a{fill:red}.b{fill:lime}', '', '#ff0000'],
    ['circle, .c , #p{fill:red}', '', '#ff0000'],
    ['circle.a,path#q,.ab{fill:red}', '', '#000000'],
    ['path{FILL : red ; ; nonsense ; fill}', '', '#ff0000'],
    ['/* {} */ path /* x */ {fill:/* y */red} /* open', '', '#ff0000'],
    ['path{fill:red', '', '#ff0000'],
    ['@charset "x"; @font-face{src:url(data:x;y)} path{fill:red}', '', '#ff0000'],
    ['path{fill:url("data:a;b{c") red}', '', '#ff0000'],
  ])('%s with %s', async (css, attributes, hex) => {
    expect(await fill(css, attributes)).toBe(hex);
  });

  it('name what they say that is not understood', async () => {
    const css =
      '@media print{path{fill:red}} g path{fill:red} path:hover,path.a{stroke:red} g &gt; path{fill:red} ' +
      'path[id]{fill:red} path{stroke-width:calc(1px + 2px)}';
    const drawing = await drawn(`<style>${css}</style><path ${D} class="a"/>`);
    expect(drawing.shapes[0]).toMatchObject({ fill: '#000000', stroke: '#ff0000' });
    expect(Object.keys(losses(drawing))).toEqual([
      'style rule @media print',
      'style rule g path',
      'style rule path:hover',
      'style rule g > path',
      'style rule path[id]',
      'computed values',
    ]);
  });

  it('for other media or of other kinds are left out', async () => {
    const drawing = await drawn(
      `<style media="speech">path{fill:red}</style><style type="text/x">path{fill:red}</style>` +
        `<style media="screen" type="text/css">path{stroke:red}</style><path ${D}/>`,
    );
    expect(drawing.shapes[0]).toMatchObject({ fill: '#000000', stroke: '#ff0000' });
    expect(losses(drawing)).toEqual({ media: 1 });
  });
});
