/** Every demo has a sheet to try: what the aircraft with the fault its first comment names does, to the errors of a hand. */
import { readdirSync, readFileSync } from 'node:fs';
import { expectedSwings, readObservations, simulate } from '@wheelwell/core';
import type { FaultEntry } from '../../../packages/core/src/define/index.js';
import { describe, expect, it } from 'vitest';
import { aircraft } from '../../support/aircraft.js';

const SCENARIOS = new URL('../../../scenarios/', import.meta.url);
/** With which fault they were made. */
const MADE = {
  'fenwren/observations/slow-right-down.yaml': ['restrictor-blocked', 'right-restrictor', 0.3],
  'hedgelark/observations/slow-left.yaml': ['dry-bearing', 'left-leg', 0.6],
  'tarnswift/observations/left-light-dark.yaml': [
    'switch-misrigged',
    'left-door-closed-switch',
    0.8,
  ],
} as const;
/** Three standard deviations of a stopwatch, s. */
const HAND = 0.6;

const squares = (all: readonly number[]): number => all.reduce((sum, x) => sum + x * x, 0);

describe('the sheets to try', () => {
  it('are one at least of every demo', () => {
    const sheets = readdirSync(SCENARIOS, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .flatMap(({ name }) =>
        readdirSync(new URL(`${name}/observations/`, SCENARIOS)).map(
          (file) => `${name}/observations/${file}`,
        ),
      );
    expect(sheets.sort()).toEqual(Object.keys(MADE).sort());
  });

  it.each(Object.entries(MADE))('%s is of %s', (path, [fault, on, severity]) => {
    const [folder] = path.split('/');
    const { scenario } = aircraft(folder);
    const text = readFileSync(new URL(path, SCENARIOS), 'utf8');
    const read = readObservations(text, { file: path, scenario });
    expect([...read.issues, ...read.contradictions]).toEqual([]);
    const { swings, card } = read.sheet!;
    const of = (faults: readonly FaultEntry[]) => {
      const foretold = expectedSwings(simulate(scenario, { ...(card && { card }), faults }));
      return swings.map((seen) => foretold.find((s) => s.direction === seen.direction)!);
    };
    const off = (foretold: ReturnType<typeof of>): number[] =>
      swings.flatMap((seen, i) => [
        ...Object.entries(seen.times).flatMap(([unit, times]) =>
          Object.entries(times).map(([event, { at }]) =>
            Math.abs(at - (foretold[i].times[unit][event as 'locked'] ?? Infinity)),
          ),
        ),
        ...(seen.never ?? []).map(({ unit, event }) =>
          foretold[i].times[unit][event as 'locked'] === undefined ? 0 : Infinity,
        ),
      ]);
    const faulty = off(of([{ fault, on, severity }]));
    expect(Math.max(...faulty)).toBeLessThan(HAND);
    // A sound one is another thing.
    expect(squares(off(of([])))).toBeGreaterThan(2 * squares(faulty));
  });
});
