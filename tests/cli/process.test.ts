import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { manifestSchema } from '../../src/index.js';
import { raree, testFolder } from './raree.js';

const folder = testFolder();
afterAll(folder.remove);
const at = (...names: string[]) => path.join(folder.at, ...names);
const read = (...names: string[]) => readFileSync(at(...names), 'utf8');

const scene = (process: string) => `title: Pool\nprocess: ${process}\npanels: 2\nscenery: []\n`;

beforeAll(() => {
  mkdirSync(at('pool', 'process'), { recursive: true });
  writeFileSync(
    at('pool', 'process', 'shed.yaml'),
    'kind: laser\nkerf: 0.15\noperations: { cut: { stroke: "#123456" } }\n',
  );
  writeFileSync(at('pool', 'scene.yaml'), scene('process/shed.yaml'));
  writeFileSync(at('mat.yaml'), 'kind: knife\n');
});

const made = (...args: string[]) => {
  const { code, out, err } = raree(['make', 'pool', '--json', ...args], folder.at);
  expect(err).toBe('');
  expect(code).toBe(0);
  return manifestSchema.parse(JSON.parse(out));
};

describe('a settings file', () => {
  it("is found from the scene's folder, makes the book, and stands in the manifest", () => {
    expect(made()).toMatchObject({ process: 'laser', processFile: 'process/shed.yaml' });
    expect(read('pool', 'made', 'sheets', 'sheet-01.svg')).toContain('stroke="#123456"');
  });

  it('of the command line comes before the one of the scene, from the current folder', () => {
    expect(made('--process', 'mat.yaml')).toMatchObject({
      process: 'knife',
      processFile: 'mat.yaml',
    });
    expect(read('pool', 'made', 'sheets', 'sheet-01.svg')).not.toContain('stroke="#123456"');
    const press = made('--process', 'press');
    expect(press.process).toBe('press');
    expect(press).not.toHaveProperty('processFile');
  });

  it("gives way to the scene's own strokes", () => {
    writeFileSync(
      at('pool', 'strokes.yaml'),
      `${scene('process/shed.yaml')}strokes: { cut: "#654321" }\n`,
    );
    expect(raree(['make', 'pool/strokes.yaml'], folder.at).code).toBe(0);
    expect(read('pool', 'made', 'sheets', 'sheet-01.svg')).toContain('stroke="#654321"');
    expect(read('pool', 'made', 'sheets', 'sheet-01.svg')).not.toContain('stroke="#123456"');
  });

  const fails = (text: string, says: RegExp, ...args: string[]) => {
    writeFileSync(at('pool', 'bad.yaml'), text);
    const { code, out, err } = raree(['check', 'pool/bad.yaml', ...args], folder.at);
    expect(err).toMatch(says);
    expect(err).not.toMatch(/inside the program/);
    expect(out).toBe('');
    expect(code).toBe(2);
  };

  it('that is not there is told at the line of the scene, with the cure', () => {
    fails(
      scene('process/shedd.yaml'),
      /bad\.yaml:2:10: process: there is no settings file "process\/shedd\.yaml".*raree start/,
    );
  });

  it('that is wrong is told with its own lines, all at once', () => {
    writeFileSync(at('pool', 'process', 'wrong.yaml'), 'kind: laser\nkref: 1\nkerf: 7\n');
    fails(
      scene('process/wrong.yaml'),
      /process\/wrong\.yaml:2:1: "kref".*"kerf"\?.*\n.*wrong\.yaml:3:7: kerf: 7 is too large/,
    );
  });

  it('of the wrong name is told with the nearest of ours', () => {
    fails(
      scene('lasre'),
      /bad\.yaml:2:10: process: "lasre" is not known here; did you mean "laser"\? Allowed: knife, laser, press, or the path of a settings file/,
    );
    fails(
      scene('4'),
      /bad\.yaml:2:10: process: 4 will not do; give one of knife, laser, press, or the path/,
    );
    fails(scene('knife'), /"lasre" is not known here; did you mean "laser"/, '--process', 'lasre');
    fails(scene('knife'), /nowhere\.yaml: there is no such file/, '--process', 'nowhere.yaml');
  });
});

describe('raree start --process', () => {
  it('writes starting values that the scene names, and their schema', () => {
    const started = raree(
      ['start', 'lock', '--process', 'knife', '--template', 'plain'],
      folder.at,
    );
    expect(started).toMatchObject({ code: 0, err: '' });
    expect(read('lock', 'scene.yaml')).toMatch(/^process: process\/knife\.yaml /m);
    expect(read('lock', 'process', 'knife.yaml')).toMatch(
      /^# yaml-language-server: \$schema=\.\/process\.schema\.json\n/,
    );
    expect(JSON.parse(read('lock', 'process', 'process.schema.json'))).toHaveProperty('anyOf');
    expect(raree(['check', 'lock'], folder.at)).toMatchObject({ code: 0, err: '' });
  });

  it('keeps settings that are there, and writes none without being asked', () => {
    mkdirSync(at('mine', 'process'), { recursive: true });
    writeFileSync(at('mine', 'process', 'laser.yaml'), 'kind: laser\nkerf: 0.1\n');
    const { out, code } = raree(['start', 'mine', '--process', 'laser'], folder.at);
    expect(code).toBe(0);
    expect(out).toMatch(/Kept .*laser\.yaml, which was there before/);
    expect(read('mine', 'process', 'laser.yaml')).toBe('kind: laser\nkerf: 0.1\n');
    expect(raree(['start', 'plain'], folder.at).code).toBe(0);
    expect(existsSync(at('plain', 'process'))).toBe(false);
  });

  it('does not ask what it has been told', () => {
    const { err, code } = raree(['start', 'asked', '--ask', '--process', 'press'], folder.at, '\n');
    expect(code).toBe(0);
    expect(err).not.toMatch(/Cut by knife/);
    expect(read('asked', 'scene.yaml')).toContain('process: process/press.yaml');
    expect(raree(['start', 'x', '--process', 'lasre'], folder.at).code).toBe(2);
  });
});

describe('raree trial', () => {
  it('writes cards, what to do with them, and says what to take care of', () => {
    const { code, out, err } = raree(
      ['trial', 'pool/process/shed.yaml', '--out', 'cards'],
      folder.at,
    );
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/Trial cards for shed on one sheet/);
    expect(out).toMatch(/Never leave a running laser/);
    expect(read('cards', 'trial.txt')).toContain('raree trial enter pool/process/shed.yaml');
    expect(existsSync(at('cards', 'sheets', 'sheet-01.svg'))).toBe(true);
    expect(existsSync(at('cards', 'trial', 'comb.svg'))).toBe(true);
  });

  it('is for a knife where nothing else is said, on the card that is said', () => {
    const { code, out } = raree(['trial', '--sheet', 'Letter', '--caliper', '0.4'], folder.at);
    expect(code).toBe(0);
    expect(out).toMatch(/Trial cards for knife/);
    expect(read('trial', 'trial.txt')).toMatch(/card 0\.4 mm thick in sheets Letter/);
    expect(read('trial', 'sheets', 'sheet-01.svg')).toContain('width="215.9mm"');
  });

  it('refuses what cannot be', () => {
    const refused = (args: string[], says: RegExp, wanted: number) => {
      const { code, err } = raree(['trial', ...args, '--out', 'none'], folder.at);
      expect(err).toMatch(says);
      expect(code).toBe(wanted);
      expect(existsSync(at('none'))).toBe(false);
    };
    refused(['lasre'], /did you mean "laser"/, 2);
    refused(['nowhere.yaml'], /nowhere\.yaml: there is no such file/, 2);
    refused(['--sheet', 'A44'], /no sheet "A44"; did you mean "A4"/, 2);
    refused(['--caliper', '30'], /0\.05 to 2 mm/, 2);
    refused(['--ball', 'round'], /"round" is not a length/, 2);
    refused(['--sheet', 'A6'], /square measures 100 x 100 mm.*--sheet/, 1);
    writeFileSync(at('kref.yaml'), 'kind: laser\nkref: 1\n');
    refused(['kref.yaml'], /kref\.yaml:2:1: "kref"/, 2);
  });

  it('does not mix cards into a book', () => {
    made('--out', 'book');
    const before = read('book', 'sheets', 'sheet-01.svg');
    const { code, err } = raree(['trial', '--out', 'book'], folder.at);
    expect(code).toBe(2);
    expect(err).toMatch(/book holds a book/);
    expect(read('book', 'sheets', 'sheet-01.svg')).toBe(before);
  });
});

describe('raree trial enter', () => {
  const HAND = '# my own\nkind: laser\nkerf: 0.2  # to be measured\n';
  const enter = (...results: string[]) =>
    raree(['trial', 'enter', 'hand.yaml', ...results], folder.at);

  it('explains itself', () => {
    writeFileSync(at('hand.yaml'), HAND);
    const { code, out } = enter();
    expect(code).toBe(0);
    expect(out).toMatch(/comb=98\.4 .*10 strips pushed together\n +sets kerf/);
    expect(out).not.toMatch(/blade=/);
    expect(read('hand.yaml')).toBe(HAND);
  });

  it('writes the file and says old and new', () => {
    writeFileSync(at('hand.yaml'), HAND);
    const { code, out, err } = enter('comb=98.4', 'fit=0.1');
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/kerf: 0\.2 mm -> 0\.16 mm/);
    expect(read('hand.yaml')).toBe(
      '# my own\nkind: laser\nkerf: 0.16 mm  # to be measured; measured: 10 strips came to 98.4 mm\n',
    );
  });

  it('says when nothing is to be written', () => {
    writeFileSync(at('hand.yaml'), HAND);
    expect(enter('square=99.9').out).toMatch(/true to size.*\nhand\.yaml stays as it is/);
    expect(read('hand.yaml')).toBe(HAND);
  });

  it('writes nothing when one of several cannot be', () => {
    writeFileSync(at('hand.yaml'), HAND);
    const { code, out, err } = enter('web=0.8', 'comb=103');
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/comb: "103": the strips .* cannot have grown/);
    expect(read('hand.yaml')).toBe(HAND);
    expect(raree(['trial', 'enter', 'nowhere.yaml', 'web=1'], folder.at)).toMatchObject({
      code: 2,
    });
    expect(raree(['trial', 'enter'], folder.at).code).toBe(2);
  });
});
