import { defineConfig } from 'vitest/config';

const slow = { testTimeout: 60_000, hookTimeout: 120_000 };
const project = (name: string, include: string[], exclude: string[] = []) => ({
  test: { name, include, exclude, globalSetup: 'test/global-setup.ts', ...slow },
});

export default defineConfig({
  test: {
    projects: [
      project('unit', ['test/**/*.test.ts'], ['test/browser/**', 'test/bench/**']),
      project('browser', ['test/browser/**/*.test.ts']),
    ],
  },
});
