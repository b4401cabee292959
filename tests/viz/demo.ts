/** The demo's runs, simulated here with core: what the page must show. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readScenario, simulate } from '@wheelwell/core';
import type { FaultEntry, Run, Scenario } from '@wheelwell/core';

export const FILE = fileURLToPath(
  new URL('../../scenarios/hedgelark/hedgelark.yaml', import.meta.url),
);
export const TEXT = readFileSync(FILE, 'utf8');

export function demoScenario(): Scenario {
  const { scenario, issues } = readScenario(TEXT, { file: 'hedgelark.yaml' });
  if (scenario === undefined) throw new Error(`the demo does not read: ${JSON.stringify(issues)}`);
  return scenario;
}

/** The first card, which is the one the page opens on. */
export function demoRun(faults: readonly FaultEntry[] = []): Run {
  return simulate(demoScenario(), { faults });
}

/** A channel's value at a time, straight between its samples. */
export function valueAt(run: Run, channel: string, time: number): number {
  const series = run.sampled(channel);
  if (series === undefined) throw new Error(`no channel ${channel}`);
  const { t, v } = series;
  const i = Math.min(Math.max(t.findIndex((each) => each > time) - 1, 0), t.length - 2);
  return v[i] + ((v[i + 1] - v[i]) * (time - t[i])) / (t[i + 1] - t[i]);
}
