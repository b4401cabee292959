/** A demo aircraft under test: its scenario, runs of its cards made once, what they raise. */
import { readFileSync } from 'node:fs';
import { catalogues, formatIssue, readScenario } from '../../packages/core/src/index.js';
import type { Card, Evidence, Flag, Scenario } from '../../packages/core/src/define/index.js';
import { simulateWith, type SimulatedRun } from '../../packages/core/src/machine/index.js';
import { kinds } from '../../packages/core/src/monitor/kind/index.js';

export interface Aircraft {
  readonly scenario: Scenario;
  /** The run of a card, made once. */
  readonly run: (card: string, tolerance?: 'normal' | 'fine') => SimulatedRun;
  /** A card played with some of it changed. */
  readonly play: (card: string, change: Partial<Card>) => SimulatedRun;
}

export function aircraft(name: string): Aircraft {
  const path = new URL(`../../scenarios/${name}/${name}.yaml`, import.meta.url);
  const reading = readScenario(readFileSync(path, 'utf8'), { file: `${name}.yaml` });
  if (reading.scenario === undefined) throw new Error(reading.issues.map(formatIssue).join('\n'));
  const { scenario } = reading;
  const runs = new Map<string, SimulatedRun>();
  return {
    scenario,
    run(card, tolerance = 'normal') {
      const key = `${card} ${tolerance}`;
      const known = runs.get(key) ?? simulateWith(catalogues, scenario, { card, tolerance });
      runs.set(key, known);
      return known;
    },
    play(card, change) {
      const cards = { played: { ...scenario.cards[card], ...change } };
      return simulateWith(catalogues, { ...scenario, cards }, { card: 'played' });
    },
  };
}

const named = (flags: readonly Flag[]): string[] => [
  ...new Set(flags.filter((f) => f.severity !== 'note').map((f) => f.rule)),
];

/** Rules that raise more than a note, each once. */
export const raised = (run: SimulatedRun): string[] => named(run.flags);

/** The same with one rule, of the catalogue or the scenario's own, switched off. */
export function raisedWithout(e: Evidence, off: string): string[] {
  const builtIn = Object.values(catalogues.rules).filter((rule) => rule.name !== off);
  const own = e.scenario.rules.filter((rule) => rule.name !== off);
  return named([
    ...builtIn.flatMap((rule) => rule.judge(e)),
    ...own.flatMap((rule) => kinds[rule.kind](e, rule)),
  ]);
}

/** First time after `from` at which a device enters a mode, motion or phase; NaN when it never does. */
export const when = (run: SimulatedRun, device: string, to: string, from = 0): number =>
  run.log.find((e) => e.device === device && e.to === to && e.t > from)?.t ?? NaN;

/** Value of a channel at a time, between its samples straight. */
export function valueAt(run: SimulatedRun, channel: string, time: number): number {
  const { t, v } = run.series(channel)!;
  const i = t.findIndex((x) => x >= time);
  if (i <= 0) return v[i < 0 ? v.length - 1 : 0];
  const part = t[i] > t[i - 1] ? (time - t[i - 1]) / (t[i] - t[i - 1]) : 1;
  return v[i - 1] + part * (v[i] - v[i - 1]);
}
