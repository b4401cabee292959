/** The catalogue of devices: one line each. */
import type { DeviceDefinition } from '../define/index.js';
import { checkValve } from './check-valve.js';
import { filter } from './filter.js';
import { line } from './line.js';
import { oneWayRestrictor } from './one-way-restrictor.js';
import { orifice } from './orifice.js';
import { reliefValve } from './relief-valve.js';

const all: readonly DeviceDefinition[] = [
  orifice,
  oneWayRestrictor,
  checkValve,
  reliefValve,
  filter,
  line,
];

/** Every device by its kind, in the order of the lists. */
export const components: Readonly<Record<string, DeviceDefinition>> = Object.fromEntries(
  all.map((device) => [device.kind, device]),
);
