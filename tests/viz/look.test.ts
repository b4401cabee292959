import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { clock, keep, settled, Site } from './browser.js';
import { cutOff, violations } from './faultless.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

const SIZES = [
  [1280, 800],
  [820, 1180],
] as const;

describe.each(['light', 'dark'] as const)('in the %s theme', (scheme) => {
  it.each(SIZES)(
    'has nothing against it at %i x %i, whatever panel is on top',
    async (width, height) => {
      const { page, said } = await site.visit({ width, height, scheme });
      // A card with flags shows every kind of mark.
      const cards = await page
        .locator('[data-choose=card] option')
        .evaluateAll((all) => all.map((o) => (o as HTMLOptionElement).value));
      await page
        .locator('[data-choose=card]')
        .selectOption(cards.find((c) => /early/.test(c)) ?? cards[cards.length - 1]);
      await settled(page);
      for (const key of ['1', '2', '3']) {
        await page.keyboard.press(key);
        if (key !== '3') await page.keyboard.press(key === '1' ? 'f' : 'ArrowRight');
        await page.waitForTimeout(100);
        expect(await cutOff(page)).toEqual([]);
        // What differs between the sizes is where things stand, not what they are.
        if (width > 1000 || key === '1') expect(await violations(page)).toEqual([]);
        await keep(page, `${scheme}-${width}-panel-${key}`);
      }
      await page.keyboard.press('?');
      expect(await violations(page)).toEqual([]);
      await page.keyboard.press('Escape');
      expect(said).toEqual([]);
      await page.close();
    },
  );
});

describe('large, for a room', () => {
  it.each([
    [1024, 768],
    [1920, 1080],
  ])(
    'shows drawing, chart and reason at once, without fault, at %i x %i',
    async (width, height) => {
      const { page, said } = await site.visit({ width, height, scheme: 'dark' });
      await page.locator('[data-choose=card]').selectOption('doors-early');
      await settled(page);
      expect(await cutOff(page)).toEqual([]);
      await page.keyboard.press('l');
      await page.keyboard.press('f');
      const told = page.locator('ww-told p').first();
      await expect.poll(() => told.textContent()).toMatch(/(Fail|Caution): /);
      for (const part of ['ww-bay svg[data-view=front]', 'ww-order-chart .body', 'ww-told']) {
        const box = await page.locator(part).boundingBox();
        expect(box?.y).toBeLessThan(height);
        expect(box?.height).toBeGreaterThan(40);
      }
      // At least a fiftieth of the picture's height: a rule of thumb for slides, no source.
      const size = await told.evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
      expect(size).toBeGreaterThan(height / 50);
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => told.textContent()).toContain('because');
      expect(await cutOff(page)).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await keep(page, `large-${width}`);
      // A drag still meets the time under the pointer, though the chart is larger.
      const body = await page.locator('ww-order-chart .scroll').boundingBox();
      if (body === null) throw new Error('no order chart');
      await page.mouse.click(body.x + body.width * 0.999, body.y + body.height - 6);
      expect(await clock(page)).toBeCloseTo(30, 0);
      await page.keyboard.press('l');
      expect(await page.getByRole('tab', { name: /Flags/ }).isVisible()).toBe(true);
      expect(said).toEqual([]);
      await page.close();
    },
  );
});

it('the chart shows legs and doors, all that work, or all there are', async () => {
  const { page } = await site.visit();
  const lanes = page.locator('ww-order-chart .name');
  const counts: number[] = [];
  for (const depth of ['gear', 'working', 'all']) {
    await page.locator('ww-order-chart select').selectOption(depth);
    counts.push(await lanes.count());
  }
  expect(counts[0]).toBeLessThan(counts[1]);
  expect(counts[1]).toBeLessThan(counts[2]);
  await page.close();
});

it('the theme follows the button and is remembered', async () => {
  const { page } = await site.visit({ scheme: 'light' });
  const paper = (): Promise<string> =>
    page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await paper();
  await page.keyboard.press('t');
  await page.keyboard.press('t');
  const dark = await paper();
  expect(dark).not.toBe(light);
  await page.reload();
  await page.locator('ww-bay table').waitFor();
  expect(await paper()).toBe(dark);
  await page.close();
});
