import type { Quantity } from '../define/parameter.js';
import { findUnit } from './unit.js';

/** Systems of units for showing figures. */
export type DisplaySystem = 'us' | 'metric' | 'si';

/** A figure as shown: the number in `unit`, and both as one text that can be read back. */
export interface Display {
  readonly value: number;
  readonly unit: string;
  readonly text: string;
}

// US, metric, SI; '' = a plain number.
const UNITS: Readonly<Record<Quantity, readonly [string, string, string]>> = {
  ratio: ['', '', ''],
  count: ['', '', ''],
  length: ['in', 'mm', 'm'],
  area: ['in^2', 'cm^2', 'm^2'],
  volume: ['in^3', 'cm^3', 'm^3'],
  time: ['s', 's', 's'],
  frequency: ['1/min', '1/min', '1/s'],
  speed: ['in/s', 'mm/s', 'm/s'],
  angle: ['deg', 'deg', 'rad'],
  'angular-speed': ['deg/s', 'deg/s', 'rad/s'],
  mass: ['lb', 'kg', 'kg'],
  density: ['lb/ft^3', 'kg/m^3', 'kg/m^3'],
  inertia: ['lb ft^2', 'kg m^2', 'kg m^2'],
  force: ['lbf', 'N', 'N'],
  stiffness: ['lbf/in', 'N/mm', 'N/m'],
  moment: ['lbf ft', 'N m', 'N m'],
  'angular-stiffness': ['lbf ft/rad', 'N m/rad', 'N m/rad'],
  'angular-damping': ['lbf ft s/rad', 'N m s/rad', 'N m s/rad'],
  pressure: ['psia', 'bara', 'Pa'],
  'gauge-pressure': ['psi', 'bar', 'Pa'],
  flow: ['gal/min', 'L/min', 'm^3/s'],
  'free-gas': ['in^3', 'L', 'm^3'],
  'free-gas-flow': ['in^3/s', 'L/s', 'm^3/s'],
  leakage: ['in^3/(min psi)', 'cm^3/(min bar)', 'm^3/(s Pa)'],
  displacement: ['in^3/rev', 'cm^3/rev', 'm^3/rad'],
  viscosity: ['cSt', 'cSt', 'm^2/s'],
  temperature: ['degF', 'degC', 'K'],
  power: ['hp', 'kW', 'W'],
  energy: ['lbf ft', 'J', 'J'],
  current: ['A', 'A', 'A'],
  voltage: ['V', 'V', 'V'],
};

/** Finest decimals worth showing in a unit; four significant figures elsewhere. */
const DECIMALS: Readonly<Record<string, number>> = {
  ...{
    psi: 0,
    psia: 1,
    bar: 1,
    bara: 2,
    deg: 1,
    'deg/s': 1,
    mm: 1,
    'mm/s': 1,
    in: 3,
    'in/s': 2,
    s: 2,
  },
  ...{
    'gal/min': 2,
    'L/min': 2,
    lbf: 0,
    N: 0,
    degC: 1,
    degF: 1,
    cSt: 1,
    'in^3': 2,
    'cm^3': 1,
    '1/min': 1,
  },
};
const FIGURES = 4;

/** The unit in which a quantity is shown; `''` for plain numbers. */
export function displayUnit(quantity: Quantity, system: DisplaySystem): string {
  return UNITS[quantity][system === 'us' ? 0 : system === 'metric' ? 1 : 2];
}

/**
 * An SI value as people read it: `1500 psi`, `3.2 gal/min`, `35 deg`. Pressures of quantity
 * `pressure` are absolute and say so (`psia`, `bara`); gauge pressures carry the plain unit.
 */
export function toDisplay(value: number, quantity: Quantity, system: DisplaySystem): Display {
  const unit = displayUnit(quantity, system);
  const scale = unit === '' ? undefined : findUnit(unit);
  const shown = scale === undefined ? value : value / scale.scale - scale.offset;
  const number = digits(shown, system === 'si' ? undefined : DECIMALS[unit]);
  return { value: shown, unit, text: unit === '' ? number : `${number} ${unit}` };
}

/** Up to `decimals` places, more only where the figure would otherwise have fewer than two digits. */
function digits(value: number, decimals: number | undefined): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? '-' : String(value);
  if (value === 0) return '0';
  if (decimals === undefined) return String(Number(value.toPrecision(FIGURES)));
  const size = Math.floor(Math.log10(Math.abs(value)));
  const places = Math.min(12, Math.max(decimals, 1 - size));
  return places >= 12 ? value.toExponential(1) : String(Number(value.toFixed(places)));
}
