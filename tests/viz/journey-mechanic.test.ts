/**
 * The mechanic's whole task, on a tablet under the wing: opens the file of this aeroplane, swings it,
 * sees which side is slow and why, fills the card by stopwatch, saves it.
 */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readObservations, readScenario, simulate } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { drop, keep, settled, Site, words } from './browser.js';
import type { Visit } from './browser.js';
import { TEXT } from './demo.js';
import { cutOff, violations } from './faultless.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit({ width: 820, height: 1180 });
});
afterAll(() => site.close());

/** This aeroplane: dirt in the right leg's restrictor, which is felt on the way down. */
const OWN = TEXT.replace(
  /^( +)title: Healthy, on ground supply$/m,
  '$1title: Annual check\n$1faults: [{ fault: restrictor-blocked, on: right-leg-restrictor, severity: 0.6 }]',
);

function swing(text: string): Run {
  const { scenario, issues } = readScenario(text, { file: 'own.yaml' });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return simulate(scenario);
}

it('from the file to the saved card', async () => {
  const { page, said, elsewhere } = visit;
  const run = swing(OWN);
  const down = (unit: string): number =>
    run.timings.find((t) => t.unit === unit && t.direction === 'down')?.total ?? NaN;
  expect(down('right') - down('left')).toBeGreaterThan(0.5);

  // The file of this aeroplane, dropped on the page.
  await drop(page, ['own-aeroplane.yaml', OWN]);
  await page.locator('[data-choose=card] option:checked', { hasText: 'Annual check' }).waitFor({
    state: 'attached',
  });
  expect(await page.getByText('Simulation, not approved data.').first().isVisible()).toBe(true);
  await keep(page, 'journey-mechanic-1-opened');

  // The swing, played: the clock runs and the times say which side is slow.
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(
    () =>
      Number(
        document
          .querySelector('ww-app')
          ?.shadowRoot?.querySelector('ww-transport')
          ?.shadowRoot?.querySelector('[data-clock]')?.textContent,
      ) > 1,
  );
  await page.getByRole('button', { name: 'Pause' }).click();
  await expect.poll(() => words(page, 'ww-times')).toContain(down('right').toFixed(2));
  expect(await words(page, 'ww-times')).toContain(down('left').toFixed(2));
  const flagged = run.flags.filter((f) => f.severity !== 'note');
  expect(flagged.length).toBeGreaterThan(0);
  const told = flagged.find((f) => f.rule === 'spread') ?? flagged[0];
  await page.getByRole('tab', { name: /Flags/ }).click();
  const list = page.locator('ww-flag-list');
  await list.getByText(told.title).first().click();
  await list.getByText(told.explanation).first().waitFor();
  await keep(page, 'journey-mechanic-2-slow-side');

  // The card, by stopwatch: the watch starts with the lever, each unit is tapped as it comes home.
  await page.getByRole('button', { name: 'Test card', exact: true }).click();
  await page.locator('ww-stopwatch [data-start]').click();
  for (const name of ['left moving', 'right moving', 'tail moving', 'tail locked', 'left locked'])
    await page.locator(`ww-stopwatch [data-tap="${name}"]`).click();
  await page.waitForTimeout(150);
  await page.locator('ww-stopwatch [data-tap="right locked"]').click();
  await page.locator('ww-stopwatch [data-home]').click();
  expect(await page.locator('ww-test-card [data-row]').count()).toBe(1);
  await page.getByLabel('Watch read by').fill('K');
  await page.getByLabel('Watch read by').press('Tab');
  await keep(page, 'journey-mechanic-3-card');
  expect(await violations(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);

  // Saved, and read again by core.
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save sheet' }).click(),
  ]);
  const { scenario } = readScenario(OWN, { file: 'own-aeroplane.yaml' });
  const { sheet, issues } = readObservations(readFileSync(await file.path(), 'utf8'), {
    ...(scenario && { scenario }),
  });
  expect(issues).toEqual([]);
  expect(sheet?.by).toBe('K');
  const at = (unit: string): number => sheet?.swings[0].times[unit]?.locked?.at ?? NaN;
  expect(at('right')).toBeGreaterThan(at('left') + 0.1);
  await settled(page);
  expect(said).toEqual([]);
  expect(elsewhere).toEqual([]);
});
