/**
 * A valve that a hand or a pilot moves at a constant rate: lift 0 shut, 1 open, and a stop half way
 * where its handle has one. It turns back at once when it is told to.
 */
import type {
  Frame,
  Guard,
  GuardFrame,
  ModeDefinition,
  StateDefinition,
} from '../../define/index.js';
import { rise, riseSlope } from './smooth.js';

/** Longest step while it moves, share of the time it takes. */
const STEP = 0.05;
export const liftState: StateDefinition = {
  title: 'lift (0 shut, 1 open)',
  unit: '',
  scale: 1,
  initial: 0,
};

/** Causes for the log, as clauses. */
export interface LiftCauses {
  readonly opens: string;
  readonly closes: string;
  readonly reads: readonly string[];
}

/** What moves the valve; the lift and its rate (1/s) are number 0 of the states and of `k`. */
export interface LiftDrive {
  /** Above zero where it should be opened further, or shut further, than it is. */
  readonly more: (d: GuardFrame) => number;
  readonly less: (d: GuardFrame) => number;
  /** Whether half way is where it should stop; never, when absent. */
  readonly half?: (d: GuardFrame) => boolean;
}

/** Modes closed, opening, open, closing; half after them where it may stop there. */
export function liftModes(
  { more, less, half }: LiftDrive,
  { opens, closes, reads }: LiftCauses,
): Readonly<Record<string, ModeDefinition>> {
  const longestStep = (d: GuardFrame): number => STEP / d.k[0];
  const open = { to: 'opening', when: more, cause: opens, reads };
  const close = { to: 'closing', when: less, cause: closes, reads };
  const halfWay = (sense: 1 | -1): Guard[] => {
    if (half === undefined) return [];
    const when = (d: GuardFrame): number => (half(d) ? sense * (d.state(0) - 0.5) : -1);
    return [{ to: 'half', when, cause: 'the valve is half open' }];
  };
  const at = (lift: number) => (_d: GuardFrame, states: Float64Array) => {
    states[0] = lift;
  };
  return {
    closed: { title: 'closed', enter: at(0), guards: [open] },
    opening: {
      title: 'opening',
      active: true,
      longestStep,
      guards: [
        { to: 'open', when: (d) => d.state(0) - 1, cause: 'the valve is fully open' },
        ...halfWay(1),
        close,
      ],
    },
    open: { title: 'open', active: true, enter: at(1), guards: [close] },
    closing: {
      title: 'closing',
      active: true,
      longestStep,
      guards: [
        { to: 'closed', when: (d) => -d.state(0), cause: 'the valve is shut' },
        ...halfWay(-1),
        open,
      ],
    },
    ...(half && {
      half: { title: 'half open', active: true, enter: at(0.5), guards: [open, close] },
    }),
  };
}

const OPENING = 1;
const CLOSING = 3;

/** Moves the lift; position among the modes as {@link liftModes} declares them. */
export function moveLift(d: Frame): void {
  d.rate(0, d.mode === OPENING ? d.k[0] : d.mode === CLOSING ? -d.k[0] : 0);
}

/** Opens a passage with the lift from a share `k[ajar]` to a share `k[most]`. */
export function openWithLift(d: Frame, path: number, ajar: number, most: number): void {
  const x = d.state(0);
  const adds = d.k[most] - d.k[ajar];
  d.opening(path, d.k[ajar] + (adds > 0 ? adds * rise(x) : 0));
  d.openingSlope(path, adds > 0 ? adds * riseSlope(x) : 0);
}
