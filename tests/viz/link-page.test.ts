/** Links in a browser: copied, opened anew or on an open page, broken, hostile. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { clock, drop, keep, scrubTo, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { TEXT } from './demo.js';
import { cutOff, violations } from './faultless.js';
import { pack } from '../../packages/viz/src/model/pack.js';

let site: Site;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
  ({ page } = visit);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
});
afterAll(() => site.close());

/** As a new visitor: nothing of the former page is left. */
async function arrive(hash: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(site.address + hash);
  await page.locator('ww-bay table').waitFor();
  await settled(page);
}

async function copied(): Promise<string> {
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText('The link is copied.').waitFor();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  await page.keyboard.press('Escape');
  return text;
}

const chosen = (which: string): Promise<string> =>
  page.locator(`[data-choose=${which}]`).evaluate((e) => (e as HTMLSelectElement).value);
const failure = (): Promise<string> =>
  page.getByRole('region', { name: 'What went wrong' }).innerText();

beforeEach(() => arrive(''));

describe('a copied link', () => {
  it('brings back card, time, loop, marks, units and what is picked out, with the address for a reload', async () => {
    await page.locator('[data-choose=card]').selectOption('slow-left-leg');
    await settled(page);
    await page.getByRole('button', { name: 'Metric' }).click();
    await page.locator('body').press('b');
    await page.getByLabel('Speed').selectOption('0.5');
    await scrubTo(page, 4);
    await page.getByRole('button', { name: 'Next event' }).click();
    await page.locator('body').press('m');
    await page.getByRole('button', { name: 'Next event' }).click();
    await page.locator('body').press('b');
    await page.locator('body').press('m');
    const [time, read] = [
      await clock(page),
      await page.locator('ww-order-chart output').innerText(),
    ];
    const loop = await page.locator('ww-transport .band').getAttribute('aria-label');
    const link = await copied();
    expect(link).toBe(page.url());
    expect(link.slice(link.indexOf('#'))).toMatch(/^#aircraft=hedgelark&card=slow-left-leg&/);
    await arrive('');
    expect(await chosen('card')).not.toBe('slow-left-leg');
    await arrive(link.slice(link.indexOf('#')));
    expect(await chosen('card')).toBe('slow-left-leg');
    expect(await clock(page)).toBe(time);
    expect(await page.locator('ww-order-chart output').innerText()).toBe(read);
    expect(await page.locator('ww-transport .band').getAttribute('aria-label')).toBe(loop);
    expect(await page.locator('ww-order-chart .event.chosen').count()).toBeGreaterThan(0);
    const pressed = page.getByRole('button', { name: 'Metric' });
    expect(await pressed.getAttribute('aria-pressed')).toBe('true');
    expect(await page.getByLabel('Speed').inputValue()).toBe('0.5');
    await pressed.press('u');
  });

  it('brings back the traces on show; those that the one who opens it has chosen stay kept', async () => {
    const choose = (names: readonly string[]): Promise<void> =>
      page.evaluate((channels) => {
        const app = document.querySelector('ww-app') as unknown as {
          works: { traces: { choose(names: readonly string[]): void } };
        };
        app.works.traces.choose(channels);
      }, names);
    const kept = (): Promise<string> =>
      page.evaluate(() => JSON.stringify(Object.entries(localStorage)));
    await choose(['left-leg.angle', 'tail-leg.angle']);
    const link = await copied();
    expect(link).toContain('traces=left-leg.angle,tail-leg.angle');
    await choose(['right-leg.angle']);
    const before = await kept();
    await arrive(`${link.slice(link.indexOf('#'))}&show=traces`);
    await page.locator('ww-traces').waitFor();
    const values = await page.locator('ww-traces').evaluate((e) => e.shadowRoot?.textContent ?? '');
    expect(values).toContain('Choose 2');
    expect(await kept()).toBe(before);
  });

  it('opens on a page that is open already, by its address line', async () => {
    await page.goto(`${site.address}#aircraft=hedgelark&card=doors-early&t=3.5`);
    await settled(page);
    expect(await chosen('card')).toBe('doors-early');
    expect(await clock(page)).toBe(3.5);
    await page.goto(`${site.address}#aircraft=hedgelark&card=healthy&bench=blow-down`);
    await settled(page);
    expect(await chosen('card')).toBe('healthy');
    expect(
      await page
        .getByRole('button', { name: 'Blow-down', exact: true })
        .getAttribute('aria-pressed'),
    ).toBe('true');
  });

  it('has faults with their severity, and the card without its own', async () => {
    await arrive(
      '#aircraft=hedgelark&card=healthy&fault=restrictor-blocked,left-leg-restrictor,0.6',
    );
    const faults = (): Promise<string> => page.getByRole('tab', { name: /Faults/ }).innerText();
    expect(await faults()).toMatch(/1$/);
    expect(await copied()).toContain('&fault=restrictor-blocked,left-leg-restrictor,0.6');
    await arrive('#aircraft=hedgelark&card=slow-left-leg&fault=none');
    expect(await faults()).toMatch(/0$/);
    expect(await copied()).toContain('&fault=none');
  });

  it('carries a file of the user, and says that it has become long', async () => {
    const own = TEXT.replace(/^title: .*$/m, 'title: Mine & <b>bold</b>, 100 %');
    await drop(page, ['my gear & more.yaml', own]);
    const link = await copied();
    expect(link).toContain('#file=my+gear+%26+more.yaml&');
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.getByText('some mail and chat programs cut so long a link').waitFor();
    await keep(page, 'link-long');
    await arrive(link.slice(link.indexOf('#')));
    expect(await chosen('aircraft')).toBe('my gear & more.yaml');
    // The same text again makes the same link.
    expect(await copied()).toBe(link);
  });

  it('is not made when it would be too long to be passed on', async () => {
    // Letters without order cannot be packed.
    let seed = 1;
    const noise = Array.from({ length: 60_000 }, () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return String.fromCharCode(97 + (seed % 26));
    }).join('');
    await drop(page, ['long.yaml', `${noise.replace(/.{100}/g, '# $&\n')}${TEXT}`]);
    const before = page.url();
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.getByText('No link was made.').waitFor();
    expect(page.url()).toBe(before);
  });

  it.each([
    [1280, 800],
    [820, 1180],
    [390, 844],
  ])('is told of without fault at %i x %i', async (width, height) => {
    await page.setViewportSize({ width, height });
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await cutOff(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
    await keep(page, `link-${width}`);
    await page.setViewportSize({ width: 1280, height: 800 });
  });
});

describe('a broken link', () => {
  it.each([
    ['#aircraft=nowhere', 'nowhere'],
    ['#aircraft=hedgelark&t=soon', 'soon'],
    ['#nonsense', 'nonsense'],
    ['#aircraft=hedgelark&card=no-such-card', 'no such card'],
    ['#aircraft=hedgelark&fault=no-such-fault,left-leg-restrictor,0.5', 'no-such-fault'],
    ['#file=mine.yaml&text=AAAA', 'cut short'],
    ['#aircraft=hedgelark&bench=no-such-bench', 'no-such-bench'],
  ])('%s says so in one message, and the page opens as usual', async (hash, telling) => {
    await arrive(hash);
    expect(await failure()).toContain('The link is broken');
    expect(await failure()).toContain(telling);
    expect(await page.getByRole('region', { name: /^Problems in/ }).count()).toBe(0);
    expect(await chosen('aircraft')).toBe('hedgelark/hedgelark.yaml');
    expect(await page.locator('ww-order-chart .event').count()).toBeGreaterThan(10);
  });

  it('whose scenario does not read says of what file', async () => {
    await arrive(`#file=mine.yaml&text=${await pack('no scenario at all')}`);
    expect(await failure()).toContain('mine.yaml');
    expect(await chosen('aircraft')).toBe('hedgelark/hedgelark.yaml');
  });

  it('cannot put anything into the page', async () => {
    const evil = encodeURIComponent(
      `<img src=x onerror="window.hacked=1"><script>window.hacked=1</script>`,
    );
    for (const hash of [
      `#aircraft=${evil}`,
      `#${evil}=1`,
      `#aircraft=hedgelark&card=${evil}`,
      `#aircraft=hedgelark&fault=${evil},${evil},1`,
      `#aircraft=hedgelark&set=${evil},${evil}`,
      `#aircraft=hedgelark&measured=${evil},${evil},selector+up,1,1&mark=event,${evil},${evil},0`,
      `#aircraft=hedgelark&picked=part,${evil}&show=${evil}`,
      '#aircraft=__proto__&card=constructor',
      '#aircraft=hedgelark&fault=__proto__,constructor,1',
      'javascript:window.hacked=1',
    ]) {
      await arrive(hash.startsWith('#') ? hash : `#${hash}`);
      expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
      const strange = await page.evaluate(() => {
        const count = (root: ParentNode): number =>
          [...root.querySelectorAll('*')].reduce(
            (n, e) =>
              n +
              (e.matches('img, script:not([src])') ? 1 : 0) +
              (e.shadowRoot ? count(e.shadowRoot) : 0),
            0,
          );
        return count(document);
      });
      expect(strange, hash).toBe(0);
    }
    expect(visit.said).toEqual([]);
    expect(visit.elsewhere).toEqual([]);
  });
});
