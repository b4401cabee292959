/** What comes later than the first view: how much the first view is without it, and what is told when it does not come. */
import { cpSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { findBrowser } from '../../scripts/browser.mjs';
import { build, FLAGS, keep, PLACE, words } from './browser.js';
import { violations } from './faultless.js';
import { FileServer } from './server.js';

/** The page without what comes later. */
const LESS = fileURLToPath(new URL('../artefacts/page-less', import.meta.url));
/** Bytes of the first view as sent, gzip; the whole page: size.test.ts. */
const MOST = 350_000;

let browser: Browser;
let server: FileServer;
let page: Page;

beforeAll(async () => {
  await build();
  browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
});
afterAll(() => browser.close());
beforeEach(async () => {
  rmSync(LESS, { recursive: true, force: true });
  cpSync(PLACE, LESS, { recursive: true });
  server = new FileServer(LESS);
  await server.start();
  page = await browser.newPage({
    viewport: { width: 1280, height: 800 },
    serviceWorkers: 'block',
  });
});
afterEach(async () => {
  await page.close();
  await server.stop();
});

/** Takes a part off the server, or puts it back. */
function part(name: string, there: boolean): void {
  const file = readdirSync(join(PLACE, 'assets')).find((f) => f.startsWith(name)) ?? '';
  const path = join('assets', file);
  if (there) cpSync(join(PLACE, path), join(LESS, path));
  else rmSync(join(LESS, path));
}

async function open(): Promise<void> {
  await page.goto(server.address);
  await page.locator('ww-bay table').waitFor();
}

const bench = (name: string): Promise<void> => page.getByRole('button', { name }).click();

it(`the first view is ${MOST / 1000} kB or less as it is sent; the rest follows by itself`, async () => {
  await open();
  const asked = new Set(server.asked.map((p) => p.replace(/\/$/, '/index.html')));
  const sent = [...asked].filter((p) => p !== '/favicon.ico');
  // Page, looks, script, worker at least.
  expect(sent.length).toBeGreaterThanOrEqual(4);
  expect(sent.filter((p) => /worker-/.test(p))).toHaveLength(1);
  const bytes = sent.map((p) => statSync(join(PLACE, `${p}.gz`)).size);
  expect(bytes.reduce((a, b) => a + b)).toBeLessThanOrEqual(MOST);
  expect(sent.filter((p) => /benches-/.test(p))).toEqual([]);
  await expect
    .poll(() => server.asked.some((p) => /benches-/.test(p)), { timeout: 8000 })
    .toBe(true);
});

it('a bench that does not come says so, and comes when the page is loaded anew', async () => {
  part('benches-', false);
  await open();
  await bench('Diagnosis');
  const told = page.getByRole('alert').filter({ hasText: 'could not be loaded' });
  await told.first().waitFor();
  expect(await told.first().textContent()).toContain('What you entered is kept');
  await keep(page, 'bench-missing');
  expect(await violations(page)).toEqual([]);
  part('benches-', true);
  await page.getByRole('button', { name: 'Load the page anew' }).first().click();
  await page.locator('ww-bay table').waitFor();
  await bench('Diagnosis');
  await page.locator('ww-diagnosis').waitFor();
  expect(await told.count()).toBe(0);
});

it('what a worker cannot load is told on the bench that asked for it', async () => {
  part('rest-', false);
  await open();
  await bench('Test card');
  await expect
    .poll(() => words(page, 'ww-test-card'), { timeout: 8000 })
    .toContain('a part of the page could not be loaded');
  expect(await words(page, 'ww-test-card')).toContain('no sound run');
  await keep(page, 'worker-part-missing');
});
