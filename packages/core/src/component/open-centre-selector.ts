/**
 * Open-centre selector: in neutral the pump's oil goes through it to return while both lines are
 * shut; up and down as a selector valve. Several may stand in series, the return of one being the
 * pressure of the next. See shared/spool for its lands and its lever.
 *
 * Its detent lets go at the end of the travel: when the line it feeds stands above return by the
 * kick-out pressure, a spring takes the spool back to neutral (mode `returning`) whatever the
 * lever says. The lever's input then still stands where the operator left it; the valve stays in
 * neutral until the operator sets it to something else, so the same side again needs `neutral`
 * first. A lever moved while the spool returns is obeyed at once.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition } from '../define/index.js';
import { bore, number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import {
  landPassage,
  spoolFlows,
  spoolInputs,
  spoolParameters,
  spoolPorts,
  spoolStates,
} from './shared/selector.js';
import {
  DRIVE,
  lands,
  leverGuard,
  linked,
  REST,
  shiftRate,
  SPOOL,
  spoolModes,
  spoolStart,
  SPOOL_SIZE,
  wanted,
  writeSpool,
  spoolCheck,
} from './shared/spool.js';

const PER_CROSSOVER = SPOOL_SIZE;
const KICK = SPOOL_SIZE + 1;
const RETURN_RATE = SPOOL_SIZE + 2;

const THROUGH = 4;

const SHIFTING = 3;
const RETURNING = 4;

const RETURN_PORT = 1;
const UP_PORT = 2;
const DOWN_PORT = 3;

/** A drop that no system has: the detent never lets go. */
const NEVER = 1e12;

/** Longest step while the spool returns, share of the time that takes. */
const RETURN_STEP = 0.05;

/**
 * The side, 1 up or -1 down, where the lever was left when the detent let go; 0 when it was not.
 * (`drive` is 3 or -3 from then on.)
 */
function left(d: GuardFrame): number {
  const drive = d.state(DRIVE);
  return drive > 2.5 ? 1 : drive < -2.5 ? -1 : 0;
}

/** An end of the shift, held by the detent until the line at `port` is at kick-out pressure. */
function held(mode: ModeDefinition, lever: number, port: number, line: string): ModeDefinition {
  return {
    ...mode,
    guards: [
      leverGuard(lever),
      {
        to: 'returning',
        when: (d) => d.pressure(port) - d.pressure(RETURN_PORT) - d.k[KICK],
        cause: `the detent lets go: pressure in the ${line} line above the kick-out pressure`,
        reads: [line, 'return'],
      },
    ],
  };
}

export const openCentreSelector: DeviceDefinition = {
  kind: 'open-centre-selector',
  title: 'Open-centre selector valve',
  summary:
    'As a selector valve, but lets the pump circulate to return in neutral and goes back there by itself at the end of the travel.',
  source:
    'turbulent orifices and laminar land leakage: Merritt, Hydraulic Control Systems (from memory); open-centre valve: US Army course AL0926, figures 2-5 and 2-6; detent: common practice, no source',
  role: 'selector',
  parameters: spoolParameters({
    throughBore: bore(
      'bore of the way from pressure to return in neutral',
      0.006,
      'the bore of the pressure line, so that the pump idles; common practice, no source',
    ),
    crossover: {
      title: 'spool travel at which the way to return is shut, share of the shift',
      quantity: 'ratio',
      range: [0.1, 1],
      default: 0.6,
      why: 'after the lands have begun to open, so that the pump is never shut in; common practice, no source',
    },
    returns: {
      type: 'switch',
      title: 'detent lets go at the end of the travel',
      default: true,
      why: 'else the pump works against the relief valve until the lever is moved',
    },
    kickOut: {
      title: 'kick-out pressure, line above return',
      quantity: 'gauge-pressure',
      range: [1e5, 4e7],
      why: 'no default: above what the heaviest load needs, below the relief setting',
    },
    returnTime: {
      title: 'time from either end back to neutral once the detent has let go',
      quantity: 'time',
      range: [0.01, 30],
      default: 0.1,
      why: 'a spring; a dry or dirty spool takes seconds; common practice, no source',
    },
  }),
  ports: spoolPorts,
  states: spoolStates,
  inputs: spoolInputs,
  flows: {
    ...spoolFlows,
    through: {
      from: 'pressure',
      to: 'return',
      title: 'pressure to return',
      ...landPassage('leakAcross', 'throughBore'),
    },
  },
  modes: {
    neutral: {
      title: 'neutral',
      guards: [
        {
          to: 'shifting',
          when: (d) => {
            const goal = wanted(d);
            return linked(d) && goal !== 0 && goal !== left(d) ? 1 : -1;
          },
          cause: 'the lever is moved',
          reads: ['lever'],
        },
        {
          // The spool stands there already; from now on either side is a new selection.
          to: 'neutral',
          when: (d) => (left(d) !== 0 && wanted(d) === 0 ? 1 : -1),
          cause: 'the lever is brought back to neutral too',
          reads: ['lever'],
        },
      ],
      enter: (d, states) => {
        states[SPOOL] = d.k[REST];
        if (left(d) === 0 || wanted(d) === 0) states[DRIVE] = 0;
      },
    },
    up: held(spoolModes.up, 0, UP_PORT, 'up'),
    down: held(spoolModes.down, 2, DOWN_PORT, 'down'),
    shifting: spoolModes.shifting,
    returning: {
      title: 'returning to neutral',
      active: true,
      longestStep: (d) => RETURN_STEP / d.k[RETURN_RATE],
      enter: (d, states) => {
        states[DRIVE] = d.state(SPOOL) > d.k[REST] ? 3 : -3;
      },
      guards: [
        {
          to: 'shifting',
          when: (d) => (linked(d) && wanted(d) !== left(d) ? 1 : -1),
          cause: 'the lever is moved',
          reads: ['lever'],
        },
        {
          to: 'neutral',
          when: (d) => left(d) * (d.k[REST] - d.state(SPOOL)),
          cause: 'the spring has taken the spool back to neutral',
        },
      ],
    },
  },
  initialMode: spoolStart,
  check: spoolCheck,
  prepare: (p) => {
    const k = new Float64Array(SPOOL_SIZE + 3);
    writeSpool(k, p, 1, 1);
    k[PER_CROSSOVER] = 1 / number(p, 'crossover');
    k[KICK] = p.returns === false ? NEVER : number(p, 'kickOut');
    k[RETURN_RATE] = 1 / number(p, 'returnTime');
    return k;
  },
  equations: (d) => {
    const k = d.k;
    lands(d);
    const x = d.state(SPOOL);
    const away = Math.abs(x) * k[PER_CROSSOVER];
    d.opening(THROUGH, 1 - rise(away));
    d.openingSlope(THROUGH, -Math.sign(x) * riseSlope(away) * k[PER_CROSSOVER]);
    d.rate(
      SPOOL,
      d.mode === SHIFTING
        ? shiftRate(d)
        : d.mode === RETURNING
          ? -Math.sign(d.state(DRIVE)) * k[RETURN_RATE]
          : 0,
    );
    d.rate(DRIVE, 0);
  },
  symbol: {
    name: 'open-centre-selector',
    size: [12, 4],
    ports: { pressure: [-1, -2], return: [1, -2], up: [-1, 2], down: [1, 2] },
  },
};
