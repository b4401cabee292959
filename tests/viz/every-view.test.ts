/** What holds for every view of view/index.ts, whoever adds one: it is looked at on arrival. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keep, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { cutOff, violations } from './faultless.js';

const INDEX = readFileSync(
  fileURLToPath(new URL('../../packages/viz/src/view/index.ts', import.meta.url)),
  'utf8',
);

interface Entry {
  readonly name: string;
  readonly title: string;
  readonly area: string;
  /** The bench it belongs to. */
  readonly on: string;
  /** Tag of its element. */
  readonly tag: string;
}

const ENTRIES: readonly Entry[] = [
  ...INDEX.matchAll(/\{\s+name: '([\w-]+)',\s+title: '([^']+)',\s+area: '(\w+)',([^]*?)\n {2}\},/g),
].map(([, name = '', title = '', area = '', rest = '']) => ({
  name,
  title,
  area,
  on: /\bon: '([\w-]+)'/.exec(rest)?.[1] ?? '',
  tag: /<(ww-[\w-]+)/.exec(rest)?.[1] ?? '',
}));

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

async function show(page: Page, entry: Entry): Promise<void> {
  const bench = entry.area === 'bench' ? entry.name : entry.on;
  const title = ENTRIES.find((e) => e.name === bench)?.title ?? 'Swing';
  await page
    .getByRole('group', { name: 'Workplace' })
    .getByRole('button', { name: title, exact: true })
    .click();
  // A drawing may take the room of the chart.
  if (entry.area !== 'stage') await page.locator('#tab-bay').click();
  const tab = page.locator(`#tab-${entry.name}`);
  if ((await tab.count()) > 0) await tab.click();
  await page.locator(entry.tag).first().waitFor();
  await settled(page);
}

it('finds all of them', () => {
  expect(ENTRIES.length).toBe(INDEX.split(/\n {4}name: '/).length - 1);
  expect(ENTRIES.length).toBeGreaterThan(10);
  expect(ENTRIES.filter((e) => e.tag === '')).toEqual([]);
});

describe.each(ENTRIES.map((e) => [e.name, e] as const))('%s', (name, entry) => {
  it.each([
    [1280, 800, 'light'],
    [820, 1180, 'dark'],
    [390, 844, 'light'],
  ] as const)('has nothing against it at %i x %i, %s', async (width, height, colorScheme) => {
    const { page, said, elsewhere } = visit;
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme });
    await show(page, entry);
    expect(await page.locator(entry.tag).first().isVisible()).toBe(true);
    await keep(page, `view-${name}-${width}-${colorScheme}`);
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });

  it('is reached by keys, and shows where the focus is', async () => {
    const { page } = visit;
    await page.setViewportSize({ width: 1280, height: 800 });
    await show(page, entry);
    const wanted = await page
      .locator(entry.tag)
      .first()
      .evaluate((view) => {
        const inside = (root: ParentNode): boolean =>
          [...root.querySelectorAll('*')].some(
            (e) =>
              (e instanceof HTMLElement || e instanceof SVGElement) &&
              ((e.tabIndex >= 0 &&
                !e.matches('dialog, dialog *, :disabled') &&
                e.checkVisibility()) ||
                (e.shadowRoot !== null && inside(e.shadowRoot))),
          );
        return inside(view.shadowRoot ?? view);
      });
    await page.locator('ww-app h1').click();
    let reached = false;
    const unseen = new Set<string>();
    for (let i = 0; i < 160 && !(reached && i > 40); i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate((tag) => {
        let e = document.activeElement;
        let within = false;
        while (e?.shadowRoot?.activeElement != null) {
          within ||= e.localName === tag;
          e = e.shadowRoot.activeElement;
        }
        if (e === null || e === document.body) return undefined;
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(e);
        const around = e.closest('label, summary, [data-focus]') ?? e;
        const other = getComputedStyle(around).outlineStyle;
        const seen =
          (outlineStyle !== 'none' && outlineWidth !== '0px') ||
          boxShadow !== 'none' ||
          other !== 'none';
        return { within, seen, what: `${e.localName}.${e.getAttribute('class') ?? ''}` };
      }, entry.tag);
      if (at === undefined) continue;
      reached ||= at.within;
      if (!at.seen) unseen.add(at.what);
      if (reached && at.within === false && i > 40) break;
    }
    expect(reached || !wanted).toBe(true);
    expect([...unseen]).toEqual([]);
  });
});

describe('with motion to be reduced', () => {
  it('nothing moves by itself, and the clock goes in coarse steps', async () => {
    const { page, said } = await site.visit({ reducedMotion: 'reduce' });
    for (const entry of ENTRIES) {
      await show(page, entry);
      const moving = await page.evaluate(() =>
        document
          .getAnimations()
          .filter((a) => Number(a.effect?.getComputedTiming().duration) > 0)
          .map((a) => (a as CSSAnimation).animationName),
      );
      expect(moving).toEqual([]);
    }
    expect(said).toEqual([]);
    await page.close();
  });
});
