/** Files made to harm, and what the page may do at all: markup stays words, nothing is evaluated, nobody is asked. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogues, writeScenario } from '@wheelwell/core';
import { drop, keep, PLACE, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoScenario, TEXT } from './demo.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

const EVIL =
  '</text></style><script>window.harmed=1</script><img src=x onerror="window.harmed=1">' +
  '<b onclick=harmed=1>bold</b>${harmed=1}{{harmed=1}}"\'`&lt;i&gt;';
/** Free texts; of a step `text` is a value, of a rule it is free. */
const isFree = (key: string, of: object): boolean =>
  key === 'title' || key === 'note' || (key === 'text' && 'kind' in of);

/** The same with every free text replaced. */
function poisoned<T>(value: T): T {
  if (Array.isArray(value)) return value.map(poisoned) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      typeof inner === 'string' && isFree(key, value) ? EVIL : poisoned(inner),
    ]),
  ) as T;
}

/** Elements that only markup from a file can have made, in any shadow root. */
function strangers(): Promise<string[]> {
  return visit.page.evaluate(() => {
    const found: string[] = [];
    const look = (root: ParentNode): void => {
      for (const e of root.querySelectorAll('*')) {
        if (e.shadowRoot !== null) look(e.shadowRoot);
        if (e.matches('img, iframe, object, embed, [onclick], [onerror], ww-app script'))
          found.push(e.outerHTML.slice(0, 80));
        if (e.localName === 'b' && e.textContent === 'bold') found.push('b bold');
      }
    };
    look(document);
    return found;
  });
}

describe('markup in every text of a file', () => {
  it('is shown as words in every view, and does nothing', async () => {
    const { page, said, elsewhere } = visit;
    const text = writeScenario(poisoned(demoScenario()), catalogues);
    expect(text.split('window.harmed').length).toBeGreaterThan(100);
    await drop(page, [`${EVIL.replaceAll('/', '')}.yaml`, text]);
    expect(await page.locator('[data-choose=card] option:checked').textContent()).toBe(EVIL);
    await page.locator('[data-choose=card]').selectOption('doors-early');
    await page.locator('[data-busy]').waitFor({ state: 'detached' });
    const ids = await page.getByRole('tab').evaluateAll((tabs) => tabs.map((tab) => tab.id));
    expect(ids.length).toBeGreaterThan(6);
    for (const id of ids) {
      // The circuit takes the chart's room, and its tabs with it, until the bay is back.
      await page.locator('#tab-bay').click();
      await page.locator(`#${id}`).click();
      expect(await strangers()).toEqual([]);
    }
    const benches = page.getByRole('group', { name: 'Workplace' }).getByRole('button');
    for (const bench of await benches.all()) {
      await bench.click();
      await page.waitForTimeout(300);
      expect(await strangers()).toEqual([]);
    }
    await benches.first().click();
    await page.getByRole('button', { name: 'Next flag' }).click();
    await page.getByRole('button', { name: 'Next event' }).click();
    await page.getByRole('button', { name: 'Large', exact: true }).click();
    expect(await strangers()).toEqual([]);
    await keep(page, 'hostile');
    await page.getByRole('button', { name: 'Large', exact: true }).click();
    expect(await page.evaluate(() => 'harmed' in window)).toBe(false);
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });

  it('is shown as words where a file is refused, too', async () => {
    const { page, said } = visit;
    const bad = TEXT.replace(/^components:\n/m, `components:\n  ${JSON.stringify(EVIL)}: {}\n`);
    await drop(page, ['refused.yaml', bad]);
    const box = page.locator('ww-issue-list section.over');
    expect(await box.textContent()).toContain('<script>');
    expect(await strangers()).toEqual([]);
    await box.getByRole('button', { name: 'Dismiss' }).click();
    expect(said).toEqual([]);
  });
});

describe('files made to harm', () => {
  const first = (lines: string): string => TEXT.replace(/^components:\n/m, `components:\n${lines}`);
  it.each([
    ['a key into all objects', first('  __proto__: { is: reservoir, harmed: 1 }\n')],
    ['a constructor', first('  constructor: { prototype: { harmed: 1 } }\n')],
    ['an older YAML', `%YAML 1.1\n---\n${TEXT}`],
    ['binary data', first('  tank: !!binary aGFybWVk\n')],
    ['a set', first('  tank: !!set { a, b }\n')],
    ['a date', first('  tank: !!timestamp 2001-12-14\n')],
    ['an ordered map', first('  tank: !!omap [a: 1]\n')],
    ['code', first('  tank: !!js/function "function () { harmed = 1 }"\n')],
    ['aliases without end', first('  tank: &a [*a, *a]\n')],
    ['very many lines', TEXT + '# x\n'.repeat(200_000)],
    ['very deep brackets', first(`  tank: ${'['.repeat(2000)}\n`)],
  ])('%s: refused with a place, and the run stays', async (name, text) => {
    const { page, said } = visit;
    const before = await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent);
    await drop(page, [`${name}.yaml`, text]);
    const box = page.locator('ww-issue-list section.over');
    expect(await box.textContent()).toContain(name);
    expect(await box.locator('li').count()).toBeGreaterThan(0);
    await box.getByRole('button', { name: 'Dismiss' }).click();
    expect(await page.locator('ww-times').evaluate((e) => e.shadowRoot?.textContent)).toBe(before);
    expect(await page.evaluate(() => 'harmed' in {} || 'harmed' in window)).toBe(false);
    expect(said).toEqual([]);
  });
});

describe('the policy of the page', () => {
  it('forbids evaluation, script and style in the markup, and every other address', async () => {
    const { page } = await site.visit();
    const tried = await page.evaluate(async () => {
      const refused: string[] = [];
      document.addEventListener('securitypolicyviolation', (e) =>
        refused.push(e.effectiveDirective.replace(/-(elem|attr)$/, '')),
      );
      // Later, since what a debugger itself runs may evaluate.
      const evaluated = await new Promise<unknown>((tell) =>
        setTimeout(() => {
          try {
            // eslint-disable-next-line @typescript-eslint/no-implied-eval -- tried so that it is refused
            tell(new Function('return 1')());
          } catch (error) {
            tell((error as Error).name);
          }
        }),
      );
      const script = document.createElement('script');
      script.textContent = 'window.harmed = 1';
      document.head.append(script);
      const style = document.createElement('style');
      style.textContent = 'body { display: none }';
      document.head.append(style);
      document.body.setAttribute('style', 'display: none');
      const fetched = await fetch('https://example.org/').then(
        () => 'came',
        () => 'refused',
      );
      await new Promise((done) => setTimeout(done, 100));
      return {
        evaluated,
        fetched,
        refused: [...new Set(refused)].sort(),
        harmed: 'harmed' in window,
        shown: getComputedStyle(document.body).display,
      };
    });
    expect(tried).toEqual({
      evaluated: 'EvalError',
      fetched: 'refused',
      refused: ['connect-src', 'script-src', 'style-src'],
      harmed: false,
      shown: 'block',
    });
    await page.close();
  });

  it('is not needed: the built scripts evaluate nothing and name no other address', () => {
    const scripts = readdirSync(PLACE, { recursive: true, encoding: 'utf8' }).filter((f) =>
      /\.(js|html|css)$/.test(f),
    );
    expect(scripts.length).toBeGreaterThan(3);
    for (const file of scripts) {
      const text = readFileSync(join(PLACE, file), 'utf8');
      expect(text).not.toMatch(/new Function\(|[^.\w]eval\(|document\.write|importScripts/);
      // Names of standards that happen to be addresses are asked for by nobody.
      const addresses = [...text.matchAll(/\b(?:https?|wss?):\/\/[^\s"'`<>\\)]+/g)].map(
        (m) => m[0],
      );
      const known = /^https?:\/\/(www\.w3\.org|json-schema\.org|github\.com|localhost|yaml\.org)/;
      expect(addresses.filter((a) => !known.test(a))).toEqual([]);
    }
  });
});
