/** The catalogue of faults: one line each. */
import type { FaultDefinition } from '../define/index.js';
import { checkValveLeak } from './check-valve-leak.js';
import { doorSealTight } from './door-seal-tight.js';
import { dryBearing } from './dry-bearing.js';
import { filterLoaded } from './filter-loaded.js';
import { groundSupplyWeak } from './ground-supply-weak.js';
import { linePinched } from './line-pinched.js';
import { pistonSealBypass } from './piston-seal-bypass.js';
import { plungerRiggedEarly } from './plunger-rigged-early.js';
import { plungerRiggedLate } from './plunger-rigged-late.js';
import { pumpWorn } from './pump-worn.js';
import { reliefDirtHeld } from './relief-dirt-held.js';
import { reliefSetLow } from './relief-set-low.js';
import { restrictorBlocked } from './restrictor-blocked.js';
import { restrictorOpen } from './restrictor-open.js';
import { restrictorReversed } from './restrictor-reversed.js';
import { rodSealLeak } from './rod-seal-leak.js';
import { selectorLeak } from './selector-leak.js';
import { stickingSequenceValve } from './sticking-sequence-valve.js';
import { strutOvercharged } from './strut-overcharged.js';
import { uplockMisrigged } from './uplock-misrigged.js';

const all: readonly FaultDefinition[] = [
  plungerRiggedEarly,
  plungerRiggedLate,
  pistonSealBypass,
  rodSealLeak,
  reliefSetLow,
  reliefDirtHeld,
  restrictorBlocked,
  restrictorOpen,
  restrictorReversed,
  stickingSequenceValve,
  checkValveLeak,
  filterLoaded,
  pumpWorn,
  selectorLeak,
  linePinched,
  dryBearing,
  doorSealTight,
  uplockMisrigged,
  strutOvercharged,
  groundSupplyWeak,
];

/** Every fault by its name, in the order of the lists. */
export const faults: Readonly<Record<string, FaultDefinition>> = Object.fromEntries(
  all.map((fault) => [fault.kind, fault]),
);
