/** Parameter sets of a device, drawn from its own declaration. */
import type {
  DeviceDefinition,
  ParameterDefinition,
  ParameterValue,
  Parameters,
  StateTable,
  Surroundings,
} from '../../packages/core/src/define/index.js';

/** A small seeded generator of numbers in [0, 1) (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Red mineral oil, cold to hot: what devices may meet. */
export const SURROUNDINGS: Readonly<Record<string, Surroundings>> = {
  cold: { density: 905, viscosity: 490e-6, bulkModulus: 2e9, ambient: 101325, temperature: 233 },
  mild: { density: 867, viscosity: 25e-6, bulkModulus: 1.8e9, ambient: 101325, temperature: 293 },
  hot: { density: 830, viscosity: 5e-6, bulkModulus: 1.3e9, ambient: 95000, temperature: 373 },
};

function within([low, high]: readonly [number, number], share: number): number {
  // Across decades where the range spans them, so that small values are met as often as large.
  return low > 0 && high / low > 20 ? low * (high / low) ** share : low + share * (high - low);
}

/** Two states, there and back, the second left by its time as well. */
function stateTable(random: () => number): StateTable {
  return {
    states: [
      { name: 'resting', drive: [], next: [{ if: ['go'], to: 'at work' }] },
      {
        name: 'at work',
        drive: random() < 0.5 ? ['on'] : ['on', 'lamp'],
        next: [
          { if: ['not go'], to: 'resting' },
          { if: [], after: within([0.1, 10], random()), to: 'resting' },
        ],
      },
    ],
  };
}

function draw(definition: ParameterDefinition, random: () => number): ParameterValue {
  switch (definition.type) {
    case 'choice':
      return definition.choices[Math.floor(random() * definition.choices.length)];
    case 'switch':
      return random() < 0.5;
    case 'shape':
      return {
        x: [0, 1],
        y: [within(definition.range, random()), within(definition.range, random())],
      };
    case 'point':
      return [within(definition.range, random()), within(definition.range, random())];
    case 'state-table':
      return stateTable(random);
    default:
      return within(definition.range, random());
  }
}

const sound = (device: DeviceDefinition, p: Parameters): boolean =>
  (device.check?.(p) ?? []).length === 0;

/** Random parameters within the ranges that pass the device's own checks. */
export function randomParameters(device: DeviceDefinition, random: () => number): Parameters {
  for (let attempt = 0; attempt < 1000; attempt++) {
    const p = Object.fromEntries(
      Object.entries(device.parameters).map(([name, definition]) => [
        name,
        draw(definition, random),
      ]),
    );
    if (sound(device, p)) return p;
  }
  throw new Error(`${device.kind}: no parameters pass its checks`);
}

/** A sound set with each number in turn at each end of its range. */
export function cornerParameters(device: DeviceDefinition, random: () => number): Parameters[] {
  return Object.entries(device.parameters).flatMap(([name, definition]) => {
    if (definition.type === 'choice')
      return definition.choices.map((word) => ({
        ...randomParameters(device, random),
        [name]: word,
      }));
    if (definition.type !== undefined && definition.type !== 'number') return [];
    return definition.range
      .map((end) => {
        for (let attempt = 0; attempt < 200; attempt++) {
          const p = { ...randomParameters(device, random), [name]: end };
          if (sound(device, p)) return p;
        }
        return undefined;
      })
      .filter((p) => p !== undefined);
  });
}
