/** Room for what matters: on a projector of 1024 x 768, beside a bench, on a phone. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { keep, settled, Site } from './browser.js';
import { cutOff, violations } from './faultless.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

it('Large shows nine lanes or more at once at 1024 x 768, with two marks held', async () => {
  const { page } = await site.visit({ width: 1024, height: 768 });
  await page.keyboard.press('l');
  await page.waitForTimeout(300);
  const lanes = (): Promise<number> =>
    page.locator('ww-order-chart .scroll').evaluate((scroll) => {
      const frame = scroll.getBoundingClientRect();
      const axis = scroll.querySelector('.axis')?.getBoundingClientRect().bottom ?? 0;
      return [...scroll.querySelectorAll('.name, .heading')].filter((e) => {
        const box = e.getBoundingClientRect();
        return box.top >= axis - 2 && box.bottom <= frame.bottom + 2;
      }).length;
    });
  expect(await lanes()).toBeGreaterThanOrEqual(9);
  for (const key of ['ArrowRight', 'm', 'ArrowRight', 'ArrowRight', 'm', 'a'])
    await page.keyboard.press(key);
  expect(await cutOff(page)).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await keep(page, 'large-1024-marks');
  await page.close();
});

it.each([
  [1024, 768],
  [1280, 800],
])('a bench in Large is all in sight at %i x %i', async (width, height) => {
  const { page } = await site.visit({ width, height });
  await page.locator('[data-choose=card]').selectOption('blow-down');
  await settled(page);
  await page.getByRole('button', { name: 'Blow-down', exact: true }).click();
  await page.keyboard.press('l');
  await page.locator('ww-moment-plot .plot svg').waitFor();
  const beyond = (): Promise<number> =>
    page
      .locator('ww-app .bench .content')
      .evaluate((e) => Math.max(e.scrollHeight - e.clientHeight, e.scrollWidth - e.clientWidth));
  await expect.poll(beyond).toBeLessThanOrEqual(1);
  const plot = await page.locator('ww-moment-plot .plot').boundingBox();
  expect(plot?.height).toBeGreaterThan(100);
  expect(await cutOff(page)).toEqual([]);
  await keep(page, `large-bench-${width}`);
  await page.close();
});

it('on a phone the clock covers nothing for good: map and plot come to stand clear of it', async () => {
  const { page } = await site.visit({ width: 390, height: 844 });
  await page.locator('[data-choose=card]').selectOption('blow-down');
  await settled(page);
  await page.getByRole('button', { name: 'Blow-down', exact: true }).click();
  const plot = page.locator('ww-moment-plot');
  await plot.locator('.plot svg').waitFor();
  // Nothing of the bench scrolls inside the page.
  const inner = await page
    .locator('ww-app .bench .content')
    .evaluate((e) => e.scrollHeight - e.clientHeight);
  expect(inner).toBeLessThanOrEqual(1);
  for (const part of [page.locator('ww-blow-down .map'), plot]) {
    await part.evaluate((e) => e.scrollIntoView({ block: 'end' }));
    const box = await part.boundingBox();
    const clock = await page.locator('ww-transport').boundingBox();
    if (box === null || clock === null) throw new Error('not in sight');
    expect(box.y + box.height).toBeLessThanOrEqual(clock.y + 1);
    expect(box.y).toBeGreaterThanOrEqual(-1);
  }
  expect(await cutOff(page)).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await keep(page, 'phone-blow-down');
  // No word of the page ends in dots.
  await page.getByRole('button', { name: 'Swing', exact: true }).click();
  const dotted = await page.evaluate(() => {
    const out: string[] = [];
    const visit = (root: ParentNode): void => {
      for (const e of root.querySelectorAll<HTMLElement>('*')) {
        if (e.shadowRoot !== null) visit(e.shadowRoot);
        const { textOverflow } = getComputedStyle(e);
        if (textOverflow === 'ellipsis' && e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1)
          out.push(`${e.localName} ${e.textContent?.trim().slice(0, 40)}`);
      }
    };
    visit(document);
    return out;
  });
  expect(dotted).toEqual([]);
  await page.close();
});

it.each(['light', 'dark'] as const)(
  'the chart with marks, loop and a measured time has nothing against it, %s, at three sizes',
  async (scheme) => {
    const { page, said } = await site.visit({ scheme });
    for (const [width, height] of [
      [1280, 800],
      [820, 1180],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.keyboard.press('Escape');
      for (const key of ['ArrowRight', 'm', 'ArrowRight', 'a', 'ArrowRight', 'm', 'b'])
        await page.keyboard.press(key);
      await page.getByRole('button', { name: /^Measured/ }).click();
      const form = page.getByRole('dialog', { name: 'Times measured by hand' });
      await form.getByLabel('Read, s').fill('7.5');
      await page.keyboard.press('Enter');
      expect(await cutOff(page)).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await keep(page, `${scheme}-measured-form-${width}`);
      await form.getByRole('button', { name: 'Close', exact: true }).click();
      expect(await cutOff(page)).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await page.locator('ww-order-chart').scrollIntoViewIfNeeded();
      await keep(page, `${scheme}-marks-${width}`);
    }
    expect(said).toEqual([]);
    await page.close();
  },
);
