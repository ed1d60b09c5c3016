import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/browser/**', 'test/bench/**'],
    globalSetup: 'test/global-setup.ts',
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
