/** Recordings laid over the traces, from a dropped file to a band on the run. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Run } from '@wheelwell/core';
import { drop, keep, scrubTo, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, valueAt } from './demo.js';
import { violations } from './faultless.js';
import { axes, degrees, drawn, inkAt, number, open, pane, show } from './trace-page.js';

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

beforeEach(() => scrubTo(visit.page, 0));

describe('a recording', () => {
  const SHIFT = 4.25;
  /** Angle and pressure of the run as a logger would have them: its own clock, its own names, a gap. */
  const recorded = (): string => {
    const angle = run.sampled('left-leg.angle')!;
    const pressure = run.sampled('supply.pressure')!;
    const rows = ['time (s),left leg angle (deg),CH2,remark'];
    for (let i = 0; i < angle.t.length; i += 4) {
      const gap = angle.t[i] > 8.6 && angle.t[i] < 9.4;
      const bar = (pressure.v[i] - run.scenario.ambient) / 1e5;
      rows.push(
        `${(angle.t[i] + SHIFT).toFixed(3)},${gap ? '' : degrees(angle.v[i]).toFixed(3)},${bar.toFixed(3)},${i === 0 ? '"up, first"' : ''}`,
      );
    }
    return rows.join('\n');
  };

  it('dropped on the page lies on the run after its offset was found; gaps stay gaps', async () => {
    const { page } = visit;
    await show(page, 'tail-leg.angle');
    await page.getByRole('tab', { name: 'Order of events' }).click();
    await drop(page, ['rig.csv', recorded()]);
    const offset = page.getByRole('spinbutton', { name: 'Time offset of rig.csv, seconds' });
    await expect.poll(async () => Number(await offset.inputValue())).toBeCloseTo(-SHIFT, 2);
    await drawn(page);
    // The channel it was taken for is shown.
    await pane(page, 'recordings', false);
    await page.locator('ww-trace-chart [data-trace="left-leg.angle"]').waitFor();
    await scrubTo(page, 3);
    const label = page.locator('ww-trace-chart [data-trace="left-leg.angle"] .value');
    const [now, was] = (await label.textContent())!.split(/[ ()]+/).map(number);
    expect(Math.abs(now - was)).toBeLessThanOrEqual(0.3);
    expect(Math.abs(now - degrees(valueAt(run, 'left-leg.angle', 3)))).toBeLessThanOrEqual(0.1);
    const { x, y } = await axes(page);
    const band = (t: number): Promise<number> =>
      inkAt(page, x(t), y(degrees(valueAt(run, 'left-leg.angle', t))) - 1.4, 0.5);
    // The row of pixels just above the line: of the band alone, so none in its gap.
    expect(await band(7.9)).toBeGreaterThan(60);
    expect(await band(9)).toBe(0);
    await scrubTo(page, 9);
    expect(await label.textContent()).not.toContain('(');
  });

  it('has its columns told by hand, and says what is wrong with line and column', async () => {
    const { page } = visit;
    await pane(page, 'recordings');
    const view = page.locator('ww-recordings');
    expect(await view.locator('.name').allTextContents()).toEqual(['left leg angle', 'CH2']);
    await view.getByLabel('What CH2 is').selectOption('supply.pressure');
    await view.getByText('Line 1, column 31').waitFor();
    expect(await view.getByRole('listitem').textContent()).toContain('a unit is missing');
    await view.getByLabel('Unit of CH2').fill('bar');
    await view.getByLabel('Unit of CH2').press('Enter');
    await expect.poll(() => view.getByRole('listitem').count()).toBe(0);
    await scrubTo(page, 5);
    const label = page.locator('ww-trace-chart [data-trace="supply.pressure"] .value');
    await expect.poll(() => label.textContent()).toContain('(');
    const [now, was] = (await label.textContent())!.split(/[ ()]+/).map(number);
    expect(Math.abs(now - was)).toBeLessThanOrEqual(25);
  });

  it('is moved by hand, fitted again, and taken away', async () => {
    const { page } = visit;
    const view = page.locator('ww-recordings');
    const offset = view.getByRole('spinbutton');
    await offset.fill('-2');
    await offset.press('Enter');
    expect(await view.getByRole('slider').inputValue()).toBe('-2');
    await view.getByRole('button', { name: 'Fit to the run' }).click();
    await expect.poll(async () => Number(await offset.inputValue())).toBeCloseTo(-SHIFT, 2);
    await view.getByText('% alike').waitFor();
    await keep(page, 'traces-recording');
    expect(await violations(page)).toEqual([]);
    await view.getByRole('button', { name: 'Remove rig.csv' }).click();
    await expect.poll(() => view.getByRole('button', { name: /Remove/ }).count()).toBe(0);
  });

  it('of ten thousand rows leaves the page free while it is read', async () => {
    const { page } = visit;
    const names = Array.from({ length: 12 }, (_, i) => `signal ${i} (deg)`);
    const rows = Array.from({ length: 10_000 }, (_, i) =>
      [i / 250, ...names.map((_, k) => Math.sin(i / 90 + k).toFixed(5))].join(','),
    );
    await drop(page, ['long.csv', ['time (s)', ...names].join(',') + '\n' + rows.join('\n')]);
    const view = page.locator('ww-recordings');
    await view.getByLabel('What signal 11 is').waitFor();
    expect(await view.locator('.name').count()).toBe(12);
    await view.getByRole('button', { name: 'Remove long.csv' }).click();
    await drop(page, ['not.csv', 'nothing here']);
    await view.getByText('there are no figures in this file').waitFor();
    await view.getByRole('button', { name: 'Remove not.csv' }).click();
    await pane(page, 'recordings', false);
  });
});
