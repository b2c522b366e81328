import path from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { Command } from 'commander';
import { FAMILIES, nearestWord, readScene, sceneJsonSchema } from '../src/index.js';
import { writeNewFile } from '../src/output/write-folder.js';
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
    .option('--ask', 'ask for the format first')
    .addHelpText('after', `\nTemplates:\n${list.join('\n')}`)
    .action(start);
}

async function start(
  folder: string,
  options: { readonly template: string; readonly ask?: boolean },
): Promise<void> {
  if (!Object.hasOwn(TEMPLATES, options.template)) {
    const names = Object.keys(TEMPLATES);
    const near = nearestWord(options.template, names);
    complain(
      `There is no template called "${options.template}"${near ? `; did you mean "${near}"?` : '.'} There is: ${names.join(', ')}.`,
    );
    process.exitCode = BAD_INPUT;
    return;
  }
  const answers = options.ask ? await askForFormat() : DEFAULT_ANSWERS;
  const text = sceneText(answers, options.template);
  const file = path.join(folder, 'scene.yaml');
  // An answer that makes no scene is told now, with its line, before anything is written.
  readScene(text, { file, elements: FAMILIES });
  await writeNewFile(file, text);
  await writeNewFile(
    path.join(folder, 'scene.schema.json'),
    `${JSON.stringify(sceneJsonSchema(FAMILIES), null, 2)}\n`,
  );
  say(`Wrote ${file}. Look it over, then: raree make ${file}`);
}

/** Asks on the terminal; an empty answer takes the default, shown in brackets. */
async function askForFormat(): Promise<Answers> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  // Lines are taken from the stream, not by asking: piped answers come all at once.
  const lines = terminal[Symbol.asyncIterator]();
  const answers: Record<keyof Answers, string> = { ...DEFAULT_ANSWERS };
  try {
    for (const { key, ask } of QUESTIONS) {
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
