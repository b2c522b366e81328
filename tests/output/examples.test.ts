import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { designBook, makeBook, manifestSchema } from '../../src/index.js';
import { pngOf } from '../../src/output/raster.js';

const ROOT = path.resolve(import.meta.dirname, '../..');
const EXAMPLES = [
  { name: 'night-train', own: ['moon.svg', 'scene.yaml'] },
  { name: 'tide-pool', own: ['scene.yaml'] },
];

describe.each(EXAMPLES)('the example "$name"', ({ name, own }) => {
  const folder = path.join(ROOT, 'out-examples', name);
  const read = (file: string) => readFileSync(path.join(folder, ...file.split('/')), 'utf8');

  it('passes its own check, and is on disk as the code makes it', async () => {
    const designed = await designBook(read('scene.yaml'), 'scene.yaml', {
      drawing: async (drawing) =>
        drawing.endsWith('.svg')
          ? read(drawing)
          : readFileSync(path.join(ROOT, 'shapes', `${drawing}.svg`), 'utf8'),
    });
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
