import { existsSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline/promises';
import { type Command, Option } from 'commander';
import {
  FAMILIES,
  nearestWord,
  PROCESSES,
  type ProcessName,
  processJsonSchema,
  processText,
  readScene,
  STARTING,
  sceneJsonSchema,
} from '../src/index.js';
import { writeFileWhole, writeNewFile } from '../src/output/write-folder.js';
import { BAD_INPUT, complain, say } from './output.js';
import { type Answers, DEFAULT_ANSWERS, sceneText, TEMPLATES } from './templates.js';

const QUESTIONS: readonly { readonly key: keyof Answers; readonly ask: string }[] = [
  { key: 'title', ask: 'What is the book called?' },
  { key: 'unit', ask: 'Which unit do you measure in (mm, cm, in)?' },
  { key: 'width', ask: 'How wide is a panel?' },
  { key: 'height', ask: 'How high is a panel?' },
  { key: 'panels', ask: 'How many panels, the backdrop counted?' },
  { key: 'spacing', ask: 'How far apart are they in the open book?' },
  {
    key: 'shape',
    ask: 'Which window (rectangle, rounded, arch, pointed, circle, ellipse)?',
  },
  { key: 'process', ask: 'Cut by knife, laser or press?' },
];

export function startCommand(program: Command): void {
  const list = Object.entries(TEMPLATES).map(([name, t]) => `  ${name.padEnd(12)}${t.says}`);
  program
    .command('start')
    .summary('begin a new scene')
    .description(
      'Writes a new scene.yaml to work on, and the schema that lets editors complete it.',
    )
    .argument('[folder]', 'where to put it', '.')
    .option('--template <name>', 'what to start from', 'towpath')
    .addOption(
      new Option(
        '--process <name>',
        'also write its settings to process/, to be made those of your own machine',
      ).choices(PROCESSES),
    )
    .option('--ask', 'ask for the format first')
    .addHelpText('after', `\nTemplates:\n${list.join('\n')}`)
    .action(start);
}

interface StartOptions {
  readonly template: string;
  readonly process?: ProcessName;
  readonly ask?: boolean;
}

async function start(
  folder: string,
  { template, ask, process: kind }: StartOptions,
): Promise<void> {
  if (!Object.hasOwn(TEMPLATES, template)) {
    const names = Object.keys(TEMPLATES);
    const near = nearestWord(template, names);
    complain(
      `There is no template called "${template}"${near ? `; did you mean "${near}"?` : '.'} There is: ${names.join(', ')}.`,
    );
    process.exitCode = BAD_INPUT;
    return;
  }
  const usual = kind === undefined ? {} : { process: `process/${kind}.yaml` };
  const answers = ask ? await askForFormat(usual) : { ...DEFAULT_ANSWERS, ...usual };
  const text = sceneText(answers, template);
  const file = path.join(folder, 'scene.yaml');
  // An answer that makes no scene is told now, with its line, before anything is written.
  readScene(text, { file, elements: FAMILIES });
  await writeNewFile(file, text);
  await writeNewFile(
    path.join(folder, 'scene.schema.json'),
    `${JSON.stringify(sceneJsonSchema(FAMILIES), null, 2)}\n`,
  );
  if (kind !== undefined) await writeSettings(path.join(folder, 'process'), kind);
  say(`Wrote ${file}. Look it over, then: raree make ${file}`);
}

/** Our starting values as a file, and the schema that lets editors complete it. */
async function writeSettings(folder: string, kind: ProcessName): Promise<void> {
  const file = path.join(folder, `${kind}.yaml`);
  if (existsSync(file)) {
    say(`Kept ${file}, which was there before.`);
    return;
  }
  const schema = '# yaml-language-server: $schema=./process.schema.json\n';
  await writeNewFile(file, `${schema}${processText(STARTING[kind])}`);
  const jsonSchema = `${JSON.stringify(processJsonSchema(), null, 2)}\n`;
  await writeFileWhole(path.join(folder, 'process.schema.json'), Buffer.from(jsonSchema));
  say(`Wrote ${file}: starting values, until you have measured your own with: raree trial ${file}`);
}

/** Asks on the terminal; an empty answer takes the default, shown in brackets. */
async function askForFormat(known: Partial<Answers>): Promise<Answers> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  // Lines are taken from the stream, not by asking: piped answers come all at once.
  const lines = terminal[Symbol.asyncIterator]();
  const answers: Record<keyof Answers, string> = { ...DEFAULT_ANSWERS, ...known };
  try {
    for (const { key, ask } of QUESTIONS) {
      if (key in known) continue;
      const usual = usualAnswer(key, answers.unit);
      process.stderr.write(`${ask} [${usual}] `);
      const { value, done } = await lines.next();
      const answer = done ? '' : value.trim();
      answers[key] = answer === '' ? usual : answer;
    }
  } finally {
    terminal.close();
  }
  return answers;
}

const LENGTHS: Record<string, Partial<Answers>> = {
  cm: { width: '19', height: '13.5', spacing: '2' },
  in: { width: '7 1/2 in', height: '5 1/4 in', spacing: '3/4 in' },
};

const usualAnswer = (key: keyof Answers, unit: string): string =>
  LENGTHS[unit]?.[key] ?? DEFAULT_ANSWERS[key];
