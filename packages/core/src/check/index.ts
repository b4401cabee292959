/** What a mechanic can do to tell causes apart: one line each. */
import type { CheckDefinition } from '../define/index.js';
import { betterWarm } from './better-warm.js';
import { bledAgain } from './bled-again.js';
import { bottleRead } from './bottle-read.js';
import { byPassFlow } from './by-pass-flow.js';
import { cappedLine } from './capped-line.js';
import { doorsLookedAt } from './doors-looked-at.js';
import { doorsOff } from './doors-off.js';
import { emergencyLookedAt } from './emergency-looked-at.js';
import { filterLook } from './filter-look.js';
import { firstCycleOnly } from './first-cycle-only.js';
import { hammering } from './hammering.js';
import { handleHeavy } from './handle-heavy.js';
import { handleKicks } from './handle-kicks.js';
import { handleSlack } from './handle-slack.js';
import { handleSolid } from './handle-solid.js';
import { handleSpringy } from './handle-springy.js';
import { leakDown } from './leak-down.js';
import { levelLow } from './level-low.js';
import { lightAgainstLock } from './light-against-lock.js';
import { lineCracked } from './line-cracked.js';
import { lineGauged } from './line-gauged.js';
import { lockLetGo } from './lock-let-go.js';
import { lockLookedAt } from './lock-looked-at.js';
import { oilLookedAt } from './oil-looked-at.js';
import { pivotsLookedAt } from './pivots-looked-at.js';
import { plungerPressed } from './plunger-pressed.js';
import { plungerTravel } from './plunger-travel.js';
import { pushedToLock } from './pushed-to-lock.js';
import { reliefTested } from './relief-tested.js';
import { riggingLookedAt } from './rigging-looked-at.js';
import { secondFlow } from './second-flow.js';
import { strutMeasured } from './strut-measured.js';
import { supplyMeasured } from './supply-measured.js';
import { supplySwapped } from './supply-swapped.js';
import { swappedSides } from './swapped-sides.js';
import { switchesTried } from './switches-tried.js';
import { swungByHand } from './swung-by-hand.js';
import { valveBench } from './valve-bench.js';
import { valveMovedAside } from './valve-moved-aside.js';
import { warmOil } from './warm-oil.js';
import { wetLook } from './wet-look.js';
import { workDone } from './work-done.js';

export const checks: Readonly<Record<string, CheckDefinition>> = Object.fromEntries(
  [
    secondFlow,
    warmOil,
    doorsOff,
    byPassFlow,
    cappedLine,
    leakDown,
    wetLook,
    swungByHand,
    plungerTravel,
    plungerPressed,
    valveBench,
    swappedSides,
    lineGauged,
    filterLook,
    reliefTested,
    supplyMeasured,
    oilLookedAt,
    bledAgain,
    strutMeasured,
    lockLookedAt,
    doorsLookedAt,
    riggingLookedAt,
    switchesTried,
    bottleRead,
    emergencyLookedAt,
    hammering,
    handleKicks,
    handleSolid,
    handleSpringy,
    handleSlack,
    handleHeavy,
    firstCycleOnly,
    betterWarm,
    supplySwapped,
    levelLow,
    lineCracked,
    valveMovedAside,
    pushedToLock,
    lockLetGo,
    lightAgainstLock,
    workDone,
    pivotsLookedAt,
  ].map((check) => [check.kind, check]),
);
