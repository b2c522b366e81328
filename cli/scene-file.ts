import { existsSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type DesignedBook, designBook, type Progress } from '../src/index.js';
import { readText } from '../src/output/write-folder.js';

/** The scene file meant by an argument: the file itself, or `scene.yaml` in the folder named. */
export async function sceneFile(argument: string): Promise<string> {
  const info = await stat(argument).catch(() => null);
  return info?.isDirectory() ? path.join(argument, 'scene.yaml') : argument;
}

export async function designFrom(file: string, progress: Progress): Promise<DesignedBook> {
  return designBook(await readText(file), file, {
    progress,
    drawing: (name) => readText(drawingPath(name, path.dirname(file))),
    font: async (name) => {
      // A buffer of its own: what is read may lie in one that others share.
      return new Uint8Array(await readFile(path.resolve(path.dirname(file), name))).buffer;
    },
  });
}

/** The shipped library lies beside the program, whether it runs from its sources or built. */
const LIBRARY = ['../shapes', '../../shapes']
  .map((folder) => fileURLToPath(new URL(folder, import.meta.url)))
  .find((folder) => existsSync(folder));

/** `shore/crab` is the library's; what ends in `.svg` is a file of the scene's own folder. */
function drawingPath(name: string, folder: string): string {
  if (name.endsWith('.svg') || LIBRARY === undefined) return path.resolve(folder, name);
  return path.join(LIBRARY, `${name}.svg`);
}
