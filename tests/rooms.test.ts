import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '..');
/** The flow: a room may import rooms before it, never one after it. Geometry stands before all. */
const FLOW = [
  'geometry',
  'scene',
  'book',
  'scenery',
  'panel',
  'process',
  'sheet',
  'check',
  'output',
];

const sourceFiles = (folder: string): string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => path.join(folder, name))
    .filter((name) => /\.ts$/.test(name) && !name.endsWith('.d.ts'));

const read = (file: string) => readFileSync(path.join(ROOT, file), 'utf8');

const importsOf = (file: string): string[] =>
  [...read(file).matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((m) => m[1]);

const roomOf = (file: string): string => file.split(path.sep)[1];

/** Rooms that a file imports, by resolving its relative imports. */
const roomsImported = (file: string): string[] =>
  importsOf(file)
    .filter((name) => name.startsWith('.'))
    .map((name) => path.join(path.dirname(file), name));

describe('the rooms', () => {
  const files = sourceFiles('src');

  it('are all there', () => {
    expect(files.length).toBeGreaterThan(40);
    for (const room of FLOW) expect(files.some((f) => roomOf(f) === room)).toBe(true);
  });

  it('import only rooms before them in the flow', () => {
    const wrong: string[] = [];
    for (const file of files.filter((f) => roomOf(f) !== 'index.ts')) {
      for (const target of roomsImported(file)) {
        if (!target.startsWith(`src${path.sep}`)) wrong.push(`${file} leaves src: ${target}`);
        else if (FLOW.indexOf(roomOf(target)) > FLOW.indexOf(roomOf(file))) {
          wrong.push(`${file} imports the later room ${target}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it('keep geometry free of every other room', () => {
    for (const file of files.filter((f) => roomOf(f) === 'geometry')) {
      for (const target of roomsImported(file)) expect(roomOf(target)).toBe('geometry');
    }
  });

  it('leave Node to one file of the output room', () => {
    const node = files.filter((f) => importsOf(f).some((name) => name.startsWith('node:')));
    expect(node).toEqual([path.join('src', 'output', 'write-folder.ts')]);
  });

  it('run in a browser: nothing that the public face leads to needs Node or native code', () => {
    const seen = new Set<string>();
    const needs: string[] = [];
    const visit = (file: string): void => {
      if (seen.has(file)) return;
      seen.add(file);
      for (const name of importsOf(file)) {
        if (/^node:|resvg/.test(name)) needs.push(`${file} needs ${name}`);
        if (!name.startsWith('.')) continue;
        visit(path.join(path.dirname(file), name).replace(/\.js$/, '.ts'));
      }
    };
    visit(path.join('src', 'index.ts'));
    expect(seen.size).toBeGreaterThan(40);
    expect(needs).toEqual([]);
  });

  it('leave the console to the commands', () => {
    const noisy = files.filter((f) => /\bconsole\./.test(read(f)));
    expect(noisy).toEqual([]);
  });

  it('draw chance from the seed alone', () => {
    const loose = files.filter((f) => /Math\.random|new Date/.test(read(f)));
    expect(loose).toEqual([]);
  });

  it('keep files short enough to hold one idea', () => {
    const long = [...files, ...sourceFiles('cli')].filter((f) => read(f).split('\n').length > 400);
    expect(long).toEqual([]);
  });
});
