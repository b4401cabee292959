import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { clock, keep, scrubTo, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun } from './demo.js';

let site: Site;
let visit: Visit;
let run: Run;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
  run = demoRun();
});
afterAll(() => site.close());

beforeEach(async () => {
  await visit.page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await scrubTo(visit.page, 0);
});

describe('by keyboard', () => {
  it('space plays and pauses', async () => {
    const { page } = visit;
    await page.keyboard.press('Space');
    await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
    await page.keyboard.press('Space');
    const at = await clock(page);
    await page.waitForTimeout(200);
    expect(await clock(page)).toBe(at);
  });

  it('arrows go from event to event, also among those of one instant', async () => {
    const { page } = visit;
    const first = run.log.findIndex((e) => e.t > 1e-9);
    for (let i = first; i < first + 6; i++) {
      await page.keyboard.press('ArrowRight');
      expect(await clock(page)).toBeCloseTo(run.log[i].t, 3);
    }
    await page.keyboard.press('ArrowLeft');
    expect(await clock(page)).toBeCloseTo(run.log[first + 4].t, 3);
  });

  it('comma and period go by one tick', async () => {
    const { page } = visit;
    await page.keyboard.press('.');
    await page.keyboard.press('.');
    expect(await clock(page)).toBeCloseTo(2 * run.tick, 6);
    await page.keyboard.press(',');
    expect(await clock(page)).toBeCloseTo(run.tick, 6);
  });

  it('End and Home go to the ends of the run', async () => {
    const { page } = visit;
    await page.keyboard.press('End');
    expect(await clock(page)).toBeCloseTo(run.outcome.time, 3);
    await page.keyboard.press('Home');
    expect(await clock(page)).toBe(0);
  });

  it('the question mark lists the keys, and single keys can be turned off', async () => {
    const { page } = visit;
    await page.keyboard.press('?');
    const dialog = page.getByRole('dialog', { name: 'Keys' });
    await dialog.waitFor();
    await keep(page, 'help');
    await dialog.getByLabel('Single keys act').uncheck();
    await dialog.getByRole('button', { name: 'Close' }).click();
    await page.keyboard.press('.');
    expect(await clock(page)).toBe(0);
    await page.getByRole('button', { name: 'Keys' }).click();
    await dialog.getByLabel('Single keys act').check();
    await page.keyboard.press('Escape');
  });

  it('reaches every control by Tab, and shows where it is', async () => {
    const { page } = visit;
    const seen = new Set<string>();
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      const here = await page.evaluate(() => {
        let at = document.activeElement;
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        if (at === null || at === document.body) return undefined;
        const label = at.getAttribute('aria-label') ?? at.textContent?.trim() ?? '';
        return {
          name: `${at.localName} ${label.slice(0, 30)}`,
          outline: getComputedStyle(at).outlineStyle,
        };
      });
      if (here === undefined) continue;
      seen.add(here.name);
      expect(here.outline, here.name).not.toBe('none');
    }
    const names = [...seen].join('\n');
    for (const wanted of [
      'Play',
      'Next event',
      'Next flag',
      'Look from behind',
      'Order of events; play head',
      'Open file',
    ]) {
      expect(names).toContain(wanted);
    }
  });
});

describe('by mouse', () => {
  it('the buttons play, pause and step', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => clock(page)).toBeGreaterThan(0.1);
    await page.getByRole('button', { name: 'Pause' }).click();
    await scrubTo(page, 0);
    await page.getByRole('button', { name: 'Next event' }).click();
    expect(await clock(page)).toBeCloseTo(run.log.find((e) => e.t > 1e-9)?.t ?? NaN, 3);
  });

  it('runs at the speed chosen', async () => {
    const { page } = visit;
    await page.getByLabel('Speed').selectOption('4');
    const began = Date.now();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => clock(page)).toBeGreaterThan(1);
    await page.getByRole('button', { name: 'Pause' }).click();
    // Never faster than four times the clock on the wall; how much slower is the machine's affair.
    expect(await clock(page)).toBeLessThanOrEqual((4 * (Date.now() - began)) / 1000 + 0.1);
    await page.getByLabel('Speed').selectOption('1');
  });

  it('a drag along the order chart moves the play head', async () => {
    const { page } = visit;
    const body = page.getByRole('slider', { name: 'Order of events; play head' });
    const box = await body.boundingBox();
    if (box === null) throw new Error('no order chart');
    // On a heading row, where no mark lies under the pointer.
    const y = box.y + 8;
    await page.mouse.move(box.x + box.width * 0.5, y);
    await page.mouse.down();
    const first = await clock(page);
    await page.mouse.move(box.x + box.width * 0.8, y, { steps: 4 });
    const second = await clock(page);
    await page.mouse.up();
    expect(first).toBeGreaterThan(0);
    expect(second).toBeGreaterThan(first);
    await page.mouse.move(box.x + box.width * 0.6, y);
    expect(await clock(page)).toBe(second);
  });

  it('an event picked out shows arrows from its causes', async () => {
    const { page } = visit;
    const entry = run.log.find(
      (e) =>
        e.kind !== 'phase' &&
        e.by >= 0 &&
        run.log[e.by].device !== e.device &&
        run.log[e.by].kind !== 'phase',
    );
    if (entry === undefined) throw new Error('no event with a cause elsewhere');
    await page.getByRole('tab', { name: /Events/ }).click();
    await page.locator(`ww-event-list [data-event="${entry.index}"] .row`).click();
    expect(
      await page
        .locator(`ww-order-chart .arrow[data-from="${entry.by}"][data-to="${entry.index}"]`)
        .count(),
    ).toBe(1);
    await keep(page, 'causes');
    expect(await clock(page)).toBeCloseTo(entry.t, 3);
  });
});

describe('settings', () => {
  it('shows angles and margins in the units chosen', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Metric' }).click();
    expect(await page.getByRole('button', { name: 'Metric' }).getAttribute('aria-pressed')).toBe(
      'true',
    );
    await page.getByRole('tab', { name: /Flags/ }).click();
    const summary = page.locator('ww-flag-list summary');
    if ((await summary.count()) > 0) await summary.click();
    const text =
      (await page.locator('ww-flag-list').evaluate((e) => e.shadowRoot?.textContent)) ?? '';
    expect(text).not.toMatch(/\bpsia?\b|\bin\/s\b/);
    await page.getByRole('button', { name: 'US', exact: true }).click();
  });

  it('another card is simulated when it is chosen', async () => {
    const { page } = visit;
    const names = Object.keys(run.scenario.cards);
    await page.locator('[data-choose=card]').selectOption(names[1]);
    await settled(page);
    const note = run.scenario.cards[names[1]].note;
    expect(await page.locator('ww-app .card-note').textContent()).toBe(note);
    await page.locator('[data-choose=card]').selectOption(names[0]);
    await settled(page);
  });

  it('moves in coarse steps where motion is to be reduced', async () => {
    const calm = await site.visit({ reducedMotion: 'reduce' });
    const { page } = calm;
    await page.keyboard.press('Space');
    const times = new Set<number>();
    for (let i = 0; i < 20; i++) {
      times.add(await clock(page));
      await page.waitForTimeout(50);
    }
    await page.close();
    // About a second at four steps a second: never the dozens of a gliding play head.
    expect(times.size).toBeGreaterThan(1);
    expect(times.size).toBeLessThan(9);
  });
});
