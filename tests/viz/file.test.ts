import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readScenario } from '@wheelwell/core';
import { clock, drop, keep, scrubTo, Site } from './browser.js';
import type { Visit } from './browser.js';
import { TEXT } from './demo.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

describe('a dropped file', () => {
  it('that does not read lists every issue with its place and hint, and keeps the run', async () => {
    const { page } = visit;
    await scrubTo(page, 3);
    const before = await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent);
    const broken = TEXT.replace(/^( *)crack:.*$/m, '$1crack: 45 mm').replace(
      /^components:/m,
      'componnents:',
    );
    const { issues } = readScenario(broken, { file: 'broken.yaml' });
    expect(issues.length).toBeGreaterThan(0);
    await drop(visit.page, ['broken.yaml', broken]);
    const box = page.locator('ww-issue-list section');
    expect(await box.textContent()).toContain('The former run is kept.');
    expect(await box.locator('li').count()).toBe(issues.length);
    const text = (await box.textContent()) ?? '';
    for (const issue of issues) {
      if (issue.line > 0) expect(text).toContain(`Line ${issue.line}, column ${issue.column}`);
      expect(text).toContain(issue.message);
      if (issue.hint !== '') expect(text).toContain(issue.hint);
    }
    await keep(page, 'issues');
    expect(await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent)).toBe(before);
    expect(await clock(page)).toBe(3);
    await page.getByRole('button', { name: 'Dismiss' }).click();
    expect(await box.count()).toBe(0);
  });

  it('that reads is opened', async () => {
    const { page } = visit;
    const renamed = TEXT.replace(/^title:.*$/m, 'title: A dropped aircraft');
    await drop(visit.page, ['mine.yaml', renamed]);
    expect(
      await page
        .locator('ww-card-bar .file select')
        .evaluate((s) => (s as HTMLSelectElement).selectedOptions[0]?.text),
    ).toContain('mine.yaml');
    expect(await clock(page)).toBe(0);
    expect(await page.locator('ww-issue-list section.box:not(.caution)').count()).toBe(0);
  });

  it('that is no scenario at all does no harm', async () => {
    await drop(visit.page, ['odd.yaml', '- 1\n- [\n']);
    expect(await visit.page.locator('ww-issue-list section').count()).toBeGreaterThan(0);
    await visit.page.getByRole('button', { name: 'Dismiss' }).click();
    expect(visit.said).toEqual([]);
  });
});
