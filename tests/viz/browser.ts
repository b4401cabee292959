/**
 * The built page in a real browser: found on this machine, served from a local folder, with
 * everything it says or asks for written down.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { preview } from 'vite';
import type { PreviewServer } from 'vite';
import { findBrowser, MISSING } from '../../scripts/browser.mjs';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
export const VIZ = here('../../packages/viz');
export const VITE = join(
  dirname(createRequire(import.meta.url).resolve('vite/package.json')),
  'bin/vite.js',
);
const run = promisify(execFile);
const ARTEFACTS = here('../artefacts/viz');
const FOLDER = here('../artefacts/page');
/** In a folder of its own below the root, which only a relative base survives. */
export const PLACE = join(FOLDER, 'some', 'place');
/** What the page is built from. */
const SOURCES = [
  ...['src', 'public', 'build', 'index.html', 'vite.config.ts'].map((name) => join(VIZ, name)),
  here('../../packages/core/src'),
  here('../../scenarios'),
];

/** When the youngest file under a path was changed, ms; 0 when there is none. */
function changed(path: string): number {
  const at = statSync(path, { throwIfNoEntry: false });
  if (at === undefined) return 0;
  if (!at.isDirectory()) return at.mtimeMs;
  return Math.max(at.mtimeMs, ...readdirSync(path).map((name) => changed(join(path, name))));
}

/** Builds the page, unless a former test file has built it from the same sources. */
export async function build(): Promise<void> {
  if (changed(join(PLACE, 'index.html')) > Math.max(...SOURCES.map(changed))) return;
  rmSync(FOLDER, { recursive: true, force: true });
  // As a user builds it: in its own process, for production, whatever the test runner has set.
  await run(process.execPath, [VITE, 'build', '--outDir', PLACE, '--logLevel', 'warn'], {
    cwd: VIZ,
    env: { ...process.env, NODE_ENV: 'production' },
  });
}

export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** What playwright itself writes on the page's console. */
const BLOCKED = /^Service Worker registration blocked by Playwright$/;

function policy(): string {
  const page = readFileSync(join(VIZ, 'index.html'), 'utf8');
  return /Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? '';
}

export interface Visit {
  readonly page: Page;
  /** Errors and warnings of the console, uncaught exceptions. */
  readonly said: string[];
  /** Addresses asked for outside the page's own server. */
  readonly elsewhere: string[];
}

export interface VisitOptions {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
  readonly reducedMotion?: 'reduce' | 'no-preference';
}

/** The page, built once for a test file. */
export class Site {
  private constructor(
    private readonly server: PreviewServer,
    private readonly browser: Browser,
    readonly address: string,
  ) {}

  static async open(): Promise<Site> {
    const executablePath = findBrowser();
    if (executablePath === undefined) throw new Error(MISSING);
    await build();
    const server = await preview({
      root: here('../artefacts'),
      configFile: false,
      logLevel: 'warn',
      appType: 'mpa',
      build: { outDir: 'page' },
      // By header, too, as `npm start` does: workers know no other.
      preview: { host: '127.0.0.1', port: 0, headers: { 'Content-Security-Policy': policy() } },
    });
    const at = server.httpServer.address();
    const port = typeof at === 'object' && at !== null ? at.port : 0;
    const browser = await chromium.launch({ executablePath, args: FLAGS });
    return new Site(server, browser, `http://127.0.0.1:${port}/some/place/`);
  }

  async visit(options: VisitOptions = {}): Promise<Visit> {
    const {
      width = 1280,
      height = 800,
      scheme = 'light',
      reducedMotion = 'no-preference',
    } = options;
    const page = await this.browser.newPage({
      viewport: { width, height },
      colorScheme: scheme,
      reducedMotion,
      // Each visit is a new browser: keeping the page on the device is for its own test.
      serviceWorkers: 'block',
    });
    const said: string[] = [];
    const elsewhere: string[] = [];
    page.on('console', (m) => {
      const told = m.type() === 'error' || m.type() === 'warning';
      if (told && !BLOCKED.test(m.text())) said.push(m.text());
    });
    page.on('pageerror', (e) => said.push(e.message));
    page.on('request', (r) => {
      if (!r.url().startsWith(this.address) && !r.url().startsWith('data:'))
        elsewhere.push(r.url());
    });
    await page.goto(this.address);
    await page.locator('ww-bay table').waitFor();
    await page.locator('[data-busy]').waitFor({ state: 'detached' });
    return { page, said, elsewhere };
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.server.close();
  }
}

/** Keeps a picture of the page for the eye. */
export async function keep(page: Page, name: string): Promise<void> {
  mkdirSync(ARTEFACTS, { recursive: true });
  await page.screenshot({ path: join(ARTEFACTS, `${name}.png`) });
}

/** Time on the page's clock, s. */
export async function clock(page: Page): Promise<number> {
  return Number(await page.locator('[data-clock]').textContent());
}

/** Moves the play head by the slider, as a user's drag would. */
export async function scrubTo(page: Page, time: number): Promise<void> {
  await page.getByRole('slider', { name: 'Time', exact: true }).evaluate((input, t) => {
    (input as HTMLInputElement).value = String(t);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }, time);
}

/** Drops files on the page and waits until what they bring is on show. */
export async function drop(
  page: Page,
  ...files: readonly (readonly [string, string])[]
): Promise<void> {
  await page.evaluate((all) => {
    const carried = new DataTransfer();
    for (const [name, content] of all)
      carried.items.add(new File([content], name, { type: 'text/yaml' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, cancelable: true }));
  }, files);
  await settled(page);
}

/** All that stands in an element's own drawing of itself. */
export async function words(page: Page, tag: string): Promise<string> {
  return page
    .locator(tag)
    .first()
    .evaluate((e) => e.shadowRoot?.textContent ?? '');
}

/** Waits until the simulation asked for is on show. */
export async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(250);
  await page.locator('[data-busy]').waitFor({ state: 'detached' });
}
