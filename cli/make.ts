import path from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import { isOwnEntry, makeBook, type NestOptions } from '../src/index.js';
import { pngOf } from '../src/output/raster.js';
import { replaceFolder } from '../src/output/write-folder.js';
import {
  complain,
  DONE,
  FOUND_ERRORS,
  hasErrors,
  printFindings,
  progressLine,
  say,
  sayJson,
  summary,
} from './output.js';
import { chosenOf, processOption } from './process-option.js';
import { designFrom, sceneFile } from './scene-file.js';

interface MakeOptions {
  readonly out?: string;
  readonly anyway?: boolean;
  readonly json?: boolean;
  readonly copies?: number;
  readonly nestEffort?: number;
  readonly nestTime?: number;
  readonly process?: string;
}

export function makeCommand(program: Command): void {
  processOption(program.command('make'))
    .summary('write everything needed to cut, fold and glue the book')
    .description(
      'Designs, checks and writes the book. The output folder is replaced in one step; files in it ' +
        'that are not part of a book stay. A scene with errors writes nothing unless --anyway is given.',
    )
    .argument('<scene>', 'scene file, or a folder with a scene.yaml')
    .option('--out <folder>', 'where to write (default: the folder "made" beside the scene file)')
    .option('--copies <number>', 'how many of the whole book to lay out (default: 1)', atLeast(1))
    .option(
      '--nest-effort <number>',
      'changes tried on the first layout of the sheets; the same number gives the same sheets',
      atLeast(0),
    )
    .option(
      '--nest-time <seconds>',
      'go on for so long, round by round, looking for a layout on fewer sheets',
      secondsOf,
    )
    .option('--anyway', 'write even when the check found errors')
    .option('--json', 'print the manifest as JSON')
    .action(make);
}

async function make(scene: string, options: MakeOptions): Promise<void> {
  const file = await sceneFile(scene);
  const out = options.out ?? path.join(path.dirname(file), 'made');
  const progress = progressLine(options.json === true);
  const designed = await designFrom(file, progress.step, {
    ...chosenOf(options),
    nest: nestOptions(options),
  }).finally(progress.end);
  const wrong = hasErrors(designed.findings);
  if (wrong && !options.anyway) {
    if (options.json) sayJson({ scene: file, written: false, findings: designed.findings });
    else printFindings(designed.findings, complain);
    complain('Nothing was written. Mend the errors, or write it all the same with --anyway.');
    process.exitCode = FOUND_ERRORS;
    return;
  }
  const { files, manifest } = await makeBook(designed, pngOf, progress.step).finally(progress.end);
  await replaceFolder(out, files, isOwnEntry);
  if (options.json) sayJson(manifest);
  else {
    const { panels, depthMm } = manifest.book;
    say(
      `${manifest.title}: ${panels} panels, ${depthMm} mm deep, ${manifest.sheets.length} sheets of card${forCopies(manifest.nesting.copies)}.`,
    );
    say(`Written to ${out}: start with preview.png and exploded.png, then cut from sheets/.`);
    if (options.nestTime !== undefined) {
      const { effort } = manifest.nesting;
      say(
        `The sheets took effort ${effort}: --nest-effort ${effort} lays them out like this again.`,
      );
    }
    say(`Check: ${summary(designed.findings)}`);
  }
  process.exitCode = wrong ? FOUND_ERRORS : DONE;
}

const forCopies = (copies: number): string => (copies > 1 ? ` for ${copies} books` : '');

function nestOptions({ copies, nestEffort, nestTime }: MakeOptions): Partial<NestOptions> {
  return {
    ...(copies === undefined ? {} : { copies }),
    ...(nestEffort === undefined ? {} : { effort: nestEffort }),
    ...(nestTime === undefined ? {} : { goOn: forSeconds(nestTime) }),
  };
}

/** True for so long from the first time that it is asked. */
function forSeconds(seconds: number): () => boolean {
  let since: number | undefined;
  return () => {
    since ??= performance.now();
    return performance.now() - since < seconds * 1000;
  };
}

/** Reads a whole number. */
const atLeast =
  (least: number) =>
  (text: string): number => {
    const value = Number(text);
    if (Number.isInteger(value) && value >= least) return value;
    throw new InvalidArgumentError(`Give a whole number of ${least} or more.`);
  };

function secondsOf(text: string): number {
  const value = Number(text);
  if (value >= 0 && value < Infinity) return value;
  throw new InvalidArgumentError('Give seconds, such as 30.');
}
