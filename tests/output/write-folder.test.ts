import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FolderError, replaceFolder } from '../../src/output/write-folder.js';

let base: string;
beforeEach(() => {
  base = mkdtempSync(path.join(tmpdir(), 'raree-folder-'));
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

const ours = (entry: string) => entry === 'panels' || entry === 'manifest.json';
const read = (...names: string[]) => readFileSync(path.join(base, ...names), 'utf8');

describe('replacing a folder in one step', () => {
  it('makes a new folder with its sub-folders', async () => {
    await replaceFolder(path.join(base, 'book'), new Map([['panels/panel-01.svg', 'a']]), ours);
    expect(read('book', 'panels', 'panel-01.svg')).toBe('a');
    expect(readdirSync(base)).toEqual(['book']);
  });

  it('replaces what is ours, also files that are no longer made, and keeps what is not', async () => {
    const book = path.join(base, 'book');
    await replaceFolder(
      book,
      new Map([
        ['panels/panel-01.svg', 'old'],
        ['panels/panel-02.svg', 'old'],
      ]),
      ours,
    );
    writeFileSync(path.join(book, 'scene.yaml'), 'title: mine\n');
    await replaceFolder(book, new Map([['panels/panel-01.svg', 'new']]), ours);
    expect(read('book', 'panels', 'panel-01.svg')).toBe('new');
    expect(existsSync(path.join(book, 'panels', 'panel-02.svg'))).toBe(false);
    expect(read('book', 'scene.yaml')).toBe('title: mine\n');
    expect(readdirSync(base)).toEqual(['book']);
  });

  it('refuses a file in the folder’s place and leaves it whole', async () => {
    writeFileSync(path.join(base, 'book'), 'a letter');
    await expect(replaceFolder(path.join(base, 'book'), new Map(), ours)).rejects.toThrow(
      /is a file, not a folder/,
    );
    expect(read('book')).toBe('a letter');
  });

  it('refuses a folder full of other people’s files', async () => {
    const book = path.join(base, 'book');
    mkdirSync(book);
    for (let i = 0; i < 60; i++) writeFileSync(path.join(book, `photo-${i}.txt`), 'x');
    await expect(replaceFolder(book, new Map([['manifest.json', '{}']]), ours)).rejects.toThrow(
      /holds 60 files and folders that are not part of a book/,
    );
    expect(readdirSync(book)).toHaveLength(60);
  });

  it('leaves the old folder whole when writing fails half way', async () => {
    const book = path.join(base, 'book');
    await replaceFolder(book, new Map([['manifest.json', 'old']]), ours);
    // A file and a folder of one name cannot both be written.
    const files = new Map([
      ['panels', 'a file'],
      ['panels/panel-01.svg', 'b'],
    ]);
    await expect(replaceFolder(book, files, ours)).rejects.toThrow(FolderError);
    expect(read('book', 'manifest.json')).toBe('old');
    expect(readdirSync(base)).toEqual(['book']);
  });

  it('puts back the old folder of a run that was killed between its two renames', async () => {
    mkdirSync(path.join(base, '.book-old-0a1b2c3d'));
    writeFileSync(path.join(base, '.book-old-0a1b2c3d', 'scene.yaml'), 'mine');
    await replaceFolder(path.join(base, 'book'), new Map([['manifest.json', 'new']]), ours);
    expect(read('book', 'scene.yaml')).toBe('mine');
    expect(read('book', 'manifest.json')).toBe('new');
  });

  it('touches no folder of another book, however alike its name', async () => {
    const other = path.join(base, '.book-two-old-0a1b2c3d');
    mkdirSync(other);
    utimesSync(other, new Date(0), new Date(0));
    const dead = path.join(base, '.book-new-0a1b2c3d');
    mkdirSync(dead);
    utimesSync(dead, new Date(0), new Date(0));
    await replaceFolder(path.join(base, 'book'), new Map([['manifest.json', '{}']]), ours);
    expect(readdirSync(base).sort()).toEqual(['.book-two-old-0a1b2c3d', 'book']);
  });

  // The superuser may write anywhere, so this can only be seen as an ordinary user.
  it.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
    'says that a folder may not be written (needs an ordinary user)',
    async () => {
      chmodSync(base, 0o500);
      const book = path.join(base, 'book');
      await expect(replaceFolder(book, new Map(), ours)).rejects.toThrow(/may not read or write/);
      chmodSync(base, 0o700);
    },
  );

  it('says that a path leads through a file', async () => {
    writeFileSync(path.join(base, 'letter'), 'x');
    const book = path.join(base, 'letter', 'book');
    await expect(replaceFolder(book, new Map(), ours)).rejects.toThrow(/is a file, not a folder/);
  });
});
