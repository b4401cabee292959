import type {
  CardStep,
  Catalogues,
  ComponentEntry,
  CoordinateData,
  DeviceDefinition,
  DrawingSymbol,
  DrivenEntry,
  FluidDefinition,
  MechanismDefinition,
  Parameters,
  Scenario,
  Shape,
  UnitEntry,
} from '../../packages/core/src/define/index.js';
import { catalogues } from '../../packages/core/src/index.js';
import { oilAt } from '../../packages/core/src/medium/index.js';

/** Small networks for one test each: any mix of real devices, devices made for the test, and bare coordinates. */
const symbol: DrawingSymbol = { name: 'other', size: [2, 2], ports: {} };
const about = {
  title: 'made for a test',
  summary: 'made for a test',
  source: 'made for a test',
  symbol,
};

/** A device for a test; only what it does has to be said. */
export function device(kind: string, own: Partial<DeviceDefinition>): DeviceDefinition {
  return {
    ...about,
    kind,
    role: 'other',
    parameters: {},
    ports: {},
    prepare: () => new Float64Array(0),
    ...own,
  };
}

/** Coordinate data with nothing in it but an inertia of 1 kg m2 between 0 and 1 rad. */
export function coordinate(own: Partial<CoordinateData> = {}): CoordinateData {
  const flat = (value: number): Shape => ({ x: [-10, 10], y: [value, value] });
  return {
    low: 0,
    high: 1,
    inertia: flat(1),
    moment: flat(0),
    damping: 0,
    friction: 0,
    staticRatio: 1,
    restitution: 0,
    initial: 0,
    ...own,
  };
}

export const flat = (value: number): Shape => ({ x: [-10, 10], y: [value, value] });

export interface RigPart {
  /** A kind of the catalogue, or a definition made for the test. */
  readonly is: string | DeviceDefinition;
  readonly ports?: Readonly<Record<string, string>>;
  /** Link name to mechanism, with its travel; without travel the angle itself. */
  readonly links?: Readonly<Record<string, { readonly to: string; readonly travel?: Shape }>>;
  readonly parameters?: Parameters;
  readonly signals?: ComponentEntry['signals'];
}

export interface RigOptions {
  readonly parts: Readonly<Record<string, RigPart>>;
  readonly coordinates?: Readonly<Record<string, CoordinateData>>;
  /** Which of the coordinates another one drives, and their angle against its. */
  readonly driven?: Readonly<Record<string, DrivenEntry>>;
  readonly airspeed?: number;
  readonly warmedBy?: number;
  readonly nodes?: Readonly<Record<string, { readonly volume: number; readonly air?: number }>>;
  readonly units?: Readonly<Record<string, UnitEntry>>;
  readonly duration?: number;
  readonly steps?: readonly CardStep[];
  /** The oil: exactly this modulus (Pa), free air by volume, viscosity (m2/s), density (kg/m3). */
  readonly oil?: {
    readonly bulkModulus?: number;
    readonly freeAir?: number;
    readonly viscosity?: number;
  };
  readonly ambient?: number;
  /** Oil temperature, K; 293.15 when absent. */
  readonly temperature?: number;
  /** Gas at nodes at the start, m3 at ambient pressure; Infinity: no oil at all. */
  readonly gas?: Readonly<Record<string, number>>;
}

const TEMPERATURE = 293.15;

/** An oil whose working modulus at the rig's temperature is exactly the one given. */
function oilOf(bulkModulus: number, viscosity: number): FluidDefinition {
  const of = (modulus: number): FluidDefinition => ({
    ...about,
    kind: 'rig-oil',
    viscosity: [
      { temperature: 273.15, viscosity },
      { temperature: 373.15, viscosity: viscosity * 0.999 },
    ],
    density: 870,
    densityAt: TEMPERATURE,
    expansion: 8e-4,
    bulkModulus: modulus,
    vapourPressure: 100,
  });
  return of((bulkModulus * bulkModulus) / oilAt(of(bulkModulus), TEMPERATURE).bulkModulus);
}

export function rig(options: RigOptions): {
  readonly scenario: Scenario;
  readonly with: Catalogues;
} {
  const components = { ...catalogues.components };
  const mechanisms: Record<string, MechanismDefinition> = {};
  const entries: Record<string, ComponentEntry> = {};
  for (const [name, part] of Object.entries(options.parts)) {
    const definition = typeof part.is === 'string' ? components[part.is] : part.is;
    components[definition.kind] = definition;
    const defaults = Object.entries(definition.parameters).map(([k, d]) => [k, d.default] as const);
    const parameters = {
      ...Object.fromEntries(defaults.filter(([, v]) => v !== undefined)),
      ...part.parameters,
    } as Parameters;
    entries[name] = {
      is: definition.kind,
      note: '',
      parameters,
      ports: part.ports ?? {},
      links: part.links ?? {},
      signals: part.signals ?? {},
    };
  }
  for (const [name, data] of Object.entries(options.coordinates ?? {})) {
    mechanisms[name] = {
      ...about,
      kind: `rig-${name}`,
      role: 'other',
      ends: ['low', 'high'],
      parameters: {},
      coordinate: () => data,
      outline: () => ({ shape: 'door', at: () => ({ line: [] }) }),
    };
  }
  const oil = options.oil ?? {};
  return {
    with: {
      ...catalogues,
      components,
      mechanisms: Object.fromEntries(Object.values(mechanisms).map((m) => [m.kind, m])),
      fluids: { 'rig-oil': oilOf(oil.bulkModulus ?? 1.7e9, oil.viscosity ?? 2e-5) },
    },
    scenario: {
      wheelwell: 1,
      file: '<rig>',
      title: 'rig',
      note: '',
      fluid: {
        kind: 'rig-oil',
        temperature: options.temperature ?? TEMPERATURE,
        freeAir: oil.freeAir ?? 0,
        thickness: 1,
        warmedBy: options.warmedBy ?? 0,
      },
      ambient: options.ambient ?? 101_325,
      airspeed: options.airspeed ?? 0,
      sideslip: 0,
      components: entries,
      mechanisms: Object.fromEntries(
        Object.entries(mechanisms).map(([name, m]) => [
          name,
          { is: m.kind, note: '', parameters: {}, driven: options.driven?.[name] },
        ]),
      ),
      nodes: Object.fromEntries(
        Object.entries(options.nodes ?? {}).map(([n, e]) => [
          n,
          { volume: e.volume, air: e.air ?? 0, note: '' },
        ]),
      ),
      units: options.units ?? {},
      limits: {},
      rules: [],
      cards: {
        card: {
          title: 'card',
          note: '',
          duration: options.duration ?? 1,
          set: {},
          faults: [],
          expect: [],
          start: {},
          gas: options.gas ?? {},
          steps: options.steps ?? [],
        },
      },
    },
  };
}

/** A card step. */
export const step = (
  at: number,
  name: string,
  input: string,
  value: number,
  after?: CardStep['after'],
): CardStep => ({
  at,
  device: name,
  input,
  value,
  text: String(value),
  after,
});
