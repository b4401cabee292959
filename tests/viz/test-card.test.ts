/** The test card bench, from the first tap to the sheet in hand, in a real browser. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectedSwings, readObservations, simulate } from '@wheelwell/core';
import type { ObservationReading } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { drop, keep, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoScenario } from './demo.js';
import { cutOff, violations } from './faultless.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

const scenario = demoScenario();
const [up] = expectedSwings(simulate(scenario, { card: 'healthy' }));

async function openBench(page: Page): Promise<void> {
  await settled(page);
  await page.getByRole('button', { name: 'Test card', exact: true }).click();
  await page.locator('ww-test-card .expect', { hasText: 'as simulated' }).waitFor();
}

/** What the watch shows on a button that has been tapped, s. */
async function tapped(page: Page, name: string): Promise<number> {
  const text = await page.locator(`ww-stopwatch [data-tap="${name}"] b`).textContent();
  return Number(/[\d.]+/.exec(text ?? '')?.[0]);
}

/** Pairs of the stopwatch's buttons that lie over each other. */
async function overlapping(page: Page): Promise<string[]> {
  const buttons = await page.locator('ww-stopwatch button').all();
  const all = await Promise.all(
    buttons.map(async (b) => ({ is: await b.innerText(), at: (await b.boundingBox())! })),
  );
  const over = (a: number, b: number, one: number, other: number): boolean =>
    Math.min(a + one, b + other) - Math.max(a, b) > 1;
  return all.flatMap((p, i) =>
    all
      .slice(i + 1)
      .filter(
        (q) =>
          over(p.at.x, q.at.x, p.at.width, q.at.width) &&
          over(p.at.y, q.at.y, p.at.height, q.at.height),
      )
      .map((q) => `${p.is} and ${q.is}`),
  );
}

/** The sheet as the page saves it, read by core. */
async function saved(page: Page): Promise<ObservationReading & { readonly text: string }> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save sheet' }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/^hedgelark-observed-\d{4}-\d\d-\d\d\.yaml$/);
  const text = readFileSync(await file.path(), 'utf8');
  return { ...readObservations(text, { scenario }), text };
}

const spoken = (page: Page): Promise<string | null> =>
  page.locator('ww-app [role=status]').first().textContent();

describe('a whole swing', () => {
  it('is tapped, the first tap counting, the last undone', async () => {
    const { page } = visit;
    await openBench(page);
    await keep(page, 'test-card-ready');
    await page.locator('ww-stopwatch [data-start]').click();
    await page.waitForTimeout(250);
    for (const name of ['left moving', 'right moving', 'tail moving'])
      await page.locator(`ww-stopwatch [data-tap="${name}"]`).click();
    const first = await tapped(page, 'left moving');
    expect(first).toBeGreaterThan(0.2);
    await page.waitForTimeout(100);
    await page.locator('ww-stopwatch [data-tap="left moving"]').click();
    expect(await tapped(page, 'left moving')).toBe(first);
    await page.locator('ww-stopwatch [data-tap="tail locked"]').click();
    await page.getByRole('button', { name: /Undo last tap/ }).click();
    expect(await spoken(page)).toContain('Undone: tail locked');
    expect(await page.locator('ww-stopwatch [data-tap="tail locked"] b').count()).toBe(0);
    await page.locator('ww-stopwatch [data-tap="tail locked"]').click();
    const words = await page.locator('ww-stopwatch [data-tap="tail locked"]').textContent();
    const early = (up.times.tail.locked ?? NaN) - (await tapped(page, 'tail locked'));
    expect(words).toContain(`${early.toFixed(2)}\u00a0s earlier than expected`);
    await keep(page, 'test-card-running');
    await page.locator('ww-stopwatch [data-home]').click();
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(1);
  });

  it('goes by keys alone just as well: Space, numbers, Backspace, Space', async () => {
    const { page } = visit;
    await page.keyboard.press('Space');
    for (const key of ['3', '1', '2', '6', '4', '5', '9', 'Backspace', '7', '8'])
      await page.keyboard.press(key);
    await page.keyboard.press('Space');
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(2);
    await keep(page, 'test-card-rows');
  });

  it('has remarks, gauge readings in the units of the user, and a note', async () => {
    const { page } = visit;
    const remarks = page.getByRole('group', { name: 'Remarks on tail' });
    await remarks.getByLabel('moved by jerks').check();
    await remarks.getByLabel('doors came open again').check();
    await page.getByLabel('Gauge static, psi').fill('1450');
    await page.getByLabel('Gauge peak, psi').fill('1600');
    // What is emptied again is missing, not nought.
    for (const text of ['900', '']) {
      await page.getByLabel('Gauge while moving, psi').fill(text);
      await page.getByLabel('Gauge while moving, psi').press('Tab');
    }
    expect(await page.getByLabel('Gauge while moving, psi').inputValue()).toBe('');
    await page.getByRole('button', { name: 'Metric', exact: true }).click();
    expect(Number(await page.getByLabel('Gauge static, bar').inputValue())).toBeCloseTo(99.974, 2);
    await page.getByRole('button', { name: 'US', exact: true }).click();
    await page.locator('ww-swing-entry .note input').fill('chirp from the right hook');
    await page.getByLabel('Supply flow, gal/min').fill('4,2');
    await page.getByLabel('Watch read by').fill('K');
    await page.getByLabel('Watch read by').press('Tab');
  });

  it('has what is seldom noted: what never came, the order, other gauges, the supply, how it stood', async () => {
    const { page } = visit;
    await page.getByText('More of this row').click();
    const more = page.locator('ww-swing-more');
    await more.locator('[data-never]').getByLabel('right unlocked').check();
    const shown = await more.locator('[data-order] li').allTextContents();
    await more.getByLabel('Then came').selectOption('right unlocked');
    expect(await more.locator('[data-order] li').count()).toBe(shown.length + 1);
    // What came is no more among what did not.
    expect(await more.locator('[data-never]').getByLabel('right unlocked').isChecked()).toBe(false);
    await more.getByLabel('Strike right unlocked out of the order').click();
    // It has moved, so it has unlocked: the page says that these do not go together.
    await more.locator('[data-never]').getByLabel('right unlocked').check();
    await page.locator('[data-contradictions]', { hasText: 'right unlocked' }).waitFor();
    await more.locator('[data-never]').getByLabel('right unlocked').uncheck();
    await page.locator('[data-contradictions]').waitFor({ state: 'detached' });
    await more.getByLabel('Another gauge, at').selectOption('selector-up');
    await more.getByLabel('Gauge at selector up dead-head, psi').fill('20');
    await more.getByLabel('ground supply: flow at dead-head, gal/min').fill('0.3');
    await more.getByLabel('Left in neutral of this row, s').fill('600');
    await more.getByLabel('Doors of this row').selectOption('connected');
    await keep(page, 'test-card-more');
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
  });

  it('is saved as a sheet that core reads, with the same times', async () => {
    const { page } = visit;
    const shown = await page
      .locator('ww-swing-entry [aria-label$=", s"]')
      .evaluateAll((all) =>
        all.map((i) => [i.getAttribute('aria-label'), (i as HTMLInputElement).value] as const),
      );
    const { sheet, issues, contradictions } = await saved(page);
    expect(issues).toEqual([]);
    expect(contradictions).toEqual([]);
    expect(sheet).toMatchObject({ aircraft: scenario.title, card: 'healthy', by: 'K' });
    expect(sheet?.swings.map((s) => s.direction)).toEqual(['up', 'down']);
    const [one, two] = sheet?.swings ?? [];
    expect(one.times.tail.locked?.error).toBe(0.2);
    expect(one.order.map((e) => `${e.unit} ${e.event}`)).toEqual([
      'left moving',
      'right moving',
      'tail moving',
      'tail locked',
    ]);
    expect(two.order[0]).toEqual({ unit: 'tail', event: 'moving' });
    expect(two.times.tail).not.toHaveProperty('doors');
    const seen = Object.fromEntries(shown);
    expect(two.times.left.locked?.at).toBe(Number(seen['left locked, s']));
    expect(two.times.gear.total?.at).toBe(Number(seen['whole gear home, s']));
    expect(seen['left unlocked, s']).toBe('');
    expect(two.times.left).not.toHaveProperty('unlocked');
    expect(two.remarks).toEqual({ tail: ['moved by jerks', 'doors came open again'] });
    expect(two.gauges.pressure.static).toBeCloseTo(1450 * 6894.757293, 0);
    expect(two.gauges.pressure).not.toHaveProperty('moving');
    expect(two.note).toBe('chirp from the right hook');
    expect(two).not.toHaveProperty('never');
    expect(two.gauges['selector-up']).toEqual({ 'dead-head': expect.closeTo(20 * 6894.757293, 0) });
    expect(two.supply?.['ground-supply']['dead-head-flow']).toBeCloseTo(
      (0.3 * 3.785411784e-3) / 60,
      12,
    );
    expect(two.conditions).toEqual({ leftFor: 600, doors: 'connected' });
    expect(sheet?.conditions.supplyFlow).toBeCloseTo((4.2 * 3.785411784e-3) / 60, 12);
    expect(await page.locator('ww-test-card [data-saved]').textContent()).toBe('Nothing unsaved');
  });

  it('lies over the order chart', async () => {
    const { page } = visit;
    const laid = await page.locator('ww-app').evaluate((app) => {
      const { store } = app as unknown as { store: { state: { measured: { on: string }[] } } };
      return store.state.measured.map((m) => m.on);
    });
    expect(laid).toContain('left');
    expect(laid).toContain('gear');
  });

  it('has nothing against it and asks nobody', async () => {
    const { page, said, elsewhere } = visit;
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });
});

describe('what is written by hand', () => {
  it('is told when it is no number, and changes nothing', async () => {
    const { page } = visit;
    const field = page.getByLabel('left locked, s');
    const before = await field.inputValue();
    await field.fill('soon');
    await field.press('Tab');
    await page.getByText('“soon” is not a number').waitFor();
    expect(await field.inputValue()).toBe('soon');
    await field.fill('99999');
    await field.press('Tab');
    await page.getByText(/99999 is out of bounds: 0 to 3600 s/).waitFor();
    expect((await saved(page)).sheet?.swings[1].times.left.locked?.at).toBe(Number(before));
    await field.fill('0,01');
    await field.press('Tab');
    expect((await saved(page)).sheet?.swings[1].times.left.locked?.at).toBe(0.01);
  });

  it('is pointed out when it does not go together with the rest', async () => {
    const { page } = visit;
    await page.getByLabel('left moves, s').fill('5');
    await page.getByLabel('left moves, s').press('Tab');
    await page.locator('[data-contradictions]').waitFor();
    const text = await page.locator('[data-contradictions]').textContent();
    expect(text).toMatch(/Row 2: left: locked at 0\.01 s comes before moving at 5 s/);
    await keep(page, 'test-card-contradiction');
  });

  it('is struck out and put back', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Strike out row 1' }).click();
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(1);
    await page.getByRole('button', { name: 'Put row 1 back' }).click();
    expect(await page.locator('ww-test-card [data-row]').first().textContent()).toMatch(/1\. up/);
  });
});

describe('a reload', () => {
  it('keeps the sheet, and the watch running', async () => {
    const { page } = visit;
    await page.locator('ww-stopwatch [data-start]').click();
    await page.keyboard.press('1');
    const at = await tapped(page, 'left moving');
    await page.reload();
    await page.locator('ww-bay table').waitFor();
    await openBench(page);
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(2);
    expect(await tapped(page, 'left moving')).toBe(at);
    const reading = await page.locator('[data-watch]').textContent();
    expect(Number.parseFloat(reading ?? '')).toBeGreaterThan(at);
    await page.getByRole('button', { name: 'Throw away' }).click();
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(2);
  });
});

describe('a sheet that is opened', () => {
  const SHEET = `wheelwell-observations: 1
aircraft: ${scenario.title}
swings:
  - { direction: up, times: { left: { locked: 6.4 s }, gear: { total: fast } } }
`;
  it('never takes the place of one that has not been saved unasked', async () => {
    const { page } = visit;
    await drop(page, ['seen.yaml', SHEET]);
    await page.locator('[data-offer]').waitFor();
    expect(await page.locator('[data-issues]').textContent()).toMatch(
      /seen\.yaml: 1 entry could not be read.*Line 4, swings\.0\.times\.gear\.total: this is not a time, found “fast”/s,
    );
    await page.getByRole('button', { name: 'Add its swings' }).click();
    expect(await page.locator('ww-test-card [data-row]').count()).toBe(3);
  });

  it('is shown at once when nothing would be lost', async () => {
    const { page } = visit;
    await saved(page);
    await drop(page, ['seen.yaml', SHEET]);
    await expect.poll(() => page.locator('ww-test-card [data-row]').count()).toBe(1);
    expect(await page.getByLabel('left locked, s').inputValue()).toBe('6.4');
    expect(await page.getByLabel('whole gear home, s').inputValue()).toBe('');
  });

  it('for another aircraft says so', async () => {
    const { page } = visit;
    await drop(page, ['other.yaml', SHEET.replace(scenario.title, 'Another')]);
    await page.getByText(/this sheet is for another aircraft, found “Another”/).waitFor();
  });
});

describe('an aircraft whose doors open first and close behind the legs', () => {
  const SIZES = [
    [1280, 800],
    [820, 1180],
    [390, 844],
  ] as const;

  it('has a button and a letter for that and for its lights, a row on paper, and a place among what never came', async () => {
    const { page, said } = await site.visit();
    await page.locator('[data-choose=aircraft]').selectOption('tarnswift/tarnswift.yaml');
    await openBench(page);
    const expected = await page.locator('ww-card-sheet [data-direction=up]').textContent();
    expect(expected).toMatch(/left doors open\s+1\.\d\d/);
    expect(expected).toMatch(/left light on\s+6\.\d\d/);
    expect(
      await page
        .locator('ww-card-sheet .block', { hasText: 'Order expected' })
        .first()
        .textContent(),
    ).toMatch(/Order expected:\s*left doors open, right doors open, nose doors open, left moves/);
    await page.locator('ww-stopwatch [data-start]').focus();
    await page.keyboard.press('Space');
    for (const key of ['q', 'W']) await page.keyboard.press(key);
    await page.locator('ww-stopwatch [data-tap="nose opened"]').click();
    for (const key of ['1', 'd']) await page.keyboard.press(key);
    const names = ['left opened', 'right opened', 'nose opened', 'left moving', 'nose light'];
    for (const name of names) expect(await tapped(page, name)).toBeGreaterThanOrEqual(0);
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      await keep(page, `test-card-doors-first-${width}`);
      expect(await cutOff(page)).toEqual([]);
      expect(await overlapping(page)).toEqual([]);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.getByRole('button', { name: 'Stop, not all home' }).click();
    expect(Number(await page.getByLabel('right doors open, s').inputValue())).toBeGreaterThan(0);
    await page.getByText('More of this row').click();
    await page.locator('[data-never]').getByLabel('left doors home').check();
    expect(await page.locator('[data-never]').getByLabel('left doors open').count()).toBe(0);
    await page.getByLabel('left doors open, s').fill('');
    await page.getByLabel('left doors open, s').press('Tab');
    await page.locator('[data-never]').getByLabel('left doors open').check();
    expect(Number(await page.getByLabel('nose light on, s').inputValue())).toBeGreaterThan(0);
    await page.locator('[data-never]').getByLabel('left light on').check();
    expect(await violations(page)).toEqual([]);
    expect(said).toEqual([]);
  });
});
