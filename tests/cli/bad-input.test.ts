import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MAIN, raree, testFolder } from './raree.js';

const folder = testFolder();
const file = (name: string) => path.join(folder.at, name);
const GOOD = 'title: Tide pool\npanels: 3\nscenery: []\n';

beforeAll(() => {
  writeFileSync(file('good.yaml'), GOOD);
  const made = raree(['make', 'good.yaml', '--out', 'book'], folder.at);
  expect(made.err).toBe('');
  expect(made.code).toBe(0);
});
afterAll(folder.remove);

/** Each bad scene, and what its message must say. */
const BAD: readonly (readonly [name: string, text: string, says: RegExp])[] = [
  ['an empty file', '', /bad\.yaml:1:1: .*empty/],
  ['not YAML', 'title: "open\npanels: [1, 2\n', /bad\.yaml:\d+:\d+: /],
  ['tabs', 'panel:\n\twidth: 190\n', /bad\.yaml:2:1: .*[Tt]ab/],
  ['a list at the top', '- hedge\n- tree\n', /bad\.yaml:1:1: /],
  ['an unknown key', 'title: x\npanells: 4\n', /bad\.yaml:2:1: .*"panells".*"panels"/],
  ['a misspelt element', 'scenery:\n  - hedg\n', /bad\.yaml:2:5: .*"hedg".*"hedge"/],
  ['a negative size', 'panel: { width: -190, height: 135 }\n', /bad\.yaml:1:17: .*-190/],
  ['a size of zero', 'panel: { width: 0, height: 135 }\n', /bad\.yaml:1:17: .*\b0\b/],
  ['a huge size', 'panel: { width: 1e9, height: 135 }\n', /bad\.yaml:1:17: .*1200 mm/],
  ['not a number', 'spacing: .nan\n', /bad\.yaml:1:10: /],
  ['infinity', 'spacing: .inf\n', /bad\.yaml:1:10: /],
  [
    'a window larger than the panel',
    'window: { width: 400, height: 90 }\n',
    /bad\.yaml:1:18: .*panel 1 is 400 mm wide on a panel of 190 mm/,
  ],
  ['windows that grow', 'window: { width: 90, height: 90, step: -5 }\n', /bad\.yaml:1:40: .*grow/],
  [
    'listed windows that grow',
    'panels: 3\nwindow:\n  - { width: 80, height: 80 }\n  - { width: 90, height: 80 }\n',
    /bad\.yaml:4:14: .*must not grow/,
  ],
  ['no panels', 'panels: 0\n', /bad\.yaml:1:9: .*0/],
  ['one panel', 'panels: 1\n', /bad\.yaml:1:9: .*front.*backdrop/],
  ['forty panels', 'panels: 40\n', /bad\.yaml:1:9: .*24/],
  [
    'an element beyond the last panel',
    'panels: 3\nscenery:\n  - { element: hedge, panels: 9 }\n',
    /bad\.yaml:3:31: .*9/,
  ],
];

describe('bad input', () => {
  it.each(BAD)(
    '%s: a message with its place, exit code 2, nothing written',
    (_name, text, says) => {
      writeFileSync(file('bad.yaml'), text);
      const before = readFileSync(file('book/manifest.json'), 'utf8');
      const made = raree(['make', 'bad.yaml', '--out', 'book'], folder.at);
      expect(made.err).toMatch(says);
      expect(made.err).not.toMatch(/\n\s+at /);
      expect(made.code).toBe(2);
      expect(made.out).toBe('');
      expect(readFileSync(file('book/manifest.json'), 'utf8')).toBe(before);
      expect(readdirSync(folder.at).filter((n) => n.startsWith('.'))).toEqual([]);
    },
  );

  it('all faults are told at once, and as JSON on stdout when asked', () => {
    writeFileSync(file('bad.yaml'), 'panells: 4\nspacing: -2\nscenery:\n  - hedg\n');
    const { code, out, err } = raree(['check', 'bad.yaml', '--json'], folder.at);
    expect(code).toBe(2);
    expect(err.trim().split('\n')).toHaveLength(3);
    const { problems } = JSON.parse(out) as { problems: { line: number }[] };
    expect(problems.map((p) => p.line)).toEqual([1, 2, 4]);
  });

  it('a missing file', () => {
    const { code, err } = raree(['check', 'nowhere.yaml'], folder.at);
    expect(err).toMatch(/nowhere\.yaml: there is no such file/);
    expect(code).toBe(2);
  });

  it('bad usage', () => {
    expect(raree(['mak', 'good.yaml'], folder.at).code).toBe(2);
    expect(raree(['make'], folder.at).code).toBe(2);
    expect(raree(['make', 'good.yaml', '--outt', 'x'], folder.at).code).toBe(2);
  });
});

describe('an output folder that cannot be', () => {
  it('a file in its place', () => {
    writeFileSync(file('letter'), 'dear reader');
    const { code, err } = raree(['make', 'good.yaml', '--out', 'letter'], folder.at);
    expect(err).toMatch(/letter is a file, not a folder/);
    expect(code).toBe(2);
    expect(readFileSync(file('letter'), 'utf8')).toBe('dear reader');
  });

  // The superuser may write anywhere, and Windows keeps no such modes.
  it.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
    'a folder that may not be written (needs an ordinary user)',
    () => {
      mkdirSync(file('locked'));
      chmodSync(file('locked'), 0o500);
      const { code, err } = raree(['make', 'good.yaml', '--out', 'locked/book'], folder.at);
      expect(err).toMatch(/may not read or write there/);
      expect(code).toBe(2);
    },
  );

  it('a path through a file', () => {
    writeFileSync(file('letter'), 'dear reader');
    const { code, err } = raree(['make', 'good.yaml', '--out', 'letter/book'], folder.at);
    expect(err).toMatch(/a part of the path is a file/);
    expect(code).toBe(2);
  });
});

describe('an interrupted run', () => {
  it('leaves the old book whole', async () => {
    const before = readFileSync(file('book/manifest.json'), 'utf8');
    const panels = Array.from({ length: 5 }, () => '  - grass').join('\n');
    writeFileSync(
      file('long.yaml'),
      `title: Long\npanels: 12\nwindow: { step: 3 }\nscenery:\n${panels}\n`,
    );
    const run = spawn(process.execPath, [MAIN, 'make', 'long.yaml', '--out', 'book'], {
      cwd: folder.at,
    });
    const ended = new Promise((resolve) => run.on('exit', resolve));
    await new Promise((resolve) => setTimeout(resolve, 700));
    run.kill('SIGKILL');
    await ended;
    expect(readFileSync(file('book/manifest.json'), 'utf8')).toBe(before);
    expect(existsSync(file('book/preview.png'))).toBe(true);
  });
});

describe('a scene with errors', () => {
  // The panels' card comes in sheets that are too small for them.
  const text = `title: Postcard
panels: 3
cards: mist
spine: { card: slate }
stocks:
  mist: { colour: "#c8d0d4", sheet: A6 }
  slate: { colour: "#3b4252" }
`;

  it('writes nothing, says what to do, and ends with 1', () => {
    writeFileSync(file('small.yaml'), text);
    const { code, err } = raree(['make', 'small.yaml', '--out', 'small'], folder.at);
    expect(code).toBe(1);
    expect(err).toMatch(/panel-01 measures 187 x 135 mm, but the sheet A6/);
    expect(err).toMatch(/--anyway/);
    expect(existsSync(file('small'))).toBe(false);
  });

  it('is written with --anyway, and still ends with 1', () => {
    const { code } = raree(['make', 'small.yaml', '--out', 'small', '--anyway'], folder.at);
    expect(code).toBe(1);
    expect(existsSync(file('small/manifest.json'))).toBe(true);
  });

  it('is found by check, as text and as JSON', () => {
    const plain = raree(['check', 'small.yaml'], folder.at);
    expect(plain.code).toBe(1);
    expect(plain.out).toMatch(/error: panel-01 measures 187 x 135 mm/);
    const { code, out } = raree(['check', 'small.yaml', '--json'], folder.at);
    expect(code).toBe(1);
    const { findings } = JSON.parse(out) as { findings: { rule: string }[] };
    expect(findings.some((f) => f.rule === 'sheet-size')).toBe(true);
  });
});
