import type { Command } from 'commander';
import {
  BAD_INPUT,
  DONE,
  FOUND_ERRORS,
  hasErrors,
  printFindings,
  progressLine,
  say,
  sayJson,
} from './output.js';
import { chosenOf, processOption } from './process-option.js';
import { designFrom, sceneFile } from './scene-file.js';

export function checkCommand(program: Command): void {
  processOption(program.command('check'))
    .summary('look for what would go wrong, write nothing')
    .description(
      'Designs the book and reports what a careful maker would notice before cutting. Writes no files.',
    )
    .argument('<scene>', 'scene file, or a folder with a scene.yaml')
    .option('--json', 'print the findings as JSON')
    .addHelpText(
      'after',
      `\nExit code: ${DONE} nothing wrong, ${FOUND_ERRORS} errors found, ${BAD_INPUT} scene not usable.`,
    )
    .action(async (scene: string, options: { json?: boolean; process?: string }) => {
      const file = await sceneFile(scene);
      const progress = progressLine(options.json === true);
      const { findings } = await designFrom(file, progress.step, chosenOf(options)).finally(
        progress.end,
      );
      if (options.json) sayJson({ scene: file, findings });
      else printFindings(findings, say);
      process.exitCode = hasErrors(findings) ? FOUND_ERRORS : DONE;
    });
}
