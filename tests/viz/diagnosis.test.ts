/** The diagnosis bench in a real browser: from a sheet to the ranking, the cause, the checks, the report. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  catalogues,
  CAUTIONS,
  checks,
  simulate,
  writeObservations,
  writeScenario,
} from '@wheelwell/core';
import type { ObservationSheet } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import type { Ranking } from '../../packages/viz/src/worker/diagnosis-message.js';
import { oneLeg } from '../support/one-leg.js';
import { drop, keep, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { cutOff, violations } from './faultless.js';
import { pagesOf } from './pdf.js';

/** A machine that does much else beside takes its time. */
const PATIENCE = { timeout: 100_000 };

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

const bare = (text: string): string => text.replace(/\s/g, '');
const spoken = (page: Page): Promise<string | null> =>
  page.locator('ww-app > [role=status], ww-app [role=status].aside').first().textContent();

async function openBench(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Diagnosis', exact: true }).click();
  await page.locator('ww-diagnosis .tools').first().waitFor();
}

/** What the page's store holds. */
async function held<T>(page: Page, key: string): Promise<T> {
  return page.locator('ww-app').evaluate((app, k) => {
    const { store } = app as unknown as { store: { state: Record<string, unknown> } };
    return store.state[k] as never;
  }, key);
}

describe('the example of the first aircraft', () => {
  let visit: Visit;

  beforeAll(async () => {
    visit = await site.visit();
  });
  afterAll(() => visit.page.close());

  it('is offered where nothing is on the sheet, and leads to a ranking with bars', async () => {
    const { page } = visit;
    await openBench(page);
    await page.locator('ww-diagnosis [data-empty]').waitFor();
    expect(await page.locator('ww-diagnosis [data-cause]').count()).toBe(0);
    await page.locator('ww-diagnosis [data-example]').click();
    const first = page.locator('ww-diagnosis .ranking > li').first();
    await first.waitFor(PATIENCE);
    const shares = await page
      .locator('ww-diagnosis .ranking > li')
      .evaluateAll((all) =>
        all.map((li) => [
          Number.parseFloat(li.querySelector('.percent')?.textContent ?? ''),
          Number(li.querySelectorAll('.bar rect')[1]?.getAttribute('width')),
        ]),
      );
    for (const [percent, wide] of shares) expect(Math.abs(percent - wide)).toBeLessThan(0.6);
    expect(shares.map(([p]) => p)).toEqual(shares.map(([p]) => p).sort((a, b) => b - a));
    expect(await spoken(page)).toMatch(/Likeliest|ESTABLISHED/);
    await keep(page, 'diagnosis-first');
  });

  it('finds the dry bearing of the left leg among its first, which is looked at and shown in the run', async () => {
    const { page } = visit;
    const dry = page.locator('ww-diagnosis [data-cause="dry-bearing left-leg"]');
    await dry.first().waitFor({ state: 'attached', ...PATIENCE });
    await dry.first().evaluate((e) => (e.closest('details')?.setAttribute('open', ''), undefined));
    await dry.first().click();
    const cause = page.locator('ww-diagnosis-cause');
    await cause
      .getByRole('heading', { name: 'Dry or seized pivot bearing, left leg' })
      .first()
      .waitFor();
    const rows = await cause.locator('tbody tr').allTextContents();
    expect(rows.map(bare).some((r) => /^1Leftlocked6\.50s/i.test(r))).toBe(true);
    expect(rows).toHaveLength(18);
    for (const words of ['To confirm:', 'To put right:'])
      expect(await cause.getByText(words).first().isVisible()).toBe(true);
    await cause.locator('[data-show]').click();
    await settled(page);
    await cause.locator('[data-on-show]').waitFor(PATIENCE);
    const [fault] = await held<{ fault: string; on: string; severity: number }[]>(page, 'faults');
    expect(fault).toMatchObject({ fault: 'dry-bearing', on: 'left-leg' });
    expect(fault.severity).toBeGreaterThan(0.2);
  });

  it('draws the foretold swing with the measured times over it, in the charts of the bench itself', async () => {
    const { page } = visit;
    await page.locator('#tab-order[aria-selected=true]').waitFor();
    const chart = page.locator('ww-order-chart');
    expect(await chart.isVisible()).toBe(true);
    const measured = await held<{ on: string; since: string }[]>(page, 'measured');
    expect(new Set(measured.map((m) => m.since))).toEqual(
      new Set(['selector up', 'selector down']),
    );
    await chart.locator('text', { hasText: 'fits' }).first().waitFor();
    await keep(page, 'diagnosis-cause-shown');
    await page.locator('#tab-traces').click();
    await page.locator('ww-traces').waitFor();
    expect(await page.locator('ww-diagnosis').isVisible()).toBe(true);
    await page.locator('#tab-order').click();
  });

  it('can be stopped and gone on with; nothing of it is lost', async () => {
    const { page } = visit;
    const stop = page.locator('ww-diagnosis').getByRole('button', { name: 'Stop' });
    if (!(await stop.isVisible())) return;
    await stop.click();
    await page.getByText('the ranking is a rough one').waitFor();
    expect(await page.locator('ww-diagnosis [data-cause]').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.locator('ww-diagnosis progress').waitFor();
  });

  it('has nothing against it and asks nobody', async () => {
    const { page, said, elsewhere } = visit;
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });
});

describe('a whole diagnosis, of a gear of one leg', () => {
  const leg = oneLeg();
  const [unit] = Object.keys(leg.units);
  const [up] = simulate(leg, {
    faults: [{ fault: 'ground-supply-weak', on: 'stand', severity: 0.3 }],
  }).timings;
  const time = (at: number) => ({ at: Math.round(at * 100) / 100, error: 0.1 });
  const sheet: ObservationSheet = {
    ...{ aircraft: leg.title, scenario: '', card: '', date: '2031-05-04', by: 'K' },
    ...{ readingError: 0.1, conditions: {}, note: '' },
    swings: [
      {
        ...{ direction: 'up', conditions: {}, order: [], gauges: {}, remarks: {} },
        ...{ recordings: [], note: '' },
        times: { [unit]: { locked: time(up.locked - up.start), total: time(up.total) } },
      },
    ],
  };
  let visit: Visit;

  beforeAll(async () => {
    visit = await site.visit({ width: 820, height: 1180 });
    const { page } = visit;
    await drop(page, ['one.yaml', writeScenario(leg, catalogues)]);
    await openBench(page);
    await drop(page, ['seen.yaml', writeObservations(sheet)]);
    await page.locator('[data-busy-diagnosis=true]').waitFor(PATIENCE);
  });
  afterAll(() => visit.page.close());

  const whole = (page: Page): Promise<void> =>
    page.locator('[data-busy-diagnosis=false]').waitFor(PATIENCE);
  /** How likely a single cause is in the ranking, %. */
  async function shareOf(page: Page, fault: string): Promise<number> {
    const { ranking } = await held<{ ranking: Ranking }>(page, 'diagnosis');
    const all = ranking.us.ranking.flatMap((line) => line.members);
    const found = all.find((m) => m.causes.length === 1 && m.causes[0].fault === fault);
    return Number.parseFloat(found?.percent ?? '0');
  }

  it('stays on the bench when a sheet is dropped there, and ends with checks', async () => {
    const { page } = visit;
    await whole(page);
    expect(await page.locator('ww-diagnosis').isVisible()).toBe(true);
    const causes = page.locator('ww-diagnosis [data-cause="ground-supply-weak stand"]');
    expect(await causes.count()).toBe(1);
    const offered = page.locator('ww-diagnosis [data-check]');
    expect(await offered.count()).toBeGreaterThan(1);
    const text = (await offered.first().textContent()) ?? '';
    expect(text).toMatch(/\d+ min/);
    expect(text).toMatch(/would settle \d+ % of what is open/);
    expect(text).toMatch(/needs/);
    for (const b of await page.locator('ww-diagnosis .checks button:visible').all()) {
      const box = await b.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(44);
    }
    await keep(page, 'diagnosis-checks-820');
  });

  it('takes what a look has shown, goes on from there, and takes it back', async () => {
    const { page } = visit;
    const before = await shareOf(page, 'ground-supply-weak');
    const look = page.locator('ww-diagnosis [data-check="supply-measured stand"]');
    await look.evaluate((e) => (e.closest('details')?.setAttribute('open', ''), undefined));
    await look.getByRole('button', { name: /: found$/ }).click();
    await page.locator('ww-diagnosis .journal li').waitFor();
    // Where nothing is left to play it is busy for less than one can be sure to see.
    await expect.poll(() => shareOf(page, 'ground-supply-weak'), PATIENCE).toBeGreaterThan(before);
    await whole(page);
    expect(await page.locator('ww-diagnosis .journal li').textContent()).toMatch(/, stand: found/);
    await keep(page, 'diagnosis-look-820');
    await page.getByRole('button', { name: /^Take back/ }).click();
    expect(await page.locator('ww-diagnosis .journal li').count()).toBe(0);
    await expect.poll(() => shareOf(page, 'ground-supply-weak'), PATIENCE).toBeCloseTo(before, 0);
    await whole(page);
  });

  it.each(['A4', 'Letter'] as const)(
    'goes on %s: cautions first, what was seen, concluded, next, and who signs; no row cut',
    async (format) => {
      const { page } = visit;
      await page.locator('#tab-report').click();
      const report = page.locator('ww-diagnosis-report');
      await page.evaluate(() => (window.print = () => undefined));
      await report.getByRole('button', { name: 'Print' }).click();
      const margin = { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' };
      const pages = pagesOf(await page.pdf({ format, margin }));
      const rows = await report.locator('tr').allTextContents();
      await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
      expect(pages.length).toBeLessThanOrEqual(4);
      const found = (row: string): boolean =>
        pages.some((p) => p.toLowerCase().includes(bare(row).toLowerCase()));
      expect(rows.length).toBeGreaterThan(4);
      expect(rows.filter((row) => !found(row))).toEqual([]);
      const text = pages.join('');
      const places = [
        ...CAUTIONS.map((c) => c.head),
        '1 swing up',
        'What explains it',
        'Seen, and foretold by',
        `${up.total.toFixed(2)} s`,
        'Needs:',
        'To confirm:',
        'follows the aircraft’s approved data',
        'Signature and licence',
      ].map((words) => text.indexOf(bare(words)));
      expect(places.filter((p) => p < 0)).toEqual([]);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    },
  );

  it('sends the mechanic to the stopwatch for a swing under other conditions, and on with it', async () => {
    const { page } = visit;
    // Warm oil tells a weak supply from a leak in the selector.
    const swing = page.locator('ww-diagnosis [data-check="warm-oil "]');
    await swing.evaluate((e) => (e.closest('details')?.setAttribute('open', ''), undefined));
    await swing.getByRole('button', { name: 'Time a swing under that' }).click();
    await page.locator('ww-test-card [data-under]').waitFor();
    await page.locator('ww-stopwatch [data-start]').click();
    await page.waitForTimeout(200);
    await page.locator('ww-stopwatch [data-home]').click();
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(2);
    await page.getByRole('button', { name: 'Back to the diagnosis' }).click();
    await page.locator('ww-diagnosis .journal li', { hasText: 'Row 2' }).waitFor();
    await page.locator('[data-busy-diagnosis=true]').waitFor(PATIENCE);
    const { draft } = await held<{ draft: { sheet: ObservationSheet } }>(page, 'testCard');
    const warm = leg.fluid.temperature + checks['warm-oil'].swing!.warmer!;
    expect(draft.sheet.swings[1].conditions.temperature).toBeCloseTo(warm, 6);
    await page.getByRole('button', { name: 'Strike out row 2' }).click();
    await page.getByRole('button', { name: 'Put it back' }).waitFor();
    await whole(page);
  });

  it('knows on another visit what was played on this one', async () => {
    /** Names of the swings that the browser keeps; `mark` adds one to them. */
    const shelf = (page: Page, mark?: string): Promise<string[]> =>
      page.evaluate(async (added) => {
        const kept = await caches.open('wheelwell-swings');
        const places = await kept.keys();
        const folder = (places.at(-1)?.url ?? '').replace(/[^/]*$/, '');
        const names: string[] = [];
        for (const place of places.filter(({ url }) => url.startsWith(folder))) {
          const batch = (await (await kept.match(place))?.json()) as [string, object][];
          names.push(...batch.map(([name]) => name));
          if (added !== undefined && place === places.at(-1))
            await kept.put(place, new Response(JSON.stringify([...batch, [added, {}]])));
        }
        return names;
      }, mark);
    const { page } = visit;
    await expect.poll(async () => (await shelf(page)).length).toBeGreaterThan(20);
    const played = await shelf(page, 'mark');
    await page.reload();
    await page.locator('ww-bay table').waitFor(PATIENCE);
    await drop(page, ['one.yaml', writeScenario(leg, catalogues)]);
    await openBench(page);
    await drop(page, ['seen.yaml', writeObservations(sheet)]);
    await page.locator('ww-diagnosis .ranking > li').first().waitFor(PATIENCE);
    await whole(page);
    // It had nothing to write: else the mark would be gone.
    expect(await shelf(page)).toEqual([...played, 'mark']);
  });

  it.each([
    [1280, 800],
    [820, 1180],
    [390, 844],
  ])('has nothing against it at %i x %i, light and dark', async (width, height) => {
    const { page, said } = visit;
    await page.setViewportSize({ width, height });
    for (const scheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      for (const tab of ['cause', 'report']) {
        await page.locator(`#tab-${tab}`).click();
        await page.waitForTimeout(200);
        expect(await cutOff(page)).toEqual([]);
        expect(await violations(page)).toEqual([]);
      }
      await keep(page, `diagnosis-${scheme}-${width}`);
    }
    expect(said).toEqual([]);
  });
});
