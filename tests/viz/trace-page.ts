/** What tests of the Traces tab do on the page, and read from it as a user would. */
import type { Locator, Page } from 'playwright-core';
import { toDisplay } from '@wheelwell/core';

export async function open(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Traces' }).click();
  await page.locator('ww-trace-chart .label').first().waitFor();
  await drawn(page);
}

/** Waits for the channels to come and the canvas to be painted. */
export async function drawn(page: Page): Promise<void> {
  await page
    .locator('ww-trace-chart .value', { hasText: '–' })
    .first()
    .waitFor({ state: 'detached' });
  await frames(page);
}

export const frames = (page: Page): Promise<unknown> =>
  page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );

export async function pane(
  page: Page,
  name: 'choose' | 'values' | 'recordings' | 'save',
  open = true,
): Promise<void> {
  const button = page.locator(`[data-pane=${name}]`);
  if (((await button.getAttribute('aria-expanded')) === 'true') !== open) await button.click();
}

/** Shows these channels and no others. */
export async function show(page: Page, ...names: string[]): Promise<void> {
  await pane(page, 'choose');
  await page.getByRole('button', { name: 'Clear' }).click();
  for (const name of names) await page.locator(`[data-channel="${name}"]`).click();
  await pane(page, 'choose', false);
  await drawn(page);
}

export interface Axes {
  /** Page px of a time, s, and of a value in the unit of the panel. */
  readonly x: (t: number) => number;
  readonly y: (v: number) => number;
  readonly left: number;
  readonly right: number;
}

export const number = (text: string | null): number =>
  Number((text ?? '').replaceAll(',', '').replace('\u2212', '-'));

/** Reads the axes of the only panel from its ticks, as a reader of the chart would. */
export async function axes(page: Page): Promise<Axes> {
  const middle = async (l: Locator, vertical: boolean): Promise<[number, number]> => {
    const at = await l.boundingBox();
    if (at === null) throw new Error('no tick');
    const text = number(await l.textContent());
    return [text, vertical ? at.y + at.height / 2 : at.x + at.width / 2];
  };
  const line =
    ([v0, p0]: [number, number], [v1, p1]: [number, number]) =>
    (v: number): number =>
      p0 + ((v - v0) * (p1 - p0)) / (v1 - v0);
  const ticks = page.locator('ww-trace-chart .tick');
  const times = page.locator('ww-trace-chart .axis text:not(.now)').filter({ hasText: /^[\d.]+$/ });
  const x = line(await middle(times.first(), false), await middle(times.last(), false));
  // The lines of the grid stand exactly where their ticks do; letters are a little off the middle.
  const grid = page.locator('ww-trace-chart .grid');
  const at = async (i: number): Promise<[number, number]> => {
    const box = await grid.nth(i).boundingBox();
    return [number(await ticks.nth(i).textContent()), (box?.y ?? NaN) + (box?.height ?? 0) / 2];
  };
  const y = line(await at(0), await at((await ticks.count()) - 1));
  const plot = await grid.first().boundingBox();
  return { x, y, left: plot?.x ?? NaN, right: (plot?.x ?? NaN) + (plot?.width ?? NaN) };
}

/** How opaque the canvas is at most within a few pixels of a place of the page. */
export function inkAt(page: Page, x: number, y: number, within = 2): Promise<number> {
  return page.locator('ww-trace-chart canvas').evaluate(
    (canvas, [px, py, r]) => {
      const c = canvas as HTMLCanvasElement;
      const box = c.getBoundingClientRect();
      const scale = c.width / box.width;
      const side = Math.round(2 * r * scale);
      const data = c
        .getContext('2d')!
        .getImageData((px - box.left - r) * scale, (py - box.top - r) * scale, side, side).data;
      return data.reduce((most, v, i) => (i % 4 === 3 ? Math.max(most, v) : most), 0);
    },
    [x, y, within] as const,
  );
}

export const degrees = (rad: number): number => toDisplay(rad, 'angle', 'us').value;
