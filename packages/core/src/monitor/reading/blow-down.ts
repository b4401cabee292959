import type { Evidence, UnitEntry } from '../../define/index.js';
import { devicesOf } from './line.js';
import { lockedSince, moves, units, type Move } from './motion.js';
import { trace, valueAt } from './span.js';

/** The move that the gas makes, if the handle is pulled in this run. */
export function blowDown(e: Evidence): Move | undefined {
  return moves(e).find(({ by }) => by === 'gas');
}

/** When each unit was locked down in that move; undefined where it never was. */
export function lockedDown(
  e: Evidence,
  move: Move,
): readonly { readonly name: string; readonly unit: UnitEntry; readonly at: number | undefined }[] {
  return units(e).map(({ name, unit }) => {
    const since = lockedSince(e, unit, 'down', move.end);
    return { name, unit, at: since === undefined ? undefined : Math.max(since, move.start) };
  });
}

/** Gauge pressure of a node at a time, Pa; undefined when it is not known. */
export function gaugeAt(e: Evidence, node: string, t: number): number | undefined {
  const series = trace(e, `${node}.pressure`);
  return series === undefined ? undefined : valueAt(series, t) - e.scenario.ambient;
}

/** The bottles of the aircraft with what their gauge shows at a time, Pa. */
export function bottlesAt(
  e: Evidence,
  t: number,
): readonly { readonly name: string; readonly gauge: number }[] {
  return devicesOf(e, 'gas-supply').flatMap((name) => {
    const series = trace(e, `${name}.gauge`);
    return series === undefined ? [] : [{ name, gauge: valueAt(series, t) }];
  });
}
