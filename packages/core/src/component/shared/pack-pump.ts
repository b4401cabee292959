/**
 * The turning part of a power pack: a pump that runs both ways between the ports `down` and
 * `pumpUp`, its shaft and the shuttle spool its two sides push. Its device has the states
 * `speed` and `spool` first, and its modes in the order of {@link way}.
 */
import type { Frame, GuardFrame } from '../../define/index.js';
import { accelerationSlope, MOTOR_SIZE, ownAcceleration, perInertia } from './motor.js';
import { SPOOL_SIZE, spoolGoal, spoolGoalSlope, spoolRate } from './pack-spool.js';
import { fed, fedSlope } from './suction.js';

/** Places in `k`: the motor's numbers come first. */
export const SPOOL_AT = MOTOR_SIZE;
export const DISPLACEMENT = SPOOL_AT + SPOOL_SIZE;

/** Ports, states and the pump's path of a power pack. */
export const DOWN = 1;
export const PUMP_UP = 3;
export const SPEED = 0;
export const SPOOL = 1;
const DELIVERY = 0;

/** Which way the motor is switched: modes off, up, up held, down, down held. */
export function way(d: GuardFrame): number {
  return d.mode === 1 ? 1 : d.mode === 3 ? -1 : 0;
}

/** The pump between its two sides. The side it draws from feeds it. */
export function packPump(d: Frame): void {
  const w = d.state(SPEED);
  const displaced = d.k[DISPLACEMENT] * w;
  const from = w >= 0 ? DOWN : PUMP_UP;
  const share = fed(d, from);
  const slope = displaced * fedSlope(d, from);
  d.flow(DELIVERY, displaced * share, w >= 0 ? slope : 0, w >= 0 ? 0 : slope);
  d.flowAlso(DELIVERY, 0, d.k[DISPLACEMENT] * share);
}

/** Shaft and spool. */
export function packShaft(d: Frame): void {
  const turned = way(d);
  const load = d.k[DISPLACEMENT] * perInertia(d);
  d.rate(
    SPEED,
    ownAcceleration(d, SPEED, turned) - load * (d.pressure(PUMP_UP) - d.pressure(DOWN)),
  );
  d.rateAlso(SPEED, 0, accelerationSlope(d, SPEED, turned));
  d.rateAlso(SPEED, 1, -load);
  d.rateAlso(SPEED, 2, load);
  const follow = spoolRate(d, SPOOL_AT);
  const slope = spoolGoalSlope(d, SPOOL_AT, PUMP_UP, DOWN) * follow;
  d.rate(SPOOL, (spoolGoal(d, SPOOL_AT, PUMP_UP, DOWN) - d.state(SPOOL)) * follow);
  d.rateAlso(SPOOL, 0, -follow);
  d.rateAlso(SPOOL, 1, slope);
  d.rateAlso(SPOOL, 2, -slope);
}
