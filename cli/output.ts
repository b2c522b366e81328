import type { Finding } from '../src/index.js';

/** How a command ended: the process's exit code. */
export const DONE = 0;
export const FOUND_ERRORS = 1;
export const BAD_INPUT = 2;

/** One line on stderr; stdout is kept for what was asked for. */
export const complain = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

export const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

export const sayJson = (value: unknown): void => say(JSON.stringify(value, null, 2));

/** Names each step on one line of a terminal, rewritten in place; silent elsewhere. */
export function progressLine(quiet: boolean): { step: (name: string) => void; end: () => void } {
  const shown = process.stderr.isTTY === true && !quiet;
  return {
    step: (name) => {
      if (shown) process.stderr.write(`\r\u001b[2K  ${name} ...`);
    },
    end: () => {
      if (shown) process.stderr.write('\r\u001b[2K');
    },
  };
}

/** Findings as a maker reads them, then how many there are of each kind. */
export function printFindings(findings: readonly Finding[], print: (line: string) => void): void {
  for (const { severity, rule, message, cure } of findings) {
    print(`${severity}: ${message} [${rule}]`);
    print(`  ${cure}`);
  }
  print(summary(findings));
}

export function summary(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']) =>
    findings.filter((f) => f.severity === severity).length;
  const parts = (['error', 'warning', 'hint'] as const)
    .map((severity) => ({ severity, n: count(severity) }))
    .filter(({ n }) => n > 0)
    .map(({ severity, n }) => `${n} ${severity}${n === 1 ? '' : 's'}`);
  return parts.length === 0 ? 'Nothing to mend.' : parts.join(', ');
}

export const hasErrors = (findings: readonly Finding[]): boolean =>
  findings.some((f) => f.severity === 'error');
