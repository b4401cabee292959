/** How the bay's drawings share their room, and that nothing is cut off, covered or out of reach. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { keep, scrubTo, settled, Site } from './browser.js';
import { drawn } from './drawn.js';
import type { ViewName } from './drawn.js';
import { cutOff, violations } from './faultless.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

describe('layout', () => {
  it('one view can have all the room, and gives it back', async () => {
    const { page } = await site.visit();
    const width = async (view: ViewName): Promise<number> =>
      (await page.locator(`ww-bay svg[data-view=${view}]`).boundingBox())?.width ?? 0;
    const [before, height] = [
      await width('side'),
      (await page.locator('ww-bay svg[data-view=side]').boundingBox())?.height ?? 0,
    ];
    const mm = (await drawn(page, 'side', '[data-mechanism=left-leg] .tyre')).mm;
    await page.getByRole('button', { name: 'Side view alone' }).click();
    await expect.poll(() => width('side')).toBeGreaterThan(2 * before);
    expect(await page.locator('ww-bay svg[data-view]').count()).toBe(1);
    const box = await page.locator('ww-bay svg[data-view=side]').boundingBox();
    expect(box?.height).toBeGreaterThan(height + 50);
    await expect
      .poll(async () => (await drawn(page, 'side', '[data-mechanism=left-leg] .tyre')).mm)
      .toBeLessThan(0.8 * mm);
    expect(await violations(page)).toEqual([]);
    // The focus stays with the view, also when another one takes its place.
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await expect.poll(() => width('plan')).toBeGreaterThan(2 * before);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('ww-bay svg[data-view]').count()).toBe(3);
    await page.close();
  });

  it('phases and names of units never run into each other, large', async () => {
    for (const [width, height] of [
      [1024, 768],
      [1280, 800],
    ]) {
      const { page } = await site.visit({ width, height });
      await page.keyboard.press('l');
      for (const aircraft of ['hedgelark', 'tarnswift', 'fenwren']) {
        await page.locator('[data-choose=aircraft]').selectOption(`${aircraft}/${aircraft}.yaml`);
        await settled(page);
        for (const time of [0, 2, 5, 8, 10, 16]) {
          await scrubTo(page, time);
          await page.waitForTimeout(60);
          expect(await overlaps(page)).toEqual([]);
        }
      }
      await keep(page, `bay-large-${width}`);
      await page.close();
    }
  });

  it.each([
    [1280, 800, 'light'],
    [1280, 800, 'dark'],
    [820, 1180, 'dark'],
    [390, 844, 'light'],
  ] as const)('has nothing against it at %i x %i, %s', async (width, height, scheme) => {
    const { page, said } = await site.visit({ width, height, scheme });
    await page.locator('[data-choose=card]').selectOption('doors-early');
    await settled(page);
    await scrubTo(page, 7.5);
    await page.locator('ww-bay summary').click();
    expect(await violations(page)).toEqual([]);
    expect((await cutOff(page)).filter((what) => /bay|cell/.test(what))).toEqual([]);
    await keep(page, `bay-${width}-${scheme}`);
    expect(said).toEqual([]);
    await page.close();
  });
});

/** Words of one drawing (phases among themselves, names among themselves) whose boxes meet. */
function overlaps(page: Page): Promise<string[]> {
  return page.locator('ww-bay svg[data-view]').evaluateAll((all) =>
    all.flatMap((drawing) =>
      ['[data-phase] text', '[data-locks] > text'].flatMap((kind) => {
        const words = [...drawing.querySelectorAll(kind)].filter((e) => e.textContent !== '');
        return words.flatMap((a, i) =>
          words.slice(i + 1).flatMap((b) => {
            const [p, q] = [a.getBoundingClientRect(), b.getBoundingClientRect()];
            const meet =
              p.left < q.right && q.left < p.right && p.top < q.bottom - 2 && q.top < p.bottom - 2;
            return meet ? [`${a.textContent} over ${b.textContent}`] : [];
          }),
        );
      }),
    ),
  );
}
