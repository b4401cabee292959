import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import type { PluginOption } from 'vite';
import { leanLibraries } from './build/lean-libraries.js';
import { leaveOut } from './build/leave-out.js';
import { OFFLINE, offlineList } from './build/offline-list.js';
import { pack } from './build/pack.js';
import { squeezeTemplates } from './build/squeeze-templates.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** What keeps the page light, in the worker, too. */
export const lean = (): PluginOption[] => [leanLibraries(), leaveOut(), squeezeTemplates()];

/** The policy of the page, said once in its head. */
const POLICY = /Content-Security-Policy"\s+content="([^"]+)"/.exec(
  readFileSync(here('./index.html'), 'utf8'),
)?.[1];
if (POLICY === undefined) throw new Error('index.html names no policy');

/** All but what stands alone in the browser. */
const ofPage = (id: string): boolean => !/[\\/]offline\.ts$/.test(id);

export default defineConfig({
  root: here('.'),
  // Relative, so that the built folder can be put anywhere on a file server.
  base: './',
  resolve: {
    // The public door of core, from source: the page never shows a stale build.
    alias: { '@wheelwell/core': here('../core/src/index.ts') },
  },
  plugins: [lean(), offlineList(here('./public')), pack()],
  build: {
    outDir: 'dist',
    target: 'es2022',
    // The polyfill would be an inline script; every browser with module workers has the real thing.
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      input: { index: here('./index.html'), offline: here('./src/worker/offline.ts') },
      output: {
        codeSplitting: {
          groups: [
            // Style sheets side by side are much alike, and pack the better for it.
            {
              name: 'looks',
              test: /\.styles\.ts$|[\\/]@?lit[\\/-]/,
              tags: ['$initial'],
              priority: 2,
            },
            { name: 'first', test: ofPage, tags: ['$initial'], priority: 1 },
            // What the first view does without, in one piece: it packs better, and all of it is kept anyway.
            { name: 'benches', test: ofPage },
          ],
        },
        entryFileNames: ({ name }) => (name === 'offline' ? OFFLINE : 'assets/[name]-[hash].js'),
      },
    },
  },
  worker: {
    format: 'es',
    plugins: lean,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'swing', tags: ['$initial'], priority: 1 },
            { name: 'rest', test: /./ },
          ],
        },
      },
    },
  },
  // A worker goes by the header of its own script, not by what the page says in its head.
  preview: { port: 4173, strictPort: false, headers: { 'Content-Security-Policy': POLICY } },
});
