import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  // Relative, so that the built folder can be put anywhere on a file server.
  base: './',
  resolve: {
    // The public door of core, from source: the page never shows a stale build.
    alias: { '@wheelwell/core': here('../core/src/index.ts') },
  },
  build: {
    outDir: 'dist',
    target: 'es2022',
    // The polyfill would be an inline script; every browser with module workers has the real thing.
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
  },
  worker: { format: 'es' },
  preview: { port: 4173, strictPort: false },
});
