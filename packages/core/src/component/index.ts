/** The catalogue of devices: one line each. */
import type { DeviceDefinition } from '../define/index.js';
import { bungee } from './bungee.js';
import { chain } from './chain.js';
import { accumulator } from './accumulator.js';
import { blowDownValve } from './blow-down-valve.js';
import { checkValve } from './check-valve.js';
import { doorLap } from './door-lap.js';
import { compensatedPump } from './compensated-pump.js';
import { controller } from './controller.js';
import { dumpValve } from './dump-valve.js';
import { doubleActingActuator } from './double-acting-actuator.js';
import { downlock } from './downlock.js';
import { enginePump } from './engine-pump.js';
import { filter } from './filter.js';
import { flowRegulator } from './flow-regulator.js';
import { gasBottle } from './gas-bottle.js';
import { gasCheckValve } from './gas-check-valve.js';
import { gasLine } from './gas-line.js';
import { groundSupply } from './ground-supply.js';
import { handPump } from './hand-pump.js';
import { hose } from './hose.js';
import { legOnDoor } from './leg-on-door.js';
import { line } from './line.js';
import { lockingActuator } from './locking-actuator.js';
import { manualLoweringValve } from './manual-lowering-valve.js';
import { oneWayRestrictor } from './one-way-restrictor.js';
import { openCentreSelector } from './open-centre-selector.js';
import { orifice } from './orifice.js';
import { overCentreBrace } from './over-centre-brace.js';
import { positionSwitch } from './position-switch.js';
import { pressureSequenceValve } from './pressure-sequence-valve.js';
import { pressureSwitch } from './pressure-switch.js';
import { priorityValve } from './priority-valve.js';
import { quickDisconnect } from './quick-disconnect.js';
import { powerPack } from './power-pack.js';
import { reliefValve } from './relief-valve.js';
import { reservoir } from './reservoir.js';
import { segmentedLine } from './segmented-line.js';
import { selectorValve } from './selector-valve.js';
import { sequenceValve } from './sequence-valve.js';
import { shuttleValve } from './shuttle-valve.js';
import { singleActingActuator } from './single-acting-actuator.js';
import { solenoidSelector } from './solenoid-selector.js';
import { solenoidValve } from './solenoid-valve.js';
import { squatSwitch } from './squat-switch.js';
import { standpipeReservoir } from './standpipe-reservoir.js';
import { thermalRelief } from './thermal-relief.js';
import { unloader } from './unloader.js';
import { uplock } from './uplock.js';

const all: readonly DeviceDefinition[] = [
  reservoir,
  standpipeReservoir,
  enginePump,
  compensatedPump,
  powerPack,
  groundSupply,
  quickDisconnect,
  handPump,
  filter,
  reliefValve,
  thermalRelief,
  unloader,
  accumulator,
  checkValve,
  selectorValve,
  openCentreSelector,
  manualLoweringValve,
  line,
  hose,
  segmentedLine,
  orifice,
  oneWayRestrictor,
  flowRegulator,
  sequenceValve,
  pressureSequenceValve,
  priorityValve,
  doubleActingActuator,
  singleActingActuator,
  lockingActuator,
  uplock,
  downlock,
  overCentreBrace,
  bungee,
  chain,
  doorLap,
  positionSwitch,
  pressureSwitch,
  squatSwitch,
  solenoidValve,
  solenoidSelector,
  controller,
  gasBottle,
  blowDownValve,
  gasLine,
  gasCheckValve,
  shuttleValve,
  dumpValve,
  legOnDoor,
];

/** Every device by its kind, in the order of the lists. */
export const components: Readonly<Record<string, DeviceDefinition>> = Object.fromEntries(
  all.map((device) => [device.kind, device]),
);

export { braceBars, type BraceBars } from './over-centre-brace.js';
export { plungerDepression } from './sequence-valve.js';
