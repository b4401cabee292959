/**
 * Unloader: cut-out and cut-in times of NAVEDTRA 14329, troubleshooting of the pressure regulator.
 * 6 gal/min into a system that takes 1 gal between cut-in and cut-out: 10 s; with 1.5 gal/min
 * leaking past the by-pass 13.3 s; with 3 gal/min 20 s (arithmetic on the published case). Symptoms:
 * by-pass leaking, cut-out time long and cut-in time normal; check valve leaking, cut-out time
 * normal and cut-in too soon.
 */
import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import type { DeviceDefinition, Parameters } from '../../packages/core/src/define/index.js';
import { LEAK_VISCOSITY } from '../../packages/core/src/component/shared/parameters.js';
import { device, rig } from '../support/rig.js';

const GALLON = 231 * 0.0254 ** 3;
const GPM = GALLON / 60;
const CUT_OUT = 10e6;
/** A narrow band, so that a laminar leak is as good as constant over it. */
const CUT_IN = 9.5e6;
const MEAN = 0.5 * (CUT_OUT + CUT_IN);

/** A system that takes one gallon between cut-in and cut-out, and uses a little. */
const system: DeviceDefinition = device('system', {
  ports: {
    oil: { title: 'oil', volume: 1e-4, compliance: () => GALLON / (CUT_OUT - CUT_IN) },
    back: { title: 'back', volume: 1e-5 },
  },
  flows: {
    use: {
      from: 'oil',
      to: 'back',
      law: () => ({ constant: 0, transition: 1, open: 0, leak: (0.5 * GPM) / MEAN }),
    },
  },
});
/** 6.5 gal/min, of which the system uses 0.5. */
const pump: DeviceDefinition = device('pump', {
  ports: { inlet: { title: 'in', volume: 0 }, outlet: { title: 'out', volume: 1e-5 } },
  flows: { delivery: { from: 'inlet', to: 'outlet', source: true } },
  equations: (d) => d.flow(0, 6.5 * GPM, 0, 0),
});
const VISCOSITY = 2e-5;
/** The coefficient that leaks so much at the mean pressure, in the rig's oil of 870 kg/m3. */
const leak = (gpm: number): number => ((gpm * GPM) / MEAN) * ((VISCOSITY * 870) / LEAK_VISCOSITY);

/** The first whole cut-out and cut-in times, s. */
function times(own: Parameters): { cutOut: number; cutIn: number } {
  const { scenario, with: catalogues } = rig({
    parts: {
      tank: {
        is: 'reservoir',
        ports: { outlet: 'tank', return: 'tank' },
        parameters: { capacity: 0.1, level: 0.095 },
      },
      pump: { is: pump, ports: { inlet: 'tank', outlet: 'pump-out' } },
      unloader: {
        is: 'unloader',
        ports: { inlet: 'pump-out', outlet: 'line', return: 'tank' },
        // Wide, so that pump and system are at one pressure.
        parameters: { cutOut: CUT_OUT, cutIn: CUT_IN, bore: 0.02, crack: 0, full: 20_000, ...own },
      },
      system: { is: system, ports: { oil: 'line', back: 'tank' } },
    },
    // Next to incompressible: the handbook's arithmetic counts gallons.
    oil: { viscosity: VISCOSITY, bulkModulus: 1e12 },
    duration: 900,
  });
  const { log } = simulateWith(catalogues, scenario);
  const [first, second, third] = log
    .filter((e) => e.device === 'unloader' && e.from !== '')
    .slice(0, 3);
  expect([first.to, second.to, third.to]).toEqual(['unloaded', 'loading', 'unloaded']);
  return { cutOut: third.t - second.t, cutIn: second.t - first.t };
}

describe('NAVEDTRA 14329, pressure regulator', () => {
  const sound = times({ bypassLeak: 0, checkLeak: 0 });
  const dumping = times({ bypassLeak: leak(1.5), checkLeak: 0 });
  const checkOpen = times({ bypassLeak: 0, checkLeak: leak(1.5) });

  it('6 gal/min into 1 gal cut out after 10 s, and 0.5 gal/min used cut in after 120 s', () => {
    // What the system uses changes by 5 % over the band: its mean is used.
    expect(Math.abs(sound.cutOut / 10 - 1)).toBeLessThan(0.005);
    expect(Math.abs(sound.cutIn / 120 - 1)).toBeLessThan(0.005);
  });

  it('with 1.5 gal/min past the by-pass 13.3 s, with 3 gal/min 20 s; cut-in stays normal', () => {
    expect(Math.abs(dumping.cutOut / (60 / 4.5) - 1)).toBeLessThan(0.005);
    const worse = times({ bypassLeak: leak(3), checkLeak: 0 });
    expect(Math.abs(worse.cutOut / 20 - 1)).toBeLessThan(0.005);
    expect(Math.abs(dumping.cutIn / sound.cutIn - 1)).toBeLessThan(0.005);
  });

  it('with a leaking check valve cut-out stays normal and cut-in comes too soon', () => {
    expect(Math.abs(checkOpen.cutOut / sound.cutOut - 1)).toBeLessThan(0.005);
    // 2 gal/min leave the gallon instead of 0.5.
    expect(Math.abs(checkOpen.cutIn / 30 - 1)).toBeLessThan(0.02);
  });
});
