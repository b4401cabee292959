import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogues } from '@wheelwell/core';
import { keep, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, demoScenario } from './demo.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

const FAULT = 'plunger-rigged-early';
const RULE = 'door-before-leg';
/** It befalls the oil and nothing else. */
const ON_FLUID = 'free-air';

/** The valve whose card in the demo shows doors closing early. */
function earlyValve(): { on: string; severity: number } {
  for (const card of Object.values(demoScenario().cards)) {
    const found = card.expect.includes(RULE)
      ? card.faults.find((f) => f.fault === FAULT)
      : undefined;
    if (found !== undefined) return found;
  }
  throw new Error('no card of the demo shows doors that close early');
}

describe('a fault put in', () => {
  it('simulates again, and the doors that close early are flagged and pinned', async () => {
    const { page } = visit;
    const { on, severity } = earlyValve();
    await page.getByRole('tab', { name: /Faults/ }).click();
    await page.locator('[data-choose=fault]').selectOption(FAULT);
    await page.locator('[data-choose=device]').selectOption(on);
    await page.getByRole('button', { name: 'Put in' }).click();
    await settled(page);
    const slider = page.getByRole('slider', { name: 'Severity' });
    await slider.fill(String(severity));
    await settled(page);

    const run = demoRun([{ fault: FAULT, on, severity }]);
    const index = run.flags.findIndex((f) => f.rule === RULE && f.severity !== 'note');
    expect(index).toBeGreaterThanOrEqual(0);
    expect(await page.locator(`ww-order-chart .pin[data-flag="${index}"]`).count()).toBe(1);

    await page.getByRole('tab', { name: /Flags/ }).click();
    const item = page.locator(`ww-flag-list [data-flag="${index}"]`);
    expect(await item.getAttribute('data-rule')).toBe(RULE);
    await item.locator('.row').click();
    expect(await item.textContent()).toContain(run.flags[index].explanation);
    await keep(page, 'doors-early');
    const spoken = await page.locator('ww-app [role=status]').textContent();
    expect(spoken).toContain(run.flags[index].title);
  });

  it('leaves the times of the run before it beside its own, however the severity is dragged', async () => {
    const { page } = visit;
    const healthy = demoRun();
    const cells = page.locator('ww-times tr.former').first().locator('td');
    const shown = await cells.allTextContents();
    for (const [i, name] of Object.keys(healthy.scenario.units).entries()) {
      const t = healthy.timings.find((each) => each.unit === name && each.direction === 'up');
      expect(Number(shown[i])).toBeCloseTo(t?.total ?? NaN, 1);
    }
  });

  it('is stepped to with F and named beside the drawing', async () => {
    const { page } = visit;
    await page.keyboard.press('Home');
    await page.keyboard.press('f');
    const chosen = page.locator('ww-flag-list li.chosen');
    expect(await chosen.count()).toBe(1);
    expect(await page.locator('ww-bay .flags span').count()).toBeGreaterThan(0);
  });

  it('is gone when it is taken out', async () => {
    const { page } = visit;
    await page.getByRole('tab', { name: /Faults/ }).click();
    await page.getByRole('button', { name: /^Take out/ }).click();
    await settled(page);
    const run = demoRun();
    const bad = run.flags.filter((f) => f.severity !== 'note').length;
    expect(
      await page.locator('ww-order-chart .pin.fail, ww-order-chart .pin.caution').count(),
    ).toBe(bad);
    expect(await page.getByText('No fault is in this run.').isVisible()).toBe(true);
  });

  it('is found among many and put in by keys alone, and what befalls the oil is on the fluid', async () => {
    const { page, said } = visit;
    await page.getByRole('tab', { name: /Faults/ }).focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    const { title } = catalogues.faults[ON_FLUID];
    await page.keyboard.type(title.slice(0, 6).toLowerCase());
    const chosen = page.locator('[data-choose=fault] option:checked');
    await expect.poll(async () => (await chosen.textContent())?.trim()).toBe(title);
    const on = page.locator('[data-choose=device] option:checked');
    await expect.poll(() => on.textContent()).toBe('fluid');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await settled(page);
    const section = page.getByRole('region', { name: `${title} on fluid` });
    expect(await section.isVisible()).toBe(true);
    expect(said).toEqual([]);
  });
});
