import { DEFAULTS } from '../scene/defaults.js';
import { nearestWord } from '../scene/nearest-word.js';
import type { Positions } from '../scene/positions.js';
import { type Problem, SceneError } from '../scene/problem.js';
import { PROCESSES, type ProcessName, UNITS } from '../scene/scene.js';
import { elsewhere, schemaProblems } from '../scene/schema-problems.js';
import { notAmong, quote } from '../scene/words.js';
import { isGroup, readYaml } from '../scene/yaml-text.js';
import type { KnifeProcess, LaserProcess, Process, ProcessBase } from './process.js';
import { type ProcessSaid, processSchema } from './process-schema.js';
import { STARTING } from './starting.js';

/**
 * Reads a settings file's text; what it leaves out takes our starting value. The process is named
 * after the file.
 * @param file the file's name, also for messages.
 * @throws SceneError with everything that is wrong in it, each with its line and column.
 */
export function readProcess(text: string, file: string): Process {
  const { value, positions, problems } = readYaml(text);
  if (value === undefined) throw new SceneError(file, problems);
  if (!isGroup(value)) throw new SceneError(file, [...problems, noSettings(value, positions)]);
  const kind = kindMeant(value.kind);
  if (kind === undefined) throw new SceneError(file, [...problems, noKind(value.kind, positions)]);
  const unit = UNITS.find((known) => known === value.unit) ?? DEFAULTS.unit;
  const result = processSchema(kind, unit).safeParse(value, { reportInput: true });
  const found = [
    ...problems,
    ...elsewhere(schemaProblems(result.error?.issues ?? [], positions), problems),
  ];
  if (!result.success || found.length > 0) throw new SceneError(file, found);
  return processOf(result.data, nameOf(file));
}

/** A misspelt kind is an error too, but the rest of the file can be looked at by what it meant. */
function kindMeant(said: unknown): ProcessName | undefined {
  const word = typeof said === 'string' ? nearestWord(said, PROCESSES) : undefined;
  return PROCESSES.find((kind) => kind === said) ?? PROCESSES.find((kind) => kind === word);
}

function noSettings(value: unknown, positions: Positions): Problem {
  const is = value === null ? 'the file is empty' : 'the whole file is not a group of keys';
  const message = `${is}; settings are keys with values, beginning with "kind: laser"`;
  return { path: [], ...positions.value([]), message };
}

function noKind(said: unknown, positions: Positions): Problem {
  const kinds = PROCESSES.join(', ');
  const message =
    typeof said === 'string'
      ? notAmong(said, PROCESSES)
      : said === undefined
        ? `missing; say what the settings are for: ${kinds}`
        : `${quote(said)} will not do; give one of ${kinds}`;
  return { path: ['kind'], ...positions.value(['kind']), message: `kind: ${message}` };
}

/** `my-laser` of `process/my-laser.yaml`. */
const nameOf = (file: string): string => file.replace(/^.*[/\\]/, '').replace(/\.ya?ml$/i, '');

function processOf(said: ProcessSaid, name: string): Process {
  const base = baseOf(said, name);
  switch (said.kind) {
    case 'knife':
      return { kind: 'knife', ...base, ...foldsAndNibs(said), ...knifeOf(said) };
    case 'laser':
      return { kind: 'laser', ...base, ...foldsAndNibs(said), ...laserOf(said) };
    case 'press':
      return { kind: 'press', ...base };
  }
}

type SaidOf<K extends ProcessName> = Extract<ProcessSaid, { kind: K }>;

const foldsAndNibs = ({ folds, nibs }: SaidOf<'knife' | 'laser'>) => ({
  folds,
  nibs: { count: nibs.count, widthMm: nibs.width },
});

const knifeOf = ({ blade, relief }: SaidOf<'knife'>): Pick<KnifeProcess, 'blade' | 'relief'> => ({
  blade: {
    offsetMm: blade.offset,
    overcutMm: blade.overcut,
    compensate: blade.compensate,
  },
  relief: { how: relief.how, angleDeg: relief.angle, apartBalls: relief.apart },
});

type LaserKeys = 'kerfMm' | 'sharedEdges' | 'faceDown' | 'relief' | 'heat';

const laserOf = (said: SaidOf<'laser'>): Pick<LaserProcess, LaserKeys> => ({
  kerfMm: said.kerf,
  sharedEdges: said['shared-edges'],
  faceDown: said['face-down'],
  relief: { how: said.relief.how, angleDeg: said.relief.angle, apartMm: said.relief.apart },
  heat: { apartMm: said.heat.apart, densestPerMm: said.heat.densest },
});

/** What all kinds have; folds and nibs as they are without keys for them. */
function baseOf(said: ProcessSaid, name: string): ProcessBase {
  const { smallest, bed, operations, motion, rates } = said;
  const settings = ({ passes, speed, stroke }: (typeof operations)['cut']) => ({
    passes,
    speedMmS: speed,
    stroke: stroke ?? null,
  });
  return {
    name,
    limits: {
      smallestWeb: smallest.web,
      smallestSlot: smallest.slot,
      smallestHole: smallest.hole,
      scoreClearance: said.clearance,
    },
    bed: {
      widthMm: bed.width,
      heightMm: bed.height,
      marginMm: bed.margin,
      origin: bed.origin,
    },
    faces: said.faces,
    order: said.order,
    operations: {
      emboss: settings(operations.emboss),
      fold: settings(operations.fold),
      detail: settings(operations.detail),
      cut: settings(operations.cut),
    },
    motion: {
      travelMmS: motion.travel,
      accelerationMmS2: motion.acceleration,
      liftS: motion.lift,
      cornerMm: motion.corner,
      stopS: motion.stop,
    },
    folds: STARTING[said.kind].folds,
    nibs: STARTING[said.kind].nibs,
    rates: {
      currency: rates.currency ?? '',
      setUp: rates['set-up'],
      hour: rates.hour,
      sheet: rates.sheet,
      quantities: rates.quantities,
    },
  };
}
