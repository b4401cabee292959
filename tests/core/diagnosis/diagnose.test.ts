/**
 * Diagnosis of sheets that were made by simulation with a fault put in: the cause must come back.
 * Invented data, for regression only; that the causes are right for the published symptoms is tested
 * in tests/outside.
 */
import { describe, expect, it } from 'vitest';
import type { Diagnosis } from '../../../packages/core/src/analysis/index.js';
import type { FaultEntry } from '../../../packages/core/src/define/index.js';
import {
  catalogues,
  checks,
  diagnose,
  simulate,
  toDiagnosisText,
} from '../../../packages/core/src/index.js';
import {
  expectedSwings,
  type ObservationSheet,
} from '../../../packages/core/src/observation/index.js';
import { oneLeg } from '../../support/one-leg.js';

// Small, so that some hundred swings of it take a second or two.
const scenario = oneLeg();
const [CARD] = Object.keys(scenario.cards);
const [LEG] = Object.keys(scenario.mechanisms);
const memory = new Map<string, Readonly<Record<string, number>>>();

/** The report as the command line prints it. */
const wordsOf = (sheet: ObservationSheet, d: Diagnosis): string =>
  toDiagnosisText({ title: scenario.title, faults: catalogues.faults, checks }, sheet, d, 'us');

/** What a stopwatch would have read to a tenth, with a fault. */
function sheetWith(
  faults: readonly FaultEntry[],
  own: Partial<ObservationSheet> = {},
  aircraft = scenario,
): ObservationSheet {
  const run = simulate(aircraft, { card: CARD, faults });
  const swings = expectedSwings(run).map(({ direction, times }) => ({
    direction,
    conditions: {},
    times: Object.fromEntries(
      Object.entries(times).map(([unit, t]) => [
        unit,
        Object.fromEntries(
          Object.entries(t).map(([event, at]) => [
            event,
            { at: Math.round(10 * at) / 10, error: 0.2 },
          ]),
        ),
      ]),
    ),
    order: [],
    gauges: {},
    remarks: {},
    recordings: [],
    note: '',
  }));
  return {
    aircraft: scenario.title,
    scenario: '',
    card: CARD,
    date: '',
    by: '',
    readingError: 0.2,
    conditions: {},
    swings,
    note: '',
    ...own,
  };
}
const first = (d: Diagnosis): string[] =>
  d.groups[0].members.map(
    (m) => m.causes.map((c) => `${c.fault} on ${c.on}`).join('+') || 'healthy',
  );

describe('a diagnosis', () => {
  it('calls a healthy swing healthy, and what does nothing cannot be told from it', async () => {
    const d = await diagnose(scenario, sheetWith([]), { memory });
    expect(first(d)[0]).toBe('healthy');
    expect(d.groups[0].probability).toBeGreaterThan(0.95);
    const all = d.groups.reduce((sum, g) => sum + g.probability, 0) + d.unknown;
    expect(all).toBeGreaterThan(0.98);
    expect(all).toBeLessThanOrEqual(1 + 1e-9);
  });

  it('finds a dry bearing again, its severity within its interval, and plays nothing twice', async () => {
    const fault = { fault: 'dry-bearing', on: LEG, severity: 0.7 };
    const sheet = sheetWith([fault]);
    const d = await diagnose(scenario, sheet, { memory });
    expect(first(d)).toContain(`dry-bearing on ${LEG}`);
    const found = d.groups[0].members.find((m) => m.causes[0]?.fault === 'dry-bearing');
    expect(found?.severities[0].range[0]).toBeLessThanOrEqual(0.7);
    expect(found?.severities[0].range[1]).toBeGreaterThanOrEqual(0.7);
    expect((await diagnose(scenario, sheet, { memory })).runs).toBe(0);
    // The text names it, what to do next, and who decides.
    const text = wordsOf(sheet, d);
    expect(text).toContain(catalogues.faults['dry-bearing'].title);
    expect(text).toContain('approved data');
  });

  it('is moved by what a look has shown', async () => {
    const fault = { fault: 'dry-bearing', on: LEG, severity: 0.7 };
    const look = { check: 'swung-by-hand', on: LEG };
    const probability = (d: Diagnosis): number =>
      d.groups
        .flatMap((g) => g.members)
        .find(
          (m) =>
            m.causes.length === 1 && m.causes[0].fault === 'dry-bearing' && m.causes[0].on === LEG,
        )?.probability ?? 0;
    const before = probability(await diagnose(scenario, sheetWith([fault]), { memory }));
    const found = sheetWith([fault], { looks: [{ ...look, found: true }] });
    const missed = sheetWith([fault], { looks: [{ ...look, found: false }] });
    expect(probability(await diagnose(scenario, found, { memory }))).toBeGreaterThan(before);
    expect(probability(await diagnose(scenario, missed, { memory }))).toBeLessThan(before);
  });

  it('says so when no known cause fits', async () => {
    const sheet = sheetWith([]);
    const odd = sheet.swings.map((s) => ({
      ...s,
      times: Object.fromEntries(
        Object.entries(s.times).map(([unit, t], i) => [
          unit,
          Object.fromEntries(
            Object.entries(t).map(([event, time]) => [
              event,
              {
                at:
                  event === 'moving'
                    ? time.at + (i % 2 === 0 ? 2.5 : 0)
                    : time.at * (i % 2 === 0 ? 0.55 : 1.4),
                error: 0.2,
              },
            ]),
          ),
        ]),
      ),
    }));
    const strange = { ...sheet, swings: odd };
    const d = await diagnose(scenario, strange, { memory });
    expect(d.unknown).toBeGreaterThan(1 - 1e-4);
    // What comes nearest is told, be it ever so unlikely.
    const text = wordsOf(strange, d);
    expect(text).toContain('NONE OF THE KNOWN CAUSES FITS');
    expect(text).toMatch(/Nearest comes: \S/);
    expect(d.groups.length).toBeGreaterThan(0);
    const told = d.groups.reduce((sum, g) => sum + g.probability, 0);
    expect(told).toBeLessThan(1e-3);
  });

  it('says of what is foretold whether it is of another aircraft than the nominal one', async () => {
    const sheet = sheetWith([]);
    const d = await diagnose(scenario, sheet, { memory });
    const [{ members, ...group }, ...rest] = d.groups;
    const off = [{ ...members[0], offNominal: true as const }, ...members.slice(1)];
    const NOTE = 'A small thing decides here';
    expect(wordsOf(sheet, d)).not.toContain(NOTE);
    expect(wordsOf(sheet, { ...d, groups: [{ ...group, members: off }, ...rest] })).toContain(NOTE);
    const cold = [{ ...members[0], colder: 3 }, ...members.slice(1)];
    const words = wordsOf(sheet, { ...d, groups: [{ ...group, members: cold }, ...rest] });
    expect(words.replaceAll(/\s+/g, ' ')).toMatch(/oil that is off by -(3\.0|5\.4) \S+ from what/);
    expect(wordsOf(sheet, d)).not.toContain('oil that is off by');
  });

  it('knows a lock that is stiffer than any is in oil as warm as was noted', async () => {
    const { fluid } = scenario;
    const cold = { ...scenario, fluid: { ...fluid, temperature: fluid.temperature - 3 } };
    const stiff = { fault: 'downlock-stiff', on: 'downlock', severity: 0.85 };
    const sheet = sheetWith([stiff], {}, cold);
    const { groups } = await diagnose(scenario, sheet, { memory });
    const found = groups[0].members.find((m) => m.causes.some((c) => c.fault === stiff.fault));
    expect(found?.colder).toBeGreaterThan(1);
    const locked = found?.comparisons.find((c) => c.swing === 1 && c.label.endsWith(' locked'));
    expect(Math.abs(locked!.foretold - locked!.observed)).toBeLessThan(0.3);
    // At the temperature noted its worst is half a second.
    const worst = simulate(scenario, { card: CARD, faults: [{ ...stiff, severity: 1 }] });
    const down = expectedSwings(worst)[1].times.right.locked!;
    expect(locked!.observed).toBeGreaterThan(down + 0.3);
  });

  it('has a first ranking before the scatter of a sound gear is known, and a whole one before its checks', async () => {
    const sheet = sheetWith([{ fault: 'dry-bearing', on: LEG, severity: 0.7 }]);
    const ranked: { readonly played: number; readonly d: Diagnosis }[] = [];
    const told: Diagnosis[] = [];
    let played = 0;
    const last = await diagnose(scenario, sheet, {
      onProgress: (_, sofar) => {
        played++;
        if (ranked.length < 2) ranked.push({ played, d: sofar() });
        if (ranked.at(-1)?.d.groups.length === 0) ranked.pop();
      },
      onRanked: (d) => told.push(d),
    });
    // A swing of the sound gear each way, and the likeliest dozen.
    expect(ranked[0].played).toBeLessThan(20);
    expect(ranked[0].d.whole).toBe(false);
    const sum = ranked[0].d.groups.reduce((all, g) => all + g.probability, ranked[0].d.unknown);
    expect(sum).toBeCloseTo(1, 2);
    const [d, ...more] = told;
    expect(more).toEqual([]);
    expect(d).toMatchObject({ whole: true, groups: last.groups, established: last.established });
    expect(d.runs).toBeLessThan(last.runs);
    // Looks are ranked already, swings later.
    expect(d.checks.length).toBeGreaterThan(0);
    const looks = last.checks.filter((c) => c.on !== '');
    expect(d.checks).toEqual(expect.arrayContaining(looks));
  });

  it('stops when it is told to, and gives what it has', async () => {
    const signal = { aborted: false };
    const d = await diagnose(scenario, sheetWith([]), {
      signal,
      onProgress: (share) => (signal.aborted = share > 0.05),
    });
    expect(d.whole).toBe(false);
    expect(d.established).toBe(false);
  });
});
