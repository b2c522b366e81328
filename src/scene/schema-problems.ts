import type { z } from 'zod';
import type { Positions } from './positions.js';
import type { Position, Problem, ScenePath } from './problem.js';

type Issue = z.core.$ZodIssue;

/** What the schema found wrong, each at its place in the file. */
export function schemaProblems(issues: readonly Issue[], positions: Positions): Problem[] {
  return issues.flatMap((issue) => problemsOf(issue, [], positions));
}

/** What the YAML itself has wrong also looks wrong to the schema: once is enough. */
export function elsewhere(found: readonly Problem[], than: readonly Problem[]): Problem[] {
  const place = ({ line, column }: Position): string => `${line}:${column}`;
  const taken = new Set(than.map(place));
  return found.filter((problem) => !taken.has(place(problem)));
}

function problemsOf(issue: Issue, above: ScenePath, positions: Positions): Problem[] {
  const path = [
    ...above,
    ...issue.path.map((step) => (typeof step === 'number' ? step : String(step))),
  ];
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue, path, positions);
  if (issue.code === 'invalid_key') {
    const message = `${subject(path.slice(0, -1))}${issue.issues[0]?.message ?? issue.message}`;
    return [{ path, ...positions.key(path), message }];
  }
  const meant = issue.code === 'invalid_union' ? branchMeant(issue.errors) : undefined;
  if (meant !== undefined) return meant.flatMap((inner) => problemsOf(inner, path, positions));
  return [{ path, ...positions.value(path), message: `${subject(path)}${issue.message}` }];
}

function unknownKeys(
  issue: z.core.$ZodIssueUnrecognizedKeys,
  path: ScenePath,
  positions: Positions,
): Problem[] {
  const messages = issue.message.split('\n');
  return issue.keys.map((key, i) => {
    const keyPath = [...path, key];
    return { path: keyPath, ...positions.key(keyPath), message: messages[i] };
  });
}

/** Of several forms that a value may have, the one that the maker chose: the only one of its kind. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const ofItsKind = branches.filter((issues) => !issues.some(isOfAnotherKind));
  return ofItsKind.length === 1 ? ofItsKind[0] : undefined;
}

/** A text where a list is wanted, say; not a list with something wrong in it. */
function isOfAnotherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_value') return typeof issue.input !== 'string';
  return issue.code === 'invalid_type' || issue.code === 'invalid_union';
}

/** `width.from: ` or `cards number 2: `, so that a message says what it is about. */
function subject(path: ScenePath): string {
  const lastIndex = path.findLastIndex((step) => typeof step === 'number');
  const keys = path.slice(lastIndex + 1);
  if (keys.length > 0) return `${keys.join('.')}: `;
  if (lastIndex < 0) return '';
  return `${path[lastIndex - 1]} number ${(path[lastIndex] as number) + 1}: `;
}
