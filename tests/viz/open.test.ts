import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogues, CAUTIONS } from '@wheelwell/core';
import type { Run } from '@wheelwell/core';
import { keep, scrubTo, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoRun, demoScenario, valueAt } from './demo.js';

let site: Site;
let visit: Visit;
let run: Run;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
  run = demoRun();
});
afterAll(() => site.close());

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part's box in the drawing's own millimetres. */
function partBox(mechanism: string, view: string, part: string): Promise<Box> {
  return visit.page
    .locator(`svg[data-view=${view}] [data-mechanism=${mechanism}] [data-part=${part}]`)
    .evaluate((path) => {
      const { x, y, width, height } = (path as SVGPathElement).getBBox();
      return { x, y, width, height };
    });
}

const tyreBox = (mechanism: string, view: string): Promise<Box> => partBox(mechanism, view, 'tyre');

describe('the page as it opens', () => {
  it('simulates the first card of the demo, says nothing on the console and asks nobody else', async () => {
    const { page, said, elsewhere } = visit;
    const scenario = demoScenario();
    const chosen = await page
      .locator('[data-choose=card]')
      .evaluate((s) => (s as HTMLSelectElement).selectedOptions[0]?.text);
    expect(chosen).toBe(Object.values(scenario.cards)[0]?.title);
    expect(await page.getByRole('tab', { name: /Events/ }).textContent()).toContain(
      String(run.log.filter((e) => e.from !== '' || e.t > 0).length),
    );
    await keep(page, 'open');
    expect(said).toEqual([]);
    expect(elsewhere).toEqual([]);
  });

  it('forbids inline and evaluated script', async () => {
    const policy = await visit.page
      .locator('meta[http-equiv=Content-Security-Policy]')
      .getAttribute('content');
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).not.toMatch(/unsafe/);
  });

  it('keeps the cautions in sight', async () => {
    const { page } = visit;
    await expect.poll(() => page.getByText(CAUTIONS[0].head).first().isVisible()).toBe(true);
    await page.getByText('All cautions').click();
    for (const { text } of CAUTIONS) {
      expect(await page.getByText(text).isVisible()).toBe(true);
    }
    await page.getByText('All cautions').click();
  });
});

describe('the bay', () => {
  // Outside reference: the box of a disc of radius R with unit axle a, seen along any axis, is
  // centred on the disc's centre and reaches R sqrt(1 - a_z^2) above and below it (ellipse as the
  // parallel projection of a circle, any text on descriptive geometry); half the tyre's width
  // adds at most w/2 |a_z|.
  it.each([0, 0.35, 0.65, 1])(
    'draws every tyre where the run has it, %f through the way up',
    async (share) => {
      const units = Object.values(run.scenario.units);
      for (const { leg } of units) {
        const travel = run.timings.find(
          (t) => t.direction === 'up' && run.scenario.units[t.unit].leg === leg,
        );
        if (travel === undefined) throw new Error(`${leg} was not timed`);
        const time =
          run.tick *
          Math.round((travel.moving + (travel.locked - travel.moving) * share) / run.tick);
        await scrubTo(visit.page, time);
        const entry = run.scenario.mechanisms[leg];
        const { tyre } = catalogues.mechanisms[entry.is]
          .outline(entry.parameters)
          .at(valueAt(run, `${leg}.angle`, time));
        if (tyre === undefined) throw new Error(`${leg} has no tyre`);
        const { centre, axle, radius, width } = tyre;
        for (const [view, across] of [
          ['front', -centre.y],
          ['side', centre.x],
        ] as const) {
          await expect.poll(async () => Math.abs((await tyreBox(leg, view)).y)).toBeGreaterThan(0);
          const box = await tyreBox(leg, view);
          expect(Math.abs(box.x + box.width / 2 - across * 1000)).toBeLessThan(3);
          expect(Math.abs(box.y + box.height / 2 + centre.z * 1000)).toBeLessThan(3);
          const disc = 2000 * radius * Math.sqrt(1 - axle.z ** 2);
          // The circle is drawn with 36 sides: its corners may miss the top by 1 - cos(5 deg).
          expect(box.height).toBeGreaterThan(0.99 * disc - 1);
          expect(box.height).toBeLessThan(disc + 1000 * width * Math.abs(axle.z) + 3);
        }
      }
      await keep(visit.page, `bay-${share}`);
    },
  );

  // The demo's left and right geometry is the same but for the sign of y.
  it('draws left and right as mirror images', async () => {
    for (const time of [0, run.timings[0].start + run.timings[0].moving / 2 + 2]) {
      await scrubTo(visit.page, time);
      for (const part of ['leg', 'doors'] as const) {
        const [left, right] = ['left', 'right'].map((side) => {
          const name = run.scenario.units[side][part];
          return typeof name === 'string' ? name : name[0];
        });
        const drawn = (name: string): Promise<Box> =>
          part === 'leg' ? tyreBox(name, 'front') : partBox(name, 'front', 'door');
        const [a, b] = [await drawn(left), await drawn(right)];
        const mirror = run.scenario.mechanisms;
        expect(mirror[left].is).toBe(mirror[right].is);
        // Their bearings differ a little, so their angles may by a degree or two on the way.
        expect(Math.abs(a.x + a.width / 2 + b.x + b.width / 2)).toBeLessThan(40);
        expect(Math.abs(a.y - b.y)).toBeLessThan(40);
        // Seen from ahead the left hand is on the right.
        expect(a.x).toBeGreaterThan(b.x + b.width);
      }
    }
  });

  it('lays the tyre flat above its closed door when up, with the leg shorter than down', async () => {
    const { leg, doors } = run.scenario.units.left;
    const shut = run.timings.find((t) => t.unit === 'left' && t.direction === 'up');
    if (shut === undefined) throw new Error('left was not timed');
    const long = async (): Promise<number> =>
      visit.page
        .locator(`svg[data-view=side] [data-mechanism=${leg}] .slider`)
        .evaluate((path) => (path as SVGPathElement).getTotalLength());
    await scrubTo(visit.page, 0);
    await expect.poll(long).toBeGreaterThan(0);
    const down = await long();
    const standing = await tyreBox(leg, 'front');
    await scrubTo(visit.page, shut.start + shut.total + 0.1);
    await expect.poll(async () => (await tyreBox(leg, 'front')).height).not.toBe(standing.height);
    const tyre = await tyreBox(leg, 'front');
    const door = await partBox(doors[0], 'front', 'door');
    expect(standing.height).toBeGreaterThan(standing.width);
    expect(tyre.width).toBeGreaterThan(2 * tyre.height);
    expect(tyre.y + tyre.height).toBeLessThan(door.y + door.height);
    expect(await long()).toBeLessThan(down - 50);
  });

  it('says each unit in words', async () => {
    const end = run.timings
      .filter((t) => t.direction === 'up')
      .reduce((latest, t) => Math.max(latest, t.start + t.total), 0);
    await scrubTo(visit.page, end + 0.1);
    for (const name of Object.keys(run.scenario.units)) {
      const row = visit.page.locator(`ww-bay tr[data-unit=${name}]`);
      const phase = run.log
        .filter((e) => e.device === name && e.kind === 'phase' && e.t <= end + 0.1)
        .at(-1)?.to;
      await expect.poll(() => row.locator('td').first().textContent()).toBe(phase);
    }
  });

  it('can be seen from behind, left on the left', async () => {
    await visit.page.getByRole('button', { name: 'Look from behind' }).click();
    const left = await tyreBox(run.scenario.units.left.leg, 'front');
    const right = await tyreBox(run.scenario.units.right.leg, 'front');
    expect(left.x).toBeLessThan(right.x);
    await visit.page.getByRole('button', { name: 'Look from ahead' }).click();
  });
});
