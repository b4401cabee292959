/** A run that is held, to set those beside it that other parts or figures lead to, however many steps it takes. */
import type { Picture } from '../worker/message.js';
import { leastOf } from './nearest.js';
import { orderOf } from './order.js';
import type { Arrival } from './order.js';
import { titleOfRun } from './sentence.js';
import type { Former } from './state.js';

export interface Held extends Former {
  /** Flags that are no mere notes. */
  readonly flags: number;
  /** The clearance nearest to its limit, m; undefined when none is judged. */
  readonly least: number | undefined;
  readonly order: readonly Arrival[];
}

/** @param picture judged */
export function heldOf(picture: Picture): Held {
  return {
    title: titleOfRun(picture),
    timings: picture.timings,
    flags: picture.flags.filter((f) => f.severity !== 'note').length,
    least: leastOf(picture)?.least.gap.distance,
    order: orderOf(picture),
  };
}
