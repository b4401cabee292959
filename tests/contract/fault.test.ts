import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import { faults } from '../../packages/core/src/fault/index.js';
import { catalogues } from '../../packages/core/src/index.js';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import { FLUID } from '../../packages/core/src/scenario/names.js';
import { settingsOf } from '../../packages/core/src/scenario/setting.js';
import type {
  ParameterDefinitions,
  Parameters,
  ParameterValue,
} from '../../packages/core/src/define/index.js';

const definitions: Readonly<Record<string, { readonly parameters: ParameterDefinitions }>> = {
  ...components,
  ...mechanisms,
  [FLUID]: {
    parameters: {
      ...settingsOf('fluid', undefined, catalogues),
      temperature: {
        title: 'oil temperature',
        why: '',
        quantity: 'temperature',
        range: [203.15, 423.15],
      },
    },
  },
};

/** Healthy parameters of a kind: defaults, and for the rest a share of the way through the range. */
function healthy(kind: string, share: number): Parameters {
  const p: Record<string, ParameterValue> = {};
  for (const [name, d] of Object.entries(definitions[kind].parameters)) {
    if (d.default !== undefined) p[name] = d.default;
    else if (d.type === undefined || d.type === 'number')
      p[name] = d.range[0] + share * (d.range[1] - d.range[0]);
    else if (d.type === 'choice') p[name] = d.choices[0];
  }
  return p;
}

const cases = Object.values(faults).flatMap((fault) =>
  fault.befalls.map((kind) => [fault.kind, kind, fault] as const),
);

describe('every fault', () => {
  it.each(Object.values(faults).map((f) => [f.kind, f] as const))(
    '%s says what it is, how it shows, how it is confirmed and put right, and warns',
    (_, f) => {
      for (const text of [
        f.title,
        f.meaning,
        f.shows,
        f.confirm,
        f.remedy,
        f.source,
        f.priorWhy,
        f.worst,
      ])
        expect(text.trim().length).toBeGreaterThan(7);
      expect(f.caution).toMatch(/approved data/);
      expect(f.befalls.length).toBeGreaterThan(0);
    },
  );

  it.each(cases)('%s changes only parameters that a %s has', (_, kind, fault) => {
    expect(Object.keys(definitions)).toContain(kind);
    const changed = Object.keys(fault.change(healthy(kind, 0.3), 1));
    // What is put together wrong may change its ports alone.
    if (fault.reconnect === undefined) expect(changed.length).toBeGreaterThan(0);
    for (const name of changed) expect(Object.keys(definitions[kind].parameters)).toContain(name);
  });

  it.each(cases)('%s at its worst stays inside the ranges of a %s', (_, kind, fault) => {
    for (const share of [0.1, 0.3, 0.6])
      for (const [name, value] of Object.entries(fault.change(healthy(kind, share), 1))) {
        const d = definitions[kind].parameters[name];
        if (d.type === 'switch') expect(typeof value).toBe('boolean');
        else if (d.type === undefined || d.type === 'number') {
          expect(value).toBeGreaterThanOrEqual(d.range[0]);
          expect(value).toBeLessThanOrEqual(d.range[1]);
        }
      }
  });

  it.each(cases)('%s at severity 0 leaves a %s as it was', (_, kind, fault) => {
    const p = healthy(kind, 0.3);
    for (const [name, value] of Object.entries(fault.change(p, 0))) expect(value).toEqual(p[name]);
  });

  it.each(cases)('%s on a %s only grows with severity', (_, kind, fault) => {
    const p = kind === 'leg' ? { ...healthy(kind, 0.3), gasPressure: 2e6 } : healthy(kind, 0.3);
    const steps = Array.from({ length: 21 }, (_v, i) => fault.change(p, i / 20));
    for (const name of Object.keys(steps[20])) {
      // A choice (stuck at this or that) has no more or less: it is made once, at any severity.
      if (typeof p[name] === 'string') {
        for (const s of steps.slice(1)) expect(s[name]).toBe(steps[20][name]);
        continue;
      }
      const values = steps.map((s) => Number(s[name]));
      const way = Math.sign(values[20] - values[0]);
      for (let i = 1; i < values.length; i++)
        expect(way * (values[i] - values[i - 1])).toBeGreaterThanOrEqual(0);
    }
    const ports = { first: 'a', second: 'b', inlet: 'a', outlet: 'b', head: 'a', rod: 'b' };
    expect(
      Object.keys(steps[20]).some((name) => steps[20][name] !== p[name]) ||
        JSON.stringify(fault.reconnect?.(ports) ?? ports) !== JSON.stringify(ports),
    ).toBe(true);
  });
});
