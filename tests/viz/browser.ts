/**
 * The built page in a real browser: found on this machine, served from a local folder, with
 * everything it says or asks for written down.
 */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { preview } from 'vite';
import type { PreviewServer } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const VIZ = here('../../packages/viz');
const VITE = join(
  fileURLToPath(new URL('.', import.meta.resolve('vite/package.json'))),
  'bin/vite.js',
);
const run = promisify(execFile);
const ARTEFACTS = here('../artefacts/viz');

/** Usual places of Chromium and its relatives. */
const PLACES: readonly string[] = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...[process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
    .filter((root) => root !== undefined)
    .flatMap((root) => [
      join(root, 'Google/Chrome/Application/chrome.exe'),
      join(root, 'Chromium/Application/chrome.exe'),
      join(root, 'Microsoft/Edge/Application/msedge.exe'),
    ]),
];

/** CHROME_PATH first, then the usual places. */
export function findBrowser(): string {
  const named = process.env.CHROME_PATH;
  const found =
    named !== undefined && named !== '' ? named : PLACES.find((path) => existsSync(path));
  if (found === undefined || !existsSync(found)) {
    throw new Error('no Chromium, Chrome or Edge found; name one with CHROME_PATH');
  }
  return found;
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

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
    private readonly folder: string,
    private readonly server: PreviewServer,
    private readonly browser: Browser,
    readonly address: string,
  ) {}

  static async open(): Promise<Site> {
    const folder = mkdtempSync(join(tmpdir(), 'wheelwell-page-'));
    // In a folder of its own below the root, which only a relative base survives.
    const outDir = join(folder, 'some', 'place');
    // As a user builds it: in its own process, for production, whatever the test runner has set.
    await run(process.execPath, [VITE, 'build', '--outDir', outDir, '--logLevel', 'warn'], {
      cwd: VIZ,
      env: { ...process.env, NODE_ENV: 'production' },
    });
    const server = await preview({
      root: folder,
      configFile: false,
      logLevel: 'warn',
      appType: 'mpa',
      build: { outDir: folder },
      preview: { host: '127.0.0.1', port: 0 },
    });
    const at = server.httpServer.address();
    const port = typeof at === 'object' && at !== null ? at.port : 0;
    const browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
    return new Site(folder, server, browser, `http://127.0.0.1:${port}/some/place/`);
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
    });
    const said: string[] = [];
    const elsewhere: string[] = [];
    page.on('console', (m) => {
      if (m.type() === 'error' || m.type() === 'warning') said.push(m.text());
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
    rmSync(this.folder, { recursive: true, force: true });
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

/** Waits until the simulation asked for is on show. */
export async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(250);
  await page.locator('[data-busy]').waitFor({ state: 'detached' });
}
