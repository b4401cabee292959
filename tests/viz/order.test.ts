/** The order chart and the clock in a browser: marks, measured times, the loop. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import type { Run } from '@wheelwell/core';
import { clock, keep, scrubTo, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun } from './demo.js';

let site: Site;
let visit: Visit;
let page: Page;
let run: Run;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
  ({ page } = visit);
  run = demoRun();
});
afterAll(() => site.close());

beforeEach(async () => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press('Escape');
  await scrubTo(page, 0);
});

const readOut = (): Locator => page.locator('ww-order-chart output');
const first = (): number => run.log.findIndex((e) => e.t > 1e-9);
/** Seconds as the page writes them. */
const written = (t: number): string => `${t.toFixed(3)}\u00a0s`;

describe('the time between two marks', () => {
  it('is read off by keyboard alone: hold, go on, hold, let go', async () => {
    const [a, b] = [run.log[first()], run.log[first() + 7]];
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('m');
    for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
    // Before it is held it is there already.
    await expect.poll(() => readOut().textContent()).toContain(written(b.t - a.t));
    await page.keyboard.press('m');
    await page.keyboard.press('End');
    const text = await readOut().textContent();
    expect(text).toContain(written(b.t - a.t));
    expect(text).toContain(a.to);
    expect(text).toContain(b.to);
    expect(await page.locator('ww-order-chart .dimension text').textContent()).toBe(
      written(b.t - a.t),
    );
    await page.keyboard.press('Escape');
    expect(await readOut().count()).toBe(0);
    expect(await page.locator('ww-order-chart .dimension').count()).toBe(0);
  });

  it('is read off by pointer: press one mark, hold Shift, press another', async () => {
    await page.getByRole('button', { name: 'All', exact: true }).click();
    const operator = run.log.filter((e) => e.kind === 'operator' && e.device === 'selector');
    expect(operator).toHaveLength(2);
    const mark = (index: number): Locator =>
      page.locator(`ww-order-chart .body .event[data-event="${index}"]`);
    await mark(operator[0].index).click();
    await mark(operator[1].index).click({ modifiers: ['Shift'] });
    expect(await readOut().textContent()).toContain(written(operator[1].t - operator[0].t));
    await keep(page, 'between');
  });

  it('becomes a loop with one press', async () => {
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('m');
    for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Loop it' }).click();
    const label = await page.locator('ww-transport .band').getAttribute('aria-label');
    expect(label).toContain(run.log[first()].t.toFixed(2));
    await page.keyboard.press('r');
  });
});

describe('the loop', () => {
  it('set by keys is played round and shown on slider and chart', async () => {
    await scrubTo(page, 3);
    await page.getByRole('button', { name: 'Loop starts here' }).click();
    await scrubTo(page, 3.4);
    await page.keyboard.press('b');
    const band = page.locator('ww-transport .band');
    expect(await band.getAttribute('aria-label')).toBe('Loop from 3.00\u00a0s to 3.40\u00a0s');
    expect(await page.locator('ww-order-chart .loop-end').count()).toBe(2);
    // The band stands where the slider's thumb does.
    const box = await band.locator('rect').boundingBox();
    const slider = await page.getByRole('slider', { name: 'Time', exact: true }).boundingBox();
    if (box === null || slider === null) throw new Error('no slider');
    const end = Math.min(run.outcome.time, run.card.duration);
    const track = slider.width - 16;
    // Its outline reaches half a pixel out.
    expect(box.x + 0.5 - slider.x - 8).toBeCloseTo((track * 3) / end, 0);
    expect(box.width - 1).toBeCloseTo((track * 0.4) / end, 0);
    const seen = new Set<number>();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    let rounds = 0;
    let last = 0;
    await expect
      .poll(
        async () => {
          const at = await clock(page);
          if (at < last) rounds += 1;
          last = at;
          seen.add(at);
          return rounds;
        },
        { interval: 30, timeout: 20_000 },
      )
      .toBeGreaterThan(2);
    await page.getByRole('button', { name: 'Pause' }).click();
    for (const t of seen) {
      expect(t).toBeGreaterThanOrEqual(3);
      expect(t).toBeLessThanOrEqual(3.4);
    }
    const button = page.getByRole('button', { name: 'Loop', exact: true });
    expect(await button.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('r');
    expect(await button.getAttribute('aria-pressed')).toBe('false');
    expect(await band.getAttribute('aria-label')).toContain('off');
  });
});

describe('times measured by hand', () => {
  it('are entered, laid over their lane with their error, and crossed out', async () => {
    const down = run.log.find((e) => e.kind === 'operator' && e.to === 'down');
    const timing = run.timings.find((t) => t.unit === 'left' && t.direction === 'down');
    if (down === undefined || timing === undefined) throw new Error('nothing to time');
    const read = timing.locked - timing.start + 1;
    await page.getByRole('button', { name: 'Measured (0)' }).click();
    const form = page.getByRole('dialog', { name: 'Times measured by hand' });
    await form.getByLabel('Watch started at').selectOption('selector down');
    await form.getByLabel('Stopped at').selectOption('left');
    await form.getByLabel('being').selectOption('down and locked');
    await form.getByLabel('Read, s').fill('soon');
    await form.getByRole('button', { name: 'Take down' }).click();
    expect(await form.getByRole('alert').textContent()).toContain('number of seconds');
    // With a comma, as much of the world writes it.
    await form.getByLabel('Read, s').fill(read.toFixed(3).replace('.', ','));
    await form.getByLabel('Error ±, s').fill('0.3');
    await page.keyboard.press('Enter');
    expect(await form.getByRole('listitem').textContent()).toContain('outside the error');
    await keep(page, 'measured-form');
    await form.getByRole('button', { name: 'Close', exact: true }).click();
    const mark = page.locator('ww-order-chart g.measured');
    expect(await mark.locator('text').textContent()).toMatch(/^\+(1\.000|0\.999)\u00a0s$/);
    const title = await mark.locator('title').textContent();
    expect(title).toContain('0.30');
    // The whiskers are as long as the error on the chart's own scale, the ring in their middle.
    const [low, high] = await mark.locator('.whisker').evaluate(
      (e) =>
        (e.getAttribute('d') ?? '')
          .match(/^M([-\d.]+),[\d.]+H([-\d.]+)/)
          ?.slice(1)
          .map(Number) ?? [],
    );
    const ring = Number(await mark.locator('circle').getAttribute('cx'));
    expect((low + high) / 2).toBeCloseTo(ring, 3);
    const ticks = await page.locator('ww-order-chart .axis text').evaluateAll((all) =>
      all.flatMap((e) => {
        const t = Number(e.textContent);
        return e.getAttribute('text-anchor') === 'middle' && !e.classList.contains('now')
          ? [[t, Number(e.getAttribute('x'))]]
          : [];
      }),
    );
    const [[t0, x0], [t1, x1]] = [ticks[0], ticks[ticks.length - 1]];
    const scale = (x1 - x0) / (t1 - t0);
    expect((high - low) / scale).toBeCloseTo(0.6, 3);
    await keep(page, 'measured');
    // Pressed, it takes the play head along.
    await mark.locator('circle').click();
    expect(await clock(page)).toBeCloseTo(down.t + Number(read.toFixed(3)), 3);
    await page.getByRole('button', { name: 'Measured (1)' }).click();
    await form.getByRole('button', { name: /^Cross out/ }).click();
    await page.keyboard.press('Escape');
    expect(await mark.count()).toBe(0);
  });
});

it('says nothing in the console and asks for nothing elsewhere', () => {
  expect(visit.said).toEqual([]);
  expect(visit.elsewhere).toEqual([]);
});
