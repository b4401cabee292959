/** What the circuit shows of a run: pressures, flows, where moving pieces stand. */
import { describe, expect, it } from 'vitest';
import { simulate } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import { heat } from '../../packages/viz/src/drawing/heat.js';
import { colourAt, pressureScale, widthAt } from '../../packages/viz/src/drawing/pressure-scale.js';
import { circuitLayout } from '../../packages/viz/src/model/circuit.js';
import { flowsAlong, gaugeAt, standing } from '../../packages/viz/src/model/circuit-now.js';
import { at, DEMOS, shown, tracesOf } from './circuit-sheet.js';

describe.each(DEMOS.map((s): [string, Scenario] => [s.file, s]))('%s', (_, scenario) => {
  const run = simulate(scenario);
  const made = shown(run);
  const layout = circuitLayout(made);

  it('tells every line its flow: what leaves one end arrives at the other', () => {
    const series = tracesOf(run, made);
    const time = 0.1 * run.duration;
    const flows = flowsAlong(made, series, layout.pieces, time);
    // A firm line between a device with one way and the next part: the same flow on both sides of it.
    const tubes = made.circuit.parts.filter((p) => p.kind === 'line' && p.ports.length === 2);
    let moving = 0;
    for (const tube of tubes) {
      const through = run.look([`${tube.name}.through`]).get(`${tube.name}.through`);
      const q = at(through?.t ?? [], through?.v ?? [], time);
      const inlet = layout.pieces.findIndex(
        (p) =>
          p.node === tube.ports[0].node && p.beyond.length === 1 && p.beyond[0].part === tube.name,
      );
      if (inlet < 0) continue;
      expect(flows[inlet]).toBeCloseTo(q, 5);
      if (Math.abs(q) > 1e-6) moving += 1;
    }
    expect(moving + tubes.length).toBeGreaterThan(0);
  });
});

describe('the scale of pressure', () => {
  it('goes from dark and thin to light and wide, in equal steps of lightness', () => {
    const scale = pressureScale(2.0e7, 1.450377e-4);
    expect(scale.top).toBeGreaterThanOrEqual(2.0e7);
    expect(scale.share(-1e5)).toBe(0);
    expect(scale.share(scale.top)).toBe(1);
    expect(colourAt(scale.share(scale.top / 2))).toBe(heat(0.5));
    expect(widthAt(1)).toBeGreaterThan(2 * widthAt(0));
    expect(scale.ticks.at(-1)?.share).toBe(1);
  });
});

describe('what the run says', () => {
  const scenario = DEMOS.find((s) => s.file.includes('hedgelark'))!;
  const run = simulate(scenario);
  const made = shown(run);
  const series = tracesOf(run, made);

  it('gives a node its pressure above that outside', () => {
    const { t, v } = run.look(['pressure.pressure']).get('pressure.pressure')!;
    const i = Math.floor(t.length / 3);
    // Times and values are sent in single precision.
    expect(gaugeAt(made.circuit, series, 'pressure', t[i]) / (v[i] - scenario.ambient)).toBeCloseTo(
      1,
      2,
    );
  });

  it('puts a piston where its rod is, a spool where its valve has it, a plunger valve by its plunger', () => {
    const part = (name: string) => made.circuit.parts.find((p) => p.name === name)!;
    const jack = scenario.components['left-leg-jack'].parameters.stroke as number;
    const rod = run.look(['left-leg-jack.rod']).get('left-leg-jack.rod')!;
    for (const share of [0, 0.1, 0.15, 0.2, 0.5]) {
      const time = share * run.duration;
      const x = at(rod.t, rod.v, time);
      expect(standing(made, series, part('left-leg-jack'), time)).toBeCloseTo(
        Math.min(Math.max(x / jack, 0), 1),
        3,
      );
    }
    const first = run.log.find(
      (e) => e.device === 'selector' && e.kind === 'mode' && e.to === 'up',
    )!;
    expect(standing(made, series, part('selector'), 0)).toBe(
      run.look(['selector.spool']).get('selector.spool')!.v[0],
    );
    expect(standing(made, series, part('selector'), first.t + 0.05)).toBeCloseTo(1, 3);
    const valve = run.log.find((e) => e.device === 'left-door-close-valve' && e.to === 'open')!;
    expect(standing(made, series, part('left-door-close-valve'), 0)).toBe(0);
    expect(standing(made, series, part('left-door-close-valve'), valve.t + 0.05)).toBe(1);
  });
});
