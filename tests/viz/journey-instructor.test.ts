/**
 * The instructor's whole task, before a class: the swing large on the projector, broken with a fault,
 * told event by event with its reason, then a lesson.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { clock, keep, settled, Site, words } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun } from './demo.js';
import { cutOff, violations } from './faultless.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit({ width: 1280, height: 800, scheme: 'dark' });
});
afterAll(() => site.close());

const BREAK = { fault: 'plunger-rigged-early', on: 'left-door-close-valve', severity: 1 };

it('from the large view to the lesson', async () => {
  const { page, said, elsewhere } = visit;

  // Broken with a fault.
  await page.getByRole('tab', { name: /Faults/ }).click();
  await page.locator('[data-choose=fault]').selectOption(BREAK.fault);
  await page.locator('[data-choose=device]').selectOption(BREAK.on);
  await page.getByRole('button', { name: 'Put in' }).click();
  await settled(page);
  await page.getByRole('slider', { name: 'Severity' }).fill(String(BREAK.severity));
  await settled(page);
  const run = demoRun([BREAK]);
  const flags = run.flags.filter((f) => f.severity !== 'note');
  expect(flags.length).toBeGreaterThan(0);

  // Large, for the room: what is not for the room is out of sight.
  await page.getByRole('button', { name: 'Large', exact: true }).click();
  await expect.poll(() => page.locator('ww-fault-drawer').isVisible()).toBe(false);
  expect(await page.locator('ww-bay').isVisible()).toBe(true);
  await keep(page, 'journey-instructor-1-large');

  // To the first flag, and why; then event by event, each with what led to it.
  await page.getByRole('button', { name: 'Next flag' }).click();
  const first = [...flags].sort((a, b) => a.from - b.from)[0];
  await expect.poll(() => words(page, 'ww-told')).toContain(first.explanation);
  expect(await clock(page)).toBeCloseTo(first.from, 2);
  expect(await page.locator('ww-app [role=status]').first().textContent()).toContain(first.title);
  await keep(page, 'journey-instructor-2-flag');
  let last = await clock(page);
  for (let i = 0; i < 4; i++) {
    await page.getByRole('button', { name: 'Next event' }).click();
    await expect.poll(() => words(page, 'ww-told')).toContain('because');
    const now = await clock(page);
    expect(now).toBeGreaterThanOrEqual(last);
    last = now;
  }
  await keep(page, 'journey-instructor-3-event');
  expect(await violations(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);
  await page.getByRole('button', { name: 'Large', exact: true }).click();

  // The lesson.
  await page
    .getByRole('group', { name: 'Workplace' })
    .getByRole('button', { name: 'Lesson', exact: true })
    .click();
  const lesson = page.locator('ww-lesson');
  await lesson.waitFor();
  await settled(page);
  await keep(page, 'journey-instructor-4-lessons');
  await lesson.getByRole('button').first().click();
  await settled(page);
  await keep(page, 'journey-instructor-5-lesson');
  const next = lesson.getByRole('navigation', { name: 'Steps' }).getByRole('button').last();
  await next.waitFor();
  // Its own run, on a busy machine.
  await page.waitForTimeout(1500);
  await settled(page);
  expect(await violations(page)).toEqual([]);
  expect(said).toEqual([]);
  expect(elsewhere).toEqual([]);
});
