import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/build.ts'],
    setupFiles: ['tests/properties/one-seed.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    allowOnly: false,
  },
});
