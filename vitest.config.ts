import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const slow = { testTimeout: 180_000, hookTimeout: 180_000 };
const project = (name: string, include: string[], exclude: string[] = []) => ({
  test: { name, include, exclude, globalSetup: 'test/global-setup.ts', ...slow },
});

// What lies in test/embedded concerns the embedded engine's own folder, whatever engine the other tests run on.
const elsewhere = process.env.TEST_DATABASE_URL ? ['test/embedded/**'] : [];

export default defineConfig({
  test: {
    // By itself vitest leaves one core idle, which on two cores is half of them.
    maxWorkers: availableParallelism(),
    projects: [
      project('unit', ['test/**/*.test.ts'], ['test/browser/**', 'test/bench/**', ...elsewhere]),
      project('browser', ['test/browser/**/*.test.ts']),
    ],
  },
});
