/** The page without a network: after the first visit it opens from what the browser has kept, whole. */
import { cpSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../scripts/browser.mjs';
import { build, FLAGS, keep, PLACE, settled } from './browser.js';
import { FileServer } from './server.js';

const NEWER = fileURLToPath(new URL('../artefacts/page-newer', import.meta.url));

/** The same page as if built from changed sources: one of its scripts has another name, and it says another title. */
function buildNewer(): void {
  rmSync(NEWER, { recursive: true, force: true });
  cpSync(PLACE, NEWER, { recursive: true });
  const assets = join(NEWER, 'assets');
  const script = readdirSync(assets).find((name) => /^index-.*\.js$/.test(name)) ?? '';
  renameSync(join(assets, script), join(assets, 'index-newer.js'));
  const change = (file: string, ...[from, to]: readonly [string | RegExp, string]): void => {
    const text = readFileSync(join(NEWER, file), 'utf8');
    const changed = text.replaceAll(from, to);
    expect(changed).not.toBe(text);
    writeFileSync(join(NEWER, file), changed);
  };
  const later = readdirSync(assets).find((name) => /^benches-.*\.js$/.test(name)) ?? '';
  for (const file of ['index.html', 'offline.js', `assets/${later}`])
    change(file, script, 'index-newer.js');
  change('index.html', '<title>Wheelwell', '<title>Newer wheelwell');
  change('offline.js', /\b[0-9a-f]{16}\b/g, '0123456789abcdef');
}

let browser: Browser;
let context: BrowserContext;
let server: FileServer;

beforeAll(async () => {
  await build();
  buildNewer();
  browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
});
afterAll(() => browser.close());
beforeEach(async () => {
  server = new FileServer(PLACE);
  await server.start();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
});
afterEach(async () => {
  await context.close();
  await server.stop();
});

async function opened(page: Page): Promise<void> {
  await page.locator('ww-bay table').waitFor();
  await page.locator('[data-busy]').waitFor({ state: 'detached' });
}

/** A first visit, until everything is kept. */
async function firstVisit(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(server.address);
  await opened(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return page;
}

const caches = (page: Page): Promise<string[]> => page.evaluate(() => window.caches.keys());

describe('without a network', () => {
  it('opens again, runs another card, and opens a second time', async () => {
    const page = await firstVisit();
    const said: string[] = [];
    page.on('pageerror', (e) => said.push(e.message));
    await server.stop();
    await page.reload();
    await opened(page);
    const before = await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent);
    await page.locator('[data-choose=card]').selectOption('doors-early');
    await opened(page);
    await expect
      .poll(() => page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent))
      .not.toBe(before);
    // What comes later is kept as well.
    await page.getByRole('button', { name: 'Diagnosis' }).click();
    await page.locator('ww-diagnosis button').first().waitFor();
    await keep(page, 'offline');
    const other = await context.newPage();
    await other.goto(`${server.address}index.html?card=1`);
    await opened(other);
    expect(said).toEqual([]);
  });

  it('keeps every file of the built page, so that nothing is missing later', async () => {
    const page = await firstVisit();
    const kept = await page.evaluate(async () => {
      const [name = ''] = await window.caches.keys();
      const cache = await window.caches.open(name);
      return (await cache.keys()).map((r) => new URL(r.url).pathname.slice(1));
    });
    const built = readdirSync(PLACE, { recursive: true, withFileTypes: true })
      // A packed copy is the same file.
      .filter((f) => f.isFile() && !f.name.endsWith('.gz'))
      .map((f) => join(f.parentPath, f.name).slice(PLACE.length + 1));
    const wanted = built
      .filter((f) => f !== 'offline.js')
      .map((f) => (f === 'index.html' ? '' : f));
    expect(kept.sort()).toEqual(wanted.sort());
  });
});

describe('with a newer page on the server', () => {
  it('tells a page that is open, loads it when told to, and keeps nothing of the older', async () => {
    const page = await firstVisit();
    const older = await caches(page);
    expect(older).toHaveLength(1);
    server.folder = NEWER;
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    const told = page.locator('ww-renewal [role=status]');
    await expect.poll(() => told.textContent()).toContain('A newer version of this page has come');
    expect(await page.title()).toBe('Wheelwell');
    await keep(page, 'newer-version');
    await page.getByRole('button', { name: 'Load it' }).click();
    await page.waitForFunction(() => document.title === 'Newer wheelwell');
    await opened(page);
    await expect.poll(() => caches(page)).toHaveLength(1);
    expect(await caches(page)).not.toEqual(older);
    await server.stop();
    await page.reload();
    await opened(page);
    expect(await page.title()).toBe('Newer wheelwell');
  });

  it('opens the newer one on the next visit, with nothing to tell', async () => {
    const page = await firstVisit();
    await page.close();
    server.folder = NEWER;
    const next = await context.newPage();
    await next.goto(server.address);
    await opened(next);
    expect(await next.title()).toBe('Newer wheelwell');
    // Its own parts have been kept by now and wait for the older page to be gone.
    await next.waitForFunction(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return registration?.installing === null && (await window.caches.keys()).length > 0;
    });
    await settled(next);
    expect(await next.locator('ww-renewal button').count()).toBe(0);
  });
});

describe('with a server in trouble', () => {
  it('shows the kept page when the server answers that it has none', async () => {
    const page = await firstVisit();
    server.folder = join(NEWER, 'nothing-here');
    await page.reload();
    await opened(page);
    expect(await page.title()).toBe('Wheelwell');
  });
});

describe('opened as a file from the disk', () => {
  it('says why it cannot start and what to do', async () => {
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(PLACE, 'index.html')).href);
    const told = page.locator('.unstarted');
    await expect.poll(() => told.isVisible(), { timeout: 10_000 }).toBe(true);
    expect(await told.textContent()).toContain('npm start');
    await keep(page, 'from-disk');
  });
});
