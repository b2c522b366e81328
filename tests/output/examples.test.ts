import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeBook, manifestSchema } from '../../src/index.js';
import { pngOf } from '../../src/output/raster.js';
import { designExample, exampleFolder } from '../support/example-book.js';

const EXAMPLES = [
  { name: 'night-train', own: ['moon.svg', 'process/studio.yaml', 'scene.yaml'] },
  { name: 'tide-pool', own: ['scene.yaml'] },
];

describe.each(EXAMPLES)('the example "$name"', ({ name, own }) => {
  const folder = exampleFolder(name);
  const read = (file: string) => readFileSync(path.join(folder, ...file.split('/')), 'utf8');

  it('passes its own check, and is on disk as the code makes it', async () => {
    const designed = await designExample(name);
    expect(designed.findings.filter(({ severity }) => severity !== 'hint')).toEqual([]);
    const { files, manifest } = await makeBook(designed, pngOf);
    const onDisk = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
      .map((file) => file.split(path.sep).join('/'));
    expect(onDisk.sort()).toEqual([...files.keys(), ...own].sort());
    for (const [file, content] of files) {
      if (typeof content !== 'string' || file === 'manifest.json') continue;
      expect(read(file) === content, file).toBe(true);
    }
    const kept = manifestSchema.parse(JSON.parse(read('manifest.json')));
    expect({ ...kept, timingsMs: {} }).toEqual({ ...manifest, timingsMs: {} });
  });
});
