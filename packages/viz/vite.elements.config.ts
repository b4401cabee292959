/** Builds `<ww-gear>` for other pages, into the example's folder: `npm run example -w packages/viz`. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, mergeConfig } from 'vite';
import type { Plugin } from 'vite';
import page, { lean } from './vite.config.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The example's scenario, beside the script. */
function scenario(): Plugin {
  return {
    name: 'wheelwell:example-scenario',
    generateBundle() {
      const source = readFileSync(here('../../scenarios/hedgelark/hedgelark.yaml'), 'utf8');
      this.emitFile({ type: 'asset', fileName: 'hedgelark.yaml', source });
    },
  };
}

const { root, base, resolve, worker } = page;
export default mergeConfig(
  { root, base, resolve, worker },
  defineConfig({
    publicDir: false,
    plugins: [lean(), scenario()],
    build: {
      outDir: 'example/dist',
      emptyOutDir: true,
      target: 'es2022',
      lib: {
        entry: here('./src/app/elements.ts'),
        formats: ['es'],
        fileName: () => 'wheelwell.js',
      },
    },
    preview: { port: 4174 },
  }),
);
