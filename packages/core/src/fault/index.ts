/** The catalogue of faults: one line each. */
import type { FaultDefinition } from '../define/index.js';
import { blowDownCableBroken } from './blow-down-cable-broken.js';
import { bottleValveLeak } from './bottle-valve-leak.js';
import { bottleLow } from './bottle-low.js';
import { dumpValveOpen } from './dump-valve-open.js';
import { dumpValveNotVenting } from './dump-valve-not-venting.js';
import { shuttleCrossLeak } from './shuttle-cross-leak.js';
import { shuttleStuckEmergency } from './shuttle-stuck-emergency.js';
import { shuttleStuckNormal } from './shuttle-stuck-normal.js';
import { sealIced } from './seal-iced.js';
import { accumulatorPrechargeHigh } from './accumulator-precharge-high.js';
import { accumulatorPrechargeLow } from './accumulator-precharge-low.js';
import { accumulatorSealLeak } from './accumulator-seal-leak.js';
import { actuatorBottomsEarly } from './actuator-bottoms-early.js';
import { actuatorCheckLeftOut } from './actuator-check-left-out.js';
import { actuatorReversed } from './actuator-reversed.js';
import { airAcrossSequenceValve } from './air-across-sequence-valve.js';
import { bentBrace } from './bent-brace.js';
import { boreGalled } from './bore-galled.js';
import { bungeeWeak } from './bungee-weak.js';
import { chainJumpedTooth } from './chain-jumped-tooth.js';
import { chainSlack } from './chain-slack.js';
import { checkValveBackward } from './check-valve-backward.js';
import { checkValveLeak } from './check-valve-leak.js';
import { coldOil } from './cold-oil.js';
import { contaminatedOil } from './contaminated-oil.js';
import { debrisLodged } from './debris-lodged.js';
import { doorLinkageBinding } from './door-linkage-binding.js';
import { doorLoose } from './door-loose.js';
import { doorRestraintOut } from './door-restraint-out.js';
import { doorSealTight } from './door-seal-tight.js';
import { downlockNotOverCentre } from './downlock-not-over-centre.js';
import { downlockStiff } from './downlock-stiff.js';
import { dryBearing } from './dry-bearing.js';
import { electricSupplyWeak } from './electric-supply-weak.js';
import { filterLoaded } from './filter-loaded.js';
import { fittingLeak } from './fitting-leak.js';
import { freeAir } from './free-air.js';
import { groundSupplyWeak } from './ground-supply-weak.js';
import { handPumpLineAir } from './hand-pump-line-air.js';
import { handPumpOutletCheckBackward } from './hand-pump-outlet-check-backward.js';
import { handPumpOutletCheckOpen } from './hand-pump-outlet-check-open.js';
import { handPumpPistonLeak } from './hand-pump-piston-leak.js';
import { hoseLinerFlap } from './hose-liner-flap.js';
import { hoseSwollen } from './hose-swollen.js';
import { internalLockWorn } from './internal-lock-worn.js';
import { linePinched } from './line-pinched.js';
import { linePinhole } from './line-pinhole.js';
import { linesTransposed } from './lines-transposed.js';
import { oilTooThick } from './oil-too-thick.js';
import { oilTooThin } from './oil-too-thin.js';
import { packSpoolOffStop } from './pack-spool-off-stop.js';
import { packTransferValveLeak } from './pack-transfer-valve-leak.js';
import { pistonSealBypass } from './piston-seal-bypass.js';
import { plungerLoadHigh } from './plunger-load-high.js';
import { plungerRiggedEarly } from './plunger-rigged-early.js';
import { plungerRiggedLate } from './plunger-rigged-late.js';
import { pressureSequenceValveSetHigh } from './pressure-sequence-valve-set-high.js';
import { pressureSequenceValveSetLow } from './pressure-sequence-valve-set-low.js';
import { pressureSwitchSetLow } from './pressure-switch-set-low.js';
import { pumpJointLeak } from './pump-joint-leak.js';
import { pumpShaftSheared } from './pump-shaft-sheared.js';
import { pumpWorn } from './pump-worn.js';
import { quickDisconnectHalfMated } from './quick-disconnect-half-mated.js';
import { reliefDirtHeld } from './relief-dirt-held.js';
import { reliefSetHigh } from './relief-set-high.js';
import { reliefSetLow } from './relief-set-low.js';
import { reservoirLow } from './reservoir-low.js';
import { reservoirVentBlocked } from './reservoir-vent-blocked.js';
import { restrictorBlocked } from './restrictor-blocked.js';
import { restrictorCheckStuckShut } from './restrictor-check-stuck-shut.js';
import { restrictorOpen } from './restrictor-open.js';
import { restrictorReversed } from './restrictor-reversed.js';
import { returnBackPressure } from './return-back-pressure.js';
import { returnFilterLoaded } from './return-filter-loaded.js';
import { rodSealLeak } from './rod-seal-leak.js';
import { sealFragmentJam } from './seal-fragment-jam.js';
import { selectorFeedLeak } from './selector-feed-leak.js';
import { selectorLeak } from './selector-leak.js';
import { selectorLinkageDetached } from './selector-linkage-detached.js';
import { selectorNotInDetent } from './selector-not-in-detent.js';
import { selectorReturnLeak } from './selector-return-leak.js';
import { sequenceValveLeak } from './sequence-valve-leak.js';
import { sequenceValveStuckShut } from './sequence-valve-stuck-shut.js';
import { shorteningLinkBroken } from './shortening-link-broken.js';
import { squatSwitchStuck } from './squat-switch-stuck.js';
import { steeringMisaligned } from './steering-misaligned.js';
import { stickingSequenceValve } from './sticking-sequence-valve.js';
import { strikerWorn } from './striker-worn.js';
import { strutNotExtended } from './strut-not-extended.js';
import { strutOvercharged } from './strut-overcharged.js';
import { suctionAirLeak } from './suction-air-leak.js';
import { suctionLineCollapsed } from './suction-line-collapsed.js';
import { switchMisrigged } from './switch-misrigged.js';
import { thermalContraction } from './thermal-contraction.js';
import { thermalExpansion } from './thermal-expansion.js';
import { thermalReliefSetHigh } from './thermal-relief-set-high.js';
import { thermalReliefStuckOpen } from './thermal-relief-stuck-open.js';
import { trappedPressure } from './trapped-pressure.js';
import { unloaderBypassLeak } from './unloader-bypass-leak.js';
import { unloaderCheckLeak } from './unloader-check-leak.js';
import { uplatchCableStretched } from './uplatch-cable-stretched.js';
import { uplockMisrigged } from './uplock-misrigged.js';
import { uplockReleaseLeak } from './uplock-release-leak.js';
import { uplockRollerSeized } from './uplock-roller-seized.js';
import { uplockSpringWeak } from './uplock-spring-weak.js';
import { waterInOil } from './water-in-oil.js';
import { workingSystemLeak } from './working-system-leak.js';
import { wrongBaseFluid } from './wrong-base-fluid.js';

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
  sealFragmentJam,
  boreGalled,
  actuatorReversed,
  actuatorBottomsEarly,
  internalLockWorn,
  bentBrace,
  doorLoose,
  doorRestraintOut,
  uplockSpringWeak,
  uplockRollerSeized,
  uplockReleaseLeak,
  downlockNotOverCentre,
  bungeeWeak,
  downlockStiff,
  strutNotExtended,
  shorteningLinkBroken,
  steeringMisaligned,
  chainSlack,
  chainJumpedTooth,
  doorLinkageBinding,
  uplatchCableStretched,
  switchMisrigged,
  squatSwitchStuck,
  pumpJointLeak,
  pumpShaftSheared,
  suctionAirLeak,
  reservoirLow,
  reservoirVentBlocked,
  suctionLineCollapsed,
  reliefSetHigh,
  thermalReliefStuckOpen,
  thermalReliefSetHigh,
  unloaderBypassLeak,
  unloaderCheckLeak,
  workingSystemLeak,
  accumulatorPrechargeLow,
  accumulatorPrechargeHigh,
  accumulatorSealLeak,
  pressureSwitchSetLow,
  electricSupplyWeak,
  returnFilterLoaded,
  quickDisconnectHalfMated,
  handPumpOutletCheckOpen,
  handPumpOutletCheckBackward,
  handPumpPistonLeak,
  handPumpLineAir,
  freeAir,
  coldOil,
  oilTooThick,
  oilTooThin,
  wrongBaseFluid,
  contaminatedOil,
  waterInOil,
  thermalContraction,
  thermalExpansion,
  selectorReturnLeak,
  selectorFeedLeak,
  selectorNotInDetent,
  selectorLinkageDetached,
  strikerWorn,
  plungerLoadHigh,
  sequenceValveLeak,
  sequenceValveStuckShut,
  airAcrossSequenceValve,
  pressureSequenceValveSetLow,
  pressureSequenceValveSetHigh,
  restrictorCheckStuckShut,
  checkValveBackward,
  actuatorCheckLeftOut,
  linesTransposed,
  hoseLinerFlap,
  hoseSwollen,
  linePinhole,
  fittingLeak,
  debrisLodged,
  trappedPressure,
  returnBackPressure,
  packTransferValveLeak,
  packSpoolOffStop,
  shuttleStuckNormal,
  shuttleStuckEmergency,
  shuttleCrossLeak,
  dumpValveNotVenting,
  dumpValveOpen,
  bottleLow,
  bottleValveLeak,
  blowDownCableBroken,
  sealIced,
];

/** Every fault by its name, in the order of the lists. */
export const faults: Readonly<Record<string, FaultDefinition>> = Object.fromEntries(
  all.map((fault) => [fault.kind, fault]),
);
