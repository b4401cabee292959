/**
 * Random systems of everything in the catalogues, read from their files: each is refused with placed
 * reasons, or plays to an end that says what it is, with its oil kept. Seeded, so a failure repeats;
 * fast-check shrinks it and prints the seed. `LAWS` multiplies how many systems are tried, `SEED`
 * tries others.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import {
  catalogues,
  formatIssue,
  readScenario,
  writeScenario,
  type Issue,
  type OutcomeKind,
  type Scenario,
} from '@wheelwell/core';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { system, systemText, type GeneratedSystem } from '../support/generators/system.js';

const RUNS = 400 * Number(process.env.LAWS ?? 1);
const SEED = Number(process.env.SEED ?? 17);
/** Enough for nearly all; what needs more ends `exhausted`, which is an end too. */
const MAX_STEPS = 20_000;
/** Shrinking tries many more, each as dear as the first. */
const TIMEOUT = 3_600_000;

/** What became of the systems; shrinking after a failure adds to it, which harms nothing. */
const met = { accepted: 0, refused: 0, slips: 0 };
const ends = new Map<OutcomeKind, number>();
const played = new Set<string>();

/** A reason a person can find and act on. */
function checkIssue(issue: Issue, text: string): void {
  const said = formatIssue(issue);
  expect(issue.line, said).toBeGreaterThanOrEqual(1);
  expect(issue.line, said).toBeLessThanOrEqual(text.split('\n').length);
  expect(issue.column, said).toBeGreaterThanOrEqual(1);
  expect(issue.path, said).toMatch(/^(components|mechanisms|nodes|units|cards)\b/);
  expect(issue.message, said).not.toBe('');
  expect(`${issue.allowed}${issue.hint}`, said).not.toBe('');
  expect(said).not.toMatch(/undefined|NaN|\[object/);
}

function checkRun(scenario: Scenario): void {
  const run = simulateWith(catalogues, scenario, { maxSteps: MAX_STEPS });
  const { kind, time, where, why, hint } = run.outcome;
  ends.set(kind, (ends.get(kind) ?? 0) + 1);
  expect(kind).not.toBe('stopped');
  expect(why).not.toBe('');
  if (kind === 'done') expect(time).toBe(run.duration);
  else {
    expect(where.length, why).toBeGreaterThan(0);
    expect(hint, why).not.toBe('');
  }
  for (const { name } of run.channels) {
    const { v } = run.series(name)!;
    // What diverged may hold the value that did.
    if (kind !== 'diverged') expect(v.every(Number.isFinite), name).toBe(true);
    // Not that of vapour, as for single devices: the momentum of oil in a segmented line drains a
    // capped end of less than a cubic centimetre to a trace below empty.
    if (name.endsWith('.pressure') && v.length > 0) expect(Math.min(...v), name).toBeGreaterThan(0);
  }
  // A run that ended before its first step has nothing to account for.
  if (run.statistics.steps > 0 && kind !== 'diverged') {
    const { oil } = run.account();
    // Not a quotient: what is all springs and chains has no oil.
    expect(oil.start).toBeGreaterThanOrEqual(0);
    expect(Math.abs(oil.end - oil.start)).toBeLessThanOrEqual(1e-9 * Math.abs(oil.start));
  }
  for (const flag of run.flags) expect(flag.margin, flag.rule).not.toBeNaN();
  for (const { total } of run.timings) expect(total).not.toBeLessThan(0);
}

function checkSystem(generated: GeneratedSystem): void {
  const text = systemText(generated);
  const { scenario, issues } = readScenario(text, { file: 'random.yaml' });
  if (scenario === undefined) {
    met.refused++;
    if (generated.slip !== undefined) met.slips++;
    expect(issues.length).toBeGreaterThan(0);
    for (const issue of issues) checkIssue(issue, text);
    return;
  }
  expect(generated.slip, 'a slip that is not refused').toBeUndefined();
  expect(issues).toEqual([]);
  met.accepted++;
  for (const { is } of Object.values({ ...scenario.components, ...scenario.mechanisms }))
    played.add(is);
  checkRun(scenario);
  const again = readScenario(writeScenario(scenario, catalogues), { file: 'random.yaml' });
  expect(again.issues).toEqual([]);
  expect(again.scenario).toEqual(scenario);
}

describe('over random systems of the whole catalogue', () => {
  it(
    'each is refused with placed reasons, or plays to an end that says what it is',
    () => {
      fc.assert(fc.property(system, checkSystem), {
        seed: SEED,
        numRuns: RUNS,
      });
    },
    TIMEOUT,
  );

  it('and the systems are worth it: enough of both sorts, every kind, most played to the end', () => {
    const { accepted, refused, slips } = met;
    expect(accepted).toBeGreaterThan((accepted + refused) / 3);
    expect(slips).toBeGreaterThan(RUNS / 20);
    const kinds = [...Object.keys(catalogues.components), ...Object.keys(catalogues.mechanisms)];
    expect(kinds.filter((kind) => !played.has(kind))).toEqual([]);
    expect(ends.get('done')).toBeGreaterThan(accepted / 2);
  });

  afterAll(() => {
    if (RUNS > 400) console.log(met, ends);
  });
});
