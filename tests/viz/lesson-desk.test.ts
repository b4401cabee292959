/** The desk where lessons are written, in a real browser. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogues, readLesson } from '@wheelwell/core';
import type { Locator, Page } from 'playwright-core';
import { drop, keep, scrubTo, settled, Site } from './browser.js';
import { cutOff, violations } from './faultless.js';
import { bench, button, lesson, openList, saved } from './lesson-bench.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

describe('the desk where lessons are written', () => {
  const desk = (page: Page): Locator => page.locator('ww-lesson-desk');
  const sound = (page: Page): Promise<void> =>
    desk(page).getByText('The runs bear it out.').waitFor({ timeout: 60_000 });

  it('takes steps from the play head, checks them, loses nothing, and saves what opens again', async () => {
    const { page, said } = await site.visit();
    await openList(page);
    await button(page, 'Write a lesson').click();
    await desk(page).getByLabel('Title').fill('Doors and legs');
    await scrubTo(page, 6);
    await desk(page).locator('[data-add=predict]').click();
    await desk(page).locator('[data-add=arrange]').click();
    await desk(page).locator('[data-add=tell]').click();
    // Words are missing: that is told at the step, with what belongs there.
    await desk(page).locator('.issues li').first().waitFor({ timeout: 60_000 });
    expect(await desk(page).locator('.issues').textContent()).toContain('steps.2.text');
    expect(await desk(page).locator('.steps > li').nth(2).locator('.name .sign').count()).toBe(1);
    await desk(page).getByLabel('Words', { exact: true }).fill('Look at the doors.');
    await desk(page).getByLabel('Words', { exact: true }).blur();
    await sound(page);
    await desk(page).getByRole('button', { name: 'Earlier: 3. Words' }).click();
    await desk(page).getByRole('button', { name: 'Earlier: 2. Words' }).click();
    await sound(page);
    await desk(page).locator('.steps .name').nth(1).click();
    await desk(page).locator('.truth').waitFor();
    expect(await desk(page).locator('.truth').textContent()).toContain('Left uplock is engaged');
    await keep(page, 'lesson-desk');
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);

    await page.reload();
    await page.locator('ww-bay table').waitFor();
    if ((await desk(page).count()) === 0)
      await page.getByRole('button', { name: 'Lesson', exact: true }).click();
    await sound(page);
    expect(await desk(page).getByLabel('Title').inputValue()).toBe('Doors and legs');
    const text = await saved(page, () =>
      desk(page).getByRole('button', { name: 'Save as a file' }).click(),
    );
    const read = readLesson(text, { scenario: lesson('blow-down').scenario });
    expect(read.issues).toEqual([]);
    expect(read.lesson?.steps.map((s) => s.kind)).toEqual(['tell', 'predict', 'arrange']);

    await drop(page, ['doors.yaml', text]);
    await bench(page).locator('.step').waitFor({ timeout: 60_000 });
    expect(await bench(page).locator('.tell').textContent()).toBe('Look at the doors.');
    await button(page, 'Edit').click();
    await sound(page);
    expect(await desk(page).locator('.steps > li').count()).toBe(3);
    await desk(page).getByRole('button', { name: 'Remove: 3. Put in order' }).click();
    expect(await desk(page).locator('.steps > li').count()).toBe(2);
    await desk(page).getByRole('button', { name: 'Undo' }).click();
    expect(await desk(page).locator('.steps > li').count()).toBe(3);
    expect(said).toEqual([]);
    await page.close();
  });

  it('hides the fault that is set, and compares the run on show', async () => {
    const { page } = await site.visit();
    await openList(page);
    await button(page, 'Write a lesson').click();
    await page.locator('[data-choose=card]').first().selectOption('slow-left-leg');
    await settled(page);
    await desk(page).locator('[data-add=find]').click();
    await desk(page).locator('[data-add=compare]').click();
    await desk(page)
      .getByLabel('Which has more of')
      .selectOption({ label: 'in hand: Left and right together' });
    await sound(page);
    expect(await desk(page).locator('.truth').textContent()).toContain('B:');
    await desk(page).locator('.steps .name').first().click();
    expect(await desk(page).locator('.truth').textContent()).toContain(
      catalogues.faults['dry-bearing'].title,
    );
    await desk(page).getByRole('button', { name: 'Take it' }).click();
    await bench(page).locator('.step[data-kind=find]').waitFor({ timeout: 60_000 });
    await page.close();
  });
});
