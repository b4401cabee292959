/**
 * What every fault of the catalogue keeps to, in the host circuits of tests/support/fault-hosts.ts
 * (see there how to add one): at severity 0 nothing differs, to the last bit; and what a fault says
 * it slows takes longer the worse it is.
 */
import { describe, expect, it } from 'vitest';
import { FLUID } from '../../packages/core/src/scenario/names.js';
import { simulate } from '@wheelwell/core';
import type { FaultDefinition, FaultEntry, Parameters, Run, Scenario } from '@wheelwell/core';
import { everyFault, hostOf } from '../support/fault-hosts.js';
import type { SmallSwing } from '../support/small-swing.js';

/** Events are found to within a small share of a step; two runs take different steps. */
const RESOLUTION = 0.002;
const SEVERITIES = [0.25, 0.5, 0.75, 1];

const kept = new Map<string, Run>();
function healthy(host: SmallSwing): Run {
  const known = kept.get(host.name) ?? simulate(host.scenario);
  kept.set(host.name, known);
  return known;
}

/** The scenario with what a fault makes of its parameters at severity 0 written into it. */
function graded(scenario: Scenario, fault: FaultDefinition, on: string): Scenario {
  const at0 = (p: Parameters): Parameters => ({ ...p, ...fault.change(p, 0) });
  if (on === FLUID) {
    const { temperature, freeAir, thickness, warmedBy } = scenario.fluid;
    const changed = at0({ temperature, freeAir, thickness, warmedBy });
    return { ...scenario, fluid: { ...scenario.fluid, ...changed } };
  }
  const section = Object.hasOwn(scenario.components, on) ? 'components' : 'mechanisms';
  const part = scenario[section][on];
  const changed = { ...part, parameters: at0(part.parameters) };
  return { ...scenario, [section]: { ...scenario[section], [on]: changed } };
}

/** Names of channels in which two runs differ in any bit. */
function different(one: Run, other: Run): string[] {
  const bytes = (v: Float64Array): Uint8Array =>
    new Uint8Array(v.buffer, v.byteOffset, v.byteLength);
  return one.channels.flatMap(({ name }) => {
    const [a, b] = [one.series(name), other.series(name)];
    if (a === undefined || b === undefined) return a === b ? [] : [name];
    const same =
      Buffer.compare(bytes(a.t), bytes(b.t)) === 0 && Buffer.compare(bytes(a.v), bytes(b.v)) === 0;
    return same ? [] : [name];
  });
}

/** Time of the unit, s; infinite when it did not finish. */
function time(run: Run, way: 'up' | 'down'): number {
  const total = run.timings.find((t) => t.direction === way)?.total;
  return total === undefined || Number.isNaN(total) ? Infinity : total;
}

const hosted = everyFault.map((fault) => [fault.kind, fault, hostOf(fault)] as const);

it.each(hosted)('there is a circuit in which %s can be seen', (_, fault, found) => {
  if (fault.silent !== true) expect(found).toBeDefined();
});

describe('at severity 0', () => {
  it.each(hosted.filter(([, , found]) => found !== undefined))(
    '%s changes nothing, to the last bit',
    (_, fault, found) => {
      const { host, entry } = found!;
      const run = simulate(graded(host.scenario, fault, entry.on), {
        faults: [{ ...entry, severity: 0 }],
      });
      const sound = healthy(host);
      expect(run.log).toEqual(sound.log);
      expect(run.channels).toEqual(sound.channels);
      expect(different(run, sound)).toEqual([]);
    },
  );
});

describe('as it grows', () => {
  const slowing = hosted.filter(([, fault, found]) => fault.slows !== undefined && found);
  it.each(slowing)('%s slows what it says, the more the worse', (_, fault, found) => {
    const { host, entry } = found!;
    const at = (severity: number): Run =>
      simulate(host.scenario, { faults: [{ ...entry, severity } satisfies FaultEntry] });
    const runs = [healthy(host), ...SEVERITIES.map(at)];
    const ways = fault.slows === 'both' ? (['up', 'down'] as const) : [fault.slows!];
    const times = ways.map((way) => runs.map((run) => time(run, way)));
    for (const row of times) {
      expect(row[0], 'the healthy circuit finishes').toBeLessThan(Infinity);
      row.forEach((t, i) => {
        if (i > 0) expect(t, row.join(', ')).toBeGreaterThanOrEqual(row[i - 1] - RESOLUTION);
      });
    }
    const matters = times.some((row) => row.at(-1)! > row[0] + RESOLUTION);
    expect(matters, `it matters in ${host.name}`).toBe(true);
  });
});
