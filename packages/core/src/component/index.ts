/** The catalogue of devices: one line each. */
import type { DeviceDefinition } from '../define/index.js';
import { checkValve } from './check-valve.js';
import { doubleActingActuator } from './double-acting-actuator.js';
import { downlock } from './downlock.js';
import { enginePump } from './engine-pump.js';
import { filter } from './filter.js';
import { groundSupply } from './ground-supply.js';
import { handPump } from './hand-pump.js';
import { line } from './line.js';
import { oneWayRestrictor } from './one-way-restrictor.js';
import { orifice } from './orifice.js';
import { quickDisconnect } from './quick-disconnect.js';
import { reliefValve } from './relief-valve.js';
import { reservoir } from './reservoir.js';
import { selectorValve } from './selector-valve.js';
import { sequenceValve } from './sequence-valve.js';
import { uplock } from './uplock.js';

const all: readonly DeviceDefinition[] = [
  reservoir,
  enginePump,
  groundSupply,
  quickDisconnect,
  handPump,
  filter,
  reliefValve,
  checkValve,
  selectorValve,
  line,
  orifice,
  oneWayRestrictor,
  sequenceValve,
  doubleActingActuator,
  uplock,
  downlock,
];

/** Every device by its kind, in the order of the lists. */
export const components: Readonly<Record<string, DeviceDefinition>> = Object.fromEntries(
  all.map((device) => [device.kind, device]),
);
