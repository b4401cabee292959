import fc from 'fast-check';
import type { ParameterValue, Scenario } from '../../../packages/core/src/define/index.js';
import { gearUnits } from '../gear-units.js';

/** Gear systems that a shop could meet, good and bad; fast-check shrinks towards the plain one. */
export interface GeneratedGear {
  readonly units: number;
  readonly spread: number;
  readonly drift: number;
  readonly temperature: number;
  readonly freeAir: number;
  /** Bores of the jacks, leg masses and inertias, leg friction, supply flow: against the plain system. */
  readonly bore: number;
  readonly mass: number;
  readonly friction: number;
  readonly flow: number;
  readonly pressure: number;
  readonly restrictor: number;
  readonly feed: number;
  readonly bypass: number;
  readonly weep: number;
  readonly landLeak: number;
  readonly seal: number;
  readonly shift: number;
  readonly centre: string;
  /** When the lever goes up, and how long it stays there, s: the swing may be caught half-way. */
  readonly up: number;
  readonly stay: number;
}

const PSI = 6894.757;
const GPM = (231 * 0.0254 ** 3) / 60;
const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
/** Even in the logarithm. */
const scaled = (min: number, max: number): fc.Arbitrary<number> =>
  real(Math.log(min), Math.log(max)).map(Math.exp);

export const gear: fc.Arbitrary<GeneratedGear> = fc.record({
  units: fc.integer({ min: 1, max: 3 }),
  spread: real(0, 0.12),
  drift: real(0, 0.02),
  temperature: real(253.15, 323.15),
  freeAir: scaled(1e-4, 0.05),
  bore: scaled(0.9, 1.15),
  mass: scaled(0.7, 1.3),
  friction: scaled(0.3, 3),
  flow: scaled(0.5, 1.5),
  pressure: real(1300, 1700),
  restrictor: real(0.0016, 0.004),
  feed: real(0.0009, 0.0025),
  bypass: scaled(1e-15, 1e-12),
  weep: scaled(1e-16, 1e-14),
  landLeak: scaled(1e-15, 1e-12),
  seal: scaled(0.5, 4),
  shift: real(0.03, 0.4),
  centre: fc.constantFrom('closed', 'lines-to-return'),
  up: real(0.05, 0.5),
  stay: real(1, 12),
});

/** The scenario of a generated gear. */
export function gearScenario(
  g: GeneratedGear,
  more: { readonly order?: readonly number[]; readonly rename?: (n: string) => string } = {},
): Scenario {
  const scenario = gearUnits({
    units: g.units,
    spread: g.spread,
    drift: g.drift,
    temperature: g.temperature,
    freeAir: g.freeAir,
    up: g.up,
    down: g.up + g.stay,
    duration: g.up + g.stay + 8,
    change: {
      'ground-supply': { flow: 4 * GPM * (g.units / 2) * g.flow, pressure: g.pressure * PSI },
      'one-way-restrictor': { bore: g.restrictor },
      orifice: { bore: g.feed },
      'double-acting-actuator': { bypass: g.bypass, rodSealLeak: g.weep, seals: 40 * g.seal },
      'selector-valve': { leak: g.landLeak, shiftTime: g.shift, centre: g.centre },
    },
    ...more,
  });
  type Entry = {
    readonly is: string;
    readonly parameters: Readonly<Record<string, ParameterValue>>;
  };
  /** Entries of a kind with some figures multiplied. */
  const scale = <T extends Entry>(
    all: Readonly<Record<string, T>>,
    kind: string,
    shares: Readonly<Record<string, number>>,
  ): Record<string, T> =>
    Object.fromEntries(
      Object.entries(all).map(([name, entry]) => {
        if (entry.is !== kind) return [name, entry];
        const changed = Object.entries(shares).map(([p, by]) => [
          p,
          (entry.parameters[p] as number) * by,
        ]);
        return [
          name,
          { ...entry, parameters: { ...entry.parameters, ...Object.fromEntries(changed) } },
        ];
      }),
    );
  return {
    ...scenario,
    components: scale(scenario.components, 'double-acting-actuator', {
      bore: g.bore,
      rodDiameter: g.bore,
    }),
    mechanisms: scale(scenario.mechanisms, 'leg', {
      mass: g.mass,
      inertia: g.mass,
      friction: g.friction,
    }),
  };
}
