import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readScenario, simulate } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import { clock, drop, keep, scrubTo, Site } from './browser.js';
import type { Visit } from './browser.js';
import { TEXT } from './demo.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

function read(text: string): Scenario {
  const { scenario, issues } = readScenario(text, { file: 'mine.yaml' });
  if (scenario === undefined) throw new Error(`does not read: ${JSON.stringify(issues)}`);
  return scenario;
}

/** The demo with everything from `key:` at its margin up to the next such key replaced. */
function withSection(key: string, lines: string): string {
  const section = new RegExp(`^${key}:\\n(?:[ #].*\\n|\\n)*`, 'm');
  if (!section.test(TEXT)) throw new Error(`no section ${key}`);
  return TEXT.replace(section, `${key}:\n${lines}\n`);
}

const unit = (side: string, more = ''): string =>
  `  ${side}: { side: ${side}, leg: ${side}-leg, downlock: ${side}-downlock${more} }`;
const CARD = `  plain:
    title: Up and down
    note: A note
    duration: 14 s
    steps:
      - { at: 0.2 s, device: ground-supply, input: on, value: on }
      - { at: 1 s, device: selector, input: lever, value: up }`;

/** The units given, without rules of the author, on one plain card. */
function reduced(units: string): string {
  return withSection('units', units)
    .replace(/^rules:\n(?:[ #].*\n|\n)*/m, '')
    .replace(/^cards:\n(?:[ #].*\n|\n)*/m, `cards:\n${CARD}\n`);
}

describe('an aircraft of another shape', () => {
  it.each([
    [
      'without doors',
      [unit('left', ', uplock: left-uplock'), unit('right', ', uplock: right-uplock')],
    ],
    ['with one unit', [unit('left', ', uplock: left-uplock, doors: [left-door]')]],
    [
      'without uplocks',
      [unit('left', ', doors: [left-door]'), unit('right', ', doors: [right-door]')],
    ],
  ])('%s is drawn, judged and told', async (name, units) => {
    const { page, said } = visit;
    const text = reduced(units.join('\n'));
    const run = simulate(read(text));
    await drop(page, [`${name}.yaml`, text]);
    const rows = page.locator('ww-bay tr[data-unit]');
    expect(await rows.count()).toBe(units.length);
    await scrubTo(page, run.duration);
    for (const side of Object.keys(run.scenario.units)) {
      const phase = run.log.filter((e) => e.device === side && e.kind === 'phase').at(-1)?.to;
      const row = page.locator(`ww-bay tr[data-unit=${side}]`);
      await expect.poll(() => row.locator('td').first().textContent()).toBe(phase);
    }
    await keep(page, `shape-${name.replaceAll(' ', '-')}`);
    expect(said).toEqual([]);
  });

  it('with markup in its words shows it as words', async () => {
    const { page, said } = visit;
    const evil = '<img src=x onerror="window.harmed = 1"><b>bold</b>';
    const text = TEXT.replace(/^title:.*$/m, `title: '${evil}'`)
      .replace(/^( +)title: Healthy, on ground supply$/m, `$1title: '${evil}'`)
      .replace(/^( +)note: >-\n +Up, a pause.*$/m, `$1note: '${evil}'`);
    expect(read(text).title).toBe(evil);
    await drop(page, ['<i>evil</i>.yaml', text]);
    expect(await page.locator('ww-app .card-note').textContent()).toBe(evil);
    const chosen = page.locator('[data-choose=card] option:checked');
    expect(await chosen.textContent()).toBe(evil);
    expect(await page.locator('img, ww-app b:text-is("bold")').count()).toBe(0);
    expect(await page.evaluate(() => 'harmed' in window)).toBe(false);
    expect(said).toEqual([]);
  });
});

const BUZZER = `  buzzer:
    is: controller
    signals: { coil: buzzer }
    table:
      dark:
        next: [{ if: [lever up, not coil], to: lit }]
      lit:
        drive: [coil]
        next: [{ if: [coil], to: dark }]
`;

describe('a run that cannot go on', () => {
  it('says where, when and why, and shows what was computed', async () => {
    const { page, said } = visit;
    // A relay that cuts its own coil buzzes for ever from the instant it is switched on.
    const text = TEXT.replace(/^components:\n/m, `components:\n${BUZZER}`).replace(
      /^( +)- \{[^}]*device: selector, input: lever, value: up \}\n/m,
      (line, indent: string) =>
        `${line}${indent}- { at: 5 s, device: buzzer, input: lever, value: up }\n`,
    );
    const { outcome, card, log } = simulate(read(text));
    if (outcome.kind === 'done') throw new Error('this run was to end early');
    await drop(page, ['buzzer.yaml', text]);
    const box = page.getByRole('region', { name: 'How the run ended' });
    const told = await box.textContent();
    expect(told).toContain(outcome.why);
    expect(told).toContain(outcome.hint);
    expect(told).toContain(`${outcome.time.toFixed(2)}\u00a0s`);
    await page.keyboard.press('End');
    expect(await clock(page)).toBeCloseTo(outcome.time, 3);
    expect(outcome.time).toBeLessThan(card.duration);
    expect(await page.locator('ww-order-chart .beyond').count()).toBe(1);
    const events = log.filter((e) => e.from !== '' || e.t > 0).length;
    expect(await page.getByRole('tab', { name: /Events/ }).textContent()).toContain(String(events));
    await keep(page, 'ended-early');
    expect(said).toEqual([]);
  });
});

describe('files that are none', () => {
  it.each([
    ['empty.yaml', ''],
    ['blank.yaml', '\n\n  \n'],
    ['picture.png', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR\u0000\ufffd\ufffd'],
    ['large.yaml', 'x'.repeat(10_000_000)],
  ])('%s gets a sentence, and the run stays', async (name, content) => {
    const { page, said } = visit;
    const before = await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent);
    await drop(page, [name, content]);
    const box = page.locator('ww-issue-list section.over');
    expect(await box.textContent()).toContain(name);
    await box.getByRole('button', { name: 'Dismiss' }).click();
    expect(await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent)).toBe(before);
    expect(said).toEqual([]);
  });

  it('ten files at once: the first is opened, the others can be chosen', async () => {
    const { page, said } = visit;
    const ten = Array.from({ length: 10 }, (_, i): [string, string] => [
      `number-${i}.yaml`,
      TEXT.replace(/^( +)title: Healthy, on ground supply$/m, `$1title: Card of ${i}`),
    ]);
    await drop(page, ...ten);
    const aircraft = page.locator('[data-choose=aircraft]');
    const card = page.locator('[data-choose=card] option:checked');
    expect(await aircraft.inputValue()).toBe('number-0.yaml');
    await aircraft.selectOption('number-7.yaml');
    await expect.poll(() => card.textContent()).toBe('Card of 7');
    expect(said).toEqual([]);
  });
});

describe('a long simulation', () => {
  const slow = TEXT.replace(/^( +)duration: 200 s$/m, '$1duration: 2000 s');
  const select = '[data-choose=card]';

  it('shows how far it is, keeps the former run meanwhile, and can be stopped', async () => {
    const { page, said } = visit;
    await drop(page, ['slow.yaml', slow]);
    await page.locator(select).selectOption('hand-pump');
    const busy = page.locator('[data-busy]');
    await expect
      .poll(() => busy.locator('progress').evaluate((p) => (p as HTMLProgressElement).value))
      .toBeGreaterThan(0);
    expect(await page.locator('ww-bay tr[data-unit]').count()).toBe(3);
    await busy.getByRole('button', { name: 'Stop' }).click();
    expect(await busy.count()).toBe(0);
    // What is on show is what is named.
    expect(await page.locator(select).inputValue()).toBe('healthy');
    expect(said).toEqual([]);
  });

  it('gives way to what is chosen meanwhile', async () => {
    const { page, said } = visit;
    await page.locator(select).selectOption('hand-pump');
    await page.locator('[data-busy]').waitFor({ state: 'attached' });
    await page.locator(select).selectOption('doors-early');
    await page.locator('[data-busy]').waitFor({ state: 'detached' });
    expect(await page.locator(select).inputValue()).toBe('doors-early');
    const note = read(slow).cards['doors-early'].note;
    expect(await page.locator('ww-app .card-note').textContent()).toBe(note);
    expect(said).toEqual([]);
  });
});
