/**
 * The words of a valve that something pushes open: closed, partly open, open.
 */
import type { GuardFrame, ModeDefinition } from '../../define/index.js';

/** Causes for the log, as clauses. */
export interface OpeningCauses {
  readonly lifts: string;
  readonly full: string;
  readonly seats: string;
  readonly back: string;
}

/**
 * Modes of a valve whose lift is `x`: shut at 0 and below, full at 1. It must come back by `slack`
 * before the log says so, so that what rests just there does not chatter.
 */
export function openingModes(
  x: (d: GuardFrame) => number,
  slack: number,
  reads: readonly string[],
  causes: OpeningCauses,
): Readonly<Record<'closed' | 'opening' | 'open', ModeDefinition>> {
  return {
    closed: {
      title: 'closed',
      guards: [{ to: 'opening', when: x, cause: causes.lifts, reads }],
    },
    opening: {
      title: 'partly open',
      active: true,
      guards: [
        { to: 'open', when: (d) => x(d) - 1, cause: causes.full, reads },
        { to: 'closed', when: (d) => -slack - x(d), cause: causes.seats, reads },
      ],
    },
    open: {
      title: 'open',
      active: true,
      guards: [{ to: 'opening', when: (d) => 1 - slack - x(d), cause: causes.back, reads }],
    },
  };
}
