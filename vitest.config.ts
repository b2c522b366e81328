import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    globalSetup: ['tests/support/build.ts'],
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 240_000,
  },
});
