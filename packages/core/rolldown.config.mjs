/**
 * What Node loads: the public door and the command line with all they import, in one file each
 * and one that both share. Importing mathjs, zod and yaml module by module takes Node a second;
 * this takes a tenth. Browsers' own bundlers get the plain modules beside it, and types are tsc's.
 */
import { defineConfig } from 'rolldown';

export default defineConfig({
  input: {
    index: 'src/index.ts',
    wheelwell: 'src/cli/main.ts',
    'signature-thread': 'src/cli/signature-thread.ts',
  },
  platform: 'node',
  // It starts threads from files of its own.
  external: ['tinypool'],
  output: {
    dir: 'dist/bundle',
    cleanDir: true,
    sourcemap: true,
    chunkFileNames: '[name].js',
  },
});
