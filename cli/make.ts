import path from 'node:path';
import type { Command } from 'commander';
import { isOwnEntry, makeBook } from '../src/index.js';
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
import { designFrom, sceneFile } from './scene-file.js';

interface MakeOptions {
  readonly out?: string;
  readonly anyway?: boolean;
  readonly json?: boolean;
}

export function makeCommand(program: Command): void {
  program
    .command('make')
    .summary('write everything needed to cut, fold and glue the book')
    .description(
      'Designs, checks and writes the book. The output folder is replaced in one step; files in it ' +
        'that are not part of a book stay. A scene with errors writes nothing unless --anyway is given.',
    )
    .argument('<scene>', 'scene file, or a folder with a scene.yaml')
    .option('--out <folder>', 'where to write (default: the folder "made" beside the scene file)')
    .option('--anyway', 'write even when the check found errors')
    .option('--json', 'print the manifest as JSON')
    .action(make);
}

async function make(scene: string, options: MakeOptions): Promise<void> {
  const file = await sceneFile(scene);
  const out = options.out ?? path.join(path.dirname(file), 'made');
  const progress = progressLine(options.json === true);
  const designed = await designFrom(file, progress.step).finally(progress.end);
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
      `${manifest.title}: ${panels} panels, ${depthMm} mm deep, ${manifest.sheets.length} sheets of card.`,
    );
    say(`Written to ${out}: start with preview.png and exploded.png, then cut from sheets/.`);
    say(`Check: ${summary(designed.findings)}`);
  }
  process.exitCode = wrong ? FOUND_ERRORS : DONE;
}
