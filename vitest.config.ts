import os from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    globalSetup: ['tests/support/build.ts'],
    include: ['tests/**/*.test.ts'],
    // Every core: the tests are long and the machine has nothing else to do.
    maxWorkers: os.availableParallelism(),
    testTimeout: 120_000,
    hookTimeout: 240_000,
  },
});
