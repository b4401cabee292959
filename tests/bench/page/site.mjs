/** What every bench of the page begins with: the page built as it is shipped, served here, and a browser. */
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { findBrowser, MISSING } from '../../../scripts/browser.mjs';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const VIZ = here('../../../packages/viz');
/** Where the page is built. */
export const OUT = here('../../artefacts/bench/site');

/** Serves the built page; on any port that is free unless one is asked for. */
export async function serve(port = 0) {
  const server = await preview({
    root: VIZ,
    logLevel: 'warn',
    build: { outDir: OUT },
    preview: { host: '127.0.0.1', port, strictPort: port !== 0 },
  });
  const address = `http://127.0.0.1:${server.httpServer.address().port}/`;
  return { address, close: () => server.close() };
}

/** Builds the page and starts the browser that is on the machine, without its GPU. */
export async function openBrowser() {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error(MISSING);
  process.env.NODE_ENV = 'production';
  await build({ root: VIZ, logLevel: 'warn', build: { outDir: OUT, emptyOutDir: true } });
  return chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
}
