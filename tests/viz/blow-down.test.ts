/** The blow-down bench, from opening it to the card in hand, in a real browser. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chargeTable, minimumCharge, playBlowDown, toDisplay } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { clock, keep, scrubTo, settled, Site } from './browser.js';
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

const CARD = 'blow-down';

async function openBench(page: Page, card = CARD): Promise<void> {
  await page.locator('[data-choose=card]').first().selectOption(card);
  await settled(page);
  await page.getByRole('button', { name: 'Blow-down', exact: true }).click();
}

const mapDone = (page: Page): Promise<void> =>
  page.locator('[data-map-busy]').waitFor({ state: 'detached', timeout: 110_000 });
/** The words of a view. */
const wordsOf = (page: Page, view: string): Promise<string> =>
  page.locator(view).evaluate((e) => e.shadowRoot?.textContent ?? '');
const spoken = (page: Page): Promise<string | null> =>
  page.locator('ww-app [role=status]').textContent();

describe('the bench', () => {
  it('says which cards have something to map when the one on show has not', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Blow-down', exact: true }).click();
    const offered = page.locator('ww-blow-down .empty button');
    const title = demoScenario().cards[CARD].title;
    expect(await offered.allTextContents()).toContain(title);
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Swing', exact: true }).click();
    await page.locator('ww-order-chart').waitFor();
  });

  it('fills the map as it goes, and stops when it is told to, what is known kept', async () => {
    const { page } = visit;
    await openBench(page);
    await page.locator('ww-blow-down rect[data-cell]').first().waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await mapDone(page);
    const known = await page.locator('ww-blow-down rect[data-cell]').count();
    expect(known).toBeGreaterThan(0);
    expect(known).toBeLessThan(25 * 19);
    await page.waitForTimeout(400);
    expect(await page.locator('ww-blow-down rect[data-cell]').count()).toBe(known);
    expect(await spoken(page)).toContain('stopped');
    await keep(page, 'blow-down-stopped');
  });

  it('makes the map whole, its edge on either side of the least charge', async () => {
    const { page, said, elsewhere } = visit;
    await page.getByRole('button', { name: 'Compute the map' }).click();
    await mapDone(page);
    await keep(page, 'blow-down-map');
    const least = minimumCharge(demoScenario(), { card: CARD });
    const { value } = toDisplay(least.charge, 'gauge-pressure', 'us');
    const told = await wordsOf(page, 'ww-blow-down-card');
    expect(told).toContain(`${value.toFixed(0)}\u00a0psi`);
    const bar = await page.locator('ww-blow-down [data-mark=least]').boundingBox();
    const own = await page.locator('ww-blow-down [data-mark=own]').boundingBox();
    expect(bar?.x).toBeLessThan(own?.x ?? 0);
    expect(await page.locator('ww-blow-down [data-boundary]').getAttribute('d')).toMatch(/^M/);
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });

  it('goes from cell to cell by keys, tells each, and plays one in the bay', async () => {
    const { page } = visit;
    const map = page.getByRole('application', { name: /Map of the blow-down/ });
    await map.focus();
    const at = await clock(page);
    await page.keyboard.press('Home');
    await page.keyboard.press('PageUp');
    expect(await spoken(page)).toMatch(/360\u00a0psi at 122\u00a0°F: not every leg locks/);
    // The arrows are the map's here: the play head has not gone to an event.
    expect(await clock(page)).toBe(at);
    await page.keyboard.press('ArrowDown');
    expect(await spoken(page)).toMatch(/360\u00a0psi at 113\u00a0°F/);
    await page.keyboard.press('Enter');
    await settled(page);
    await expect.poll(() => clock(page)).toBeGreaterThan(1);
    await page.keyboard.press('Space');
    const cell = playBlowDown(demoScenario(), CARD, {
      charge: 0.2 * chargeTable(demoScenario()).charge,
      temperature: 318.15,
    });
    const lines = await page.locator('ww-blow-down-card ul.legs li').allTextContents();
    expect(lines.map((line) => !line.includes('NOT'))).toEqual(cell.legs.map((l) => l.locked));
    expect(await page.locator('ww-blow-down [data-mark=played]').count()).toBe(1);
    await keep(page, 'blow-down-played');
    await page.getByRole('button', { name: 'As on the card' }).click();
    await settled(page);
    expect(await page.locator('ww-blow-down [data-mark=played]').count()).toBe(0);
  });

  it('plays the cell that is clicked', async () => {
    const { page } = visit;
    await page.locator('ww-blow-down rect[data-cell="20,10"]').first().click();
    await settled(page);
    const tools = await page.locator('ww-blow-down .second').textContent();
    expect(tools).toMatch(/Playing 2160\u00a0psi at 50\u00a0°F/);
  });

  it('moves along the moments with the clock, over travel and over time', async () => {
    const { page } = visit;
    const head = page.locator('ww-moment-plot [data-head]');
    await scrubTo(page, 0);
    await expect.poll(() => head.count()).toBe(0);
    const places: number[] = [];
    for (const time of [3, 5, 7]) {
      await scrubTo(page, time);
      await expect.poll(() => head.count()).toBe(1);
      places.push((await head.locator('circle').last().boundingBox())?.x ?? 0);
    }
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(places[2]).toBeGreaterThan(places[0] + 20);
    expect(await page.locator('ww-moment-plot [data-mark=worst]').count()).toBe(1);
    await page.locator('[data-choose=over]').selectOption('time');
    await page.locator('[data-choose=leg]').selectOption('tail');
    expect(await wordsOf(page, 'ww-moment-plot')).toContain('time, s');
    await keep(page, 'blow-down-moments');
    await page.locator('[data-choose=over]').selectOption('travel');
  });

  it('has a table in the units chosen', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Metric' }).click();
    await page.getByRole('button', { name: 'As a table' }).click();
    const table = page.locator('ww-blow-down table');
    expect(await table.locator('tbody tr').count()).toBe(19);
    expect(await table.locator('thead th').nth(1).textContent()).toMatch(/bar$/);
    expect(await table.locator('tbody th').first().textContent()).toBe('50\u00a0°C');
    expect(await table.locator('tbody tr').first().locator('td').last().textContent()).toMatch(
      / s$/,
    );
    expect(await violations(page)).toEqual([]);
    await keep(page, 'blow-down-table');
    await page.getByRole('button', { name: 'As a table' }).click();
    await page.getByRole('button', { name: 'US', exact: true }).click();
  });

  it('says what the ramps in the bays would do, and what a swing before bleeding is like', async () => {
    const { page } = visit;
    expect(await page.locator('ww-blow-down-card ul.ramps').textContent()).toMatch(
      /were its shortening link to break: the ramp in the bay/,
    );
    await page.getByRole('button', { name: 'Swing before it is bled' }).click();
    const table = page.locator('ww-blow-down-card [data-after]');
    await table.waitFor();
    const down = await table
      .locator('tr', { hasText: 'left down' })
      .locator('td')
      .allTextContents();
    const [sound, gassed] = down.map((cell) => parseFloat(cell));
    expect(gassed).toBeGreaterThan(sound);
    await keep(page, 'blow-down-after');
  });

  it('prints the bottle card alone, cautions first', async () => {
    const { page } = visit;
    await page.evaluate(() => (window.print = () => undefined));
    await page.getByRole('button', { name: 'Print' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('ww-blow-down-card').isVisible()).toBe(true);
    for (const other of ['ww-transport', 'ww-bay', 'ww-blow-down', 'ww-card-bar', 'ww-cautions'])
      expect(await page.locator(other).isVisible()).toBe(false);
    const text = await wordsOf(page, 'ww-blow-down-card');
    const order = ['not approved data', 'never oxygen', 'Never select UP', 'Charge table'];
    const places = [...order, 'Least charge', 'After this blow-down'].map((w) => text.indexOf(w));
    expect(places.every((p) => p >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect((await page.pdf()).byteLength).toBeGreaterThan(5000);
    await keep(page, 'blow-down-card');
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await page.locator('ww-transport').isVisible()).toBe(true);
  });
});

describe.each([
  [1280, 800],
  [820, 1180],
])('at %i x %i', (width, height) => {
  it('has nothing against it, light and dark, jammed and cold', async () => {
    const { page, said } = await site.visit({ width, height });
    for (const [card, scheme] of [
      ['blow-down-ramp-jams', 'dark'],
      ['blow-down-cold', 'light'],
    ] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.getByRole('button', { name: 'Swing', exact: true }).click();
      await openBench(page, card);
      await page.locator('ww-blow-down rect[data-cell]').first().waitFor();
      await page.waitForTimeout(1500);
      expect(await cutOff(page)).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await keep(page, `blow-down-${scheme}-${width}`);
    }
    expect(said).toEqual([]);
    await page.close();
  });
});
