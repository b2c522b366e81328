import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { VERSION } from '../../cli/version.js';
import { FAMILIES, manifestSchema } from '../../src/index.js';
import { MAIN, ROOT, raree, testFolder } from './raree.js';

const folder = testFolder();
afterAll(folder.remove);
const at = (...names: string[]) => path.join(folder.at, ...names);

describe('raree', () => {
  it('knows its version and lists its commands', () => {
    const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as {
      version: string;
    };
    expect(VERSION).toBe(version);
    expect(raree(['--version'], folder.at)).toMatchObject({ code: 0, out: `${version}\n` });
    const help = raree(['--help'], folder.at);
    expect(help.code).toBe(0);
    for (const name of ['start', 'check', 'make', 'shapes', 'trial'])
      expect(help.out).toContain(name);
  });

  it('is not upset when nobody reads its output to the end', async () => {
    const child = spawn(process.execPath, [MAIN, 'shapes']);
    child.stdout.destroy();
    let said = '';
    child.stderr.on('data', (data) => {
      said += data;
    });
    const [code] = await once(child, 'close');
    expect([code, said]).toEqual([0, '']);
  });
});

describe('raree start', () => {
  it.each(['towpath', 'courtyard', 'plain'])(
    '%s writes a scene that makes a sound book',
    (name) => {
      const started = raree(['start', name, '--template', name], folder.at);
      expect(started).toMatchObject({ code: 0, err: '' });
      expect(existsSync(at(name, 'scene.schema.json'))).toBe(true);
      const made = raree(['make', name], folder.at);
      expect(made.err).toBe('');
      expect(made.code).toBe(0);
      expect(made.out).toMatch(/Written to .*made: start with preview\.png/);
      expect(readdirSync(at(name, 'made'))).toEqual(
        expect.arrayContaining(['manifest.json', 'panels', 'preview.png', 'sheets', 'spine']),
      );
    },
  );

  it('asks for the format when told to, and keeps the answers', () => {
    const answers = ['Pool', 'in', '7 in', '', '4', '', 'circle', 'laser'].join('\n');
    const { code, err } = raree(['start', 'asked', '--ask'], folder.at, `${answers}\n`);
    expect(err).toMatch(/How wide is a panel\? \[7 1\/2 in\]/);
    expect(code).toBe(0);
    const text = readFileSync(at('asked', 'scene.yaml'), 'utf8');
    expect(text).toMatch(/width: 7 in, height: 5 1\/4 in/);
    expect(text).toMatch(/shape: circle/);
    expect(text).toMatch(/process: laser/);
  });

  it('never writes over a scene', () => {
    mkdirSync(at('mine'));
    writeFileSync(at('mine', 'scene.yaml'), 'title: mine\n');
    const { code, err } = raree(['start', 'mine'], folder.at);
    expect(code).toBe(2);
    expect(err).toMatch(/it exists already/);
    expect(readFileSync(at('mine', 'scene.yaml'), 'utf8')).toBe('title: mine\n');
  });

  it('knows the nearest template', () => {
    const { code, err } = raree(['start', 'x', '--template', 'towpth'], folder.at);
    expect(code).toBe(2);
    expect(err).toMatch(/did you mean "towpath"/);
  });
});

describe('raree make', () => {
  it('makes a good book from three lines', () => {
    writeFileSync(at('three.yaml'), 'title: Reeds\npanels: 4\nscenery: [grass]\n');
    const { code, out } = raree(['make', 'three.yaml', '--out', 'three', '--json'], folder.at);
    expect(code).toBe(0);
    const manifest = manifestSchema.parse(JSON.parse(out));
    expect(manifest.book.windows).toHaveLength(3);
    expect(manifest.pieces.every((p) => p.components === 1)).toBe(true);
    expect(JSON.parse(readFileSync(at('three', 'manifest.json'), 'utf8'))).toEqual(manifest);
  });

  it('keeps a scene file that lies in the output folder', () => {
    mkdirSync(at('beside'));
    writeFileSync(at('beside', 'scene.yaml'), 'title: Beside\npanels: 2\nscenery: []\n');
    for (let time = 0; time < 2; time++) {
      expect(raree(['make', 'beside', '--out', 'beside'], folder.at).code).toBe(0);
      expect(readFileSync(at('beside', 'scene.yaml'), 'utf8')).toContain('Beside');
    }
  });
});

describe('raree make, several books at once', () => {
  const make = (...options: string[]) =>
    raree(['make', 'class.yaml', '--json', ...options], folder.at);

  it('lays out all copies, and the same again with the effort that it names', () => {
    writeFileSync(at('class.yaml'), 'title: Class\npanels: 3\nscenery: []\n');
    const timed = make('--copies', '3', '--nest-time', '0.2');
    expect(timed.code).toBe(0);
    const { nesting, sheets, pieces } = manifestSchema.parse(JSON.parse(timed.out));
    expect(nesting.copies).toBe(3);
    expect(nesting.effort).toBeGreaterThanOrEqual(20);
    const placed = sheets.flatMap((sheet) => sheet.pieces);
    expect(placed).toHaveLength(3 * pieces.reduce((sum, { copies }) => sum + copies, 0));
    const again = make('--copies', '3', '--nest-effort', String(nesting.effort));
    expect(manifestSchema.parse(JSON.parse(again.out))).toMatchObject({ nesting, sheets });
  });

  it.each([
    ['--copies', '0'],
    ['--copies', 'many'],
    ['--nest-effort', '2.5'],
    ['--nest-time', 'soon'],
  ])('refuses %s %s', (option, value) => {
    writeFileSync(at('class.yaml'), 'title: Class\npanels: 3\nscenery: []\n');
    const { code, err } = make(option, value);
    expect(code).toBe(2);
    expect(err).toMatch(/Give /);
  });
});

describe('raree shapes', () => {
  it('lists every kind of scenery', () => {
    const { code, out } = raree(['shapes'], folder.at);
    expect(code).toBe(0);
    for (const { name } of FAMILIES) expect(out).toContain(name);
  });

  it('prints an array of objects with name, kind and parameters', () => {
    const { out } = raree(['shapes', '--json'], folder.at);
    const list = JSON.parse(out) as { name: string; kind: string; parameters: object }[];
    const scenery = list.filter(({ kind }) => kind === 'scenery');
    expect(scenery.map((s) => s.name)).toEqual(FAMILIES.map((f) => f.name));
    for (const shape of scenery) {
      expect(Object.keys(shape.parameters).length).toBeGreaterThan(0);
    }
    const motifs = list.filter(({ kind }) => kind === 'motif').map(({ name }) => name);
    expect(motifs.length).toBeGreaterThanOrEqual(60);
    expect(motifs).toContain('shore/crab');
    expect(scenery.length + motifs.length).toBe(list.length);
  });

  it('makes a book with a drawing of the library, and names the nearest where there is none', () => {
    const scene = (file: string) =>
      `scenery: [{ element: motif, file: ${file}, width: 50, height: 50 }]\npanels: 2\n`;
    writeFileSync(at('crab.yaml'), scene('shore/crab'));
    expect(raree(['check', 'crab.yaml'], folder.at).code).toBe(0);
    writeFileSync(at('carb.yaml'), scene('shore/carb'));
    const { code, err } = raree(['check', 'carb.yaml'], folder.at);
    expect(code).toBe(2);
    expect(err).toMatch(/carb\.yaml:1:35: file: .*did you mean "shore\/crab"/);
  });

  it('tells one of them whole, and knows the nearest name', () => {
    expect(raree(['shapes', 'tree'], folder.at).out).toMatch(
      /habit: broadleaf \| conifer \| willow/,
    );
    const { code, err } = raree(['shapes', 'tre'], folder.at);
    expect(code).toBe(2);
    expect(err).toMatch(/did you mean "tree"/);
  });

  it('draws them', () => {
    const { code } = raree(['shapes', 'water', '--picture', 'water.png'], folder.at);
    expect(code).toBe(0);
    expect([...readFileSync(at('water.png')).subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
  });
});
