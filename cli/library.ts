import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The shipped library lies beside the program, whether it runs from its sources or built. */
const FOLDER = ['../shapes', '../../shapes']
  .map((folder) => fileURLToPath(new URL(folder, import.meta.url)))
  .find((folder) => existsSync(folder));

/** The motifs of the library as scenes name them, such as `shore/crab`, theme by theme. */
export async function libraryMotifs(): Promise<string[]> {
  if (FOLDER === undefined) return [];
  const found = await readdir(FOLDER, { recursive: true });
  return found
    .filter((file) => file.endsWith('.svg'))
    .map((file) => file.slice(0, -'.svg'.length).split(path.sep).join('/'))
    .sort();
}

/** Where a drawing is: `shore/crab` is the library's, what ends in `.svg` is in the scene's folder. */
export function drawingPath(name: string, sceneFolder: string): string {
  if (name.endsWith('.svg') || FOLDER === undefined) return path.resolve(sceneFolder, name);
  return path.join(FOLDER, ...`${name}.svg`.split('/'));
}
