import { stat } from 'node:fs/promises';
import path from 'node:path';
import { type DesignedBook, designBook, type Progress } from '../src/index.js';
import { readText } from '../src/output/write-folder.js';

/** The scene file meant by an argument: the file itself, or `scene.yaml` in the folder named. */
export async function sceneFile(argument: string): Promise<string> {
  const info = await stat(argument).catch(() => null);
  return info?.isDirectory() ? path.join(argument, 'scene.yaml') : argument;
}

export async function designFrom(file: string, progress: Progress): Promise<DesignedBook> {
  return designBook(await readText(file), file, progress);
}
