import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { catalogues, editScenarioText, readScenario, simulate } from '@wheelwell/core';
import type { Edit, Run } from '@wheelwell/core';
import { keep, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, TEXT } from './demo.js';
import { violations } from './faultless.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

/** The demo with changes, as the engine plays its first card. */
function runWith(...edits: readonly Edit[]): Run {
  const { text } = editScenarioText(TEXT, edits);
  const { scenario } = readScenario(text ?? '');
  if (scenario === undefined) throw new Error('the changed demo does not read');
  return simulate(scenario);
}

/** Times as the page shows them: of the first direction, unit by unit. */
async function timesOn(page: Page): Promise<number[]> {
  const cells = await page.locator('ww-times tr.total').first().locator('td').allTextContents();
  return cells.map((text) => Number(/[\d.]+/.exec(text)?.[0]));
}

function timesOf(run: Run): number[] {
  return Object.keys(run.scenario.units).map(
    (unit) => run.timings.find((t) => t.unit === unit && t.direction === 'up')?.total ?? NaN,
  );
}

async function expectTimes(page: Page, run: Run): Promise<void> {
  await settled(page);
  const shown = await timesOn(page);
  timesOf(run).forEach((t, i) => expect(shown[i]).toBeCloseTo(t, 1));
}

const FLOW = 'components.ground-supply.flow';
const field = (page: Page, path: string) => page.locator(`[id="${path.replaceAll('.', '_')}"]`);

async function find(page: Page, words: string): Promise<void> {
  await page.getByRole('tab', { name: /Parameters/ }).click();
  await page.getByRole('searchbox', { name: 'Find a figure' }).fill(words);
}

describe('a figure changed in place', () => {
  it('is found by words, with its unit, range and default', async () => {
    const { page } = visit;
    await find(page, 'ground supply flow');
    await field(page, FLOW).waitFor();
    const { range } = catalogues.components['ground-supply'].parameters.flow as {
      range: readonly [number, number];
    };
    const row = page.locator(`[data-path="${FLOW}"]`);
    expect(await field(page, FLOW).inputValue()).toBe('4');
    const most = range[1] / 6.30902e-5;
    const about = await row.locator('.about').textContent();
    expect(about).toContain('gal/min');
    expect(Number(/to ([\d.]+)/.exec(about ?? '')?.[1])).toBeCloseTo(most, 0);
  });

  it('changes the times as the engine says, and says what it was', async () => {
    const { page } = visit;
    await field(page, FLOW).fill('3');
    await field(page, FLOW).press('Enter');
    await expectTimes(page, runWith({ path: FLOW, value: '3 gal/min' }));
    const row = page.locator(`[data-path="${FLOW}"]`);
    expect(await row.locator('.about').textContent()).toContain('Changed, was 4');
    await keep(page, 'edit-changed');
  });

  it('is followed by a quick run at once, and nothing is dimmed, or said within a second, while the exact one is made', async () => {
    const { page } = visit;
    await field(page, FLOW).fill('2.9');
    // Looked at from inside, frame by frame, until the exact run is there.
    const frames = await page.evaluate(() => {
      const app = document.querySelector('ww-app') as HTMLElement & {
        store: { state: { picture?: { run: number; judged: boolean }; busy: boolean } };
      };
      const root = app.shadowRoot!;
      const { store } = app;
      const former = store.state.picture?.run;
      const seen: { judged: boolean; dimmed: boolean; told: boolean; since: number }[] = [];
      let came = NaN;
      root
        .querySelector('ww-parameters')!
        .shadowRoot!.querySelector<HTMLInputElement>('[id="components_ground-supply_flow"]')!
        .dispatchEvent(new Event('change', { bubbles: true, composed: true }));
      return new Promise<typeof seen>((done) => {
        const look = () => {
          const { picture, busy } = store.state;
          if (picture !== undefined && picture.run !== former) {
            if (Number.isNaN(came)) came = performance.now();
            const box = root.querySelector('ww-busy')!.shadowRoot!.querySelector('[data-busy]');
            seen.push({
              judged: picture.judged,
              dimmed: root.querySelector('main.waits') !== null,
              told: box !== null && getComputedStyle(box).visibility !== 'hidden',
              since: performance.now() - came,
            });
            if (!busy) return done(seen);
          }
          requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      });
    });
    expect(frames.some(({ judged }) => !judged)).toBe(true);
    expect(frames.at(-1)?.judged).toBe(true);
    expect(frames.filter(({ dimmed }) => dimmed)).toEqual([]);
    // On a machine with much else to do it takes longer than that.
    expect(frames.filter(({ told, since }) => told && since < 900)).toEqual([]);
    await expectTimes(page, runWith({ path: FLOW, value: '2.9 gal/min' }));
    await page.keyboard.press('Control+z');
    await expectTimes(page, runWith({ path: FLOW, value: '3 gal/min' }));
  });

  it('takes another unit than the one shown, and shows it in its own', async () => {
    const { page } = visit;
    await field(page, FLOW).fill('12 L/min');
    await field(page, FLOW).press('Enter');
    await expectTimes(page, runWith({ path: FLOW, value: '12 L/min' }));
    expect(Number(await field(page, FLOW).inputValue())).toBeCloseTo(12 / 3.785412, 3);
  });

  it('is taken back step by step, to exactly the former times, and made again', async () => {
    const { page } = visit;
    await page.keyboard.press('Control+z');
    await expectTimes(page, runWith({ path: FLOW, value: '3 gal/min' }));
    await page.getByRole('button', { name: 'Undo' }).click();
    await expectTimes(page, demoRun());
    expect(await field(page, FLOW).inputValue()).toBe('4');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+Shift+z');
    await expectTimes(page, runWith({ path: FLOW, value: '3 gal/min' }));
    expect(await field(page, FLOW).inputValue()).toBe('3');
  });

  it('that is wrong is told at its field and kept there; the run on show stays', async () => {
    const { page } = visit;
    const before = await timesOn(page);
    await field(page, FLOW).fill('3 psi');
    await field(page, FLOW).press('Enter');
    const told = page.locator(`[data-path="${FLOW}"] [role=alert]`);
    await told.waitFor();
    const { issues } = editScenarioText(TEXT, [{ path: FLOW, value: '3 psi' }]);
    expect(await told.textContent()).toContain(issues[0].message);
    expect(await told.textContent()).toContain(issues[0].allowed);
    expect(await field(page, FLOW).inputValue()).toBe('3 psi');
    expect(await timesOn(page)).toEqual(before);
    await keep(page, 'edit-refused');
    await field(page, FLOW).fill('9999');
    await field(page, FLOW).press('Enter');
    await expect.poll(() => told.textContent()).toContain('outside its range');
    expect(await violations(page)).toEqual([]);
    await field(page, FLOW).press('Escape');
    await told.waitFor({ state: 'detached' });
    expect(await field(page, FLOW).inputValue()).toBe('3');
  });
});
