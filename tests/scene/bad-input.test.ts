import { describe, expect, it } from 'vitest';
import { type Problem, SceneError } from '../../src/scene/problem.js';
import { readScene } from '../../src/scene/read.js';
import { elements } from './elements.js';

function problemsIn(text: string): readonly Problem[] {
  try {
    readScene(text, { file: 'lock.yaml', elements });
  } catch (error) {
    if (error instanceof SceneError) return error.problems;
    throw error;
  }
  return [];
}

/** Expects exactly these problems: each `line:column` with a part of its message. */
function expectProblems(text: string, wanted: readonly (readonly [string, RegExp])[]): void {
  const found = problemsIn(text);
  expect(found.map(({ line, column, message }) => `${line}:${column} ${message}`)).toEqual(
    wanted.map(([place, part]) => expect.stringMatching(new RegExp(`^${place} .*${part.source}`))),
  );
}

type Case = readonly [name: string, text: string, wanted: readonly (readonly [string, RegExp])[]];

const WHOLE_FILES: readonly Case[] = [
  ['an empty file', '', [['1:1', /the file is empty; a scene is made of keys/]]],
  ['nothing but a comment', '# soon\n', [['1:1', /the file is empty/]]],
  ['a list at top', '# mine\n- hedge\n', [['2:1', /the whole file is one list/]]],
  ['one text', 'Lock at dusk\n', [['1:1', /the one value "Lock at dusk"/]]],
  ['bytes of a picture', '\u0089PNG\r\n\u001a\n\0\0', [['1:1', /the one value/]]],
  ['20 MB', 'x'.repeat(20_000_000), [['1:1', /20\.0 million characters, 1 million/]]],
  ['two documents', 'title: a\n---\ntitle: b\n', [['2:1', /second document/]]],
];

const NOT_YAML: readonly Case[] = [
  ['tabs', 'panel:\n\twidth: 190\n', [['2:1', /a tab .* indent with spaces/]]],
  ['tabs after spaces', 'panel:\n  width: 190\n \theight: 90\n', [['3:1', /a tab/]]],
  ['an open list', 'cards: [ink, plum\npanels: 3\n', [['2:1', /bracket \[ is not closed/]]],
  ['an open brace', 'panel: { width: 9\npanels: 3\n', [['2:1', /brace \{ is not closed/]]],
  ['a bare # in a list', 'cards: [ink, #abcdef]\npanels: 3\n', [['2:1', /put colours in quotes/]]],
  ['a second colon', 'title: Lock: at dusk\n', [['1:8', /second colon/]]],
  ['ragged indentation', 'panel:\n   width: 90\n  height: 90\n', [['3:1', /line them up/]]],
  ['a key without a colon', 'title: x\npanels 4\nseed: 2\n', [['2:1', /key and its value/]]],
  ['an open quotation mark', 'title: "x\n', [['2:1', /not closed/]]],
  ['a leading %', 'spacing: %30\n', [['1:10', /cannot start with "%"/]]],
  ['a stray bracket', 'panels: 3]\ncards: [red]]\n', [['2:13', /"\]" does not belong here/]]],
  ['text after quotes', 'spacing: "1/2" in\n', [['1:16', /"in" does not belong here/]]],
  ['a tag', 'title: !own x\n', [['1:8', /no tags: take "!own" out/]]],
  ['a key that is a list', '? [a]\n: 1\n', [['1:3', /a key must be a word/]]],
];

const KEYS: readonly Case[] = [
  [
    'an unknown key',
    'titel: x\n',
    [['1:1', /"titel" is no key of a scene; did you mean "title"\?/]],
  ],
  [
    'two unknown keys, each at its own place',
    'panel:\n  widht: 190\n  depth: 3\n',
    [
      ['2:3', /"widht" is no key of panel; did you mean "width"\? Allowed: width, height/],
      ['3:3', /"depth" is no key of panel\. Allowed: width, height/],
    ],
  ],
  ['a key said twice', 'seed: 1\ntitle: x\nseed: 2\n', [['3:1', /"seed" is said twice/]]],
  ['a dangerous key', '__proto__: { a: 1 }\n', [['1:1', /"__proto__" is no key of a scene/]]],
  ['an empty value', 'title:\nseed: 3\n', [['1:1', /title: left empty/]]],
  ['a colour lost to a comment', 'cards: #20243c\n', [['1:1', /must be in quotes, "#20243c"/]]],
];

const SIZES: readonly Case[] = [
  [
    'a negative size',
    'panel: { width: -5 }\n',
    [['1:17', /panel\.width: -5 is too small; it may be 40 to 1200 mm/]],
  ],
  ['no size', 'panel:\n  height: 0\n', [['2:11', /panel\.height: 0 is too small/]]],
  [
    'a huge size',
    'spacing: 1e300\n',
    [['1:10', /spacing: 1e\+300 is too large; it may be 2 to 200 mm/]],
  ],
  ['no number', 'spacing: .nan\n', [['1:10', /spacing: \.nan will not do/]]],
  ['infinity', 'reading: .inf\n', [['1:10', /reading: \.inf will not do/]]],
  ['infinity the other way', 'reading: -.inf\n', [['1:10', /reading: -\.inf will not do/]]],
  ['an unknown unit', 'spacing: 2 ells\n', [['1:10', /"ells" is not a unit; use mm, cm or in/]]],
  [
    'bounds in the unit of the file',
    'panel: { width: 0.5 }\nunit: in\nspacing: 300 mm\n',
    [
      ['1:17', /0\.5 is too small; it may be 1\.575 to 47\.244 in/],
      ['3:10', /"300 mm" is too large; it may be 0\.079 to 7\.874 in/],
    ],
  ],
  ['windows that grow', 'window: { step: -1 }\n', [['1:17', /-1 is too small.*must not grow/]]],
];

const VALUES: readonly Case[] = [
  ['a number for text', 'title: 1984\n', [['1:8', /1984 is not text; put it in quotes, "1984"/]]],
  ['text of two lines', 'title: "a\\nb"\n', [['1:8', /one line/]]],
  ['an unknown unit for all', 'unit: ell\n', [['1:7', /"ell" is not known here.*mm, cm, in/]]],
  [
    'no panels',
    'panels: 0\n',
    [['1:9', /0 is too small; it may be 2 to 24: .*front and a backdrop/]],
  ],
  [
    'one panel',
    'panels: 1\n',
    [['1:9', /1 is too small; it may be 2 to 24: .*front and a backdrop/]],
  ],
  ['forty panels', 'panels: 40\n', [['1:9', /40 is too large; it may be 2 to 24/]]],
  [
    'half a panel',
    'panels: 3.5\n',
    [['1:9', /3\.5 will not do; give a whole number from 2 to 24/]],
  ],
  ['a misspelt process', 'process: lazer\n', [['1:10', /did you mean "laser"\?/]]],
  [
    'pitch and angle together, beside another slip',
    'spine: { pitch: 15, angle: 80, tib: 9 }\n',
    [
      ['1:28', /take pitch or angle out/],
      ['1:32', /did you mean "tab"\?/],
    ],
  ],
  [
    'a radius on an arch',
    'window: { shape: arch, radius: 3 }\n',
    [['1:32', /only a rounded window/]],
  ],
  [
    'a list of windows of the wrong length, with a slip in it',
    'panels: 4\nwindow:\n  - shape: arch\n  - shap: circle\n',
    [
      ['2:1', /the list has 2; a book of 4 panels needs 3/],
      ['4:5', /did you mean "shape"\?/],
    ],
  ],
  ['a misspelt edge', 'window:\n  hold: [sill, hed]\n', [['2:16', /did you mean "head"\?/]]],
];

const CARDS: readonly Case[] = [
  [
    'misspelt stock names and colours',
    'stocks: { ink: { colour: navy } }\ncards: [inc, midnihgtblue, "#12"]\nspine: { card: imk }\n',
    [
      ['2:9', /"inc" is neither a stock nor a colour; stocks are ink; did you mean "ink"\?/],
      ['2:14', /did you mean "midnightblue"\?/],
      ['2:28', /"#12" is no colour/],
      ['3:16', /did you mean "ink"\?/],
    ],
  ],
  ['a stock without colour', 'stocks: { ink: { grammage: 240 } }\n', [['1:16', /colour: missing/]]],
  [
    'an unknown sheet',
    'stocks: { ink: { colour: navy, sheet: a4 } }\n',
    [['1:39', /did you mean "A4"\?/]],
  ],
  ['a stock with an odd name', 'stocks: { 9x: { colour: navy } }\n', [['1:11', /"9x" is no name/]]],
  [
    'margins that leave nothing',
    'stocks: { ink: { colour: navy, sheet: A7, margin: 50 } }\n',
    [['1:51', /leave nothing of a sheet 74 x 105 mm/]],
  ],
];

const SCENERY: readonly Case[] = [
  [
    'a misspelt bare element',
    'scenery: [hegde]\n',
    [['1:11', /did you mean "hedge"\? Allowed: hedge, tree/]],
  ],
  ['a misspelt element', 'scenery:\n  - element: hegde\n', [['2:14', /did you mean "hedge"\?/]]],
  [
    'an entry without element',
    'scenery:\n  - id: a\n',
    [['2:5', /element: missing; give one of hedge, tree/]],
  ],
  ['no list', 'scenery: hedge\n', [['1:10', /give a list of elements/]]],
  [
    'duplicate ids, said and counted',
    'scenery:\n  - { element: hedge, id: a }\n  - { element: tree, id: a }\n' +
      '  - { element: tree, id: hedge-2 }\n  - hedge\n',
    [
      ['3:26', /"a" is the id of the element on line 2 too/],
      ['4:26', /"hedge-2" is the id of the element on line 5 too/],
    ],
  ],
  [
    'every kind of slip in one element, all at once',
    `panels: 6
scenery:
  - element: hedge
    panels: 9
    side: head
    foliage: 3
    steams: 4
    batter: 50
    stems: { from: 1, to: 2.5 }
    bumps: { from: 1 }
    form: lose
    mirror: yes
    at: midle
    width: 60 ells
    height: 900%
    lift: [1]
    id: 7 up
`,
    [
      ['4:13', /panel 9 is not in this book; its panels are 1 \(front\) to 6/],
      ['5:11', /hedge does not grow from the head; it grows from sill/],
      ['6:5', /"foliage" is no key of hedge\./],
      ['7:5', /"steams" is no key of hedge; did you mean "stems"\?/],
      ['8:13', /batter: 50 is too large; it may be 0 to 10/],
      ['9:27', /stems\.to: 2\.5 will not do; give a whole number/],
      ['10:12', /bumps\.to: missing/],
      ['11:11', /"lose" is not known here; did you mean "loose"\?/],
      ['12:13', /"yes" will not do; give true or false/],
      ['13:9', /did you mean "middle"\? Words allowed: start, middle, end/],
      ['14:12', /"ells" is not a unit/],
      ['15:13', /"900%" is too large; it may be 1% to 300%/],
      ['16:11', /lift: a list will not do; give a length/],
      ['17:9', /"7 up" is no name/],
    ],
  ],
  [
    'a parameter of another element',
    'scenery:\n  - element: tree\n    form: loose\n',
    [['3:5', /"form" is no key of tree\. Allowed: .*lean/]],
  ],
];

describe.each([
  ['a whole file', WHOLE_FILES],
  ['what is not YAML', NOT_YAML],
  ['keys', KEYS],
  ['sizes', SIZES],
  ['values', VALUES],
  ['cards', CARDS],
  ['scenery', SCENERY],
])('readScene on bad input: %s', (_, cases) => {
  it.each(cases)('%s', (_name, text, wanted) => {
    expectProblems(text, wanted);
  });
});

describe('a SceneError', () => {
  it('lists everything in the order of the file, each with its place', () => {
    const text = 'scenery: [hegde]\npanels: 1\nseed: 1\nseed: 2\ntitle: 3\n';
    expect(() => readScene(text, { file: 'lock.yaml', elements })).toThrow(SceneError);
    try {
      readScene(text, { file: 'lock.yaml', elements });
    } catch (error) {
      const lines = (error as SceneError).message.split('\n');
      expect(lines).toHaveLength(4);
      expect(lines[0]).toBe(
        'lock.yaml:1:11: scenery number 1: "hegde" is not known here; did you mean "hedge"? Allowed: hedge, tree',
      );
      expect(lines.map((line) => line.split(': ')[0])).toEqual([
        'lock.yaml:1:11',
        'lock.yaml:2:9',
        'lock.yaml:4:1',
        'lock.yaml:5:8',
      ]);
    }
  });

  it('gives the path of each problem', () => {
    expect(problemsIn('scenery:\n  - tree\n  - { element: tree, lean: 99 }\n')[0]!.path).toEqual([
      'scenery',
      1,
      'lean',
    ]);
    expect(problemsIn('panel: { widht: 3 }\n')[0]!.path).toEqual(['panel', 'widht']);
  });

  it('counts columns and lines alike for both kinds of line end', () => {
    expectProblems('title: x\r\npanel:\r\n  width: 0\r\n', [['3:10', /too small/]]);
  });
});

describe('hostile files', () => {
  const bomb = (levels: number): string => {
    const names = 'abcdefghijkl'.slice(0, levels).split('');
    const lines = names.map((name, i) => {
      const inner = i === 0 ? 'x' : `*${names[i - 1]}`;
      return `${name}: &${name} [${Array(10).fill(inner).join(', ')}]`;
    });
    return `${lines.join('\n')}\n`;
  };

  it('stops an alias bomb at the alias that goes too far', () => {
    expectProblems(bomb(9), [['5:8', /with \*d the file holds more than 20000 values/]]);
  });

  it('refuses an alias to what it stands in, and one to nothing', () => {
    expectProblems('scenery: &a [*a]\n', [['1:14', /\*a lies inside &a/]]);
    expectProblems('title: *b\n', [['1:8', /\*b refers to nothing/]]);
  });

  it.each([
    ['brackets', '['.repeat(900_000)],
    ['braces', '{a: '.repeat(200_000)],
    ['dashes', '- '.repeat(400_000)],
    ['question marks', '? '.repeat(400_000)],
    ['aliases', `a: &a x\nb: [${'*a,'.repeat(300_000)}]`],
    ['documents', '---\n'.repeat(200_000)],
    ['empty lines', '\n'.repeat(900_000)],
  ])('refuses a file of %s before reading it in', (_, text) => {
    expectProblems(text, [['1:1', /more than 200000 words and signs/]]);
  });

  it('refuses deep nesting by indentation where it becomes too deep', () => {
    const stairs = Array.from({ length: 60 }, (_, i) => `${' '.repeat(i)}a:`).join('\n');
    expectProblems(stairs, [['32:32', /nested more than 30 deep/]]);
  });

  it('says a thousand unknown keys in one go', () => {
    const text = Array.from({ length: 1000 }, (_, i) => `k${i}: 1`).join('\n');
    expect(problemsIn(text)).toHaveLength(1000);
  });
});
