import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import {
  type DesignedBook,
  type DesignOptions,
  designBook,
  nearestWord,
  type Progress,
} from '../src/index.js';
import { readText } from '../src/output/write-folder.js';
import { drawingPath, libraryMotifs } from './library.js';
import { settingsText } from './process-option.js';

/** The scene file meant by an argument: the file itself, or `scene.yaml` in the folder named. */
export async function sceneFile(argument: string): Promise<string> {
  const info = await stat(argument).catch(() => null);
  return info?.isDirectory() ? path.join(argument, 'scene.yaml') : argument;
}

/** What the command line says of a book; a path of `process` is from the current folder. */
type Chosen = Pick<DesignOptions, 'process' | 'nest'>;

export async function designFrom(
  file: string,
  progress: Progress,
  chosen: Chosen = {},
): Promise<DesignedBook> {
  return designBook(await readText(file), file, {
    progress,
    ...chosen,
    processFile: (name) =>
      chosen.process === undefined
        ? settingsText(name, path.resolve(path.dirname(file), name))
        : readText(name),
    drawing: (name) => drawingText(name, path.dirname(file)),
    font: async (name) => {
      // A buffer of its own: what is read may lie in one that others share.
      return new Uint8Array(await readFile(path.resolve(path.dirname(file), name))).buffer;
    },
  });
}

/** @throws an error that names the nearest motif of the library, where none has this name. */
async function drawingText(name: string, folder: string): Promise<string> {
  if (name === '') throw new Error('missing; give an SVG file or a motif of the library');
  try {
    return await readText(drawingPath(name, folder));
  } catch {
    const near = nearestWord(name, await libraryMotifs());
    const guess = near === undefined ? '.' : `; did you mean "${near}"?`;
    throw new Error(
      `there is no drawing "${name}"${guess} Give an SVG file beside the scene, or a motif that "raree shapes" lists.`,
    );
  }
}
