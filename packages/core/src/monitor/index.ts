import type { Evidence, Flag, RuleDefinition, Severity } from '../define/index.js';
import { bayClearance } from './bay-clearance.js';
import { blowDownSpread } from './blow-down-spread.js';
import { blowDownTime } from './blow-down-time.js';
import { bottleCharge } from './bottle-charge.js';
import { cavitation } from './cavitation.js';
import { clearance } from './clearance.js';
import { doorBeforeLeg } from './door-before-leg.js';
import { doorClearance } from './door-clearance.js';
import { doorNotClosed } from './door-not-closed.js';
import { doorsClash } from './doors-clash.js';
import { gasExhausted } from './gas-exhausted.js';
import { gasInReturn } from './gas-in-return.js';
import { hardArrival } from './hard-arrival.js';
import { kinds } from './kind/index.js';
import { legBeforeDoor } from './leg-before-door.js';
import { legNotLocked } from './leg-not-locked.js';
import { lineVelocity } from './line-velocity.js';
import { motorStalled } from './motor-stalled.js';
import { notFinished } from './not-finished.js';
import { peakPressure } from './peak-pressure.js';
import { reliefFlowing } from './relief-flowing.js';
import { retractSideNotVented } from './retract-side-not-vented.js';
import { sequenceValveEarly } from './sequence-valve-early.js';
import { shuttleNotShifted } from './shuttle-not-shifted.js';
import { slowSwing } from './slow-swing.js';
import { spread } from './spread.js';
import { starvedSupply } from './starved-supply.js';
import { supplyCycling } from './supply-cycling.js';
import { switchBeforeLock } from './switch-before-lock.js';
import { trappedPressure } from './trapped-pressure.js';
import { uncommandedMotion } from './uncommanded-motion.js';

export { clearancesOf, type Clearance } from './reading/pairs.js';
export type { Gap } from './reading/gap.js';
export { legSwitches, lightOn, lightSwitches } from './reading/light.js';
export { firstPull, holding, moves, type Move } from './reading/motion.js';
export { trace, valueAt } from './reading/span.js';
export { doorsHome, doorsOpened, doorsStrayed, timings } from './timings.js';

const list: readonly RuleDefinition[] = [
  doorBeforeLeg,
  legBeforeDoor,
  sequenceValveEarly,
  clearance,
  doorClearance,
  bayClearance,
  doorsClash,
  spread,
  legNotLocked,
  switchBeforeLock,
  doorNotClosed,
  uncommandedMotion,
  trappedPressure,
  hardArrival,
  peakPressure,
  cavitation,
  reliefFlowing,
  starvedSupply,
  supplyCycling,
  motorStalled,
  slowSwing,
  lineVelocity,
  blowDownTime,
  blowDownSpread,
  gasExhausted,
  shuttleNotShifted,
  retractSideNotVented,
  gasInReturn,
  bottleCharge,
  notFinished,
];

/** Built-in rules by name, in the order they are listed and judged. */
export const rules: Readonly<Record<string, RuleDefinition>> = Object.fromEntries(
  list.map((rule) => [rule.name, rule]),
);

const RANK: Readonly<Record<Severity, number>> = { fail: 0, caution: 1, note: 2 };

/**
 * Everything the built-in rules and the scenario's own have to say about a run or a recording:
 * worst first (fail, caution, note), then by time. A rule says nothing where the evidence does
 * not reach: no such channel, limit, device or event.
 */
export function judge(e: Evidence): readonly Flag[] {
  const flags = [
    ...Object.values(rules).flatMap((rule) => rule.judge(e)),
    ...e.scenario.rules.flatMap((rule) => kinds[rule.kind](e, rule)),
  ];
  // Array sort is stable, so equal flags keep the order of the catalogue.
  return flags.sort((a, b) => RANK[a.severity] - RANK[b.severity] || a.from - b.from);
}
