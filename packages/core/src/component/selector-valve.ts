/**
 * Selector valve, four ways and three positions. The spool travels at a constant rate; each of
 * its four lands opens smoothly (C1) with the spool once it has passed its overlap, and every
 * land leaks a little, laminar, where it is shut. A negative overlap (open centre) leaves a
 * land partly open in neutral. The spool finishes a shift before it answers the lever again.
 *
 * Spool: +1 is up (pressure to the up line, down line to return), -1 is down.
 */
import type {
  DeviceDefinition,
  FlowDefinition,
  Frame,
  GuardFrame,
  ModeDefinition,
  Parameters,
} from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const RATE = 0;
const FEED_LAP = 1;
const RETURN_LAP = 3;

const FEED_UP = 0;
const FEED_DOWN = 1;
const RETURN_UP = 2;
const RETURN_DOWN = 3;

/** Longest step while the spool moves, share of the time from neutral to either end. */
const SHIFT_STEP = 0.05;

const SPOOL = 0;
/** Remembers the shift under way: +2 to up, -2 to down, +1 or -1 to neutral from below or above; 0 at rest. */
const DRIVE = 1;
const SHIFTING = 3;
/** Lever words. */
const NEUTRAL_LEVER = 1;

/** Laps of the feeding and the returning lands of each centre, as signs of the overlap. */
const CENTRES: Readonly<Record<string, readonly [number, number]>> = {
  closed: [1, 1],
  open: [-1, -1],
  'lines-to-return': [1, -1],
};

/** Every land is an orifice that the spool opens, with a leak where it is shut. */
const passage: Pick<FlowDefinition, 'also' | 'law'> = {
  also: ['spool'],
  law: (p, s) => ({
    ...boreLaw(p, s, number(p, 'bore')),
    open: 0,
    leak: leakIn(s, number(p, 'leak')),
  }),
};

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

/** A resting position: leaves when the lever says otherwise. */
function resting(title: string, lever: number, spool: number): ModeDefinition {
  return {
    title,
    guards: [
      {
        to: 'shifting',
        when: (d) => Math.abs(d.input(0) - lever) - 0.5,
        cause: 'the lever is moved',
        reads: ['lever'],
      },
    ],
    enter: (_d, states) => {
      states[SPOOL] = spool;
      states[DRIVE] = 0;
    },
  };
}

/** Where the lever wants the spool. */
const wanted = (d: GuardFrame): number => NEUTRAL_LEVER - d.input(0);

export const selectorValve: DeviceDefinition = {
  kind: 'selector-valve',
  title: 'Selector valve',
  summary:
    'Sends pressure to the up or the down line and the other line to return; neutral between.',
  source:
    'turbulent orifices and laminar land leakage: Merritt, Hydraulic Control Systems (from memory)',
  role: 'selector',
  parameters: {
    bore: bore(
      'bore of a fully open land',
      0.005,
      'a few psi at the flow of a light system; common practice, no source',
    ),
    centre: {
      type: 'choice',
      title: 'neutral position',
      choices: Object.keys(CENTRES),
      default: 'closed',
      why: 'closed holds the gear where it is; open unloads the pump; lines-to-return lets the gear fall',
    },
    overlap: {
      title:
        'spool travel within which a land stays shut (open, where the centre is open), share of the shift',
      quantity: 'ratio',
      range: [0.02, 0.8],
      default: 0.3,
      why: 'plain spools cover their ports generously; common practice, no source',
    },
    shiftTime: {
      title: 'time from neutral to either end',
      quantity: 'time',
      range: [0.01, 5],
      default: 0.1,
      why: 'a hand on a lever; common practice, no source',
    },
    leak: leakage(
      'leak of each shut land',
      1e-10,
      2e-14,
      'a new spool: some cm3 a minute at 1000 psi; common practice, no source',
    ),
    start: {
      type: 'choice',
      title: 'lever at the start',
      choices: ['up', 'neutral', 'down'],
      default: 'neutral',
      why: 'nothing selected',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    pressure: { title: 'pressure', volume: 5e-6 },
    return: { title: 'return', volume: 5e-6 },
    up: { title: 'up line', volume: 5e-6 },
    down: { title: 'down line', volume: 5e-6 },
  },
  states: {
    spool: { title: 'spool position (1 up, -1 down)', unit: '', scale: 1, initial: 0 },
    drive: { title: 'shift under way', unit: '', scale: 1, initial: 0 },
  },
  inputs: {
    lever: {
      title: 'gear lever',
      choices: ['up', 'neutral', 'down'],
      initial: (p: Parameters) => ['up', 'neutral', 'down'].indexOf(p.start as string),
    },
  },
  flows: {
    feedUp: { from: 'pressure', to: 'up', title: 'pressure to up line', ...passage },
    feedDown: { from: 'pressure', to: 'down', title: 'pressure to down line', ...passage },
    returnUp: { from: 'up', to: 'return', title: 'up line to return', ...passage },
    returnDown: { from: 'down', to: 'return', title: 'down line to return', ...passage },
  },
  modes: {
    neutral: resting('neutral', 1, 0),
    up: resting('up', 0, 1),
    down: resting('down', 2, -1),
    shifting: {
      title: 'shifting',
      active: true,
      // A land shuts within a small part of the shift.
      longestStep: (d) => SHIFT_STEP / d.k[RATE],
      enter: (d, states) => {
        const goal = wanted(d);
        states[DRIVE] = goal !== 0 ? 2 * goal : d.state(SPOOL) > 0 ? -1 : 1;
      },
      guards: [
        {
          to: 'up',
          when: (d) => (d.state(DRIVE) > 1.5 ? d.state(SPOOL) - 1 : -1),
          cause: 'the spool reaches up',
        },
        {
          to: 'down',
          when: (d) => (d.state(DRIVE) < -1.5 ? -1 - d.state(SPOOL) : -1),
          cause: 'the spool reaches down',
        },
        {
          to: 'neutral',
          when: (d) => {
            const drive = d.state(DRIVE);
            return drive < 1.5 && drive > -1.5 ? Math.sign(drive) * d.state(SPOOL) : -1;
          },
          cause: 'the spool reaches neutral',
        },
      ],
    },
  },
  initialMode: (p) => p.start as string,
  prepare: (p) => {
    const [feed, back] = CENTRES[p.centre as string];
    return Float64Array.of(
      1 / number(p, 'shiftTime'),
      feed * number(p, 'overlap'),
      1 / (1 - feed * number(p, 'overlap')),
      back * number(p, 'overlap'),
      1 / (1 - back * number(p, 'overlap')),
    );
  },
  equations: (d) => {
    const k = d.k;
    land(d, FEED_UP, 1, FEED_LAP);
    land(d, FEED_DOWN, -1, FEED_LAP);
    land(d, RETURN_UP, -1, RETURN_LAP);
    land(d, RETURN_DOWN, 1, RETURN_LAP);
    d.rate(SPOOL, d.mode === SHIFTING ? Math.sign(d.state(DRIVE)) * k[RATE] : 0);
    d.rate(DRIVE, 0);
  },
  symbol: {
    name: 'selector',
    size: [12, 4],
    ports: { pressure: [-1, -2], return: [1, -2], up: [-1, 2], down: [1, 2] },
  },
};
