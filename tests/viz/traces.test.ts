import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { readRecording, toDisplay } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { clock, keep, scrubTo, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, valueAt } from './demo.js';
import { cutOff, violations } from './faultless.js';
import { axes, degrees, frames, inkAt, number, open, pane, show } from './trace-page.js';

let site: Site;
let visit: Visit;
let run: Run;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
  run = demoRun();
  await open(visit.page);
});
afterAll(() => site.close());

beforeEach(async () => {
  const { page } = visit;
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await scrubTo(page, 0);
  await page.keyboard.press('0');
});

describe('the lines', () => {
  it('stand where the simulated values are', async () => {
    const { page } = visit;
    await show(page, 'left-leg.angle');
    const { x, y } = await axes(page);
    for (const t of [1, 3, 5.5, 9, 14, 16, 25]) {
      const v = degrees(valueAt(run, 'left-leg.angle', t));
      // The style is dashed: a dash or gap is at most four pixels from its neighbour.
      expect(await inkAt(page, x(t), y(v), 5), `at ${t} s`).toBeGreaterThan(150);
      expect(await inkAt(page, x(t), y(v) + (v > 45 ? 14 : -14), 3), `off ${t} s`).toBe(0);
    }
  });

  it('are read at the play head, in words and as a table, in either system', async () => {
    const { page } = visit;
    await show(page, 'left-leg.angle', 'supply.pressure');
    await scrubTo(page, 4);
    const gauge = valueAt(run, 'supply.pressure', 4) - run.scenario.ambient;
    const label = (name: string) => page.locator(`ww-trace-chart [data-trace="${name}"] .value`);
    const told = async (name: string): Promise<number> => number(await label(name).textContent());
    const angle = degrees(valueAt(run, 'left-leg.angle', 4));
    expect(Math.abs((await told('left-leg.angle')) - angle)).toBeLessThanOrEqual(0.06);
    const psi = toDisplay(gauge, 'gauge-pressure', 'us').value;
    expect(Math.abs((await told('supply.pressure')) - psi)).toBeLessThanOrEqual(1);
    const row = page.locator('ww-traces tr[data-trace="supply.pressure"] td').first();
    expect(number(await row.textContent())).toBe(await told('supply.pressure'));
    await page.getByRole('button', { name: 'Metric' }).click();
    const bar = toDisplay(gauge, 'gauge-pressure', 'metric').value;
    await expect.poll(() => told('supply.pressure')).toBeCloseTo(bar, 0);
    expect(await page.locator('ww-trace-chart .title').allTextContents()).toContain(
      'Pressure, bar',
    );
    await page.getByRole('button', { name: 'US', exact: true }).click();
  });

  it('one step of dragging moves the play head there, in every view', async () => {
    const { page } = visit;
    await show(page, 'left-leg.angle');
    const { x, y } = await axes(page);
    await page.mouse.move(x(2), y(30));
    await page.mouse.down();
    await page.mouse.move(x(12.5), y(30), { steps: 4 });
    await page.mouse.up();
    expect(Math.abs((await clock(page)) - 12.5)).toBeLessThan(0.06);
    const head = await page.locator('ww-trace-chart .play-head').boundingBox();
    expect(Math.abs((head?.x ?? 0) + (head?.width ?? 0) / 2 - x(12.5))).toBeLessThan(2);
  });
});

describe('the stretch of time', () => {
  const shown = async (page: Page): Promise<[number, number]> => {
    const { x, left, right } = await axes(page);
    const perPx = 1 / (x(1) - x(0));
    return [(left - x(0)) * perPx, (right - x(0)) * perPx];
  };

  it('is marked with Shift and a drag, and shown whole again by a double click', async () => {
    const { page } = visit;
    await show(page, 'left-leg.angle');
    const { x, y } = await axes(page);
    await page.keyboard.down('Shift');
    await page.mouse.move(x(5), y(30));
    await page.mouse.down();
    await page.mouse.move(x(10), y(30), { steps: 3 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    await frames(page);
    const [a, b] = await shown(page);
    expect(a).toBeCloseTo(5, 1);
    expect(b).toBeCloseTo(10, 1);
    // The order of events shows the same.
    await page.getByRole('tab', { name: 'Order of events' }).click();
    const ticks = await page.locator('ww-order-chart .axis text').allTextContents();
    expect(ticks.filter((t) => Number(t) > 10.5)).toEqual([]);
    await open(page);
    await page.mouse.dblclick(x(15), y(30));
    await frames(page);
    expect((await shown(page))[1]).toBeCloseTo(run.card.duration, 0);
  });

  it('is marked by a drag alone when the button is pressed', async () => {
    const { page } = visit;
    await page.getByRole('button', { name: 'Drag to zoom' }).click();
    const { x, y } = await axes(page);
    await page.mouse.move(x(20), y(30));
    await page.mouse.down();
    await page.mouse.move(x(12), y(30), { steps: 3 });
    await page.mouse.up();
    await frames(page);
    const [a, b] = await shown(page);
    expect(a).toBeCloseTo(12, 1);
    expect(b).toBeCloseTo(20, 1);
    await page.getByRole('button', { name: 'Drag to zoom' }).click();
  });

  it('is marked from the keyboard', async () => {
    const { page } = visit;
    await scrubTo(page, 6);
    await page.getByRole('slider', { name: 'Traces; play head' }).focus();
    for (let i = 0; i < 10; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('ww-trace-chart .mark').count()).toBe(0);
    for (let i = 0; i < 10; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await frames(page);
    const [a, b] = await shown(page);
    expect(a).toBeCloseTo(6, 1);
    // Ten of the fifty presses that go through the whole.
    expect(b).toBeCloseTo(6 + run.card.duration / 5, 1);
    await page.keyboard.press('0');
    await frames(page);
    expect((await shown(page))[0]).toBeCloseTo(0, 1);
  });
});

describe('choosing', () => {
  it('finds by a few letters, from the keyboard alone, and remembers by aircraft', async () => {
    const { page } = visit;
    await show(page);
    expect(await page.locator('ww-trace-chart').count()).toBe(0);
    await pane(page, 'choose');
    const search = page.getByRole('searchbox', { name: 'Search traces' });
    await search.fill('tail lg angle');
    await search.press('Enter');
    await search.press('ArrowDown');
    const list = page.getByRole('listbox', { name: 'Traces' });
    await expect.poll(() => list.evaluate((l) => l.matches(':focus'))).toBe(true);
    await search.fill('selector flow');
    await search.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Space');
    const on = await list.getByRole('option', { selected: true }).allTextContents();
    expect(on).toHaveLength(1);
    expect(on[0]).toContain('selector:');
    await search.fill('');
    const chosen = await list
      .getByRole('option', { selected: true })
      .evaluateAll((all) => all.map((o) => o.getAttribute('data-channel')));
    expect(chosen).toContain('tail-leg.angle');
    expect(chosen).toHaveLength(2);
    await search.fill('nothing of the kind');
    expect(await page.locator('ww-trace-chooser').getByRole('status').textContent()).toContain(
      'Nothing of that name',
    );
    await page.reload();
    await page.locator('ww-bay table').waitFor();
    await settled(page);
    await open(page);
    expect(await page.locator('ww-trace-chart .label').count()).toBe(2);
    await pane(page, 'choose');
    await page.getByRole('button', { name: 'Usual' }).click();
    await expect.poll(() => page.locator('ww-trace-chart .label').count()).toBeGreaterThan(3);
    await pane(page, 'choose', false);
  });
});

describe('files', () => {
  const saved = async (page: Page, name: string): Promise<Buffer> => {
    await pane(page, 'save');
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name }).click(),
    ]);
    return readFile(await file.path());
  };

  it('the CSV holds the values of the run, in the units shown', async () => {
    const { page } = visit;
    await show(page, 'left-leg.angle', 'supply.pressure');
    const text = (await saved(page, 'Figures (CSV)')).toString();
    const [head] = text.split('\r\n');
    expect(head).toBe('time (s),supply.pressure (psi),left-leg.angle (deg)');
    const { series, issues } = readRecording(text, {
      channels: run.channels,
      ambient: run.scenario.ambient,
    });
    expect(issues).toEqual([]);
    expect(series.map((s) => s.channel)).toEqual(['supply.pressure', 'left-leg.angle']);
    for (const { channel, t, v } of series) {
      const was = run.sampled(channel)!;
      expect(t.length).toBe(was.t.length);
      const native = run.series(channel)!;
      // The page keeps single precision and goes straight between the solver's points.
      const range = native.v.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
      const off = [...v.keys()].map((i) => Math.abs(v[i] - straight(native, t[i])));
      expect(Math.max(...off), channel).toBeLessThan(2e-3 * range);
      off.sort((a, b) => a - b);
      expect(off[Math.floor(0.99 * off.length)], channel).toBeLessThan(1e-6 * range);
    }
  });

  it('the SVG is a drawing of lines, the PNG a picture of them', async () => {
    const { page } = visit;
    const drawing = (await saved(page, 'Drawing (SVG)')).toString();
    const path = /data-trace="left-leg.angle" d="(M[^"]+)"/.exec(drawing)?.[1] ?? '';
    expect(path.split('L').length).toBeGreaterThan(50);
    expect(drawing).toContain('Pressure, psi');
    const well = await page.evaluate(
      (text) =>
        new DOMParser().parseFromString(text, 'image/svg+xml').querySelector('parsererror')
          ?.textContent ?? '',
      drawing,
    );
    expect(well).toBe('');
    const picture = await saved(page, 'Picture (PNG)');
    expect(picture.subarray(1, 4).toString()).toBe('PNG');
    expect(picture.readUInt32BE(16)).toBe(2200);
    expect(picture.length).toBeGreaterThan(10_000);
  });
});

/** Straight between the points of a series. */
function straight({ t, v }: { t: Float64Array; v: Float64Array }, at: number): number {
  const after = t.findIndex((x) => x > at);
  if (after <= 0) return after < 0 ? v[v.length - 1] : v[0];
  return (
    v[after - 1] + ((v[after] - v[after - 1]) * (at - t[after - 1])) / (t[after] - t[after - 1])
  );
}

describe('the look', () => {
  it.each([
    [1280, 800, 'light'],
    [820, 1180, 'dark'],
    [390, 844, 'light'],
  ] as const)('is whole and sound at %i x %i, %s', async (width, height, scheme) => {
    const { page, said, elsewhere } = await site.visit({ width, height, scheme });
    await open(page);
    await scrubTo(page, 5);
    await page.locator('.chart').scrollIntoViewIfNeeded();
    for (const name of ['', 'choose', 'values', 'recordings', 'save'] as const) {
      if (name !== '') await pane(page, name);
      await frames(page);
      await page.locator('.chart').evaluate((c) => c.scrollIntoView({ block: 'start' }));
      await keep(page, `traces-${width}${name === '' ? '' : `-${name}`}`);
      expect(await violations(page), name).toEqual([]);
      // The bay's table at a narrow page is the bay's.
      const cut = (await cutOff(page)).filter((c) => !c.startsWith('table cell') || width > 390);
      expect(cut, name).toEqual([]);
    }
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
    await page.close();
  });
});
