/**
 * What selectors share: a spool that travels at a constant rate between neutral (0), up (+1) and
 * down (-1), lands that open smoothly (C1) with it once it has passed their overlap and leak a
 * little, laminar, where they are shut, and the lever that moves it. The spool finishes a shift
 * before it answers the lever again.
 */
import type {
  DeviceDefinition,
  Frame,
  Guard,
  GuardFrame,
  ModeDefinition,
  Parameters,
} from '../../define/index.js';
import { number } from './parameters.js';
import { LEVER } from './selector.js';
import { rise, riseSlope } from './smooth.js';

export const SPOOL = 0;
/** Remembers the shift under way: +2 to up, -2 to down, +1 or -1 to neutral from below or above; 0 at rest. */
export const DRIVE = 1;

const RATE = 0;
const FEED_LAP = 1;
const RETURN_LAP = 3;
export const REST = 5;
const UP_END = 6;
const DOWN_END = 7;
const LINKED = 8;
/** Numbers a spool needs in `k`, from the first. */
export const SPOOL_SIZE = 9;

const FEED_UP = 0;
const FEED_DOWN = 1;
const RETURN_UP = 2;
const RETURN_DOWN = 3;

/** Longest step while the spool moves, share of the time from neutral to either end. */
const SHIFT_STEP = 0.05;

/** Where the lever wants the spool: 1 up, 0 neutral, -1 down. */
export const wanted = (d: GuardFrame): number => 1 - d.input(0);

/** Writes the spool's constants; `feed` and `back` are 1 for lands shut in neutral, -1 for open ones. */
export function writeSpool(k: Float64Array, p: Parameters, feed: number, back: number): void {
  const overlap = number(p, 'overlap');
  const rigging = number(p, 'rigging');
  const reach = 1 - number(p, 'stopShort');
  k[RATE] = 1 / number(p, 'shiftTime');
  k[FEED_LAP] = feed * overlap;
  k[FEED_LAP + 1] = 1 / (1 - feed * overlap);
  k[RETURN_LAP] = back * overlap;
  k[RETURN_LAP + 1] = 1 / (1 - back * overlap);
  k[REST] = rigging;
  // The valve's own stops end the shift; a linkage out of rig reaches only one of them.
  k[UP_END] = Math.min(1, 1 + rigging) * reach;
  k[DOWN_END] = -Math.min(1, 1 - rigging) * reach;
  k[LINKED] = p.linked === false ? 0 : 1;
}

/**
 * One land: `sense` is the spool's direction that opens it, `lap` and the next number of `k` its
 * overlap and 1 / (1 - overlap).
 */
function land(d: Frame, path: number, sense: number, lap: number): void {
  const perLift = d.k[lap + 1];
  const x = (sense * d.state(SPOOL) - d.k[lap]) * perLift;
  d.opening(path, rise(x));
  d.openingSlope(path, sense * riseSlope(x) * perLift);
}

/** Opens the four lands. */
export function lands(d: Frame): void {
  land(d, FEED_UP, 1, FEED_LAP);
  land(d, FEED_DOWN, -1, FEED_LAP);
  land(d, RETURN_UP, -1, RETURN_LAP);
  land(d, RETURN_DOWN, 1, RETURN_LAP);
}

/** Speed of the spool while it shifts. */
export function shiftRate(d: Frame): number {
  return Math.sign(d.state(DRIVE)) * d.k[RATE];
}

/** The lever is elsewhere than at `lever`, and linked. */
export function leverGuard(lever: number): Guard {
  return {
    to: 'shifting',
    when: (d) => d.k[LINKED] * Math.abs(d.input(0) - lever) - 0.5,
    cause: 'the lever is moved',
    reads: ['lever'],
  };
}

/** Positive when the lever is linked. */
export const linked = (d: GuardFrame): boolean => d.k[LINKED] === 1;

function resting(title: string, lever: number, end: number): ModeDefinition {
  return {
    title,
    guards: [leverGuard(lever)],
    enter: (d, states) => {
      states[SPOOL] = d.k[end];
      states[DRIVE] = 0;
    },
  };
}

/** At the start of a run: a spool that does not stand at 0 is put where it belongs. */
function atStart(lever: number): Guard {
  return {
    to: LEVER[lever],
    when: (d) => (d.state(DRIVE) === 0 && d.input(0) === lever ? 1 : -1),
    cause: 'the lever stands there at the start',
    reads: ['lever'],
  };
}

export const spoolModes: Readonly<Record<'neutral' | 'up' | 'down' | 'shifting', ModeDefinition>> =
  {
    neutral: resting('neutral', 1, REST),
    up: resting('up', 0, UP_END),
    down: resting('down', 2, DOWN_END),
    shifting: {
      title: 'shifting',
      active: true,
      // A land shuts within a small part of the shift.
      longestStep: (d) => SHIFT_STEP / d.k[RATE],
      enter: (d, states) => {
        const goal = wanted(d);
        states[DRIVE] = goal !== 0 ? 2 * goal : d.state(SPOOL) > d.k[REST] ? -1 : 1;
      },
      guards: [
        {
          to: 'up',
          when: (d) => (d.state(DRIVE) > 1.5 ? d.state(SPOOL) - d.k[UP_END] : -1),
          cause: 'the spool reaches up',
        },
        {
          to: 'down',
          when: (d) => (d.state(DRIVE) < -1.5 ? d.k[DOWN_END] - d.state(SPOOL) : -1),
          cause: 'the spool reaches down',
        },
        {
          to: 'neutral',
          when: (d) => {
            const drive = d.state(DRIVE);
            return drive < 1.5 && drive > -1.5
              ? Math.sign(drive) * (d.state(SPOOL) - d.k[REST])
              : -1;
          },
          cause: 'the spool reaches neutral',
        },
        atStart(0),
        atStart(1),
        atStart(2),
      ],
    },
  };

/** A spool at 0 starts in neutral; any other is first put in its place, see {@link atStart}. */
export function spoolStart(p: Parameters): string {
  return p.start === 'neutral' && p.rigging === 0 ? 'neutral' : 'shifting';
}

/** The spool must come past neutral on either side. */
export const spoolCheck: NonNullable<DeviceDefinition['check']> = (p) =>
  1 - number(p, 'stopShort') > Math.abs(number(p, 'rigging'))
    ? []
    : [{ parameter: 'stopShort', message: 'leaves the spool short of where it stands in neutral' }];
