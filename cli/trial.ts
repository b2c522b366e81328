import { existsSync } from 'node:fs';
import path from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import {
  BOUNDS,
  cautionsFor,
  DEFAULTS,
  enterResults,
  isTrialEntry,
  makeTrial,
  openProcess,
  type Process,
  type ProcessName,
  readLength,
  readProcess,
  resultsOf,
  SHEET_NAMES,
  sheetSize,
  suggestion,
  TRIAL_CALIPER_MM,
} from '../src/index.js';
import { readText, replaceFolder, writeFileWhole } from '../src/output/write-folder.js';
import { BAD_INPUT, complain, FOUND_ERRORS, say } from './output.js';
import { processArgument } from './process-option.js';

interface TrialArguments {
  readonly out: string;
  readonly sheet: string;
  readonly caliper: number;
  readonly ball: number;
}

export function trialCommand(program: Command): void {
  const trial = program
    .command('trial')
    .summary('write test cards for a machine, and enter what they show')
    .description(
      'Writes trial cards for a process, prepared and nested just as a book is, and trial.txt, which ' +
        'says what to do with each, what to measure and how to enter it.',
    )
    .argument('[process]', 'knife, laser, press or a settings file', processArgument)
    .option('--out <folder>', 'where to write', 'trial')
    .option('--sheet <name>', 'the sheet that the card comes in', sheetArgument, DEFAULTS.sheet)
    .option(
      '--caliper <length>',
      'how thick the card is',
      lengthArgument(BOUNDS.caliper),
      TRIAL_CALIPER_MM,
    )
    .option(
      '--ball <length>',
      'diameter of the embossing ball',
      lengthArgument(BOUNDS.ball),
      DEFAULTS.ball,
    )
    .action((process: string | undefined, options: TrialArguments) =>
      writeCards(process ?? DEFAULTS.process, options),
    );
  trial
    .command('enter')
    .summary('write what trial cards showed into a settings file')
    .description(
      'Writes results into a settings file; its other lines and your comments stay. Lengths are in ' +
        'mm or carry a unit. Without results it lists what can be entered.',
    )
    .argument('<file>', 'the settings file')
    .argument('[results...]', 'results such as comb=98.4 web=0.8')
    .action(enter);
}

async function writeCards(name: string, options: TrialArguments): Promise<void> {
  const { process: made, processFile } = await openProcess(name, readText);
  const { files, sheets, problems } = await makeTrial({
    process: made,
    processFile,
    sheet: sheetSize(options.sheet)!,
    caliperMm: options.caliper,
    ballMm: options.ball,
  });
  if (problems.length > 0) {
    complain(`${problems[0].message} Name a larger sheet with --sheet. Nothing was written.`);
    process.exitCode = FOUND_ERRORS;
    return;
  }
  if (existsSync(path.join(options.out, 'manifest.json'))) {
    complain(`${options.out} holds a book, whose sheets must not be mixed up with trial cards.`);
    process.exitCode = BAD_INPUT;
    return;
  }
  await replaceFolder(options.out, files, isTrialEntry);
  const count = sheets === 1 ? 'one sheet' : `${sheets} sheets`;
  say(`Trial cards for ${made.name} on ${count}, written to ${options.out}.`);
  sayCautions(made);
  say(`${path.join(options.out, 'trial.txt')} says what to do with each card.`);
}

function sayCautions(made: Process): void {
  say('Take care:');
  for (const caution of cautionsFor(made)) say(`- ${caution}`);
}

async function enter(file: string, results: readonly string[]): Promise<void> {
  const text = await readText(file);
  if (results.length === 0) {
    listResults(readProcess(text, file).kind, file);
    return;
  }
  const entered = enterResults(text, file, results);
  if (entered.text !== text) await writeFileWhole(file, Buffer.from(entered.text));
  for (const line of entered.says) say(line);
  say(entered.text === text ? `${file} stays as it is.` : `Written to ${file}.`);
}

function listResults(kind: ProcessName, file: string): void {
  say(`What the trial cards of a ${kind} show, and what each result sets:`);
  for (const { name, measure, sets, example } of resultsOf(kind)) {
    say(`  ${`${name}=${example(kind)}`.padEnd(14)}${measure}`);
    say(
      `  ${''.padEnd(14)}${sets === '' ? 'tells you what it means; sets nothing' : `sets ${sets}`}`,
    );
  }
  say(`Several can be entered at once: raree trial enter ${file} web=... hole=...`);
}

function sheetArgument(said: string): string {
  if (sheetSize(said) !== undefined) return said;
  throw new InvalidArgumentError(
    `There is no sheet "${said}"${suggestion(said, SHEET_NAMES)} There is: ${SHEET_NAMES.join(', ')}.`,
  );
}

const lengthArgument =
  ({ min, max }: { readonly min: number; readonly max: number }) =>
  (said: string): number => {
    const reading = readLength(said, 'mm');
    if ('problem' in reading) throw new InvalidArgumentError(reading.problem);
    if (reading.value >= min && reading.value <= max) return reading.value;
    throw new InvalidArgumentError(`It may be ${min} to ${max} mm.`);
  };
