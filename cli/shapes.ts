import type { Command } from 'commander';
import {
  contactSheetSvg,
  FAMILIES,
  type Family,
  nearestWord,
  type Parameter,
} from '../src/index.js';
import { pngOf } from '../src/output/raster.js';
import { writeFileWhole } from '../src/output/write-folder.js';
import { libraryMotifs } from './library.js';
import { BAD_INPUT, complain, say, sayJson } from './output.js';

const PICTURE_WIDTH_PX = 2000;

export function shapesCommand(program: Command): void {
  program
    .command('shapes')
    .summary('list the scenery there is, and what it can be told')
    .description('Lists the kinds of scenery, or all that one kind can be told.')
    .argument('[name]', 'one kind of scenery')
    .option('--json', 'print an array of objects with name, kind and parameters')
    .option('--picture <file>', 'draw them to a PNG file')
    .action(async (name: string | undefined, options: { json?: boolean; picture?: string }) => {
      const chosen = name === undefined ? FAMILIES : FAMILIES.filter((f) => f.name === name);
      if (chosen.length === 0) {
        complain(unknown(name ?? ''));
        process.exitCode = BAD_INPUT;
        return;
      }
      if (options.picture) {
        await writeFileWhole(options.picture, pngOf(contactSheetSvg(chosen), PICTURE_WIDTH_PX));
        if (!options.json) say(`Drawn to ${options.picture}`);
      }
      const motifs = name === undefined ? await libraryMotifs() : [];
      if (options.json) sayJson([...chosen.map(asData), ...motifs.map(motifAsData)]);
      else if (options.picture) return;
      else if (name === undefined) {
        for (const f of chosen) say(`${f.name.padEnd(12)}${f.says}`);
        printMotifs(motifs);
      } else printFamily(chosen[0]);
    });
}

function unknown(name: string): string {
  const names = FAMILIES.map((f) => f.name);
  const near = nearestWord(name, names);
  return `There is no scenery called "${name}"${near ? `; did you mean "${near}"?` : '.'} There is: ${names.join(', ')}.`;
}

const asData = (f: Family) => ({
  name: f.name,
  kind: 'scenery',
  says: f.says,
  sides: f.sides,
  defaultSide: f.defaultSide,
  defaultSize: f.defaultSize,
  made: f.made,
  parts: f.parts ?? [],
  parameters: f.parameters,
});

/** A motif is what the element of that name draws from the library's file. */
const motifAsData = (file: string) => ({
  name: file,
  kind: 'motif',
  says: `A drawing of the shipped library: { element: motif, file: ${file} }.`,
  parameters: {},
});

function printMotifs(motifs: readonly string[]): void {
  say(
    '\nDrawings of the library, for { element: motif, file: THEME/NAME }; shapes/README.md shows them:',
  );
  const themes = [...new Set(motifs.map((motif) => motif.split('/')[0]))];
  for (const theme of themes) {
    const names = motifs.filter((motif) => motif.startsWith(`${theme}/`));
    say(`${theme}: ${names.map((motif) => motif.split('/')[1]).join(', ')}`);
  }
}

function printFamily(f: Family): void {
  say(`${f.name}: ${f.says}`);
  say(`  grows from: ${f.sides.join(', ')} (usually ${f.defaultSide})`);
  for (const [work, what] of Object.entries(f.made)) if (what) say(`  ${work}: ${what}`);
  if (f.parts) say(`  parts: ${f.parts.join(', ')}`);
  for (const [name, parameter] of Object.entries(f.parameters)) {
    say(`  ${name}: ${range(parameter)}`);
    say(`      ${parameter.says}`);
  }
}

function range(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'choice':
      return `${parameter.options.join(' | ')} (usually ${parameter.default})`;
    case 'flag':
      return `true | false (usually ${parameter.default})`;
    case 'length':
      return `${parameter.min} to ${parameter.max} mm (usually ${parameter.default})`;
    case 'number':
      return `${parameter.min} to ${parameter.max} (usually ${parameter.default})`;
    case 'file':
      return `the path of a ${parameter.of}${parameter.default && ` (usually ${parameter.default})`}`;
    case 'text':
      return `text of up to ${parameter.maxCharacters} characters (usually "${parameter.default}")`;
  }
}
