import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../..');
export const MAIN = path.join(ROOT, 'dist', 'cli', 'main.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command as a user would. */
export function raree(args: readonly string[], cwd: string, input?: string): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    cwd,
    encoding: 'utf8',
    input,
    maxBuffer: 64 * 1024 * 1024,
  });
  return { code: status, out: stdout, err: stderr };
}

/** A folder for one test, and the sweeping up after it. */
export function testFolder(): { readonly at: string; readonly remove: () => void } {
  const at = mkdtempSync(path.join(tmpdir(), 'raree-cli-'));
  return { at, remove: () => rmSync(at, { recursive: true, force: true }) };
}
