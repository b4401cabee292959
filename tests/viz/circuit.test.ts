/** The circuit on the page: nothing on anything else, and what moves moves as the run says. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { catalogues } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { heat } from '../../packages/viz/src/drawing/heat.js';
import { clock, keep, scrubTo, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, valueAt } from './demo.js';
import { cutOff, violations } from './faultless.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

const DEMOS = ['hedgelark', 'fenwren', 'tarnswift'];

/** Opens the circuit, with all its channels there. */
async function openCircuit(page: Page, demo = 'hedgelark'): Promise<void> {
  await page.locator('[data-choose=aircraft]').selectOption(`${demo}/${demo}.yaml`);
  await settled(page);
  await page.getByRole('tab', { name: 'Circuit' }).click();
  await page
    .locator('ww-circuit .line .core:not([stroke=none])')
    .first()
    .waitFor({ state: 'attached' });
}

/** Symbols, words and lines that lie on each other, measured on the screen. */
function overlaps(page: Page): Promise<string[]> {
  return page.locator('ww-circuit .sheet svg').evaluate((drawing) => {
    const found: string[] = [];
    const things = [...drawing.querySelectorAll('.part')].flatMap((part) => {
      const name = part.getAttribute('data-part') ?? '';
      return [...part.querySelectorAll(':scope > text, :scope > .tank, :scope > .symbol')].map(
        (e) => ({ of: name, what: e.localName === 'text' ? 'name' : 'symbol', e }),
      );
    });
    const words = [...drawing.querySelectorAll('text.heading, .figures text')].map((e) => ({
      of: `"${e.textContent}"`,
      what: 'word',
      e,
    }));
    const all = [...things, ...words].map((t) => ({ ...t, box: t.e.getBoundingClientRect() }));
    const meet = (a: DOMRect, b: DOMRect): boolean =>
      a.left < b.right - 0.5 &&
      b.left < a.right - 0.5 &&
      a.top < b.bottom - 0.5 &&
      b.top < a.bottom - 0.5;
    all.forEach((a, i) => {
      for (const b of all.slice(i + 1))
        if (!(a.of === b.of && a.what === 'symbol' && b.what === 'symbol') && meet(a.box, b.box))
          found.push(`${a.of} ${a.what} on ${b.of} ${b.what}`);
    });
    for (const line of drawing.querySelectorAll<SVGGeometryElement>('.line .core')) {
      const node = line.parentElement?.getAttribute('data-node') ?? '';
      const m = line.getScreenCTM();
      const length = line.getTotalLength();
      // Up to where it comes to its ports: the leads on the symbols themselves.
      for (let s = 1.2; m !== null && s < length - 1.2; s += 0.4) {
        const p = line.getPointAtLength(s).matrixTransform(m);
        for (const { of, what, box } of all)
          if (p.x > box.left && p.x < box.right && p.y > box.top && p.y < box.bottom)
            found.push(`line ${node} through ${of} ${what}`);
      }
    }
    return [...new Set(found)];
  });
}

describe.each(DEMOS)('%s', (demo) => {
  it('has no symbol, word, figure or line on another, wherever spools and pistons stand', async () => {
    const { page, said } = await site.visit();
    await openCircuit(page, demo);
    await page.getByRole('button', { name: 'Figures' }).click();
    for (const time of [0, 3, 8, 14]) {
      await scrubTo(page, time);
      await page.waitForTimeout(80);
      expect(await overlaps(page), `at ${time} s`).toEqual([]);
      if (time === 3) await keep(page, `circuit-${demo}-figures`);
    }
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await violations(page)).toEqual([]);
      await keep(page, `circuit-${demo}-${colorScheme}`);
    }
    expect(said).toEqual([]);
    await page.close();
  });
});

describe('the drawing of a swing', () => {
  let visit: Visit;
  let run: Run;

  beforeAll(async () => {
    visit = await site.visit();
    run = demoRun();
    await openCircuit(visit.page);
  });
  afterAll(() => visit.page.close());

  const colour = (node: string): Promise<string | null> =>
    visit.page
      .locator(`ww-circuit .line[data-node="${node}"] .core`)
      .first()
      .getAttribute('stroke');

  it('colours a line as the scale has it for the pressure the run gives', async () => {
    const { page } = visit;
    const nodes = ['supply', 'up-tee', 'left-leg-up', 'bottle-out'];
    const psi = 6894.757;
    const words = await page.locator('ww-circuit .legend text').allTextContents();
    const top = Number(/[\d,.]+/.exec(words.at(-1) ?? '')?.[0].replace(',', '')) * psi;
    expect(top).toBeGreaterThan(5e6);
    for (const time of [0.5, 3, 7]) {
      await scrubTo(page, time);
      for (const node of nodes) {
        const gauge = valueAt(run, `${node}.pressure`, time) - run.scenario.ambient;
        const near = [-0.01, 0, 0.01].map((d) => rgb(heat(Math.max(gauge, 0) / top + d)));
        await expect
          .poll(async () => between(rgb((await colour(node)) ?? ''), near), { message: node })
          .toBe(true);
      }
    }
  });

  it('puts the piston where the run has the rod', async () => {
    const { page } = visit;
    const jack = 'left-leg-jack';
    const stroke = run.scenario.components[jack].parameters.stroke as number;
    const piston = page.locator(`ww-circuit [data-part=${jack}] .symbol path.solid`);
    const places: number[] = [];
    const [low, mid, high] = [0, 4, 9].map((t) => valueAt(run, `${jack}.rod`, t) / stroke);
    for (const time of [0, 4, 9]) {
      await scrubTo(page, time);
      await page.waitForTimeout(50);
      places.push((await piston.boundingBox())?.x ?? NaN);
    }
    expect(Math.abs(high - low)).toBeGreaterThan(0.5);
    const share = (places[1] - places[0]) / (places[2] - places[0]);
    expect(share).toBeCloseTo((mid - low) / (high - low), 1);
  });

  it("shifts the selector's boxes over its ports when the lever moves", async () => {
    const { page } = visit;
    const boxes = page.locator('ww-circuit [data-part=selector] .symbol path.body');
    const left = (): Promise<number[]> =>
      boxes.evaluateAll((all) => all.map((b) => b.getBoundingClientRect().left));
    const moved = run.log.filter((e) => e.device === 'selector' && e.kind === 'mode' && e.t > 0);
    const up = moved.find((e) => e.to === 'up');
    const down = moved.find((e) => e.to === 'down');
    if (up === undefined || down === undefined) throw new Error('the lever does not move');
    await scrubTo(page, up.t + 0.2);
    await page.waitForTimeout(50);
    const atUp = await left();
    await scrubTo(page, down.t + 0.2);
    await page.waitForTimeout(50);
    const atDown = await left();
    // Two boxes over: from the one for up to the one for down.
    expect(atUp[0]).toBeCloseTo(atDown[2], 0);
  });

  it('shows what flows by arrows the way it goes, and none when all is at rest', async () => {
    const { page } = visit;
    await scrubTo(page, 4);
    await page.waitForTimeout(50);
    const flow = page.locator('ww-circuit .line[data-node=selector-up]').first();
    const q = Number(await flow.getAttribute('data-flow'));
    expect(Math.abs(q)).toBeGreaterThan(1e-5);
    expect(await page.locator('ww-circuit .line .flow').count()).toBeGreaterThan(10);
    await scrubTo(page, 29.9);
    await page.waitForTimeout(50);
    expect(await page.locator('ww-circuit .line[data-node=selector-up] .flow').count()).toBe(0);
  });

  it('lets dashes go by while it plays, and stand when it does not', async () => {
    const { page } = visit;
    await scrubTo(page, 3);
    const offset = (): Promise<string | null> =>
      page
        .locator('ww-circuit .line[data-node=selector-up] .dashes')
        .first()
        .getAttribute('stroke-dashoffset');
    const before = await offset();
    await page.waitForTimeout(150);
    expect(await offset()).toBe(before);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(offset).not.toBe(before);
    await page.getByRole('button', { name: 'Pause' }).click();
  });
});

describe('at hand', () => {
  it('goes from part to part by arrows, opens and closes a card, leaves the clock alone', async () => {
    const { page } = await site.visit();
    await openCircuit(page);
    await scrubTo(page, 3);
    const focused = (): Promise<string | null> =>
      page.evaluate(() => {
        let at = document.activeElement;
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        return at?.getAttribute('data-part') ?? null;
      });
    await page.locator('ww-circuit .part[tabindex="0"]').focus();
    expect(await page.locator('ww-circuit .part[tabindex="0"]').count()).toBe(1);
    const first = await focused();
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).not.toBe(first);
    await page.keyboard.press('ArrowRight');
    const name = await focused();
    const grip = page.locator(`ww-circuit [data-part="${name}"] .grip`);
    expect(await grip.evaluate((e) => getComputedStyle(e).strokeWidth)).toBe('3px');
    expect(await clock(page)).toBe(3);
    await page.keyboard.press('Enter');
    const card = page.locator('ww-part-card');
    await card.waitFor();
    expect(await page.locator('ww-circuit .part.chosen').getAttribute('data-part')).toBe(name);
    await keep(page, 'circuit-card');
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await card.waitFor({ state: 'detached' });
    expect(await focused()).toBe(name);
    await page.close();
  });

  it('reads a part at the play head, shows its figures, and opens the fault drawer at its faults', async () => {
    const { page } = await site.visit();
    const run = demoRun();
    await openCircuit(page);
    await scrubTo(page, 3);
    await page.locator('ww-circuit [data-part=pressure-filter]').click();
    const card = page.locator('ww-part-card');
    const clean = catalogues.components.filter.ports.outlet.title;
    const psi = (valueAt(run, 'pressure.pressure', 3) - run.scenario.ambient) / 6894.757;
    const row = card.locator(`dt:text-is("pressure at ${clean}") + dd`);
    await expect
      .poll(async () => Math.abs(parseFloat((await row.textContent()) ?? '') - psi))
      .toBeLessThan(0.02 * psi);
    await card.getByText('Its figures').click();
    expect(await card.locator('dd').count()).toBeGreaterThan(8);
    await card.getByRole('button', { name: 'Change them' }).click();
    const figures = page.locator('ww-parameters');
    await figures
      .getByText(/pressure filter/i)
      .first()
      .waitFor();
    await card.getByText(/What can befall it/).click();
    await card
      .getByRole('button', { name: /filter/i })
      .first()
      .click();
    await page.locator('ww-fault-drawer').waitFor();
    expect(await page.locator('[data-choose=device]').inputValue()).toBe('pressure-filter');
    await page.close();
  });

  it('takes a tap close beside a small symbol for it, and rings what the event picked out is about', async () => {
    const { page } = await site.visit();
    const run = demoRun();
    await openCircuit(page);
    const box = await page.locator('ww-circuit [data-part=bottle]').boundingBox();
    if (box === null) throw new Error('no bottle');
    await page.mouse.click(box.x - 9, box.y + box.height / 2);
    await page.locator('ww-circuit [data-part=bottle].chosen').waitFor();
    await page.keyboard.press('Escape');
    const entry = run.log.find((e) => e.device === 'left-leg-down-valve' && e.t > 0);
    await page.getByRole('tab', { name: /Events/ }).click();
    await page.locator(`ww-event-list [data-event="${entry?.index}"] .row`).click();
    await page.locator('ww-circuit [data-part=left-leg-down-valve].told').waitFor();
    await page.close();
  });

  it('gives the drawing the room of the chart, and gives it back', async () => {
    const { page } = await site.visit();
    await openCircuit(page);
    expect(await page.locator('ww-order-chart').isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Chart' }).click();
    expect(await page.locator('ww-order-chart').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Chart' }).click();
    await page.getByRole('tab', { name: 'Bay' }).click();
    expect(await page.locator('ww-order-chart').isVisible()).toBe(true);
    await page.close();
  });

  it('comes closer about the pointer, is dragged, and is whole again', async () => {
    const { page } = await site.visit();
    await openCircuit(page);
    const svg = page.locator('ww-circuit .sheet svg');
    const view = async (): Promise<number[]> =>
      ((await svg.getAttribute('viewBox')) ?? '').split(' ').map(Number);
    const whole = await view();
    const part = page.locator('ww-circuit [data-part=selector] .symbol');
    const before = await part.boundingBox();
    if (before === null) throw new Error('no selector');
    await page.mouse.move(before.x + before.width / 2, before.y + before.height / 2);
    await page.mouse.wheel(0, -600);
    await expect.poll(async () => (await view())[2]).toBeLessThan(whole[2] / 2);
    const after = await part.boundingBox();
    expect(after?.width).toBeGreaterThan(2 * before.width);
    const middle = (b: typeof before | null): number => (b === null ? NaN : b.x + b.width / 2);
    expect(Math.abs(middle(after) - middle(before))).toBeLessThan(0.1 * before.width);
    await page.mouse.down();
    await page.mouse.move(before.x - 80, before.y - 30, { steps: 4 });
    await page.mouse.up();
    expect(await page.locator('ww-part-card').count()).toBe(0);
    expect(middle(await part.boundingBox())).toBeLessThan(middle(after) - 40);
    await page.getByRole('button', { name: 'Whole' }).click();
    await expect.poll(view).toEqual(whole);
    await page.close();
  });

  it('writes rates beside arrows instead of moving dashes where motion is to be reduced', async () => {
    const { page } = await site.visit({ reducedMotion: 'reduce' });
    await openCircuit(page);
    await scrubTo(page, 4);
    await page.locator('ww-circuit .figures text.rate').first().waitFor();
    expect(await page.locator('ww-circuit .dashes').count()).toBe(0);
    expect(await page.locator('ww-circuit .line .flow').count()).toBeGreaterThan(10);
    await page.close();
  });

  it.each([
    [1280, 800],
    [820, 1180],
    [390, 844],
  ])('nothing is cut off at %i x %i', async (width, height) => {
    const { page, said } = await site.visit({ width, height });
    await openCircuit(page);
    await scrubTo(page, 3);
    await page.locator('ww-circuit [data-part=left-shuttle]').click();
    await page.locator('ww-part-card').waitFor();
    expect(await cutOff(page)).toEqual([]);
    await keep(page, `circuit-${width}`);
    expect(said).toEqual([]);
    await page.close();
  });
});

function rgb(text: string): number[] {
  const hex = /^#(..)(..)(..)$/.exec(text)?.slice(1);
  if (hex !== undefined) return hex.map((h) => parseInt(h, 16));
  return (/rgb\((.*)\)/.exec(text)?.[1] ?? '').split(',').map(Number);
}

/** Whether a colour lies between the first and the last of some, with rounding. */
function between(c: readonly number[], all: readonly (readonly number[])[]): boolean {
  return (
    c.length === 3 &&
    c.every((v, i) => {
      const of = all.map((each) => each[i]);
      return v >= Math.min(...of) - 2 && v <= Math.max(...of) + 2;
    })
  );
}
