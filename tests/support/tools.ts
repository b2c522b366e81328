import { spawnSync } from 'node:child_process';
import { describe } from 'vitest';

/** Whether a program outside the project can be run here. */
const isThere = (name: string): boolean => spawnSync(name, ['-v']).error === undefined;

/**
 * Tests that need programs outside the project, such as a second reader of a file. Where one is
 * missing they are skipped, and the run says so.
 */
export function describeWith(tools: readonly string[], what: string, tests: () => void): void {
  const missing = tools.filter((name) => !isThere(name));
  if (missing.length === 0) {
    describe(what, tests);
    return;
  }
  const needs = `needs ${missing.join(', ')}, not installed here`;
  console.warn(`Skipped "${what}": ${needs}.`);
  describe.skip(`${what} (skipped: ${needs})`, tests);
}

/** What a program prints when it is given `input`. */
export function run(name: string, args: readonly string[], input?: Uint8Array): Buffer {
  const { status, stdout, stderr, error } = spawnSync(name, args, {
    input,
    maxBuffer: 256 * 1024 * 1024,
  });
  if (error) throw error;
  if (status !== 0) throw new Error(`${name} failed: ${stderr.toString()}`);
  return stdout;
}
