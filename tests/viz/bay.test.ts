/** The bay's drawings against the run: places, lengths, clearances and signs, in numbers of the aircraft. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { catalogues, clearancesOf, readScenario, simulate } from '@wheelwell/core';
import type { Placement, Run } from '@wheelwell/core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { scrubTo, settled, Site } from './browser.js';
import type { Visit } from './browser.js';
import { demoScenario, valueAt } from './demo.js';
import { drawn, PAPER, VIEWS } from './drawn.js';

let site: Site;
let visit: Visit;

beforeAll(async () => {
  site = await Site.open();
  visit = await site.visit();
});
afterAll(() => site.close());

function placement(run: Run, mechanism: string, time: number): Placement {
  const { is, parameters } = run.scenario.mechanisms[mechanism];
  return catalogues.mechanisms[is].outline(parameters).at(valueAt(run, `${mechanism}.angle`, time));
}

async function card(page: Page, name: string): Promise<Run> {
  await page.locator('[data-choose=card]').selectOption(name);
  await settled(page);
  return simulate(demoScenario(), { card: name });
}

/** The play head at a tick, and the drawings with it. */
async function at(page: Page, run: Run, time: number): Promise<number> {
  const t = Math.round(time / run.tick) * run.tick;
  await scrubTo(page, t);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => done(undefined))));
  return t;
}

const distance = ([a, b]: readonly number[], [c, d]: readonly number[]): number =>
  Math.hypot(c - a, d - b);

describe('places', () => {
  it.each([0.5, 2.4, 4.1, 6.3, 9, 13.7, 16])(
    'draws the tyres within a pixel of where the run has them, in all three views, at %f s',
    async (time) => {
      const run = await card(visit.page, 'healthy');
      const t = await at(visit.page, run, time);
      for (const { leg } of Object.values(run.scenario.units)) {
        const { tyre } = placement(run, leg, t);
        if (tyre === undefined) throw new Error(`${leg} has no tyre`);
        for (const view of VIEWS) {
          const { box, mm } = await drawn(visit.page, view, `[data-mechanism=${leg}] .tyre`);
          const centre = [box.x + box.width / 2, box.y + box.height / 2];
          expect(distance(centre, PAPER[view](tyre.centre))).toBeLessThan(mm);
        }
      }
    },
  );

  // Outside reference: a disc of radius R - w/2 with a round shoulder of w/2 reaches, along a
  // direction at angle b to its axle, (R - w/2) sin b + w/2 (support function of a Minkowski sum).
  it('draws the tyre as the body that clearances are measured from', async () => {
    const run = await card(visit.page, 'healthy');
    const t = await at(visit.page, run, 5);
    const { tyre } = placement(run, 'left-leg', t);
    if (tyre === undefined) throw new Error('no tyre');
    const { axle, radius, width } = tyre;
    const reach = (a: number): number =>
      2000 * ((radius - width / 2) * Math.sqrt(1 - a * a) + width / 2);
    for (const [view, u, v] of [
      ['front', axle.y, axle.z],
      ['side', axle.x, axle.z],
      ['plan', axle.x, axle.y],
    ] as const) {
      const { box, mm } = await drawn(visit.page, view, '[data-mechanism=left-leg] .tyre');
      expect(Math.abs(box.width - reach(u))).toBeLessThan(mm);
      expect(Math.abs(box.height - reach(v))).toBeLessThan(mm);
    }
  });

  it('draws the doors and the linked member of the tail where their own outline has them', async () => {
    const run = await card(visit.page, 'healthy');
    for (const time of [0, 4.6]) {
      const t = await at(visit.page, run, time);
      for (const name of ['left-door', 'tail-left-door', 'tail-right-door', 'tail-fairing']) {
        const { line, edge = [] } = placement(run, name, t);
        for (const view of VIEWS) {
          const { points, mm } = await drawn(
            visit.page,
            view,
            `[data-mechanism=${name}] [data-part=door]`,
          );
          [...line, ...[...edge].reverse()].forEach((p, i) =>
            expect(distance(points[i], PAPER[view](p))).toBeLessThan(mm),
          );
        }
      }
    }
  });

  it('joins what the tail leg moves: its linkages from the leg, the chain from door to door', async () => {
    await card(visit.page, 'healthy');
    for (const [to, kind] of [
      ['tail-left-door', 'linkage'],
      ['tail-fairing', 'linkage'],
      ['tail-right-door', 'chain'],
    ])
      expect((await drawn(visit.page, 'front', `[data-drive=${to}]`)).classes).toContain(kind);
  });
});

describe('strut length', () => {
  it('is drawn as long as the run has it, and said', async () => {
    const run = await card(visit.page, 'healthy');
    const lengths: number[] = [];
    for (const time of [0.5, 4, 9]) {
      const t = await at(visit.page, run, time);
      const [pivot, foot] = placement(run, 'left-leg', t).line;
      const length = 1000 * Math.hypot(foot.x - pivot.x, foot.y - pivot.y, foot.z - pivot.z);
      const { points, mm } = await drawn(
        visit.page,
        'side',
        '[data-measure="strut left-leg"] .line',
      );
      expect(Math.abs(distance(points[0], points[1]) - length)).toBeLessThan(0.5 * mm);
      const said = await visit.page
        .locator('ww-bay svg[data-view=side] [data-measure="strut left-leg"] text')
        .textContent();
      expect(parseFloat(said ?? '')).toBeCloseTo(length / 25.4, 1);
      lengths.push(length);
    }
    // The link of the demo shortens the strut by 140 mm on the way up.
    expect(lengths[0] - lengths[2]).toBeGreaterThan(130);
  });

  it('seen from ahead stands on the side away from the middle', async () => {
    await at(visit.page, await card(visit.page, 'healthy'), 0);
    const middle = async (part: string): Promise<number> => {
      const { box } = await drawn(visit.page, 'front', part);
      return box.x + box.width / 2;
    };
    const measureOf = (leg: string) => middle(`[data-measure="strut ${leg}"] .line`);
    const tyreOf = (leg: string) => middle(`[data-mechanism=${leg}] .tyre`);
    const [left, right] = [await tyreOf('left-leg'), await tyreOf('right-leg')];
    expect(right).toBeLessThan(left);
    expect(await measureOf('left-leg')).toBeGreaterThan(left);
    expect(await measureOf('right-leg')).toBeLessThan(right);
  });

  it('with its link broken the tyre bears on the ramp, no farther out than its face', async () => {
    const run = await card(visit.page, 'blow-down-ramp-jams');
    await at(visit.page, run, 5);
    const ramp = await drawn(visit.page, 'side', '[data-ramp=left-leg] .ramp');
    expect(ramp.classes).toContain('bears');
    const { box, mm } = await drawn(visit.page, 'side', '[data-mechanism=left-leg] .tyre');
    // The tyre lies level: its rearmost point meets the face, the first half of the ramp's outline.
    const touch = Math.min(...ramp.points.map(([u]) => u));
    expect(Math.abs(box.x + box.width - touch)).toBeLessThan(2 * mm);
    await card(visit.page, 'healthy');
    expect((await drawn(visit.page, 'side', '[data-ramp=left-leg] .ramp')).classes).not.toContain(
      'bears',
    );
  });
});

describe('clearance', () => {
  it('is drawn between the two bodies, as long as it is, with a sign below the limit', async () => {
    const run = await card(visit.page, 'doors-early');
    // Nearest of the left tyre and the left door while both move, by core's own sweep.
    const pair = clearancesOf(run, 0.15).find(
      (c) => c.between[0] === 'left-leg' && c.between[1] === 'left-door',
    );
    if (pair === undefined) throw new Error('no such pair');
    // Well below: the page stands at the tick beside it.
    const short = pair.gaps.findIndex((g) => g !== undefined && g.distance < 0.8 * pair.asked);
    const clear = pair.gaps.findIndex((g) => g !== undefined && g.distance > 2 * pair.asked);
    for (const [i, warned] of [
      [clear, false],
      [short, true],
    ] as const) {
      const t = await at(visit.page, run, pair.times[i]);
      const { points, mm, classes } = await drawn(
        visit.page,
        'front',
        '[data-measure="gap left"] .line',
      );
      const [a, b] = points;
      expect(classes).toBe('line');
      // Between two ticks the parts move by some millimetres.
      const { distance: near } = pair.gaps[i]!;
      expect(Math.abs(distance(a, b) - 1000 * Math.abs(near))).toBeLessThan(mm);
      const door = placement(run, 'left-door', t);
      const { tyre } = placement(run, 'left-leg', t);
      if (tyre === undefined) throw new Error('no tyre');
      expect(offPanel(b, door)).toBeLessThan(mm);
      expect(offTyre(a, tyre)).toBeLessThan(mm);
      const group = await drawn(visit.page, 'front', '[data-measure="gap left"]');
      expect(group.classes.includes('short')).toBe(warned);
      const warning = visit.page.locator(
        'ww-bay svg[data-view=front] [data-measure="gap left"] .warning',
      );
      expect((await warning.getAttribute('d')) !== '').toBe(warned);
    }
  });

  it('says the least of the run, and goes there', async () => {
    const run = await card(visit.page, 'doors-early');
    const flag = run.flags.find(
      (f) => f.rule === 'clearance' && f.devices.includes('left-door') && f.margin < 0,
    );
    if (flag === undefined) throw new Error('the card raises no clearance');
    const limit = run.scenario.limits.clearance ?? 0;
    const button = visit.page.getByRole('button', { name: /^Least/ });
    const said = (await button.textContent()) ?? '';
    const [, inches] = /Least\s+(\S+)/.exec(said.replace('\u2212', '-')) ?? [];
    expect(Number(inches)).toBeCloseTo((flag.margin + limit) / 0.0254, 1);
    await button.click();
    await expect
      .poll(() => visit.page.locator('ww-bay .foot p').textContent())
      .toMatch(/left leg tyre to left door/);
  });
});

/** Distance of a point of the paper from a panel seen from ahead, mm. */
function offPanel([u, v]: readonly number[], { line, edge = [] }: Placement): number {
  const [a, b] = [PAPER.front(line[0]), PAPER.front(edge[0])];
  const length = distance(a, b);
  const along = ((u - a[0]) * (b[0] - a[0]) + (v - a[1]) * (b[1] - a[1])) / length ** 2;
  const f = Math.min(Math.max(along, 0), 1);
  return distance([u, v], [a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])]);
}

/** The same from the outline of a tyre: of a disc's ellipse at the tyre's shoulder. */
function offTyre([u, v]: readonly number[], tyre: NonNullable<Placement['tyre']>): number {
  const { axle, centre, radius, width } = tyre;
  const [cu, cv] = PAPER.front(centre);
  const disc = 1000 * (radius - width / 2);
  const [au, av] = [-axle.y, -axle.z];
  let least = Infinity;
  for (let i = 0; i < 3600; i++) {
    const [nu, nv] = [Math.cos((i * Math.PI) / 1800), Math.sin((i * Math.PI) / 1800)];
    const share = nu * au + nv * av;
    const reach = disc / Math.sqrt(1 - share * share);
    const p = [cu + reach * (nu - share * au), cv + reach * (nv - share * av)];
    least = Math.min(least, Math.abs(distance(p, [u, v]) - 500 * width));
  }
  return least;
}

describe('signs', () => {
  const EPSILON = 0.006;

  it('locks change at the time of the log', async () => {
    const run = await card(visit.page, 'healthy');
    for (const [unit, which] of [
      ['left', 'uplock'],
      ['left', 'downlock'],
      ['tail', 'uplock'],
    ] as const) {
      const lock = run.scenario.units[unit][which] ?? '';
      const changes = run.log.filter(
        (e) => e.device === lock && e.kind === 'mode' && e.t > 0 && e.to !== e.from,
      );
      const change = changes.find((e) => e.to === 'engaged' || e.from === 'engaged');
      if (change === undefined) throw new Error(`${lock} never changes`);
      const sign = `[data-locks=${unit}] [data-which=${which}] .sign-at`;
      for (const [t, holds] of [
        [change.t - EPSILON, change.from === 'engaged'],
        [change.t + EPSILON, change.to === 'engaged'],
      ] as const) {
        await scrubTo(visit.page, t);
        await expect
          .poll(async () => (await drawn(visit.page, 'front', sign)).classes)
          .toBe(`sign-at ${holds ? 'engaged' : 'open'}`);
      }
    }
  });

  it('plungers are touched where the striker meets them, and trip at the time of the log', async () => {
    const run = await card(visit.page, 'healthy');
    const valve = 'left-door-close-valve';
    const { parameters, links } = run.scenario.components[valve];
    const trips = run.log.filter((e) => e.device === valve && e.kind === 'mode');
    const trip = trips.find((e) => e.from === 'closed');
    if (trip === undefined) throw new Error(`${valve} never trips`);
    // The demo's striker moves 100 mm for each radian of the leg.
    expect(links.plunger.to).toBe('left-leg');
    const touch = Number(parameters.trip) / 0.1;
    const angle = run.sampled('left-leg.angle');
    if (angle === undefined) throw new Error('no angle');
    const touched = angle.t[angle.v.findIndex((v) => v > touch)];
    expect(touched).toBeLessThan(trip.t);
    const state = async (): Promise<string> =>
      (await drawn(visit.page, 'side', `[data-plunger=${valve}] .body`)).classes;
    for (const [t, word] of [
      [touched - 3 * EPSILON, 'free'],
      [(touched + trip.t) / 2, 'pushed'],
      [trip.t + EPSILON, trip.to],
    ] as const) {
      await scrubTo(visit.page, t);
      await expect.poll(state).toBe(`body ${word}`);
    }
  });

  it('a flagged valve is marked while its flag lasts, and not before', async () => {
    const run = await card(visit.page, 'doors-early');
    const flag = run.flags.find((f) => f.rule === 'sequence-valve-early' && f.margin < 0);
    if (flag === undefined) throw new Error('the card raises no early valve');
    const [valve] = flag.devices;
    const ring = async (): Promise<string> =>
      (await drawn(visit.page, 'side', `[data-plunger=${valve}] .ring`)).classes;
    await scrubTo(visit.page, flag.from - 0.05);
    await expect.poll(ring).toBe('ring none');
    await scrubTo(visit.page, flag.from + 0.01);
    await expect.poll(ring).toBe(`ring flagged-${flag.severity}`);
  });

  it('door hooks have theirs, and braces stand between structure and leg', async () => {
    const path = 'tarnswift/tarnswift.yaml';
    const text = readFileSync(
      fileURLToPath(new URL(`../../scenarios/${path}`, import.meta.url)),
      'utf8',
    );
    const { scenario } = readScenario(text, { file: path });
    if (scenario === undefined) throw new Error('does not read');
    const run = simulate(scenario);
    await visit.page.locator('[data-choose=aircraft]').selectOption(path);
    await settled(visit.page);
    const hook = 'left-door-hook';
    const opens = run.log.find((e) => e.device === hook && e.from === 'engaged');
    if (opens === undefined) throw new Error('the hook never lets go');
    const sign = `[data-hook] [data-lock=${hook}] .sign-at`;
    for (const [t, word] of [
      [opens.t - EPSILON, 'engaged'],
      [opens.t + EPSILON, 'open'],
    ] as const) {
      await scrubTo(visit.page, t);
      await expect
        .poll(async () => (await drawn(visit.page, 'front', sign)).classes)
        .toBe(`sign-at ${word}`);
    }
    const { upper, lower, structure, onLeg } = run.scenario.components['nose-brace'].parameters;
    for (const time of [0, 7, 11]) {
      const t = await at(visit.page, run, time);
      const [pivot, foot] = placement(run, 'nose-leg', t).line.map(PAPER.side);
      const { points, mm } = await drawn(visit.page, 'side', '[data-brace=nose-brace] .brace');
      const [end, knee, low] = points;
      for (const [a, b, length] of [
        [end, knee, upper],
        [knee, low, lower],
        [end, pivot, structure],
        [low, pivot, onLeg],
      ] as const)
        expect(Math.abs(distance(a, b) - 1000 * Number(length))).toBeLessThan(mm);
      // Its lower end is on the leg.
      const off = distance(pivot, low) + distance(low, foot) - distance(pivot, foot);
      expect(off).toBeLessThan(mm);
    }
  });
});
