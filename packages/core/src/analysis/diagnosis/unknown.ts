/**
 * What nobody knows of a healthy aircraft, within what is usual: the scatter that must not be taken for
 * a fault. Spreads are one standard deviation; common practice, no source.
 */
import type {
  Catalogues,
  NumberParameter,
  ParameterDefinition,
  Parameters,
  Scenario,
} from '../../define/index.js';
import type { SignatureJob } from './shapes.js';

export interface Unknown {
  readonly name: string;
  /** A scenario with it so many standard deviations up. */
  readonly moved: (from: Scenario, by: number) => Scenario;
}

interface Part {
  readonly section: 'mechanisms' | 'components';
  readonly name: string;
  readonly is: string;
  readonly role: string;
  readonly parameters: Parameters;
  readonly all: Readonly<Record<string, ParameterDefinition>>;
}

/** Share of the figure, by what the part is for and the parameter's name. */
const SPREADS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  leg: { friction: 0.15 },
  door: { friction: 0.15, sealMoment: 0.1 },
  'linked-member': { friction: 0.15 },
  'over-centre-brace': { friction: 0.15 },
  supply: { flow: 0.025, displacement: 0.025, pressure: 0.01, cutOut: 0.015 },
  'power-pack': { displacement: 0.025, cutOut: 0.015, friction: 0.15 },
  relief: { crack: 0.015, full: 0.015 },
  'pressure-sequence-valve': { crack: 0.015, full: 0.015 },
  'one-way-restrictor': { bore: 0.012 },
  orifice: { bore: 0.012 },
};
const TEMPERATURE_NAME = 'temperature of the oil';
/** What a thermometer, or where it is held, is off by, K. */
export const TEMPERATURE = 2;
/** Share of free air. */
const AIR = 0.3;

/** All of a scenario, always in the same order. */
export function unknownsOf(catalogues: Catalogues, scenario: Scenario): readonly Unknown[] {
  const out: Unknown[] = [];
  const parts: readonly Part[] = [
    ...Object.entries(scenario.mechanisms).map(([name, { is, parameters }]): Part => {
      const kind = catalogues.mechanisms[is];
      return { section: 'mechanisms', name, is, role: kind.role, parameters, all: kind.parameters };
    }),
    ...Object.entries(scenario.components).map(([name, { is, parameters }]): Part => {
      const kind = catalogues.components[is];
      return { section: 'components', name, is, role: kind.role, parameters, all: kind.parameters };
    }),
  ];
  for (const part of parts) {
    const { section, name, parameters } = part;
    const spreads = SPREADS[part.is] ?? SPREADS[part.role] ?? {};
    const own = Object.entries(spreads).filter(
      ([key]) => typeof parameters[key] === 'number' && parameters[key] !== 0,
    );
    if (own.length === 0) continue;
    out.push({
      name: `${own.map(([key]) => key).join(' and ')} of ${name}`,
      moved: (from, by) => {
        const entry = {
          ...from[section][name],
          parameters: scaled(parameters, own, by, part.all),
        };
        return { ...from, [section]: { ...from[section], [name]: entry } };
      },
    });
  }
  out.push({ name: TEMPERATURE_NAME, moved: colder });
  out.push({
    name: 'air in the oil',
    moved: (from, by) => ({
      ...from,
      fluid: { ...from.fluid, freeAir: from.fluid.freeAir * (1 + by * AIR) },
    }),
  });
  return out;
}

/**
 * An aircraft somewhere in the scatter of healthy ones, the same for the same number: each unknown is one standard
 * deviation up or down, the other way round in every second of them.
 */
export function drawnAircraft(catalogues: Catalogues, scenario: Scenario, draw: number): Scenario {
  return unknownsOf(catalogues, scenario).reduce(
    (from, { moved }, i) => moved(from, up(draw >> 1, i) === (draw % 2 === 0) ? 1 : -1),
    scenario,
  );
}

/** As good as tossed: two rounds of a hash of whole numbers (Wang, from memory). */
function up(draw: number, unknown: number): boolean {
  let x = 0x9e3779b9 + 1000 * draw + unknown;
  for (let round = 0; round < 2; round++) {
    x = Math.imul(x ^ (x >>> 16), 0x45d9f3b);
    x ^= x >>> 13;
  }
  return (x & 1) === 0;
}

/** The place of the temperature among the unknowns. */
export const temperatureAmong = (catalogues: Catalogues, scenario: Scenario): number =>
  unknownsOf(catalogues, scenario).findIndex(({ name }) => name === TEMPERATURE_NAME);

/** The sound gear, then with each of its unknowns moved: what a setup is judged against. */
export function soundJobs(
  catalogues: Catalogues,
  scenario: Scenario,
  setup: number,
): readonly SignatureJob[] {
  return [
    { setup, faults: [] },
    ...unknownsOf(catalogues, scenario).map((_, unknown) => ({ setup, faults: [], unknown })),
  ];
}

function scaled(
  p: Parameters,
  spreads: readonly (readonly [string, number])[],
  by: number,
  definitions: Readonly<Record<string, ParameterDefinition>>,
): Parameters {
  const changed = spreads.map(([key, share]) => {
    const [low, high] = (definitions[key] as NumberParameter).range;
    const value = (p[key] as number) * (1 + by * share);
    return [key, Math.min(Math.max(value, low), high)] as const;
  });
  return { ...p, ...Object.fromEntries(changed) };
}

/** Up is colder: what hangs on the temperature by itself (old grease) does in the cold. Cards have temperatures of their own. */
function colder(scenario: Scenario, by: number): Scenario {
  const more = -by * TEMPERATURE;
  const cards = Object.fromEntries(
    Object.entries(scenario.cards).map(([name, card]) => [
      name,
      card.temperature === undefined ? card : { ...card, temperature: card.temperature + more },
    ]),
  );
  const fluid = { ...scenario.fluid, temperature: scenario.fluid.temperature + more };
  return { ...scenario, cards, fluid };
}
