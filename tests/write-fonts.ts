import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
// @ts-expect-error: the package brings no types.
import subsetFont from 'subset-font';

/**
 * Writes the bundled fonts anew: cut down to the characters below from the packages that ship them,
 * as WOFF in base64 in TypeScript modules, so that the library needs no files to letter with.
 * The licence of each is written beside it.
 */
const FONTS = [
  {
    name: 'roman',
    package: '@expo-google-fonts/alegreya',
    file: '800ExtraBold/Alegreya_800ExtraBold.ttf',
    title: 'Alegreya ExtraBold',
  },
  {
    name: 'sans',
    package: '@expo-google-fonts/jost',
    file: '700Bold/Jost_700Bold.ttf',
    title: 'Jost Bold',
  },
  {
    name: 'script',
    package: '@expo-google-fonts/pacifico',
    file: '400Regular/Pacifico_400Regular.ttf',
    title: 'Pacifico Regular',
  },
  {
    name: 'text',
    package: '@expo-google-fonts/jost',
    file: '400Regular/Jost_400Regular.ttf',
    title: 'Jost Regular',
  },
] as const;

/** Latin-1, Latin Extended-A, the quotes and dashes of a printer, and the ligatures of f. */
const CHARACTERS = [
  ...range(0x20, 0x7e),
  ...range(0xa0, 0x17f),
  ...Array.from('–—‘’‚“”„•…€ﬀﬁﬂﬃﬄ'),
].join('');

function range(first: number, last: number): string[] {
  return Array.from({ length: last - first + 1 }, (_, i) => String.fromCodePoint(first + i));
}

const require = createRequire(import.meta.url);
const folder = path.resolve(import.meta.dirname, '..', 'src', 'scenery', 'lettering', 'fonts');
for (const font of FONTS) {
  const source = readFileSync(require.resolve(`${font.package}/${font.file}`));
  const subset: Buffer = await subsetFont(source, CHARACTERS, { targetFormat: 'woff' });
  const licence = readFileSync(require.resolve(`${font.package}/LICENSE_FONT`), 'utf8');
  const notice = licence.split(/\r?\n/)[0].trim();
  writeFileSync(path.join(folder, `${font.name}-licence.txt`), licence.replace(/\r\n/g, '\n'));
  writeFileSync(
    path.join(folder, `${font.name}.ts`),
    [
      `// ${font.title}, cut down to Latin. ${notice}.`,
      `// SIL Open Font License 1.1: see ${font.name}-licence.txt. Written by \`npm run fonts\`.`,
      `export const ${font.name.toUpperCase()}_WOFF =`,
      `  '${subset.toString('base64')}';`,
      '',
    ].join('\n'),
  );
}
