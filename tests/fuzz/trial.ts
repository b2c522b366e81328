import { type Case, solved } from '../cases/case.js';
import { seeded } from '../geometry/shapes.js';
import { faultsOf } from './check.js';
import { caseOf, KINDS } from './kinds.js';

export interface Verdict {
  readonly kind: string;
  readonly made: Case;
  /** What is wrong with the result, in words. */
  readonly faults: readonly string[];
  /** Whether the result claims to be exact. */
  readonly exact: boolean;
}

/** Makes, solves and checks one of the cases of a seed; the same for the same numbers. */
export function tryNumber(seed: number, index: number, only?: string): Verdict {
  const random = seeded(Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b));
  const kind = only ?? KINDS[Math.floor(KINDS.length * random())];
  const made = caseOf(kind, random);
  return { kind, made, ...tryCase(made) };
}

/** Solves a case and checks what comes of it, at the same points every time. */
export function tryCase(c: Case): Pick<Verdict, 'faults' | 'exact'> {
  try {
    const { region, exact } = solved(c);
    return { faults: faultsOf(c, region, exact, seeded(c.shapes.length)), exact };
  } catch (error) {
    return { faults: [`throws ${error}`], exact: true };
  }
}
