/** Lessons as a student and a class take them, in a real browser. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogues } from '@wheelwell/core';
import type { PreparedStep } from '@wheelwell/core';
import type { Page } from 'playwright-core';
import { shipped } from '../support/lessons.js';
import { clock, drop, keep, scrubTo, Site } from './browser.js';
import { cutOff, violations } from './faultless.js';
import { bench, button, goTo, lesson, next, openList, saved, take } from './lesson-bench.js';

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

/** Ticks a choice, or puts the items in an order by their buttons. */
async function give(page: Page, step: PreparedStep, ids: readonly string[]): Promise<void> {
  if (step.kind !== 'arrange') {
    const text = step.choices.find((c) => c.id === ids[0])?.text ?? '';
    await bench(page).getByRole('radio', { name: text, exact: true }).check();
    await button(page, 'That is my answer').click();
    return;
  }
  for (const [place, id] of ids.entries()) {
    const item = bench(page).locator(`.arrange li[data-id="${id}"]`);
    for (let i = 0; i < ids.length; i++) {
      const order = await bench(page)
        .locator('.arrange li')
        .evaluateAll((all) => all.map((li) => (li as HTMLElement).dataset.id));
      if (order.indexOf(id) <= place) break;
      await item.locator('[data-to=earlier]').click();
    }
  }
  await button(page, 'That is the order').click();
}

function wrongOf(step: PreparedStep): readonly string[] {
  if (step.kind === 'arrange') return [...step.right].reverse();
  return step.choices.map((c) => c.id).filter((id) => !step.right.includes(id));
}

describe('every lesson that comes with the page', () => {
  it.each(shipped.map((s) => [s.file, s] as const))(
    '%s: wrong answers are told wrong, right ones right',
    async (_, { text, plan }) => {
      const { page, said, elsewhere } = await site.visit();
      await openList(page);
      await take(page, text);
      const { steps } = plan();
      for (const [i, step] of steps.entries()) {
        expect(await bench(page).locator('header .soft').textContent()).toBe(
          `Step ${i + 1} of ${steps.length}`,
        );
        if (step.stop !== undefined) expect(await clock(page)).toBeCloseTo(step.stop, 2);
        if (step.kind !== 'tell') {
          await give(page, step, wrongOf(step));
          expect(await bench(page).locator('.verdict').textContent()).toContain('Not so.');
          expect(await bench(page).locator('.answer').count()).toBe(0);
          await give(page, step, step.right);
          expect(await bench(page).locator('.answer h3').textContent()).toMatch(/Right, at try 2/);
          expect(await bench(page).locator('.told li').count()).toBeGreaterThanOrEqual(
            step.told.length,
          );
        }
        if (i < steps.length - 1) await next(page);
      }
      const asked = steps.filter((s) => s.kind !== 'tell').length;
      expect(await bench(page).locator('.results summary').textContent()).toMatch(
        new RegExp(`${asked} of ${asked} right, 0 at the first try`),
      );
      expect(said).toEqual([]);
      expect(elsewhere).toEqual([]);
      await page.close();
    },
  );
});

describe('while a question is open', () => {
  it('nothing on the page goes beyond it, on no workplace', async () => {
    const { page } = await site.visit();
    await openList(page);
    const { text, plan } = lesson('early-plunger');
    await take(page, text);
    await goTo(page, 2);
    const { stop = NaN } = plan().steps[1];
    await page.keyboard.press('End');
    await scrubTo(page, 25);
    expect(await clock(page)).toBeLessThanOrEqual(stop + 1e-6);
    expect(await page.getByRole('tab', { name: /Flags/ }).count()).toBe(0);
    const bay = await page.locator('ww-bay').evaluate((e) => e.shadowRoot?.textContent ?? '');
    expect(bay).not.toContain('7.56');
    await page.getByRole('button', { name: 'Swing', exact: true }).click();
    const words = await page.locator('ww-flag-list').evaluate((e) => e.shadowRoot?.textContent);
    expect(words).not.toContain('Doors wait for the gear');
    await page.getByRole('tab', { name: /Events/ }).click();
    const last = await page.locator('ww-event-list li').last().textContent();
    expect(parseFloat(last ?? '')).toBeLessThanOrEqual(stop);
    expect(await page.locator('.veiled').textContent()).toContain('shut');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Back to the lesson' }).click();
    await button(page, 'Show the answer').click();
    await scrubTo(page, 25);
    expect(await clock(page)).toBeCloseTo(25, 2);
    await page.close();
  });

  it('a hidden fault is named nowhere, and its checks are counted', async () => {
    const { page, said } = await site.visit();
    await openList(page);
    const { text, plan } = lesson('early-plunger');
    await take(page, text);
    await goTo(page, 5);
    const step = plan().steps[4];
    await page.getByRole('button', { name: 'Swing', exact: true }).click();
    await page.getByRole('tab', { name: /Faults/ }).click();
    expect(await page.getByRole('tab', { name: /Faults/ }).textContent()).toMatch(/0\s*$/);
    const drawer = await page.locator('ww-fault-drawer').evaluate((e) => e.shadowRoot?.textContent);
    expect(drawer).not.toContain(catalogues.faults['plunger-rigged-early'].meaning);
    await page.getByRole('button', { name: 'Back to the lesson' }).click();
    const watch = step.checks.find((c) => c.id === 'look right-door-close-valve')!;
    await bench(page).locator(`[data-check="${watch.id}"]`).click();
    const reading = await bench(page).locator('.reading').textContent();
    expect(reading).toContain(`${watch.reading[0].t?.toFixed(2)}\u00a0s`);
    for (let i = 1; i < step.budget; i++) await bench(page).locator('[data-check]').first().click();
    expect(await bench(page).locator('[data-check]').count()).toBe(0);
    expect(await bench(page).locator('.checks h3').textContent()).toMatch(/Checks: 0 left of 3/);
    await page.getByRole('tab', { name: 'Circuit' }).click();
    await keep(page, 'lesson-find-circuit');
    expect(said).toEqual([]);
    await keep(page, 'lesson-find');
    await page.close();
  });

  it('an order is made by keys alone, and the focus stays with what was moved', async () => {
    const { page } = await site.visit();
    await openList(page);
    await take(page, lesson('normal-sequence').text);
    await goTo(page, 4);
    const first = bench(page).locator('.arrange li').first();
    const id = await first.getAttribute('data-id');
    await first.locator('[data-to=later]').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    const order = await bench(page)
      .locator('.arrange li')
      .evaluateAll((all) => all.map((li) => (li as HTMLElement).dataset.id));
    expect(order[2]).toBe(id);
    expect(await page.locator('ww-app [role=status]').textContent()).toMatch(/place 3 of 4/);
    await bench(page)
      .locator('.arrange li')
      .nth(2)
      .dragTo(bench(page).locator('.arrange li').first());
    expect(await bench(page).locator('.arrange li').first().getAttribute('data-id')).toBe(id);
    await page.close();
  });
});

it('results go out as CSV and JSON', async () => {
  const { page } = await site.visit();
  await openList(page);
  const { text, plan } = lesson('normal-sequence');
  await take(page, text);
  await goTo(page, 2);
  const [, step] = plan().steps;
  await give(page, step, step.right);
  await bench(page).locator('.results summary').click();
  await bench(page).getByLabel(/Name/).fill('B. Student');
  const csv = await saved(page, () => button(page, 'Results as CSV').click());
  const row = csv.split('\r\n')[1];
  expect(row).toContain(
    `The normal sequence,${lesson('normal-sequence').file},B. Student,2,predict`,
  );
  expect(row).toMatch(/Left downlock is open,Left downlock is open,yes,1,,\d{4}-\d\d-\d\dT/);
  const json = JSON.parse(await saved(page, () => button(page, 'Results as JSON').click())) as {
    results: { right: boolean }[];
  };
  expect(json.results.map((r) => r.right)).toEqual([true, false, false, false]);
  await page.close();
});

describe('files', () => {
  const evil = '<img src=x onerror="document.title=1"><b>bold</b>';
  const hostile = `wheelwell-lesson: 1
title: '${evil} title'
note: '${evil}'
scenario: hedgelark.yaml
steps:
  - { kind: tell, card: healthy, text: '${evil} told' }
  - { kind: predict, card: healthy, at: 6 s, text: '${evil} asked', why: '${evil} why' }
`;

  it('words of a lesson are shown as words', async () => {
    const { page, said } = await site.visit();
    await drop(page, [`${'x'.repeat(80)}.yaml`, hostile]);
    await bench(page).locator('.step').waitFor({ timeout: 60_000 });
    expect(await bench(page).locator('.tell').textContent()).toBe(`${evil} told`);
    await next(page);
    await button(page, 'Show the answer').click();
    expect(await bench(page).locator('.ask').textContent()).toBe(`${evil} asked`);
    expect(await bench(page).locator('.why').textContent()).toBe(`${evil} why`);
    expect(await bench(page).locator('img').count()).toBe(0);
    expect(await page.title()).not.toBe('1');
    expect(await cutOff(page)).toEqual([]);
    expect(said).toEqual([]);
    await page.close();
  });

  it('one that cannot be taken says where and why', async () => {
    const { page } = await site.visit();
    const slip = hostile.replace('at: 6 s', 'after: { device: left-door, to: opened }');
    await drop(page, ['slip.yaml', slip]);
    await bench(page).locator('.issues li').first().waitFor();
    const words = await bench(page).locator('.issues').textContent();
    expect(words).toMatch(/Line 7, column \d+ steps\.1\.after\.to/);
    expect(words).toContain('left-door is never in this state');
    expect(await violations(page)).toEqual([]);
    await button(page, 'All lessons').click();
    await bench(page).locator('.lessons').waitFor();
    await page.close();
  });
});

it('in front of a room: large, Page Down shows the answer and goes on', async () => {
  const { page, said } = await site.visit({ width: 1280, height: 800 });
  await openList(page);
  await take(page, lesson('early-plunger').text);
  await goTo(page, 2);
  await page.getByRole('button', { name: 'Large' }).click();
  const size = (selector: string): Promise<number> =>
    bench(page)
      .locator(selector)
      .evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
  expect(await size('.ask')).toBeGreaterThan(19);
  expect(await bench(page).getByRole('radio').count()).toBe(0);
  expect(await bench(page).locator('.room .right').count()).toBe(0);
  await keep(page, 'lesson-class-asked');
  expect(await violations(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);
  await page.keyboard.press('PageDown');
  await bench(page).locator('.room .right').waitFor();
  await keep(page, 'lesson-class-shown');
  await page.keyboard.press('PageDown');
  await expect.poll(() => bench(page).locator('header .soft').textContent()).toMatch(/Step 3 of/);
  await page.keyboard.press('PageUp');
  await expect.poll(() => bench(page).locator('header .soft').textContent()).toMatch(/Step 2 of/);
  expect(said).toEqual([]);
  await page.close();
});

describe.each([
  [1280, 800],
  [820, 1180],
  [390, 844],
])('at %i x %i', (width, height) => {
  it.each(['light', 'dark'] as const)('%s: has nothing against it', async (scheme) => {
    const { page, said } = await site.visit({ width, height, scheme });
    const look = async (name: string): Promise<void> => {
      expect(await cutOff(page), name).toEqual([]);
      expect(await violations(page), name).toEqual([]);
      await keep(page, `lesson-${name}-${width}-${scheme}`);
    };
    await openList(page);
    await look('list');
    const { text, plan } = lesson('early-plunger');
    await take(page, text);
    await goTo(page, 2);
    await look('asked');
    const step = plan().steps[1];
    await give(page, step, step.right);
    await look('answered');
    await next(page);
    await look('order');
    await goTo(page, 3);
    await bench(page).locator('[data-check]').nth(2).click();
    await look('find');
    await button(page, 'Edit').click();
    await page.locator('ww-lesson-desk .truth').waitFor({ timeout: 60_000 });
    await look('desk');
    expect(said).toEqual([]);
    await page.close();
  });
});
