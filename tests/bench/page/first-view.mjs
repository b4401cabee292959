/**
 * `node tests/bench/page/first-view.mjs`: from the request of the page, on a local server and with an
 * empty cache, to its first view: the demo read and simulated, legs drawn, order of events and times
 * filled. Each time in a new browser context, at 1280 x 800; and again with everything kept on the
 * device and no server at all. Beside them stands what was transferred. Nothing fails for being slow.
 */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { OUT, openBrowser, serve } from './site.mjs';

const TIMES = 21;
/** ms, on a desk computer of the day. */
const TARGET = 1500;

const browser = await openBrowser();
let server = await serve(4175);
const { address } = server;

/** When all of the first view is there, ms since the request. */
function viewed() {
  // Runs in the page.
  const { document, performance, requestAnimationFrame } = globalThis;
  return new Promise((done) => {
    const look = () => {
      const app = document.querySelector('ww-app')?.shadowRoot;
      const has = (view, what) => app?.querySelector(view)?.shadowRoot?.querySelector(what) != null;
      const all =
        has('ww-bay', '[data-mechanism]') &&
        has('ww-order-chart', '[data-lane], .lane, svg') &&
        has('ww-times', 'table');
      if (all) requestAnimationFrame(() => done(performance.now()));
      else requestAnimationFrame(look);
    };
    look();
  });
}

async function visit(page) {
  await page.goto(address, { waitUntil: 'commit' });
  return page.evaluate(viewed);
}

const times = { 'first visit': [], 'kept, no server': [] };
for (let i = 0; i < TIMES; i++) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  times['first visit'].push(await visit(page));
  if (i < 7) {
    await page.waitForFunction(() => globalThis.navigator.serviceWorker.controller !== null);
    await page.waitForTimeout(500);
    await server.close();
    times['kept, no server'].push(await visit(page));
    server = await serve(4175);
  }
  await context.close();
}

const rows = {};
for (const [name, all] of Object.entries(times)) {
  const sorted = all.sort((a, b) => a - b);
  const at = (share) => Math.round(sorted[Math.floor(share * (sorted.length - 1))]);
  rows[name] = {
    runs: sorted.length,
    'median, ms': at(0.5),
    '10 %': at(0.1),
    '90 %': at(0.9),
    target: `median <= ${TARGET}`,
    met: at(0.5) <= TARGET,
  };
}
console.table(rows);
const files = readdirSync(OUT, { recursive: true, withFileTypes: true }).filter(
  (f) => f.isFile() && !f.name.endsWith('.gz'),
);
const sizes = files.map((f) => {
  const path = join(f.parentPath, f.name);
  return { file: f.name, bytes: statSync(path).size, compressed: statSync(`${path}.gz`).size };
});
console.table(sizes);
console.log(`${sizes.reduce((sum, s) => sum + s.compressed, 0)} bytes compressed in all`);
await browser.close();
await server.close();
