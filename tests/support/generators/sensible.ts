/**
 * Sensible parameters of any device or mechanism, drawn from its own declaration: figures that a
 * gear of light aircraft could have, so that what is put together of them does move. Ranges are for
 * what is allowed; this is for what is usual.
 */
import type {
  ParameterDefinition,
  ParameterDefinitions,
  Parameters,
  ParameterValue,
  Quantity,
  StateTable,
} from '../../../packages/core/src/define/index.js';

export type Random = () => number;
type Span = readonly [number, number];

/** What is usual of a quantity, SI; of figures that have no default (common practice, no source). */
const USUAL: Readonly<Partial<Record<Quantity, Span>>> = {
  ratio: [0.2, 1],
  count: [1, 6],
  length: [0.05, 0.5],
  area: [1e-4, 2e-3],
  volume: [1e-5, 1e-3],
  time: [0.05, 1],
  angle: [0.3, 1.2],
  mass: [5, 60],
  inertia: [2, 20],
  force: [100, 1000],
  stiffness: [200, 5000],
  moment: [5, 50],
  pressure: [2e5, 8e6],
  'gauge-pressure': [1.5e6, 7e6],
  flow: [5e-5, 3e-4],
  leakage: [1e-15, 1e-13],
  displacement: [4e-7, 2e-6],
  'angular-damping': [5, 80],
  'angular-stiffness': [500, 20000],
};

/** Where the quantity alone says too little. A length may be a bore or a bar. */
const NAMED: Readonly<Record<string, Span>> = {
  bore: [0.025, 0.06],
  rodDiameter: [0.01, 0.03],
  trip: [0.02, 0.18],
  upper: [0.2, 0.5],
  lower: [0.2, 0.5],
  structure: [0.2, 0.7],
  onLeg: [0.2, 0.7],
  tyreRadius: [0.1, 0.35],
  tyreWidth: [0.05, 0.2],
  length: [0.3, 2],
};

/** Faults are figures that stand at nought in a sound device; a little of one, now and then, per quantity. */
const SLIGHT: Readonly<Partial<Record<Quantity, number>>> = {
  leakage: 1e-13,
  ratio: 0.3,
  volume: 1e-6,
  length: 2e-4,
  angle: 0.02,
  force: 100,
  'gauge-pressure': 2e5,
  time: 0.1,
};

const between = (random: Random, [low, high]: Span): number =>
  low > 0 && high / low > 5 ? low * (high / low) ** random() : low + random() * (high - low);

const clamp = (value: number, [low, high]: Span): number => Math.min(Math.max(value, low), high);

/** Two states and a third, with a term on a wire, one on time, and a way back. */
const stateTable = (random: Random): StateTable => ({
  states: [
    { name: 'resting', drive: [], next: [{ if: ['go'], to: 'at work' }] },
    {
      name: 'at work',
      drive: ['on'],
      next: [
        { if: ['not go'], to: 'resting' },
        { if: [], after: 0.2 + random(), to: 'alarm' },
      ],
    },
    {
      name: 'alarm',
      drive: random() < 0.5 ? ['lamp'] : ['on', 'lamp'],
      next: [{ if: ['not go'], to: 'resting' }],
    },
  ],
});

function number(
  name: string,
  { quantity, range, default: usual }: Extract<ParameterDefinition, { quantity: Quantity }>,
  random: Random,
): number {
  let value: number;
  if (usual === undefined)
    value = between(random, NAMED[name] ?? USUAL[quantity] ?? [range[0], range[1]]);
  else if (random() < 0.6) value = usual;
  else if (usual === 0) value = random() < 0.5 ? 0 : random() * (SLIGHT[quantity] ?? 0);
  else value = usual * Math.exp(random() - 0.5);
  if (quantity === 'count') value = Math.round(value);
  return clamp(value, range);
}

function draw(name: string, definition: ParameterDefinition, random: Random): ParameterValue {
  switch (definition.type) {
    case 'choice':
      if (definition.default !== undefined && random() < 0.6) return definition.default;
      return definition.choices[Math.floor(random() * definition.choices.length)];
    case 'switch':
      return random() < 0.7 ? definition.default : !definition.default;
    case 'shape':
      return definition.default ?? { x: [0, 4], y: [definition.range[0], definition.range[1]] };
    case 'point':
      return definition.default ?? [0, 0];
    case 'state-table':
      return stateTable(random);
    default:
      return number(name, definition, random);
  }
}

interface Kind {
  readonly kind: string;
  readonly parameters: ParameterDefinitions;
  readonly check?: (p: Parameters) => readonly { readonly message: string }[];
}

/**
 * A set that passes the kind's own checks; `own` are figures that must stand as they are.
 * @throws Error with the kind's name when none is found.
 */
export function sensible(kind: Kind, random: Random, own: Parameters = {}): Parameters {
  let said = '';
  for (let attempt = 0; attempt < 400; attempt++) {
    const p: Record<string, ParameterValue> = {};
    for (const [name, definition] of Object.entries(kind.parameters))
      p[name] = own[name] ?? draw(name, definition, random);
    const wrong = kind.check?.(p) ?? [];
    if (wrong.length === 0) return p;
    said = wrong.map(({ message }) => message).join('; ');
  }
  throw new Error(`${kind.kind}: no sensible parameters pass its checks: ${said}`);
}
