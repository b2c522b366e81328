/** Time that one run takes, in ms: on the clock, and of the processor in all threads. */
export interface Timing {
  readonly wallMs: number;
  readonly cpuMs: number;
  readonly runs: number;
}

/** A run longer than this (ms) is not repeated. */
const LONG_MS = 4000;

/** Runs to warm up take at least this long (ms), since the compiler goes on improving for a while. */
const WARM_MS = 1500;

/** Medians over several runs after some to warm up; a first one that is long counts alone. */
export function timed<T>(run: () => T, runs: number): { result: T; timing: Timing } {
  const first = once(run);
  if (first.wallMs > LONG_MS || runs <= 1) {
    return { result: first.result, timing: { ...first, runs: 1 } };
  }
  for (let spentMs = 0; spentMs < WARM_MS; ) spentMs += once(run).wallMs;
  const all = Array.from({ length: runs }, () => once(run));
  const timing = {
    wallMs: median(all.map((r) => r.wallMs)),
    cpuMs: median(all.map((r) => r.cpuMs)),
    runs,
  };
  return { result: first.result, timing };
}

function once<T>(run: () => T): { result: T; wallMs: number; cpuMs: number } {
  const cpu = process.cpuUsage();
  const start = performance.now();
  const result = run();
  const wallMs = performance.now() - start;
  const { user, system } = process.cpuUsage(cpu);
  return { result, wallMs, cpuMs: (user + system) / 1000 };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return (sorted[Math.ceil(middle) - 1] + sorted[Math.floor(middle)]) / 2;
}
