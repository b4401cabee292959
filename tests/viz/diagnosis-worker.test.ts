/** What the worker behind the diagnosis bench tells, two playing for it. */
import { describe, expect, it } from 'vitest';
import { catalogues, readObservations, simulate, writeScenario } from '@wheelwell/core';
import type { ObservationSheet } from '@wheelwell/core';
import { isFilled } from '../../packages/viz/src/model/diagnosis.js';
import { blankSwing } from '../../packages/viz/src/model/observed.js';
import { explain } from '../../packages/viz/src/worker/diagnosis.js';
import type { DiagnosisReply } from '../../packages/viz/src/worker/diagnosis-message.js';
import { oneLeg } from '../support/one-leg.js';

describe('the worker', () => {
  const leg = oneLeg();
  const written = {
    file: 'one.yaml',
    text: writeScenario(leg, catalogues),
    edits: [],
  };
  const [unit] = Object.keys(leg.units);
  const weak = simulate(leg, {
    faults: [{ fault: 'ground-supply-weak', on: 'stand', severity: 0.7 }],
  });
  const [up] = weak.timings;
  const sheet: ObservationSheet = {
    ...(readObservations('wheelwell-observations: 1\nswings: []\n').sheet as ObservationSheet),
    swings: [
      {
        ...blankSwing('up'),
        times: {
          [unit]: {
            locked: { at: up.locked - up.start, error: 0.1 },
            total: { at: up.total, error: 0.1 },
          },
        },
      },
      // Asks for nothing yet.
      { ...blankSwing('down'), conditions: { supplyFlow: 1e-5 } },
    ],
  };

  /** All that is told of a sheet, two playing for one who ranks. */
  async function ranked(
    of: ObservationSheet,
    kind: 'diagnose' | 'play-ahead' = 'diagnose',
  ): Promise<DiagnosisReply[]> {
    const replies: DiagnosisReply[] = [];
    const bare = { id: 7, scenario: written, sheet: of, recordings: {} };
    const request = { ...bare, ways: ['up', 'down'] as const };
    const channels = [new MessageChannel(), new MessageChannel()];
    const tell = (reply: DiagnosisReply): void => void replies.push(reply);
    for (const { port2 } of channels) await explain({ kind: 'play-signatures', port: port2 }, tell);
    const ports = channels.map((c) => c.port1) as never;
    await explain({ kind, request, ports }, tell);
    channels.forEach(({ port1, port2 }) => [port1, port2].forEach((p) => p.close()));
    return replies;
  }

  it('ranks in words of either system, says how the aircraft stands for a swing, and plays nothing twice', async () => {
    const told = await ranked(sheet);
    const last = told.at(-1);
    if (last?.kind !== 'whole') throw new Error(JSON.stringify(last));
    const { us, metric } = last.ranking;
    expect(us.ranking[0].members.map((m) => m.causes[0].fault)).toContain('ground-supply-weak');
    expect(us.ranking.map((r) => r.title)).toEqual(metric.ranking.map((r) => r.title));
    expect(us.ranking.reduce((sum, r) => sum + r.probability, 0)).toBeLessThanOrEqual(1.0001);
    const [first] = us.ranking[0].members;
    expect(first.comparisons.map((c) => c.what)).toEqual([`${unit} locked`, `${unit} total`]);
    expect(first.comparisons[1].seen).toBe(`${up.total.toFixed(2)} s`);
    const swing = us.checks.find((c) => c.conditions !== undefined);
    const stand = leg.components.stand.parameters.flow as number;
    if (swing?.check === 'second-flow')
      expect(swing.conditions?.supplyFlow).toBeCloseTo(stand / 2, 12);
    // A look changes what is believed, not what is foretold.
    const again = await ranked({
      ...sheet,
      looks: [{ check: 'supply-measured', on: 'stand', found: true }],
    });
    const more = again.at(-1);
    if (more?.kind !== 'whole') throw new Error(JSON.stringify(more));
    expect(more.runs).toBeLessThan(last.runs / 3);
    expect(more.ranking.us.looks).toEqual(['Measure the supply, stand: found']);
    expect(more.ranking.us.ranking[0].probability).toBeGreaterThan(us.ranking[0].probability);
  });

  it('plays ahead for a sheet with nothing on it, and concludes nothing', async () => {
    expect(isFilled({ ...sheet, swings: [blankSwing('up')] })).toBe(false);
    const told = await ranked({ ...sheet, swings: [] }, 'play-ahead');
    expect(new Set(told.map((r) => r.kind))).toEqual(new Set(['played']));
    expect(told.at(-1)).toMatchObject({ share: 1 });
  });

  it('says why when the scenario does not read', async () => {
    const told: DiagnosisReply[] = [];
    const request = {
      id: 3,
      scenario: { ...written, text: 'no: 1' },
      sheet,
      ways: [],
      recordings: {},
    };
    await explain({ kind: 'diagnose', request, ports: [] }, (r) => told.push(r));
    expect(told).toEqual([{ id: 3, kind: 'broken', message: 'one.yaml does not read' }]);
  });
});
