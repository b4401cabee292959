import { afterAll, beforeAll, it } from 'vitest';
import { keep, scrubTo, settled, Site } from './browser.js';
let site: Site;
beforeAll(async () => { site = await Site.open(); });
afterAll(() => site.close());
const SET = process.env.SET ?? '1280x800l';
it.each(SET.split(','))('%s', async (s) => {
  const [, w, h, m, demo, t, what] = /^(\d+)x(\d+)([ld])-?(\w*)-?([\d.]*)-?(\w*)$/.exec(s)!;
  const { page, said } = await site.visit({ width: Number(w), height: Number(h), scheme: m === 'd' ? 'dark' : 'light' });
  if (demo) { await page.locator('[data-choose=aircraft]').selectOption(`${demo}/${demo}.yaml`); await settled(page); }
  const t0 = Date.now();
  await page.getByRole('tab', { name: 'Circuit' }).click();
  await page.locator('ww-circuit .part').first().waitFor();
  console.log('first paint', Date.now() - t0);
  await scrubTo(page, Number(t || 3));
  if (what.includes('k')) await page.getByRole('button', { name: 'Chart' }).click();
  if (what.includes('f')) await page.getByRole('button', { name: 'Figures' }).click();
  if (what.includes('c')) await page.locator('ww-circuit .part').nth(7).click();
  await page.waitForTimeout(600);
  await keep(page, `circuit-${s}`);
  console.log(said);
  await page.close();
});
