import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Command } from 'commander';
import { table, tableRows } from '../bench/table.js';
import { KINDS } from './kinds.js';
import { recordOf, shrunk } from './shrink.js';
import { tryCase, tryNumber, type Verdict } from './trial.js';

/** Fuzzes the booleans and offsets: random cases, each checked against independent references. */

interface Options {
  readonly only?: string;
  readonly from: number;
  readonly save: string;
  readonly record?: boolean;
}

const RESULTS = path.join(import.meta.dirname, 'results.md');

function main(count: number, seed: number, { only, from, save, record }: Options): void {
  const rows = new Map<string, { cases: number; wrong: number; fallbacks: number; ms: number }>();
  const total = { cases: 0, wrong: 0, fallbacks: 0, ms: 0 };
  for (let index = from; index < from + count; index++) {
    const start = performance.now();
    const verdict = tryNumber(seed, index, only);
    const ms = performance.now() - start;
    const row = rows.get(verdict.kind) ?? { cases: 0, wrong: 0, fallbacks: 0, ms: 0 };
    rows.set(verdict.kind, row);
    for (const sum of [row, total]) {
      sum.cases++;
      sum.ms += ms;
      if (!verdict.exact) sum.fallbacks++;
      if (verdict.faults.length > 0) sum.wrong++;
    }
    if (verdict.faults.length > 0) report(verdict, `${verdict.kind}-${seed}-${index}`, save);
  }
  for (const row of [...rows.values(), total])
    row.ms = Math.round((100 * row.ms) / row.cases) / 100;
  console.table(Object.fromEntries([...rows].sort(([a], [b]) => a.localeCompare(b))));
  if (record) addRow([only ?? 'all', total.cases, seed, total.wrong, total.fallbacks, total.ms]);
  console.log(`${total.ms} ms a case`);
  console.log(`${total.cases} cases, ${total.wrong} wrong, ${total.fallbacks} fallbacks`);
  process.exitCode = total.wrong > 0 ? 1 : 0;
}

/** Adds a run to the table at the end of results.md. */
function addRow(run: readonly (string | number)[]): void {
  const text = readFileSync(RESULTS, 'utf8');
  const start = text.indexOf('| date');
  const [cpu] = os.cpus();
  const machine = `${cpu.model}, ${os.cpus().length} cores, Node ${process.versions.node}`;
  const rows = [...tableRows(text.slice(start)), [today(), machine, ...run]];
  writeFileSync(RESULTS, `${text.slice(0, start)}${table(rows)}\n`);
}

const today = (): string => new Date().toISOString().slice(0, 10);

/** Tells of a failing case and saves it, made as small as it goes, as a new case for the tests. */
function report({ kind, made, faults }: Verdict, name: string, folder: string): void {
  console.log(`${name} ${kind} ${made.operation}: ${faults.join('; ')}`);
  const small = shrunk(made, (c) => tryCase(c).faults.length > 0);
  mkdirSync(folder, { recursive: true });
  const cases = [recordOf(small, name, tryCase(small).faults.join('; '))];
  writeFileSync(path.join(folder, `${name}.json`), `${JSON.stringify(cases, null, 2)}\n`);
}

new Command('fuzz')
  .description('Solves random cases and checks each. Exit code 1 where one is wrong.')
  .argument('[count]', 'how many cases', Number, 2000)
  .argument('[seed]', 'which cases', Number, 1)
  .option('--only <kind>', `one kind of case: ${KINDS.join(', ')}`)
  .option('--from <index>', 'number of the first case', Number, 0)
  .option('--save <folder>', 'where failing cases go', path.join(import.meta.dirname, '../cases'))
  .option('--record', 'add a row to results.md')
  .action(main)
  .parse();
