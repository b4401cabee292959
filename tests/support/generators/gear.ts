import fc from 'fast-check';
import type {
  MechanismEntry,
  ParameterValue,
  Scenario,
} from '../../../packages/core/src/define/index.js';
import { gearUnits } from '../gear-units.js';

/** Gear systems that a shop could meet, good and bad; fast-check shrinks towards the plain one. */
export interface GeneratedGear {
  readonly units: number;
  readonly spread: number;
  readonly drift: number;
  readonly temperature: number;
  readonly freeAir: number;
  /** Leg masses and inertias, leg friction, supply flow: against the plain system. */
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
  const heavier = (entry: MechanismEntry): MechanismEntry => {
    const by = (name: string, share: number): [string, ParameterValue] => [
      name,
      (entry.parameters[name] as number) * share,
    ];
    const own =
      entry.is === 'leg'
        ? [by('mass', g.mass), by('inertia', g.mass), by('friction', g.friction)]
        : [];
    return { ...entry, parameters: { ...entry.parameters, ...Object.fromEntries(own) } };
  };
  return {
    ...scenario,
    mechanisms: Object.fromEntries(
      Object.entries(scenario.mechanisms).map(([n, e]) => [n, heavier(e)]),
    ),
  };
}
