import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type DesignedBook, type DesignOptions, designBook } from '../../src/output/design-book.js';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** The folder of an example book. */
export const exampleFolder = (name: string): string => path.join(ROOT, 'out-examples', name);

/** An example book designed anew; its files are read from its own folder and the library. */
export function designExample(
  name: string,
  options: Pick<DesignOptions, 'nest' | 'process'> = {},
): Promise<DesignedBook> {
  const read = (file: string): string => readFileSync(path.join(exampleFolder(name), file), 'utf8');
  return designBook(read('scene.yaml'), 'scene.yaml', {
    ...options,
    processFile: async (file) => read(file),
    drawing: async (drawing) =>
      drawing.endsWith('.svg')
        ? read(drawing)
        : readFileSync(path.join(ROOT, 'shapes', `${drawing}.svg`), 'utf8'),
  });
}
