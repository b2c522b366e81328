import { type Command, InvalidArgumentError } from 'commander';
import { isSettingsFile, PROCESSES, suggestion } from '../src/index.js';
import { readText } from '../src/output/write-folder.js';

/** A process of ours, or the path of a settings file. */
export function processArgument(said: string): string {
  if (PROCESSES.some((ours) => ours === said) || isSettingsFile(said)) return said;
  throw new InvalidArgumentError(
    `"${said}" is not known here${suggestion(said, PROCESSES)} Allowed: ${PROCESSES.join(', ')}, or ` +
      'the path of a settings file that ends in .yaml.',
  );
}

export const processOption = (command: Command): Command =>
  command.option(
    '--process <name>',
    "knife, laser, press or a settings file from this folder, in place of the scene's",
    processArgument,
  );

/** What was chosen, without keys for what was not. */
export const chosenOf = ({ process }: { readonly process?: string }) =>
  process === undefined ? {} : { process };

/** @throws an error that says how to come by a settings file, where there is none of this name. */
export async function settingsText(name: string, file: string): Promise<string> {
  try {
    return await readText(file);
  } catch {
    throw new Error(
      `there is no settings file "${name}" to be read. Name one that there is, from the scene's own ` +
        'folder, or have one written by "raree start FOLDER --process laser".',
    );
  }
}
