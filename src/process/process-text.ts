import { z } from 'zod';
import { LENGTH_PATTERN } from '../scene/length.js';
import type { Process } from './process.js';
import { sayFolds } from './process-fields.js';
import { processSchema } from './process-schema.js';
import { STARTING } from './starting.js';

/** Written behind a value until it is measured. */
export const STARTING_MARK = 'starting value; common practice, no source';

/** A value as a settings file says it; undefined where it says nothing. */
export type Said =
  | undefined
  | string
  | number
  | boolean
  | readonly Said[]
  | { readonly [key: string]: Said };
export type Group = { readonly [key: string]: Said };

/** What the JSON Schema says of one key. */
interface Described {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Described>>;
}

const WIDTH = 100;
/** Nothing to be measured, and nothing that is common practice. */
const UNMARKED: ReadonlySet<string> = new Set(['kind', 'unit', 'rates']);
/** Values of one group have their marks one below the other. */
const MARK_COLUMN = 36;

/**
 * A process as the text of a settings file: every value with its unit, what it means, and a mark
 * where it is still our starting value. `readProcess` gives back the same process.
 */
export function processText(process: Process): string {
  const schema = z.toJSONSchema(processSchema(process.kind, 'mm'), { io: 'input' }) as Described;
  const said = saidOf(process);
  const start = saidOf(STARTING[process.kind]);
  const blocks = Object.entries(schema.properties ?? {}).map(([key, described]) =>
    blockOf(key, described, said[key], UNMARKED.has(key) ? {} : start[key]).join('\n'),
  );
  return `${[...heading(process), ...blocks].join('\n\n')}\n`;
}

const heading = ({ name, kind }: Process): string[] => [
  comment(
    `${name}: settings of one ${kind} for one kind of card. Speeds are in mm/s; a length without ` +
      'a unit is in the unit named here. Cut trial cards with "raree trial" and this file, measure ' +
      'them, and enter what you find with "raree trial enter". Whatever is left out takes our ' +
      'starting value.',
    '',
  ).join('\n'),
];

/** A key of the file with what it means above it; groups have a line for each key. */
function blockOf(
  key: string,
  { description = '', properties }: Described,
  said: Said,
  start: Said,
) {
  const above = comment(description, '');
  if (properties === undefined) return [...above, lineOf(key, said, start, '')];
  const [values, starts] = [said as Group, start as Group];
  const lines = Object.entries(properties).flatMap(([inner, about]) =>
    innerLines(inner, about, values[inner], starts[inner]),
  );
  return [...above, `${key}:`, ...lines];
}

/** Groups within groups stand on one line; the group above says what their keys mean. */
function innerLines(
  key: string,
  { description = '', properties }: Described,
  said: Said,
  start: Said,
) {
  const above = properties === undefined ? comment(description, '  ') : [];
  if (said === undefined) return [...above, `  # ${key}:`];
  return [...above, lineOf(key, said, start, '  ')];
}

function lineOf(key: string, said: Said, start: Said, indent: string): string {
  const line = `${indent}${key}: ${sayValue(said)}`;
  const isStart = JSON.stringify(said) === JSON.stringify(start);
  return isStart ? `${line.padEnd(MARK_COLUMN)}  # ${STARTING_MARK}` : line;
}

function comment(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = `${indent}#`;
  for (const word of text.split(' ')) {
    if (line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = `${indent}#`;
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}

/** A value on one line. */
export function sayValue(said: Said): string {
  if (Array.isArray(said)) return `[${said.map(sayValue).join(', ')}]`;
  if (typeof said === 'object') {
    const pairs = Object.entries(said).filter(([, value]) => value !== undefined);
    return `{ ${pairs.map(([key, value]) => `${key}: ${sayValue(value)}`).join(', ')} }`;
  }
  return typeof said === 'string' && !isPlain(said) ? JSON.stringify(said) : String(said);
}

const LENGTH = new RegExp(LENGTH_PATTERN);
/** Our own words need no quotes; what a maker names may mean something to YAML. */
const isPlain = (text: string): boolean =>
  LENGTH.test(text) || /^(?!(?:true|false|null|yes|no|on|off)$)[a-z]+( [a-z]+)?$/.test(text);

const mm = (value: number): string => `${value} mm`;

/** A process by the keys of its settings file, lengths with their unit. */
export function saidOf(process: Process): Group {
  const { limits, bed, motion, rates, operations } = process;
  const operation = ({ passes, speedMmS, stroke }: (typeof operations)['cut']): Group => ({
    passes,
    speed: speedMmS,
    stroke: stroke ?? undefined,
  });
  return {
    kind: process.kind,
    unit: 'mm',
    smallest: {
      web: mm(limits.smallestWeb),
      slot: mm(limits.smallestSlot),
      hole: mm(limits.smallestHole),
    },
    clearance: mm(limits.scoreClearance),
    bed: {
      width: mm(bed.widthMm),
      height: mm(bed.heightMm),
      margin: mm(bed.marginMm),
      origin: bed.origin,
    },
    faces: process.faces,
    order: process.order,
    operations: {
      emboss: operation(operations.emboss),
      fold: operation(operations.fold),
      detail: operation(operations.detail),
      cut: operation(operations.cut),
    },
    motion: {
      travel: motion.travelMmS,
      acceleration: motion.accelerationMmS2,
      lift: motion.liftS,
      corner: mm(motion.cornerMm),
      stop: motion.stopS,
    },
    rates: {
      currency: rates.currency === '' ? undefined : rates.currency,
      'set-up': rates.setUp,
      hour: rates.hour,
      sheet: rates.sheet,
      quantities: rates.quantities,
    },
    ...ownKeys(process),
  };
}

/** What only this kind of process has. */
function ownKeys(process: Process): Group {
  if (process.kind === 'press') return {};
  const { folds, nibs, relief } = process;
  const both = { folds: sayFolds(folds), nibs: { count: nibs.count, width: mm(nibs.widthMm) } };
  const { how, angleDeg: angle } = relief;
  if (process.kind === 'knife') {
    const { offsetMm, overcutMm, compensate } = process.blade;
    return {
      ...both,
      blade: { offset: mm(offsetMm), overcut: mm(overcutMm), compensate },
      relief: { how, angle, apart: process.relief.apartBalls },
    };
  }
  const { kerfMm, sharedEdges, faceDown, heat } = process;
  return {
    ...both,
    kerf: mm(kerfMm),
    'shared-edges': sharedEdges,
    'face-down': faceDown,
    relief: { how, angle, apart: mm(process.relief.apartMm) },
    heat: { apart: mm(heat.apartMm), densest: heat.densestPerMm },
  };
}
