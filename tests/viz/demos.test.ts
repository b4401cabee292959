/** Every aircraft that comes with the page, found in the folder of scenarios, on the page itself. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readScenario } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { keep, scrubTo, settled, Site } from './browser.js';
import { cutOff, violations } from './faultless.js';

const ROOT = fileURLToPath(new URL('../../scenarios', import.meta.url));
const FILES = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.yaml'))
  .map((path): [string, string] => [path, readFileSync(join(ROOT, path), 'utf8')])
  .filter(([, text]) => /^wheelwell:/m.test(text));

const SIZES = [
  [1280, 800],
  [820, 1180],
] as const;

/** More lanes than these a class does not take in; two locks and two doors to each of three legs need them. */
const MOST_LANES = 18;

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

function read(file: string, text: string): Scenario {
  const { scenario, issues } = readScenario(text, { file });
  if (scenario === undefined) throw new Error(`${file} does not read: ${JSON.stringify(issues)}`);
  return scenario;
}

/** Mechanisms that have no size on a drawing. */
function undrawn(page: Page, view: string, names: readonly string[]): Promise<string[]> {
  return page.locator(`ww-bay svg[data-view=${view}]`).evaluate(
    (drawing, all) =>
      all.filter((name) => {
        const parts = [...drawing.querySelectorAll(`[data-mechanism="${name}"] path`)];
        return !parts.some((p) => {
          const { width, height } = (p as SVGPathElement).getBBox();
          return width + height > 50;
        });
      }),
    names,
  );
}

/** What the phase of each unit says of its locks, against the signs in the table. */
async function expectSigns(page: Page, units: Scenario['units']): Promise<void> {
  for (const [name, unit] of Object.entries(units)) {
    const cells = page.locator(`ww-bay tr[data-unit=${name}] td`);
    const phase = (await cells.first().textContent()) ?? '';
    const signs = await Promise.all(
      [3, 4].map((i) => cells.nth(i).locator('.sign.engaged').count()),
    );
    // What is called locked is held, and so is a leg whose doors move while it is up; nothing holds one that travels.
    const up = unit.uplock !== undefined && /^(up and|doors)/.test(phase);
    const down = unit.downlock !== undefined && phase === 'down and locked';
    if (/locked|closed|doors|travelling/.test(phase))
      expect([name, phase, ...signs]).toEqual([name, phase, Number(up), Number(down)]);
  }
}

it('the page offers every aircraft there is, the one of the tutorial first', async () => {
  const { page } = await site.visit();
  const offered = await page
    .locator('[data-choose=aircraft] option')
    .evaluateAll((all) => all.map((o) => (o as HTMLOptionElement).value));
  expect(offered[0]).toBe('hedgelark/hedgelark.yaml');
  expect([...offered].sort()).toEqual(FILES.map(([path]) => path).sort());
  await page.close();
});

describe.each(FILES)('%s', (path, text) => {
  it.each(SIZES)('is drawn, told and without fault at %i x %i', async (width, height) => {
    const { page, said } = await site.visit({ width, height });
    const scenario = read(path, text);
    const name = basename(path, '.yaml');
    await page.locator('[data-choose=aircraft]').selectOption(path);
    await settled(page);
    const [card] = Object.values(scenario.cards);
    for (const share of [0, 0.12, 0.4]) {
      await scrubTo(page, share * card.duration);
      await page.waitForTimeout(50);
      for (const view of ['front', 'side'])
        expect(await undrawn(page, view, Object.keys(scenario.mechanisms))).toEqual([]);
      await expectSigns(page, scenario.units);
      await keep(page, `demo-${name}-${width}-at-${share}`);
    }
    const lanes = page.locator('ww-order-chart .body :is(text.name, text.heading)');
    expect(await lanes.count()).toBeLessThanOrEqual(MOST_LANES);
    for (const { leg, doors, uplock, downlock } of Object.values(scenario.units)) {
      const shown = await lanes.locator('title').allTextContents();
      for (const part of [leg, ...doors, uplock, downlock].filter((n) => n !== undefined))
        expect(shown).toContain(part);
    }
    expect(await cutOff(page)).toEqual([]);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      // What differs between the sizes is where things stand, not what they are.
      if (width > 1000) expect(await violations(page)).toEqual([]);
    }
    expect(said).toEqual([]);
    await page.close();
  });
});
