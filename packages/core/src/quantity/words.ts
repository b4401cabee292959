import { SI_UNIT, type Quantity } from '../define/parameter.js';
import { dimensionOf } from './unit.js';

/** How a quantity is called in a message, and how people write one. */
export interface QuantityWords {
  readonly name: string;
  readonly examples: readonly string[];
}

/** Words for every quantity; the first example also serves the editor's completion. */
export const QUANTITY_WORDS: Readonly<Record<Quantity, QuantityWords>> = {
  ratio: { name: 'a ratio', examples: ['0.5', '3 %'] },
  count: { name: 'a count', examples: ['2'] },
  length: { name: 'a length', examples: ['45 mm', '1 3/4 in'] },
  area: { name: 'an area', examples: ['12 cm^2', '1.5 in^2'] },
  volume: { name: 'a volume', examples: ['60 cm^3', '2 L', '1.5 gal'] },
  time: { name: 'a time', examples: ['0.2 s', '15 ms'] },
  frequency: { name: 'a frequency', examples: ['40 1/min', '2 Hz'] },
  speed: { name: 'a speed', examples: ['0.3 m/s', '15 ft/s'] },
  angle: { name: 'an angle', examples: ['35 deg', '0.6 rad'] },
  'angular-speed': { name: 'an angular speed', examples: ['0.6 rad/s', '3700 rpm'] },
  mass: { name: 'a mass', examples: ['25 kg', '55 lb'] },
  density: { name: 'a density', examples: ['860 kg/m^3'] },
  inertia: { name: 'a moment of inertia', examples: ['6 kg m^2'] },
  force: { name: 'a force', examples: ['250 N', '60 lbf'] },
  stiffness: { name: 'a stiffness', examples: ['20 N/mm', '120 lbf/in'] },
  moment: { name: 'a moment', examples: ['85 N m', '60 lbf ft'] },
  'angular-stiffness': { name: 'an angular stiffness', examples: ['40 N m/rad'] },
  'angular-damping': { name: 'an angular damping', examples: ['12 N m s/rad'] },
  pressure: { name: 'an absolute pressure', examples: ['101325 Pa', '1.01 bar'] },
  'gauge-pressure': { name: 'a gauge pressure', examples: ['1500 psi', '105 bar'] },
  'free-gas': { name: 'a volume of free gas', examples: ['2 L', '100 in^3'] },
  'free-gas-flow': { name: 'a flow of free gas', examples: ['2 L/s', '100 in^3/s'] },
  flow: { name: 'a flow', examples: ['3.2 gal/min', '12 L/min'] },
  leakage: { name: 'a leakage', examples: ['0.01 L/(min bar)', '1e-13 m^3/(s Pa)'] },
  displacement: { name: 'a displacement per turn', examples: ['0.5 in^3/rev', '8 cm^3/rev'] },
  viscosity: { name: 'a kinematic viscosity', examples: ['12 cSt', '14 mm^2/s'] },
  temperature: { name: 'a temperature', examples: ['20 degC', '68 degF'] },
  power: { name: 'a power', examples: ['2 kW', '3 hp'] },
  energy: { name: 'an energy', examples: ['40 J'] },
  current: { name: 'an electric current', examples: ['30 A'] },
  voltage: { name: 'a voltage', examples: ['28 V'] },
};

/** The unit of the first example; `''` for plain numbers. */
export function usualUnit(quantity: Quantity): string {
  return QUANTITY_WORDS[quantity].examples[0].split(' ').slice(1).join(' ');
}

let byDimension: Map<string, Quantity> | undefined;

/** The quantity that a dimension usually means (gauge pressure for a pressure); undefined when none. */
export function quantityOfDimension(dimension: string): Quantity | undefined {
  if (byDimension === undefined) {
    byDimension = new Map();
    for (const quantity of Object.keys(SI_UNIT) as Quantity[]) {
      const key = dimensionOf(quantity);
      if (!byDimension.has(key)) byDimension.set(key, quantity);
    }
    byDimension.set(dimensionOf('gauge-pressure'), 'gauge-pressure');
  }
  return byDimension.get(dimension);
}
