import type { Process } from '../process/process.js';
import { readProcess } from '../process/read-process.js';
import { STARTING } from '../process/starting.js';
import { type Position, SceneError } from '../scene/problem.js';
import { PROCESSES, type Scene } from '../scene/scene.js';

/** The process that a book is made by. */
export interface OpenedProcess {
  readonly process: Process;
  /** The settings file as it was named; null for a process of ours. */
  readonly processFile: string | null;
}

export type OpenText = (name: string) => Promise<string>;

/**
 * The process of this name: one of ours, or a settings file.
 * @throws what `open` rejects with, or a SceneError with all that is wrong in the file.
 */
export async function openProcess(name: string, open: OpenText): Promise<OpenedProcess> {
  const ours = PROCESSES.find((known) => known === name);
  if (ours !== undefined) return { process: STARTING[ours], processFile: null };
  return { process: readProcess(await open(name), name), processFile: name };
}

/** The process that the scene names; a file that cannot be opened is told at the scene's line. */
export async function sceneProcess(
  { process }: Scene,
  open: OpenText,
  file: string,
  at: Position,
): Promise<OpenedProcess> {
  try {
    return await openProcess(process, open);
  } catch (error) {
    // What is wrong inside the settings file has its place there.
    if (error instanceof SceneError) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new SceneError(file, [{ path: ['process'], ...at, message: `process: ${why}` }]);
  }
}
