/** `<ww-gear>` in a page that is not ours: the example, built and served as docs/embedding.md says. */
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { findBrowser } from '../../scripts/browser.mjs';
import type { Gear } from '../../packages/viz/src/app/gear.js';
import type { GearEvents } from '../../packages/viz/src/app/gear-events.js';
import { FLAGS, keep, VIZ, VITE } from './browser.js';
import { demoRun, demoScenario } from './demo.js';
import { violations } from './faultless.js';
import { FileServer } from './server.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const server = new FileServer(here('../../packages/viz/example'));
let browser: Browser;

beforeAll(async () => {
  await promisify(execFile)(
    process.execPath,
    [VITE, 'build', '--config', 'vite.elements.config.ts', '--logLevel', 'warn'],
    { cwd: VIZ, env: { ...process.env, NODE_ENV: 'production' } },
  );
  browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
  await server.start();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

interface Opened {
  readonly page: Page;
  readonly said: string[];
}

async function open(path = ''): Promise<Opened> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 1600 } });
  const said: string[] = [];
  page.on('console', (m) => m.type() !== 'log' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
  await page.goto(server.address + path);
  return { page, said };
}

/** What an element tells next of a kind once something has been done to it. */
async function told<K extends keyof GearEvents>(
  page: Page,
  id: string,
  kind: K,
  change: Readonly<Record<string, unknown>> | readonly [text: string, file: string],
): Promise<GearEvents[K]> {
  await page.locator(id).evaluate(
    (gear, [name, what]) => {
      const heard = window as { heard?: unknown };
      delete heard.heard;
      gear.addEventListener(name, (e) => (heard.heard = (e as CustomEvent).detail), { once: true });
      if (Array.isArray(what)) (gear as Gear).open(...(what as [string, string]));
      else Object.assign(gear, what);
    },
    [kind as string, change] as const,
  );
  await page.waitForFunction(() => 'heard' in window);
  const detail: unknown = await page.evaluate(() => (window as { heard?: unknown }).heard);
  return detail as GearEvents[K];
}

/** A simulation may take long on a busy machine. */
const until = <T>(look: () => Promise<T>) => expect.poll(look, { timeout: 60_000 });

describe('the example page', () => {
  it('shows two runs of one file, under a strict policy, and says nothing on the console', async () => {
    const { page, said } = await open();
    await page.locator('#swing ww-bay table').waitFor();
    await page.locator('#early ww-times table').waitFor();
    await until(() => page.locator('#cards option').count()).toBeGreaterThan(3);
    const run = await page.locator('#swing').evaluate((gear) => (gear as Gear).run);
    const own = demoRun();
    expect(run?.card).toBe('healthy');
    const totals = (timings: Run['timings']): string[] =>
      timings.map((t) => `${t.unit} ${t.direction} ${t.total.toFixed(4)}`);
    expect(totals(run?.timings ?? [])).toEqual(totals(own.timings));
    expect(run?.cards.map((c) => c.name)).toEqual(Object.keys(demoScenario().cards));
    expect(await page.locator('#early').evaluate((gear) => (gear as Gear).time)).toBe(2);
    expect(await page.locator('ww-cautions').count()).toBe(2);
    await keep(page, 'example');
    expect(said).toEqual([]);
    await page.close();
  });

  it.each(['light', 'dark'] as const)('has nothing against it, %s', async (scheme) => {
    const { page } = await open();
    await page.emulateMedia({ colorScheme: scheme });
    await page.locator('#swing ww-bay table').waitFor();
    await page.locator('#early ww-times table').waitFor();
    await keep(page, `example-${scheme}`);
    expect(await violations(page)).toEqual([]);
    await page.close();
  });

  it('plays the card that its own list names, and goes where its own button says', async () => {
    const { page, said } = await open();
    await page.locator('#cards option').nth(1).waitFor({ state: 'attached' });
    await page.locator('#cards').selectOption('doors-early');
    const gear = page.locator('#swing');
    await until(() => gear.evaluate((g) => (g as Gear).run?.card)).toBe('doors-early');
    await page.locator('#closing').click();
    await until(() => gear.evaluate((g) => (g as Gear).time)).toBeGreaterThan(0);
    expect(await page.locator('#told').textContent()).toMatch(/^\d+\.\d\d s/);
    expect(said).toEqual([]);
    await page.close();
  });
});

describe('the element', () => {
  it('tells its time while it plays, and stops when told to', async () => {
    const { page } = await open();
    await page.locator('#swing ww-bay table').waitFor();
    const { time, playing } = await told(page, '#swing', 'ww-time', { playing: true });
    expect(playing).toBe(true);
    const gear = page.locator('#swing');
    await until(() => gear.evaluate((g) => (g as Gear).time)).toBeGreaterThan(time);
    const still = await told(page, '#swing', 'ww-time', { playing: false });
    expect(still.playing).toBe(false);
    await page.close();
  });

  it('simulates with the faults given, and shows other views and units when asked', async () => {
    const { page } = await open();
    await page.locator('#swing ww-bay table').waitFor();
    const run = await told(page, '#swing', 'ww-run', {
      faults: [{ fault: 'piston-seal-bypass', on: 'left-leg-jack', severity: 1 }],
    });
    const left = (timings: Run['timings']): number =>
      timings.find((t) => t.unit === 'left')?.total ?? 0;
    expect(left(run.timings)).toBeGreaterThan(left(demoRun().timings) + 0.1);
    await page.locator('#swing').evaluate((g) => Object.assign(g, { view: 'times' }));
    await until(() => page.locator('#swing ww-bay').count()).toBe(0);
    expect(await page.locator('#swing ww-times').count()).toBe(1);
    await page.close();
  });

  it('tells what is wrong with a scenario and where', async () => {
    const { page } = await open();
    await page.locator('#swing ww-bay table').waitFor();
    const { file, issues } = await told(page, '#swing', 'ww-issues', [
      'wheelwell: 1\ntitel: wrong\n',
      'mine.yaml',
    ]);
    expect(file).toBe('mine.yaml');
    expect(issues.some((i) => i.line === 2 && i.message.includes('titel'))).toBe(true);
    await page.close();
  });

  it('says what it could not load', async () => {
    const { page } = await open();
    const { message } = await told(page, '#early', 'ww-failure', { src: './none.yaml' });
    expect(message).toContain('./none.yaml');
    expect(message).toContain('404');
    const shown = page.locator('#early ww-issue-list').getByText('./none.yaml');
    await until(() => shown.count()).toBe(1);
    await page.close();
  });
});

it('docs/embedding.md names every attribute, property, event and view there is', async () => {
  const text = readFileSync(here('../../docs/embedding.md'), 'utf8');
  const { page } = await open();
  await page.locator('#swing ww-bay table').waitFor();
  const { attributes, properties } = await page.locator('#swing').evaluate((g) => {
    const kind = g.constructor as typeof Gear;
    return {
      attributes: kind.observedAttributes,
      properties: Object.getOwnPropertyNames(kind.prototype).filter((name) => {
        const of = Object.getOwnPropertyDescriptor(kind.prototype, name);
        return of?.get !== undefined && !name.startsWith('_');
      }),
    };
  });
  expect(attributes.length).toBeGreaterThan(6);
  for (const name of [...attributes, ...properties]) expect(text).toContain(`\`${name}\``);
  const views = /^The views: (.*)\.$/m.exec(text)?.[1] ?? '';
  const named = [...views.matchAll(/`([a-z-]+)`/g)].map((m) => m[1]);
  await page.locator('#swing').evaluate((g, view) => Object.assign(g, { view }), named.join(' '));
  await until(() => page.locator('#swing section.area').count()).toBe(named.length);
  await page.close();
});
