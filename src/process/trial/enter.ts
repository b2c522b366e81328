import { SceneError } from '../../scene/problem.js';
import type { ProcessName } from '../../scene/scene.js';
import { notAmong, quote } from '../../scene/words.js';
import { type Group, type Said, saidOf, sayValue } from '../process-text.js';
import { readProcess } from '../read-process.js';
import { withSetting } from './edit-settings.js';
import { type Change, type Outcome, RESULTS, type Result } from './results.js';

/** Results that cannot be; its message has a line for each. */
export class ResultError extends Error {
  override readonly name = 'ResultError';
}

export interface Entered {
  /** The settings file with the results written into it. */
  readonly text: string;
  /** What each result came to, a line each. */
  readonly says: readonly string[];
}

export const resultsOf = (kind: ProcessName): Result[] =>
  RESULTS.filter(({ kinds }) => kinds.includes(kind));

/**
 * Writes what was measured on trial cards into the text of a settings file.
 * @param said each as `name=value`, lengths in mm or with their unit.
 * @throws SceneError when the file is wrong, ResultError when results cannot be.
 */
export function enterResults(text: string, file: string, said: readonly string[]): Entered {
  const { kind } = readProcess(text, file);
  const outcomes = said.map((one) => outcomeOf(one, kind));
  const problems = outcomes.flatMap((o) => ('problem' in o.outcome ? [o.outcome.problem] : []));
  const twice = outcomes.find(({ name }, i) => outcomes.findIndex((o) => o.name === name) < i);
  if (problems.length === 0 && twice) problems.push(`${twice.name} is given twice; keep one`);
  if (problems.length > 0) throw new ResultError(problems.join('\n'));
  return outcomes.reduce<Entered>(
    (before, { name, outcome }) =>
      'problem' in outcome ? before : entered(before, file, name, outcome),
    { text, says: [] },
  );
}

function outcomeOf(said: string, kind: ProcessName): { name: string; outcome: Outcome } {
  const [, name = said, value] = /^([^=]*)=(.*)$/s.exec(said) ?? [];
  const problem = (message: string) => ({ name, outcome: { problem: message } });
  const known = resultsOf(kind);
  const result = known.find((one) => one.name === name);
  if (result === undefined) {
    const elsewhere = RESULTS.find((one) => one.name === name);
    return problem(
      elsewhere
        ? `${name}: there is no such card for a ${kind}, only for ${elsewhere.kinds.join(' and ')}`
        : notAmong(
            name,
            known.map((one) => one.name),
          ),
    );
  }
  if (value === undefined || value.trim() === '') {
    return problem(
      `${quote(said)}: give ${result.measure}, such as ${name}=${result.example(kind)}`,
    );
  }
  const outcome = result.outcome(value.trim(), kind);
  return {
    name,
    outcome: 'problem' in outcome ? { problem: `${name}: ${outcome.problem}` } : outcome,
  };
}

function entered(
  before: Entered,
  file: string,
  name: string,
  { changes, measured, says }: Exclude<Outcome, { problem: string }>,
): Entered {
  const was = saidOf(readProcess(before.text, file));
  const text = changes.reduce<string | null>(
    (t, { path, value }) => t && withSetting(t, path, value, measured),
    before.text,
  );
  // A file may say one thing in two places, as by an alias.
  if (text === null || !saysNow(text, file, changes.reduce(changed, was))) {
    const keys = changes.map(({ path, value }) => `${path.join(' ')}: ${sayValue(value)}`);
    throw new ResultError(
      `${file} is written in a way that cannot be changed safely here; change it by hand: ${keys.join(', ')}`,
    );
  }
  const lines = changes.map(
    ({ path, value }) =>
      `${path.join(' ')}: ${sayValue(at(was, path))} -> ${sayValue(value)} (${measured})`,
  );
  return { text, says: [...before.says, ...lines, ...(says ? [`${name}: ${says}`] : [])] };
}

function saysNow(text: string, file: string, wanted: Group): boolean {
  try {
    return JSON.stringify(saidOf(readProcess(text, file))) === JSON.stringify(wanted);
  } catch (error) {
    if (error instanceof SceneError) return false;
    throw error;
  }
}

const at = (group: Group, path: readonly string[]): Said =>
  path.reduce<Said>((held, key) => (held as Group)[key], group);

function changed(group: Group, { path: [key, ...rest], value }: Change): Group {
  const inner = rest.length === 0 ? value : changed(group[key] as Group, { path: rest, value });
  return { ...group, [key]: inner };
}
