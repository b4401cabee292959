/** The drawing of every symbol that core names, for a kind of device and what sets one apart from another. */
import type { DrawingSymbol } from '@wheelwell/core';
import { brace, cylinder, lock, singleActing } from './cylinder.js';
import {
  blowDownValve,
  dumpValve,
  manualValve,
  openCentreSelector,
  selector,
  sequenceValve,
  solenoidSelector,
  solenoidValve,
} from './envelope.js';
import {
  checkValve,
  filter,
  flowRegulator,
  gasCheckValve,
  hose,
  oneWayRestrictor,
  orifice,
  quickDisconnect,
  segmentedTube,
  shuttle,
  tube,
} from './inline.js';
import {
  pressureSequenceValve,
  pressureSwitch,
  priorityValve,
  relief,
  thermalRelief,
  unloader,
} from './pressure-valve.js';
import { compensatedPump, groundSupply, handPump, powerPack, pump } from './pump.js';
import { body, rect } from './shape.js';
import type { Drawing } from './shape.js';
import { accumulator, gasBottle, reservoir, standpipeReservoir } from './vessel.js';

export type { Drawing, Extent, Shape } from './shape.js';
export { tank } from './vessel.js';

type Name = DrawingSymbol['name'];

/** Symbols that no oil goes through stand in no circuit; should one, it is a plain box. */
const plain: Drawing = { box: [-2, -2, 2, 2], shapes: [body(rect(-2, -2, 4, 4))] };

const DRAWINGS: Readonly<Record<Name, Drawing>> = {
  pump,
  supply: groundSupply,
  'hand-pump': handPump,
  relief,
  check: checkValve,
  'one-way-restrictor': oneWayRestrictor,
  orifice,
  line: tube,
  filter,
  reservoir,
  selector: selector('closed'),
  'sequence-valve': sequenceValve,
  cylinder: cylinder([]),
  lock,
  leg: plain,
  door: plain,
  'compensated-pump': compensatedPump,
  unloader,
  'power-pack': powerPack,
  'open-centre-selector': openCentreSelector,
  hose,
  'segmented-line': segmentedTube,
  'pressure-sequence-valve': pressureSequenceValve,
  'priority-valve': priorityValve,
  'thermal-relief': thermalRelief,
  accumulator,
  'single-acting-cylinder': singleActing,
  'flow-regulator': flowRegulator,
  'manual-valve': manualValve,
  'solenoid-valve': solenoidValve('closed'),
  'solenoid-selector': solenoidSelector,
  'position-switch': plain,
  'pressure-switch': pressureSwitch,
  controller: plain,
  spring: plain,
  chain: plain,
  brace,
  linkage: plain,
  'quick-disconnect': quickDisconnect,
  'gas-bottle': gasBottle,
  'blow-down-valve': blowDownValve,
  'gas-line': tube,
  'gas-check': gasCheckValve,
  shuttle,
  'dump-valve': dumpValve,
  other: plain,
};

/** `traits`: what the figures of one device make different: its neutral, its rest, its cushions. */
export function drawingOf(name: Name, kind: string, traits: readonly string[]): Drawing {
  const [first = ''] = traits;
  if (kind === 'standpipe-reservoir') return standpipeReservoir;
  if (name === 'selector' && first !== '') return selector(first);
  if (name === 'solenoid-valve') return solenoidValve(first);
  if (name === 'cylinder') return cylinder(traits);
  return DRAWINGS[name];
}

const ANY = [0, 1, 2, 3];
/** Upside down only: their levers and springs stay at the sides. */
const OVER = [0, 2];

const TURNS: Readonly<Partial<Record<Name, readonly number[]>>> = {
  pump: ANY,
  supply: ANY,
  'hand-pump': ANY,
  'compensated-pump': ANY,
  relief: ANY,
  'thermal-relief': ANY,
  check: ANY,
  'gas-check': ANY,
  'one-way-restrictor': ANY,
  'flow-regulator': ANY,
  orifice: ANY,
  line: ANY,
  'gas-line': ANY,
  'segmented-line': ANY,
  hose: ANY,
  filter: ANY,
  'quick-disconnect': ANY,
  shuttle: ANY,
  'pressure-sequence-valve': ANY,
  'priority-valve': ANY,
  unloader: ANY,
  'dump-valve': OVER,
  'sequence-valve': OVER,
  'blow-down-valve': OVER,
  'solenoid-valve': OVER,
};

/** Quarter turns that a symbol may make to suit the lines that come to it. */
export function turnsOf(name: Name): readonly number[] {
  return TURNS[name] ?? [0];
}
