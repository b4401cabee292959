/** What a mechanic can do to tell causes apart: one line each. */
import type { CheckDefinition } from '../define/index.js';
import { bledAgain } from './bled-again.js';
import { bottleRead } from './bottle-read.js';
import { byPassFlow } from './by-pass-flow.js';
import { cappedLine } from './capped-line.js';
import { doorsLookedAt } from './doors-looked-at.js';
import { doorsOff } from './doors-off.js';
import { emergencyLookedAt } from './emergency-looked-at.js';
import { filterLook } from './filter-look.js';
import { leakDown } from './leak-down.js';
import { lineGauged } from './line-gauged.js';
import { lockLookedAt } from './lock-looked-at.js';
import { oilLookedAt } from './oil-looked-at.js';
import { plungerPressed } from './plunger-pressed.js';
import { plungerTravel } from './plunger-travel.js';
import { reliefTested } from './relief-tested.js';
import { riggingLookedAt } from './rigging-looked-at.js';
import { secondFlow } from './second-flow.js';
import { strutMeasured } from './strut-measured.js';
import { supplyMeasured } from './supply-measured.js';
import { swappedSides } from './swapped-sides.js';
import { switchesTried } from './switches-tried.js';
import { swungByHand } from './swung-by-hand.js';
import { valveBench } from './valve-bench.js';
import { warmOil } from './warm-oil.js';
import { wetLook } from './wet-look.js';

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
  ].map((check) => [check.kind, check]),
);
