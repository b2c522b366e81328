#!/usr/bin/env node
import { Command, CommanderError } from 'commander';
import { ResultError, SceneError } from '../src/index.js';
import { FolderError } from '../src/output/write-folder.js';
import { checkCommand } from './check.js';
import { makeCommand } from './make.js';
import { BAD_INPUT, complain, sayJson } from './output.js';
import { shapesCommand } from './shapes.js';
import { startCommand } from './start.js';
import { trialCommand } from './trial.js';
import { VERSION } from './version.js';

// Whoever reads our output may stop early, as `head` does: the work itself goes on.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const program = new Command('raree')
  .description('Designs layered concertina books from card: one scene file in, a whole book out.')
  .version(VERSION)
  .option('--verbose', 'show where in the program an error came from')
  .exitOverride()
  .showHelpAfterError('(raree --help lists the commands)');

startCommand(program);
checkCommand(program);
makeCommand(program);
shapesCommand(program);
trialCommand(program);

try {
  await program.parseAsync();
} catch (error) {
  process.exitCode = explain(error);
}

function explain(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : BAD_INPUT;
  if (error instanceof SceneError) {
    if (process.argv.includes('--json')) {
      sayJson({ scene: error.file, problems: error.problems });
    }
    complain(error.message);
  } else if (error instanceof FolderError || error instanceof ResultError) {
    complain(error.message);
  } else {
    complain(`Something went wrong inside the program: ${(error as Error).message}`);
  }
  if (program.opts().verbose) complain(String((error as Error).stack));
  return BAD_INPUT;
}
