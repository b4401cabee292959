/**
 * Solenoid selector, four ways and three positions, centred by springs: each of two coils pulls
 * the spool one way, without current (or with both coils on) the springs bring it back. The spool
 * travels at a constant rate, outwards within the rise time and back within the fall time, and
 * turns at once when the coils change on the way. Lands as in shared/spool.
 *
 * Spool: +1 is up, -1 is down. Use a selector valve where a lever moves the spool.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition, Parameters } from '../define/index.js';
import { number } from './shared/parameters.js';
import { spoolFlows, spoolParameters, spoolPorts, spoolStates } from './shared/selector.js';
import { coilInput, shiftStep, solenoidParameters, spareForce } from './shared/solenoid.js';
import { lands, SPOOL, SPOOL_SIZE, writeSpool } from './shared/spool.js';

const RISE = SPOOL_SIZE;
const FALL = SPOOL_SIZE + 1;
/** 1 where that coil can pull, else 0. */
const UP_COIL = SPOOL_SIZE + 2;
const DOWN_COIL = SPOOL_SIZE + 3;
/** Where the spool is stuck: 1 up, 0 neutral, -1 down; {@link FREE} where it is not. */
const STUCK = SPOOL_SIZE + 4;
const FREE = 2;

/** Speed of the spool by mode: a multiple of the rise rate, and of the fall rate. */
const OUTWARDS = [0, 1, 0, 0, -1, 0, 0];
const INWARDS = [0, 0, 0, -1, 0, 0, 1];

/** Which way the coils pull: 1 up, -1 down, 0 neither or both. */
const pull = (d: GuardFrame): number =>
  (d.input(0) > 0.5 ? d.k[UP_COIL] : 0) - (d.input(1) > 0.5 ? d.k[DOWN_COIL] : 0);

const COILS = ['up', 'down'];

/** Where a spool stands that is stuck. */
const STUCK_AT: Readonly<Record<string, number>> = { none: FREE, neutral: 0, up: 1, down: -1 };

/** Guard: at the start of a run a stuck spool is put where it is stuck. */
const stuckAt = (to: string, way: number) => ({
  to,
  when: (d: GuardFrame): number => (d.k[STUCK] === way ? 1 : -1),
  cause: 'the spool is stuck there',
});

/** What the lands have of a selector valve: all but what a lever and its linkage add. */
const landParameters = Object.fromEntries(
  Object.entries(spoolParameters({})).filter(
    ([name]) =>
      !['shiftTime', 'leakAcross', 'start', 'rigging', 'stopShort', 'linked'].includes(name),
  ),
);
/** A spool whose shift its coils and springs time, and that stands where they put it. */
const RIGGED_RIGHT: Parameters = { shiftTime: 1, rigging: 0, stopShort: 0 };

/** Guard: the coils pull one way (and the spool is not stuck). */
const pulled = (to: string, way: number, cause: string) => ({
  to,
  when: (d: GuardFrame): number => (d.k[STUCK] === FREE && pull(d) === way ? 1 : -1),
  cause,
  reads: COILS,
});

/** The spool's way out to one end, at that end, and back: three modes. */
function side(name: string, way: 1 | -1): Readonly<Record<string, ModeDefinition>> {
  const released = {
    to: `leaving-${name}`,
    when: (d: GuardFrame): number => (d.k[STUCK] === FREE && pull(d) !== way ? 1 : -1),
    cause: `the ${name} coil lets go`,
    reads: COILS,
  };
  return {
    [`pulling-${name}`]: {
      title: `pulling ${name}`,
      active: true,
      longestStep: (d) => shiftStep(1 / d.k[RISE]),
      guards: [
        {
          to: name,
          when: (d) => way * d.state(SPOOL) - 1,
          cause: `the spool reaches ${name}`,
        },
        released,
      ],
    },
    [name]: {
      title: name,
      active: true,
      enter: (_d, states) => {
        states[SPOOL] = way;
      },
      guards: [released],
    },
    [`leaving-${name}`]: {
      title: `leaving ${name}`,
      active: true,
      longestStep: (d) => shiftStep(1 / d.k[FALL]),
      guards: [
        {
          to: 'neutral',
          when: (d) => -way * d.state(SPOOL),
          cause: 'the springs have centred the spool',
        },
        pulled(`pulling-${name}`, way, `the ${name} coil pulls`),
      ],
    },
  };
}

export const solenoidSelector: DeviceDefinition = {
  kind: 'solenoid-selector',
  title: 'Solenoid selector',
  summary:
    'Sends pressure to the up or the down line by wire and the other line to return; springs centre it without current.',
  source:
    'turbulent orifices and laminar land leakage: Merritt, Hydraulic Control Systems (from memory)',
  role: 'selector',
  parameters: {
    ...landParameters,
    centre: {
      type: 'choice',
      title: 'centre position',
      choices: ['closed', 'lines-to-return'],
      default: 'closed',
      why: 'closed holds what it serves; lines-to-return lets it float',
    },
    ...solenoidParameters,
    dead: {
      type: 'choice',
      title: 'coil that does not pull',
      choices: ['none', 'up', 'down'],
      default: 'none',
      why: 'both coils sound; a burnt-out coil or a broken wire takes one of them',
    },
    stuck: {
      type: 'choice',
      title: 'spool stuck at',
      choices: ['none', 'neutral', 'up', 'down'],
      default: 'none',
      why: 'a free spool',
    },
  },
  ports: spoolPorts,
  states: { spool: spoolStates.spool },
  inputs: { up: coilInput('up coil'), down: coilInput('down coil') },
  flows: spoolFlows,
  modes: {
    neutral: {
      title: 'neutral',
      enter: (_d, states) => {
        states[SPOOL] = 0;
      },
      guards: [
        pulled('pulling-up', 1, 'the up coil pulls'),
        pulled('pulling-down', -1, 'the down coil pulls'),
        stuckAt('up', 1),
        stuckAt('down', -1),
      ],
    },
    ...side('up', 1),
    ...side('down', -1),
  },
  prepare: (p) => {
    const k = new Float64Array(SPOOL_SIZE + 5);
    writeSpool(k, { ...p, ...RIGGED_RIGHT }, 1, p.centre === 'closed' ? 1 : -1);
    k[RISE] = 1 / number(p, 'riseTime');
    k[FALL] = 1 / number(p, 'fallTime');
    const able = spareForce(p) > 0;
    k[UP_COIL] = able && p.dead !== 'up' ? 1 : 0;
    k[DOWN_COIL] = able && p.dead !== 'down' ? 1 : 0;
    k[STUCK] = STUCK_AT[p.stuck as string];
    return k;
  },
  equations: (d) => {
    lands(d);
    d.rate(SPOOL, OUTWARDS[d.mode] * d.k[RISE] + INWARDS[d.mode] * d.k[FALL]);
  },
  symbol: {
    name: 'solenoid-selector',
    size: [12, 4],
    ports: { pressure: [-1, -2], return: [1, -2], up: [-1, 2], down: [1, 2] },
  },
};
