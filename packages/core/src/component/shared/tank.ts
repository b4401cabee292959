/** What reservoirs share: head of oil, head space, level. */
import type {
  DeviceDefinition,
  NumberParameter,
  ParameterDefinitions,
  Parameters,
  Surroundings,
} from '../../define/index.js';
import { number } from './parameters.js';

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

const headspace: NumberParameter = {
  title: 'pressure in the head space above ambient',
  quantity: 'gauge-pressure',
  range: [-8e4, 5e5],
  default: 0,
  why: 'an open vent; above zero where air holds the tank under pressure, below zero where the vent is blocked and the level has fallen',
};

export const tankParameters: ParameterDefinitions = {
  capacity: {
    title: 'capacity',
    quantity: 'volume',
    range: [1e-4, 0.1],
    default: 3e-3,
    why: 'three to four times the swept difference of all actuators; common practice, no source',
  },
  level: {
    title: 'oil in it at the start',
    quantity: 'volume',
    range: [0, 0.1],
    default: 2e-3,
    why: 'about two thirds full; common practice, no source',
  },
  head: {
    title: 'height of the oil above its ports',
    quantity: 'length',
    range: [0, 5],
    default: 0.3,
    why: 'tank above the pump; common practice, no source',
  },
  headspace,
};

/** Pressure at the ports of a tank, Pa absolute: ambient, head space, head of oil. */
export function tankPressure(p: Parameters, s: Surroundings): number {
  return s.ambient + s.density * GRAVITY * number(p, 'head') + number(p, 'headspace');
}

/** The level must find room; for a definition's `check`. */
export const levelFits: NonNullable<DeviceDefinition['check']> = (p) =>
  number(p, 'level') <= number(p, 'capacity')
    ? []
    : [{ parameter: 'level', message: 'is above the capacity' }];
