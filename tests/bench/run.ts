import { writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Command } from 'commander';
import { union } from '../../src/geometry/boolean/boolean.js';
import type { Region } from '../../src/geometry/types.js';
import { NEST_DEFAULTS } from '../../src/sheet/nest.js';
import { distanceFrom } from '../fuzz/sides.js';
import { type Timing, timed } from './measure.js';
import { nestReport, nestRows } from './nest.js';
import { largeTours, tourReport, tourRows } from './order.js';
import { type PanelTimes, panelTimes } from './panel.js';
import { type Outcome, type Rival, rivals } from './rivals.js';
import { denseLeaves, looseLeaves, offsetArea, strewnLeaves, unionArea } from './scenes.js';
import { short, table } from './table.js';

/** Times unions, offsets and counts of pieces against other libraries, all in one process. */

const RESULTS = path.join(import.meta.dirname, 'results.md');
const RUNS = 7;
const OURS = 'ours';
/** The set that is judged, and the one whose growth is. */
const JUDGED = 1500;
const LARGE = 10_000;
/** Leaves of the panel that is composed. */
const PANEL_LEAVES = 3000;
/** Changes tried on the first layout of sheets. */
const NEST_EFFORT = NEST_DEFAULTS.effort;
/** Example books whose sheets are laid out and put in order. */
const BOOKS = ['lock-at-dusk', 'night-train', 'tide-pool'];

interface Row {
  readonly task: string;
  readonly library: string;
  readonly timing: Timing;
  readonly outcome: Outcome;
  /** What the area should be. */
  readonly areaMm2: number;
  /** How far (mm) a place of its outline lies from where it should, at the most. */
  readonly strayMm?: number;
}

async function main({ quick }: { quick?: boolean }): Promise<void> {
  const all = await rivals();
  const judged = quick ? 400 : JUDGED;
  const counts = quick ? [100, 400] : [100, 400, JUDGED, LARGE];
  const dense = counts.flatMap((n) => unionRows(denseTask(n), denseLeaves(n), all, n));
  const strewn = unionRows(`${judged} leaves, strewn`, strewnLeaves(judged), all, judged);
  const loose = unionRows(`${judged} leaves, loose`, looseLeaves(judged), all, judged);
  const card = union(denseLeaves(judged));
  const offsets = [0.1, -0.6].flatMap((mm) => offsetRows(`offset by ${mm} mm`, card, mm, all));
  const pieces = [0.2, 0.6, 1.5].flatMap((mm) => offsetRows(`${mm} mm`, card, -mm / 2, all));
  console.error('a panel composed');
  const panel = panelTimes(quick ? 400 : PANEL_LEAVES, RUNS);
  const books = quick ? BOOKS.slice(0, 1) : BOOKS;
  console.error('sheets of the example books');
  const sheets = await nestRows(books, quick ? [1, 2] : [1, 6, 12], NEST_EFFORT);
  const tours = await tourRows(books);
  const large = largeTours(quick ? JUDGED : LARGE);
  const text = report([...dense, ...strewn, ...loose], offsets, pieces, judged, panel, [
    nestReport(sheets, NEST_EFFORT),
    tourReport(tours, large),
  ]);
  console.log(text);
  if (!quick) writeFileSync(RESULTS, text);
}

const denseTask = (count: number): string => `${count} leaves, dense`;

function unionRows(
  task: string,
  leaves: readonly Region[],
  all: readonly Rival[],
  count: number,
): Row[] {
  const areaMm2 = unionArea(leaves);
  return all
    .filter((rival) => count <= rival.most)
    .map((rival) => {
      console.error(`${task}: ${rival.name}`);
      const { result, timing } = timed(rival.union(leaves), RUNS);
      return { task, library: rival.name, timing, outcome: result, areaMm2 };
    });
}

function offsetRows(task: string, card: Region, distanceMm: number, all: readonly Rival[]): Row[] {
  const areaMm2 = offsetArea(card, distanceMm);
  return all.flatMap((rival) => {
    if (!rival.offset) return [];
    console.error(`${task}: ${rival.name}`);
    const { result, timing } = timed(rival.offset(card, distanceMm), RUNS);
    const strayMm = farthestStray(card, Math.abs(distanceMm), result);
    return [{ task, library: rival.name, timing, outcome: result, areaMm2, strayMm }];
  });
}

/** Places that are measured on an outline, evenly chosen. */
const PLACES = 3000;

/** Every place of a true offset's outline is `distanceMm` from the source. */
function farthestStray({ contours }: Region, distanceMm: number, outcome: Outcome): number {
  const places = outcome.places();
  const step = Math.max(1, Math.floor(places.length / PLACES));
  let farthest = 0;
  for (let k = 0; k < places.length; k += step) {
    const { x, y } = places[k];
    const off = Math.abs(distanceFrom(contours, x, y, 2 * distanceMm) - distanceMm);
    farthest = Math.max(farthest, off);
  }
  return farthest;
}

function report(
  unions: readonly Row[],
  offsets: readonly Row[],
  pieces: readonly Row[],
  judged: number,
  panel: PanelTimes,
  machine: readonly string[],
): string {
  const [cpu] = os.cpus();
  return `# Bench

${new Date().toISOString().slice(0, 10)}, ${cpu.model}, ${os.cpus().length} cores, Node ${process.versions.node}, ${process.platform}.
All libraries run in one process, one after the other: medians of ${RUNS} runs after some to warm up, of the
clock and of the processor (which counts the compiler's and the collector's threads too); a run of more
than 4 s counts alone. Those that know polygons only get chords within 0.01 mm, which is also where
ours starts, and making them is part of the time. "x ours" is the time on the clock against ours. "Off"
is the area against Clipper2's on finer chords, extrapolated; plain chords make it too small.

## Unions

Leaves of 4 to 12 mm, seeded. Dense: on one crown of 60 x 50 mm, where most lie under others; strewn: on
120 x 60 mm; loose: on so much that they touch only here and there. paper.js and polyclip-ts are left
out where they take more than a minute.

${timesTable(unions, false)}

## Offsets of the union of ${judged} leaves

Round corners. "Farthest" is how far a place of the outline lies from where a true offset is, at the
most, of ${PLACES} places.

${timesTable(offsets, true)}

## Pieces of it that are left when all that is narrower goes

Shrunk by half the width, counted.

${piecesTable(pieces)}

## A panel composed

A crown of leaves on a trunk, cut into a panel for the laser: union, frame, webs, holes, scores and what
hangs on what, against the union alone.

${panelTable(panel)}

${machine.join('\n')}
## Judged

${judgedTable(unions, judged)}
`;
}

function panelTable({ union: alone, compose }: PanelTimes): string {
  const row = (name: string, { wallMs, cpuMs, runs }: Timing) => [
    name,
    short(wallMs),
    short(cpuMs),
    runs,
    short(wallMs / alone.wallMs),
  ];
  return table([
    ['task', 'ms', 'CPU ms', 'runs', 'x the union (aim: at most 3)'],
    row('union alone', alone),
    row('panel composed', compose),
  ]);
}

const COLUMNS = ['library', 'ms', 'CPU ms', 'runs', 'x ours', 'area mm2', 'off mm2', 'nodes'];

function timesTable(rows: readonly Row[], isOffset: boolean): string {
  const lines = rows.map((row) => {
    const { task, library, timing, outcome, areaMm2, strayMm } = row;
    return [
      task,
      library,
      short(timing.wallMs),
      short(timing.cpuMs),
      timing.runs,
      ratio(row, find(rows, task, OURS)!),
      outcome.areaMm2.toFixed(4),
      (outcome.areaMm2 - areaMm2).toFixed(4),
      outcome.nodes,
      ...(strayMm === undefined ? [] : [strayMm.toFixed(4)]),
    ];
  });
  return table([['task', ...COLUMNS, ...(isOffset ? ['farthest mm'] : [])], ...lines]);
}

function piecesTable(rows: readonly Row[]): string {
  const lines = rows.map((row) => {
    const { task, library, timing, outcome } = row;
    return [
      task,
      library,
      outcome.pieces,
      short(timing.wallMs),
      ratio(row, find(rows, task, OURS)!),
    ];
  });
  return table([['narrower than', 'library', 'pieces', 'ms', 'x ours'], ...lines]);
}

/** The ratios that decide whether the boolean is good enough. */
function judgedTable(rows: readonly Row[], judged: number): string {
  const task = denseTask(judged);
  const ours = find(rows, task, OURS)!;
  const clipper = find(rows, task, 'clipper2-ts, one call')!;
  const paper = find(rows, task, 'paper.js, tree of pairs')!;
  const large = find(rows, denseTask(LARGE), OURS);
  const off = Math.abs(ours.outcome.areaMm2 - ours.areaMm2) / ours.areaMm2;
  const times = (name: string, aim: string, a: Row, b: Row): string[] => [
    name,
    aim,
    ratio(a, b),
    short(a.timing.cpuMs / b.timing.cpuMs),
  ];
  const nodes = (ours.outcome.nodes / paper.outcome.nodes).toFixed(4);
  return table([
    ['ratio', 'aim, at most', 'here', 'by processor'],
    times(`${judged} leaves: time of ours / clipper2-ts`, '0.15', ours, clipper),
    times(`${judged} leaves: time of ours / paper.js`, '0.05', ours, paper),
    ...(large ? [times(`time of ours for ${LARGE} / ${judged}`, '14', large, ours)] : []),
    ['nodes of ours / paper.js', '1.02', nodes, ''],
    ['area of ours, relative error', '1e-5', off.toExponential(1), ''],
  ]);
}

const ratio = (a: Row, b: Row): string => short(a.timing.wallMs / b.timing.wallMs);

const find = (rows: readonly Row[], task: string, library: string): Row | undefined =>
  rows.find((row) => row.task === task && row.library === library);

await new Command('bench')
  .description('Writes tests/bench/results.md.')
  .option('--quick', 'small sets only, and nothing written')
  .action(main)
  .parseAsync();
