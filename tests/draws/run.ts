import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Command } from 'commander';
import { FAMILIES } from '../../src/scenery/catalogue.js';
import type { Family } from '../../src/scenery/family.js';
import { table, tableRows } from '../bench/table.js';
import { drawOf, faultsOf } from '../scenery/draws.js';
import { frameDrawOf, frameFaultsOf } from '../scenery/frames.js';

/** Draws families with values, sizes, sides, processes and seeds by luck, and tells what is unsound. */

const RESULTS = path.join(import.meta.dirname, 'results.md');
/** A drawing from a file, and letters, which have tests of their own. */
const DRAWN_OTHERWISE = new Set(['motif', 'lettering']);
const HEADER = ['family', 'draws', 'unsound', 'ms each'];
/** Faults printed of each family: enough to begin with. */
const MOST_TOLD = 5;

function main(count: number, names: readonly string[], { record }: { record?: boolean }): void {
  const families = FAMILIES.filter(({ name }) =>
    names.length > 0 ? names.includes(name) : !DRAWN_OTHERWISE.has(name),
  );
  const rows = families.map((family) => {
    const row = rowOf(family, count);
    console.error(row.join(' '));
    // One by one: a long run that is broken off leaves what it has found.
    if (record) recorded([row]);
    return row;
  });
  console.log(table([HEADER, ...rows]));
  if (rows.some(([, , unsound]) => unsound > 0)) process.exitCode = 1;
}

type Row = readonly [name: string, draws: number, unsound: number, msEach: number];

function rowOf(family: Family, count: number): Row {
  const isFrame = family.stance === 'frame';
  const start = performance.now();
  let unsound = 0;
  for (let n = 0; n < count; n++) {
    const said = isFrame
      ? faultsSaid(family, n, frameDrawOf, frameFaultsOf)
      : faultsSaid(family, n, drawOf, faultsOf);
    if (said === null) continue;
    unsound++;
    if (unsound <= MOST_TOLD) console.log(`${family.name}: ${said}`);
  }
  return [family.name, count, unsound, Math.round((performance.now() - start) / count)];
}

/** What is unsound of a draw, in words; null where nothing is. */
function faultsSaid<D extends { readonly label: string }>(
  family: Family,
  n: number,
  drawn: (family: Family, n: number) => D,
  faults: (draw: D) => readonly string[],
): string | null {
  try {
    const draw = drawn(family, n);
    const found = faults(draw);
    return found.length === 0 ? null : `${found.join(', ')}: ${draw.label}`;
  } catch (error) {
    return `draw ${n} broke off: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/** Writes the rows over those of the same families. */
function recorded(rows: readonly Row[]): void {
  const text = readFileSync(RESULTS, 'utf8');
  const [, ...before] = tableRows(text);
  const all = new Map([...before, ...rows.map((row) => row.map(String))].map((r) => [r[0], r]));
  const body = [...all.values()].sort(([a], [b]) => a.localeCompare(b));
  const head = text.slice(0, text.indexOf('|'));
  writeFileSync(RESULTS, `${head}${table([HEADER, ...body])}\n`);
}

new Command('draws')
  .argument('[count]', 'draws of each family', (said) => Number.parseInt(said, 10), 1000)
  .argument('[families...]', 'names of families; all if none')
  .option('--record', 'write the results to results.md')
  .action(main)
  .parse();
