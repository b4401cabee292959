import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  resolve: {
    // Tests read the sources, so a change needs no build before its test.
    alias: { '@wheelwell/core': here('./packages/core/src/index.ts') },
  },
  test: {
    env: { TZ: 'UTC' },
    // Vitest leaves one core free, which on a machine of two means to do one thing at a time.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/{core,contract,laws,outside,golden}/**/*.test.ts'],
          testTimeout: 60_000,
          // The core keeps no state between runs, and loading it anew for a hundred files takes minutes.
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: 'house', include: ['tests/house/**/*.test.ts'], testTimeout: 120_000 },
      },
      {
        extends: true,
        test: {
          // A real browser on the built page (playwright-core), which is built before the first file.
          name: 'viz',
          globalSetup: ['tests/viz/build-page.ts'],
          include: ['tests/viz/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
