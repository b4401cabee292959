/** What a lock of a unit does at a time: a hook, a plunger, a brace past centre, a jack that locks itself. */
import type { Picture, UnitFacts } from '../worker/message.js';
import { angleOf, stateAt, stretches } from './history.js';

export interface LockState {
  /** Its mode in the log's words; empty when the unit has no such lock. */
  readonly mode: string;
  readonly holds: boolean;
}

export function lockState(
  picture: Picture,
  unit: UnitFacts,
  which: 'uplock' | 'downlock',
  time: number,
): LockState {
  const name = unit[which];
  if (name === '') return { mode: '', holds: false };
  const mode = stateAt(stretches(picture, name, 'mode'), time);
  const shut = mode === 'engaged' || mode.startsWith('locked ');
  return {
    mode,
    holds: shut && (unit.uplock !== unit.downlock || isNear(picture, unit, which, time)),
  };
}

/** One jack may lock the leg at both ends: it then holds at the end where the leg is. */
function isNear(
  picture: Picture,
  unit: UnitFacts,
  which: 'uplock' | 'downlock',
  time: number,
): boolean {
  const o = picture.outlines.find((each) => each.mechanism === unit.leg);
  if (o === undefined) return true;
  const up = (angleOf(picture, unit.leg, time) ?? o.low) > (o.low + o.high) / 2;
  return up === (which === 'uplock');
}
