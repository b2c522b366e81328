import { describe, expect, it } from 'vitest';
import { processText } from '../../src/process/process-text.js';
import { readProcess } from '../../src/process/read-process.js';
import { STARTING } from '../../src/process/starting.js';
import { enterResults, ResultError, resultsOf } from '../../src/process/trial/enter.js';
import { SceneError } from '../../src/scene/problem.js';

const enter = (text: string, ...results: string[]) => enterResults(text, 'lock.yaml', results);

/** Lines of the new text that the old one does not have, and the other way round. */
function difference(before: string, after: string): { gone: string[]; come: string[] } {
  const [old, now] = [before.split('\n'), after.split('\n')];
  return {
    gone: old.filter((line) => !now.includes(line)),
    come: now.filter((line) => !old.includes(line)),
  };
}

const HAND = `# The laser in the shed.
kind: laser   # the blue one
kerf: 0.25    # after the new lens

smallest:
  # tried in May
  web: 1.1 mm
nibs: { count: 3, width: 0.5 mm } # two were too few
`;

describe('entering results', () => {
  it('writes the kerf of ten strips, says old and new, and marks it as measured', () => {
    const { text, says } = enter(HAND, 'comb=98.4');
    expect(difference(HAND, text)).toEqual({
      gone: ['kerf: 0.25    # after the new lens'],
      come: ['kerf: 0.16 mm  # after the new lens; measured: 10 strips came to 98.4 mm'],
    });
    expect(says).toEqual(['kerf: 0.25 mm -> 0.16 mm (10 strips came to 98.4 mm)']);
    // Common practice, no source: (10 x 10 mm - 98.4 mm) / 10.
    expect(readProcess(text, 'lock.yaml')).toMatchObject({ kerfMm: 0.16 });
  });

  it('takes other units, and a second measurement over the first', () => {
    const once = enter(HAND, 'comb=98.4').text;
    const { text } = enter(once, 'comb=9.8 cm');
    expect(text).toContain('# after the new lens; measured: 10 strips came to 98 mm\n');
    expect(readProcess(text, 'lock.yaml')).toMatchObject({ kerfMm: 0.2 });
    const inches = enter(HAND, 'comb=3 7/8 in').text;
    // 3 7/8 in are 98.425 mm, the inch being 25.4 mm (1959 agreement).
    expect(readProcess(inches, 'lock.yaml')).toMatchObject({ kerfMm: 0.158 });
  });

  it('takes the mark of a starting value off the line, and off no other', () => {
    const before = processText(STARTING.knife);
    const { text } = enter(before, 'overcut=0.75');
    expect(difference(before, text)).toEqual({
      gone: [expect.stringMatching(/^ {2}overcut: 0\.5 mm +# starting value; common practice/)],
      come: [expect.stringMatching(/^ {2}overcut: 0\.75 mm +# measured: least that drops out$/)],
    });
    const column = (of: string) =>
      of
        .split('\n')
        .find((l) => l.includes('overcut:'))!
        .indexOf('#');
    expect(column(text)).toBe(column(before));
  });

  it('adds what the file does not say, to its group where there is one', () => {
    const { text } = enter(HAND, 'hole=0.8', 'emboss=0.3');
    expect(difference(HAND, text)).toEqual({
      gone: [],
      come: [
        '  hole: 0.8 mm  # measured: row "hole"',
        'relief: { apart: 0.3 mm }  # measured: largest that looks even',
      ],
    });
    expect(readProcess(text, 'lock.yaml')).toMatchObject({
      limits: { smallestWeb: 1.1, smallestHole: 0.8 },
      relief: { apartMm: 0.3, how: STARTING.laser.relief.how },
    });
  });

  it('writes into groups in braces, and into a file that is all one line', () => {
    const braces = 'kind: knife\nblade: { overcut: 0.3 mm } # mine\n';
    expect(enter(braces, 'blade=0.35').text).toBe(
      'kind: knife\nblade: { offset: 0.35 mm, overcut: 0.3 mm }  # mine; measured: squarest hole\n',
    );
    const line = enter('{ kind: knife }', 'blade=0.35').text;
    expect(readProcess(line, 'lock.yaml')).toMatchObject({ blade: { offsetMm: 0.35 } });
    const empty = enter('kind: knife\nblade: {}', 'blade=0.35', 'overcut=1').text;
    expect(readProcess(empty, 'lock.yaml')).toMatchObject({
      blade: { offsetMm: 0.35, overcutMm: 1 },
    });
  });

  it('sets the style of folds and their passes', () => {
    const before =
      'kind: laser\nfolds:\n  cut: 3 mm\n  tie: 2 mm\noperations: { fold: { speed: 70 } }\nkerf: 0.1\n';
    const line = enter(before, 'fold=3');
    expect(readProcess(line.text, 'lock.yaml')).toMatchObject({
      folds: { how: 'line' },
      operations: { fold: { passes: 3, speedMmS: 70 } },
      kerfMm: 0.1,
    });
    expect(line.says[0]).toBe('folds: { cut: 3 mm, tie: 2 mm } -> line (strip 3 folds and holds)');
    const perforated = enter(line.text, 'fold=5').text;
    expect(readProcess(perforated, 'lock.yaml')).toMatchObject({
      folds: { how: 'perforation', cutMm: 2, tieMm: 1 },
      operations: { fold: { passes: 1 } },
    });
  });

  it('keeps the ends of lines, and adds one where the last line has none', () => {
    const windows = 'kind: laser\r\nkerf: 0.2 # mine\r\nunit: mm\r\n';
    expect(enter(windows, 'comb=98').text).toMatch(
      /^kind: laser\r\nkerf: 0.2 mm +# mine; measured: [^\r\n]*\r\nunit: mm\r\n$/,
    );
    expect(enter('kind: laser', 'comb=98').text).toMatch(
      /^kind: laser\nkerf: 0.2 mm {2}# measured: .*\n$/,
    );
  });

  it('leaves colours in quotes on the same line whole', () => {
    const before =
      'kind: laser\noperations: { fold: { passes: 1, stroke: "#123456" }, cut: { stroke: "#fff" } }\n';
    const { operations } = readProcess(enter(before, 'fold=2').text, 'lock.yaml');
    expect(operations).toMatchObject({
      fold: { passes: 2, stroke: '#123456' },
      cut: { stroke: '#ffffff' },
    });
  });

  it('writes lengths with their unit into a file in inches', () => {
    const { text, says } = enter('kind: knife\nunit: in\nsmallest: { web: 1/16 }\n', 'web=1.2');
    expect(readProcess(text, 'lock.yaml').limits.smallestWeb).toBe(1.2);
    expect(says).toEqual(['smallest web: 1.5875 mm -> 1.2 mm (row "web")']);
  });

  it('every result of every kind can be entered as its example says', () => {
    for (const kind of ['knife', 'laser', 'press'] as const) {
      const before = processText(STARTING[kind]);
      for (const { name, example, sets } of resultsOf(kind)) {
        const { text, says } = enter(before, `${name}=${example(kind)}`);
        expect(says.length).toBeGreaterThan(0);
        expect(text === before, `${kind} ${name}`).toBe(sets === '');
      }
    }
  });

  it('tells what fit and square mean, and writes nothing', () => {
    const { text, says } = enter(HAND, 'fit=0.15', 'square=99.8');
    expect(text).toBe(HAND);
    // t + c for card of 0.3 mm and c = 0.15 mm.
    expect(says[0]).toMatch(/0\.15 mm wider than the card is thick: 0\.45 mm for card of 0\.3 mm/);
    expect(says[1]).toMatch(/^square: 0\.2 mm too small, 0\.2 %\. Nothing is scaled/);
    expect(enter(HAND, 'square=100.05').says[0]).toMatch(/true to size/);
    expect(enter(HAND, 'square=100.5').says[0]).toMatch(/0\.5 mm too large/);
  });
});

const WRONG: readonly (readonly [kind: string, result: string, says: RegExp])[] = [
  [
    'laser',
    'comb=101',
    /comb: "101": the strips were drawn 100 mm wide together and cannot have grown/,
  ],
  ['laser', 'comb=80', /comb: "80": that would be a kerf of 2 mm, more than a beam in focus burns/],
  ['laser', 'comb=9.84', /kerf of 9.016 mm.*is it in mm\?/],
  ['laser', 'comb=98,4', /comb: .*decimals with a point/],
  ['laser', 'comb=98 ells', /comb: .*"ells" is not a unit/],
  ['laser', 'comb=nothing', /comb: "nothing" is not a length/],
  ['laser', 'comb=', /"comb=": give the width of all 10 strips.*comb=98\.4/],
  ['laser', 'comb', /"comb": give the width/],
  ['laser', 'cmb=98.4', /"cmb" is not known here; did you mean "comb"\? Allowed: comb, web/],
  ['laser', '=98', /"" is not known here/],
  ['laser', 'blade=0.3', /blade: there is no such card for a laser, only for knife/],
  ['knife', 'comb=98.4', /comb: there is no such card for a knife, only for laser/],
  ['press', 'fold=2', /fold: there is no such card for a press, only for knife and laser/],
  ['laser', 'web=9', /web: "9": the card has 0\.4 to 2 mm/],
  ['laser', 'hole=-1', /hole: "-1": the card has/],
  ['knife', 'overcut=1.5', /overcut: "1\.5": the card has 0 to 1 mm/],
  ['knife', 'fold=7', /fold: "7": the strips are numbered 1 to 6/],
  ['knife', 'fold=0', /fold: "0": the strips/],
  ['knife', 'fold=1.5', /fold: "1\.5": the strips/],
  ['knife', 'emboss=0.75mm', /emboss: "0\.75mm": the card has 0\.5 to 1\.5 diameters/],
  ['knife', 'emboss=3', /emboss: "3": the card has/],
  ['knife', 'fit=2', /fit: "2": the card has 0 to 0\.3 mm/],
  [
    'knife',
    'square=9.98',
    /square: "9\.98": the square was drawn 100 mm wide; measure again, in mm/,
  ],
];

describe('results that cannot be', () => {
  it.each(WRONG)('%s: %s', (kind, result, says) => {
    expect(() => enter(`kind: ${kind}\n`, result)).toThrow(ResultError);
    expect(() => enter(`kind: ${kind}\n`, result)).toThrow(says);
  });

  it('are told all at once', () => {
    try {
      enter('kind: laser\n', 'comb=80', 'web=0.8', 'blade=1');
      expect.unreachable();
    } catch (error) {
      expect((error as Error).message.split('\n')).toHaveLength(2);
    }
  });

  it('one given twice', () => {
    expect(() => enter('kind: laser\n', 'web=0.8', 'web=1')).toThrow(/web is given twice/);
  });

  it('into a file that is wrong itself', () => {
    expect(() => enter('kind: laser\nkref: 1\n', 'comb=98')).toThrow(SceneError);
  });

  it('into what an alias says, which other keys say too', () => {
    const aliased = 'kind: laser\nsmallest: { web: &w 1 mm, hole: *w }\n';
    expect(() => enter(aliased, 'web=0.8')).toThrow(/change it by hand: smallest web: 0\.8 mm/);
    const group = 'kind: knife\nnibs: &n {}\nblade: *n\n';
    expect(() => enter(group, 'blade=0.3')).toThrow(/change it by hand: blade offset: 0\.3 mm/);
    expect(readProcess(enter(aliased, 'hole=0.8').text, 'a.yaml').limits.smallestHole).toBe(0.8);
  });
});
