/**
 * The mechanic's second task, on a tablet: the gear is slow on one side. Times a swing on the test card,
 * has it explained, looks at what the page says to look at, and puts the report on paper.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CAUTIONS, catalogues, simulate, writeScenario } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { oneLeg } from '../support/one-leg.js';
import { drop, keep, Site } from './browser.js';
import type { Visit } from './browser.js';
import { cutOff, violations } from './faultless.js';
import { pagesOf } from './pdf.js';

/** A machine that does much else beside takes its time. */
const PATIENCE = { timeout: 100_000 };

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit({ width: 820, height: 1180 });
});
afterAll(() => site.close());

const leg = oneLeg();
const [unit] = Object.keys(leg.units);
/** What is wrong with it, which nobody knows yet. */
const [slow] = simulate(leg, {
  faults: [{ fault: 'ground-supply-weak', on: 'stand', severity: 0.5 }],
}).timings;

const whole = (page: Page): Promise<void> =>
  page.locator('[data-busy-diagnosis=false]').waitFor(PATIENCE);

it('from the slow swing to the report', async () => {
  const { page, said, elsewhere } = visit;
  await drop(page, ['own-aeroplane.yaml', writeScenario(leg, catalogues)]);

  // A swing by the watch; the hand that stopped it writes what it really read.
  await page.getByRole('button', { name: 'Test card', exact: true }).click();
  await page.locator('ww-stopwatch [data-start]').click();
  await page.locator(`ww-stopwatch [data-tap="${unit} moving"]`).click();
  await page.locator('ww-stopwatch [data-home]').click();
  const write = async (what: string, at: number): Promise<void> => {
    const field = page.getByLabel(`${what}, s`, { exact: true });
    await field.fill(at.toFixed(1));
    await field.press('Tab');
  };
  await write(`${unit} moves`, slow.moving - slow.start);
  await write(`${unit} locked`, slow.locked - slow.start);
  await write('whole gear home', slow.total);
  await page.getByLabel('Watch read by').fill('K');
  await page.getByLabel('Watch read by').press('Tab');

  // What explains it: goes by itself.
  await page.getByRole('button', { name: 'Diagnosis', exact: true }).click();
  await page.locator('ww-diagnosis .ranking > li').first().waitFor(PATIENCE);
  await whole(page);
  const first = page.locator('ww-diagnosis .ranking > li').first();
  expect(await first.locator('[data-cause^="ground-supply-weak stand"]').count()).toBeGreaterThan(
    0,
  );
  await keep(page, 'journey-diagnosis-1-ranking');

  // What it foretells, drawn under what was timed.
  const cause = page.locator('ww-diagnosis-cause');
  await cause.locator('[data-show]').click();
  await cause.locator('[data-on-show]').waitFor(PATIENCE);
  await page.locator('ww-order-chart text', { hasText: 'fits' }).first().waitFor();
  await keep(page, 'journey-diagnosis-2-shown');

  // The stand is measured, and it is that.
  const look = page.locator('ww-diagnosis [data-check="supply-measured stand"]');
  await look.evaluate((e) => (e.closest('details')?.setAttribute('open', ''), undefined));
  await look.getByRole('button', { name: /: found$/ }).click();
  await page.locator('ww-diagnosis .journal li').waitFor();
  // It may be busy for less than one can be sure to see: what the look tells is waited for.
  await look.waitFor({ state: 'detached', ...PATIENCE });
  const top = page.locator('ww-diagnosis .ranking > li', { hasText: 'Ground supply weak' }).first();
  await top.waitFor(PATIENCE);
  await whole(page);
  expect(await page.locator('ww-diagnosis .ranking > li').first().textContent()).toMatch(
    /Ground supply weak/,
  );
  await keep(page, 'journey-diagnosis-3-checked');
  expect(await violations(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);

  // On paper.
  await page.locator('#tab-report').click();
  await page.evaluate(() => (window.print = () => undefined));
  await page.locator('ww-diagnosis-report').getByRole('button', { name: 'Print' }).click();
  const text = pagesOf(await page.pdf({ format: 'A4' })).join('');
  // As it was before the printer was done with it.
  await page.locator('ww-app').evaluate((app) => app.setAttribute('printing', ''));
  await page.setViewportSize({ width: 703, height: 1500 });
  await page.emulateMedia({ media: 'print' });
  await keep(page, 'journey-diagnosis-4-report');
  for (const words of [
    CAUTIONS[0].head,
    'by K',
    `${slow.total.toFixed(1)}0 s`,
    'Ground supply weak',
    'stand: found',
    'Signature and licence of the person who signs',
  ])
    expect(text).toContain(words.replace(/\s/g, ''));
  expect(said).toEqual([]);
  expect(elsewhere).toEqual([]);
});
