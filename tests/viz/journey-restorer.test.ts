/**
 * The restorer's whole task, at the desk: another bore for one jack, times beside those of the run
 * before, whether the bottle still brings the legs down, and a link that keeps all of it.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { editScenarioText, readScenario, simulate } from '@wheelwell/core';
import { drop, keep, settled, Site, words } from './browser.js';
import type { Visit } from './browser.js';
import { TEXT } from './demo.js';
import { cutOff, violations } from './faultless.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

/** The left jack as it would be with a larger bore. */
const JACK = /^( {2}left-leg-jack:\n(?:(?! {2}\S).*\n)*? {4}bore: )[^\n]+/m;
const EDITED = TEXT.replace(JACK, (_, start: string) => `${start}2.2 in`);

function upOf(text: string): number {
  const { scenario, issues } = readScenario(text, { file: 'x.yaml' });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  const { timings } = simulate(scenario);
  return timings.find((t) => t.unit === 'left' && t.direction === 'up')?.total ?? NaN;
}

it('from another figure to the bottle', async () => {
  const { page, said, elsewhere } = visit;
  expect(EDITED).not.toBe(TEXT);
  const [before, after] = [upOf(TEXT), upOf(EDITED)];
  expect(Math.abs(after - before)).toBeGreaterThan(0.05);

  // The restorer's own file, then the same with the larger bore: times stand beside each other.
  await drop(page, ['restored.yaml', TEXT]);
  await drop(page, ['restored.yaml', EDITED]);
  await expect.poll(() => words(page, 'ww-times')).toContain(after.toFixed(2));
  const times = await words(page, 'ww-times');
  expect(times).toContain('total before');
  expect(times).toContain(before.toFixed(2));
  await keep(page, 'journey-restorer-1-compared');

  // The bottle: what the bench says of it, and one cell of the map played in the bay.
  await page
    .getByRole('group', { name: 'Workplace' })
    .getByRole('button', { name: 'Blow-down', exact: true })
    .click();
  await page.locator('ww-blow-down').waitFor();
  await settled(page);
  await page.getByRole('tab', { name: /Bottle/ }).waitFor();
  await expect.poll(() => words(page, 'ww-blow-down-card')).toMatch(/psi|bar/);
  await keep(page, 'journey-restorer-2-bottle');
  expect(await violations(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);
  expect(said).toEqual([]);
  expect(elsewhere).toEqual([]);
});

it('in the page itself: two jacks swapped by their figures, the bottle asked, and put back', async () => {
  const { page, said, elsewhere } = await site.visit();
  const jacks = ['left-leg-jack', 'right-leg-jack'];
  const { text: swapped = '' } = editScenarioText(
    TEXT,
    jacks.map((jack) => ({ path: `components.${jack}.bore`, value: '2.2 in' })),
  );
  const [before, after] = [upOf(TEXT), upOf(swapped)];
  const times = page.locator('ww-times');
  await times.getByRole('button', { name: 'Hold' }).click();
  await page.getByRole('tab', { name: /Parameters/ }).click();
  for (const jack of jacks) {
    await page.getByRole('searchbox', { name: 'Find a figure' }).fill(`${jack} bore`);
    const field = page.locator(`[id="components_${jack}_bore"]`);
    await field.fill('2.2');
    await field.press('Enter');
    await settled(page);
  }
  await expect.poll(() => words(page, 'ww-times')).toContain(after.toFixed(2));
  // Two steps away from the gear as it was: its times are still those beside the new ones.
  const held = times.locator('tr.former', { hasText: 'Up: total held' }).locator('td').first();
  expect(Number(await held.textContent())).toBeCloseTo(before, 1);
  expect(await words(page, 'ww-times')).toMatch(
    /Held: .+\(no flags, least clearance [\d.]+\sin\)\. Order: the same\./,
  );
  await keep(page, 'journey-restorer-3-swapped');

  // What the bottle does with the larger jacks, as the engine says.
  const { scenario } = readScenario(swapped);
  const run = simulate(scenario!, { card: 'blow-down' });
  await page.locator('[data-choose=card]').selectOption('blow-down');
  await settled(page);
  await page
    .getByRole('group', { name: 'Workplace' })
    .getByRole('button', { name: 'Blow-down', exact: true })
    .click();
  await page.getByRole('tab', { name: /Bottle/ }).click();
  const legs = run.timings.filter((t) => Number.isFinite(t.locked));
  expect(legs.length).toBeGreaterThan(0);
  const verdict = await words(page, 'ww-blow-down-card');
  expect(verdict).toContain('Every leg is down and locked.');
  for (const { unit, locked, start } of legs) {
    const told = Number(new RegExp(`${unit}: down and locked\\s([\\d.]+)`).exec(verdict)?.[1]);
    expect(told, unit).toBeCloseTo(locked - start, 1);
  }
  await keep(page, 'journey-restorer-4-bottle');
  await page.locator('[data-choose=card]').selectOption('healthy');
  await settled(page);
  await page
    .getByRole('group', { name: 'Workplace' })
    .getByRole('button', { name: 'Swing', exact: true })
    .click();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await settled(page);
  await expect.poll(() => words(page, 'ww-times')).toContain(before.toFixed(2));
  expect(await violations(page)).toEqual([]);
  expect(said).toEqual([]);
  expect(elsewhere).toEqual([]);
});
