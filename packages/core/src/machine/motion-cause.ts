import type { Network } from '../network/index.js';
import type { Causes } from './cause.js';
import type { Log } from './log.js';
import type { MotionChange } from './motion.js';

/** Cause of a motion entry: a clause, and the log entry behind it. */
export interface MotionCause {
  readonly cause: string;
  readonly by: number;
}

/** What brought a motion about, at the point last evaluated. */
export function motionCause(
  network: Network,
  causes: Causes,
  log: Log,
  c: number,
  { event, direction }: MotionChange,
): MotionCause {
  const own = log.lastOf(network.plan.coordinates[c].name);
  switch (event) {
    case 'arrives':
      return { cause: 'reached the stop', by: own };
    case 'rebounds':
      return { cause: 'rebounds from the stop', by: own };
    case 'stops':
      return { cause: 'pressure and load balance within friction', by: own };
    case 'freed': {
      const by = log.latestOf(causes.locksOf(c));
      return { cause: by < 0 ? 'let go' : `let go by ${log.entries[by].device}`, by };
    }
    case 'starts':
    case 'turns':
      return setOff(network, causes, log, c, direction, event === 'starts' ? own : -1);
  }
}

/**
 * Why a coordinate sets off in a direction: which of pressure and load drives it, and which
 * lock let it go since it came to rest at entry `rest` (-1: under way).
 */
function setOff(
  network: Network,
  causes: Causes,
  log: Log,
  c: number,
  direction: number,
  rest: number,
): MotionCause {
  const w = network.workspace;
  const load = direction * network.staticMoment(c);
  const push = direction * w.drive[c] - load;
  // Where the load wins, a change on either side may have let it.
  const behind = causes
    .pushesOn(c)
    .filter((p) => push <= 0 || direction * p.area * w.ratio[p.attachment] > 0)
    .flatMap((p) => p.behind);
  const valve = log.latestOf(behind);
  const lock = log.latestOf(causes.locksOf(c));
  const freed = lock > valve && rest >= 0 && (lock > rest || log.entries[rest].by === lock);
  const pressure = valve < 0 ? 'pressure' : `pressure from ${log.entries[valve].device}`;
  const words =
    load <= 0
      ? `${pressure} overcomes friction and load`
      : push <= 0
        ? 'weight and springs overcome friction and pressure'
        : `weight and springs, with ${pressure}, overcome friction`;
  return {
    cause: freed ? `let go by ${log.entries[lock].device}, ${words}` : words,
    by: freed ? lock : valve,
  };
}
