/** The test card on paper, and on screens of three sizes, in a real browser. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTIONS, expectedSwings, simulate } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { keep, settled, Site } from './browser.js';
import { demoScenario } from './demo.js';
import { cutOff, violations } from './faultless.js';
import { pagesOf } from './pdf.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

const scenario = demoScenario();
const bare = (text: string): string => text.replace(/\s/g, '');

async function openBench(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Test card', exact: true }).click();
  await page.locator('ww-test-card .expect', { hasText: 'as simulated' }).waitFor();
}

/** As the Print button leaves the page for the printer. */
async function toPrinter(page: Page): Promise<void> {
  await page.evaluate(() => (window.print = () => undefined));
  await page.locator('ww-card-sheet').getByRole('button', { name: 'Print' }).click();
}

describe('on paper', () => {
  it.each(['A4', 'Letter'] as const)(
    'on %s it is two pages: cautions first, then what is expected, then room to sign',
    async (format) => {
      const { page } = await site.visit();
      await openBench(page);
      await page.locator('ww-card-sheet table').first().waitFor();
      await toPrinter(page);
      const pages = pagesOf(
        await page.pdf({
          format,
          margin: { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' },
        }),
      );
      const rows = await page.locator('ww-card-sheet tr').allTextContents();
      await page.close();
      expect(pages.length).toBeLessThanOrEqual(2);
      const whole = (row: string): boolean =>
        pages.some((p) => p.toLowerCase().includes(bare(row).toLowerCase()));
      expect(rows.length).toBeGreaterThan(20);
      expect(rows.filter((row) => !whole(row))).toEqual([]);
      const text = pages.join('');
      const [up, down] = expectedSwings(simulate(scenario, { card: 'healthy' }));
      const total = (swing: typeof up): string =>
        `Wholegearhome${swing.times.gear.total!.toFixed(2)}`;
      const places = [
        ...CAUTIONS.map((c) => c.head),
        'Expected are the times of',
        'Conditions',
        total(up),
        `≤ ${scenario.limits.timeUp!.toFixed(1)}`,
        total(down),
        `≤ ${scenario.limits.timeDown!.toFixed(1)}`,
        'Remarks',
        'no release to service',
        "aircraft's own approved data and the person who signs",
        'Signature',
      ].map((words) => text.indexOf(bare(words)));
      expect(places.filter((p) => p < 0)).toEqual([]);
      expect(places).toEqual([...places].sort((a, b) => a - b));
      for (const unit of Object.keys(scenario.units)) expect(text).toContain(`${unit}locked`);
    },
  );

  it('shows the card and nothing else of the page, its swings of the sheet filled in, no row cut', async () => {
    const { page } = await site.visit();
    await openBench(page);
    await page.keyboard.press('Space');
    await page.keyboard.press('4');
    await page.waitForTimeout(150);
    await page.keyboard.press('Space');
    const home = await page.getByLabel('whole gear home, s').inputValue();
    await toPrinter(page);
    // A4 less margins at 96 px to the inch.
    await page.setViewportSize({ width: 703, height: 1032 });
    await page.emulateMedia({ media: 'print' });
    for (const other of ['ww-transport', 'ww-bay', 'ww-test-card', 'ww-card-bar', 'ww-cautions'])
      expect(await page.locator(other).isVisible()).toBe(false);
    const row = page.locator('ww-card-sheet tr', { hasText: 'Whole gear home' }).first();
    expect(await row.locator('.room').allTextContents()).toEqual([Number(home).toFixed(2), '', '']);
    const rows = page.locator('ww-card-sheet tr');
    expect(await rows.count()).toBeGreaterThan(20);
    const cut = await rows.evaluateAll((all) =>
      all
        .filter((r) => getComputedStyle(r).breakInside !== 'avoid')
        .map((r) => r.textContent ?? ''),
    );
    expect(cut).toEqual([]);
    expect(await cutOff(page)).toEqual([]);
    await page.setViewportSize({ width: 703, height: 1500 });
    await keep(page, 'test-card-print');
    await page.close();
  });
});

describe.each([
  [1280, 800],
  [820, 1180],
  [390, 844],
])('at %i x %i', (width, height) => {
  it('has nothing against it, light and dark, ready and running', async () => {
    const { page, said } = await site.visit({ width, height });
    await openBench(page);
    for (const scheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.locator('ww-stopwatch [data-start]').click();
      for (const key of ['1', '2', '5']) await page.keyboard.press(key);
      await keep(page, `test-card-running-${scheme}-${width}`);
      const targets = await page
        .locator('ww-stopwatch :is(.tap, .main)')
        .evaluateAll((all) =>
          all.map((b) => b.getBoundingClientRect()).map((b) => [b.width, b.height]),
        );
      expect(targets.flat().filter((side) => side < 64)).toEqual([]);
      expect((await cutOff(page)).filter((w) => !bayOf(w))).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await page.locator('ww-stopwatch [data-home]').click();
      await page.locator('ww-swing-entry table').waitFor();
      const more = page.locator('ww-swing-more');
      if (!(await more.locator('fieldset').first().isVisible()))
        await more.locator('summary').click();
      await more.locator('fieldset').last().scrollIntoViewIfNeeded();
      await keep(page, `test-card-row-${scheme}-${width}`);
      expect((await cutOff(page)).filter((w) => !bayOf(w))).toEqual([]);
      expect(await violations(page)).toEqual([]);
    }
    expect(said).toEqual([]);
    await page.close();
  });
});

/** The bay's table, which is looked at in tests of its own. */
const bayOf = (complaint: string): boolean =>
  /"(Downlock|Uplock|Flagged here|down and locked|open|engaged)"/.test(complaint);

it('has a card for a blow-down too, from its handle on', async () => {
  const { page } = await site.visit();
  await page.locator('[data-choose=card]').first().selectOption('blow-down');
  await settled(page);
  await openBench(page);
  await page.getByRole('button', { name: /Handle pulled/ }).waitFor();
  const text = await page.locator('ww-card-sheet').evaluate((e) => e.shadowRoot?.textContent ?? '');
  expect(text).toContain('Blow-down, healthy');
  expect(text).toContain('pull of the handle');
  await page.close();
});
