/**
 * Solenoid selector, four ways and three positions, centred by springs: each of two coils pulls
 * the spool one way, without current (or with both coils on) the springs bring it back. The spool
 * travels at a constant rate, outwards within the rise time and back within the fall time, and
 * turns at once when the coils change on the way. Lands as in shared/four-way.
 *
 * Spool: +1 is up, -1 is down. Use a selector valve where a lever moves the spool.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition } from '../define/index.js';
import { CENTRES, LANDS_SIZE, landFlows, openLands, writeLands } from './shared/four-way.js';
import {
  bore,
  dischargeCoefficient,
  leakage,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { coilInput, shiftStep, solenoidParameters, spareForce } from './shared/solenoid.js';

const LANDS = 0;
const RISE = LANDS_SIZE;
const FALL = LANDS_SIZE + 1;
/** 1 where that coil can pull, else 0. */
const UP_COIL = LANDS_SIZE + 2;
const DOWN_COIL = LANDS_SIZE + 3;
/** 1 where the spool is stuck. */
const STUCK = LANDS_SIZE + 4;

const SPOOL = 0;
/** Speed of the spool by mode: a multiple of the rise rate, and of the fall rate. */
const OUTWARDS = [0, 1, 0, 0, -1, 0, 0];
const INWARDS = [0, 0, 0, -1, 0, 0, 1];

/** Which way the coils pull: 1 up, -1 down, 0 neither or both. */
const pull = (d: GuardFrame): number =>
  (d.input(0) > 0.5 ? d.k[UP_COIL] : 0) - (d.input(1) > 0.5 ? d.k[DOWN_COIL] : 0);

const COILS = ['up', 'down'];

/** Where a stuck spool stands. */
const POSITIONS: Readonly<Record<string, number | undefined>> = { neutral: 0, up: 1, down: -1 };

/** Guard: the coils pull one way (and the spool is not stuck). */
const pulled = (to: string, way: number, cause: string) => ({
  to,
  when: (d: GuardFrame): number => (d.k[STUCK] === 0 && pull(d) === way ? 1 : -1),
  cause,
  reads: COILS,
});

/** The spool's way out to one end, at that end, and back: three modes. */
function side(name: string, way: 1 | -1): Readonly<Record<string, ModeDefinition>> {
  const released = {
    to: `leaving-${name}`,
    when: (d: GuardFrame): number => (d.k[STUCK] === 0 && pull(d) !== way ? 1 : -1),
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
  role: 'other',
  parameters: {
    bore: bore(
      'bore of a fully open land',
      0.005,
      'a few psi at the flow of a light system; common practice, no source',
    ),
    centre: {
      type: 'choice',
      title: 'centre position',
      choices: Object.keys(CENTRES),
      default: 'closed',
      why: 'closed holds what it serves; open unloads the pump; lines-to-return (float) lets it fall',
    },
    overlap: {
      title:
        'spool travel within which a land stays shut (open, where the centre is open), share of the shift',
      quantity: 'ratio',
      range: [0.02, 0.8],
      default: 0.3,
      why: 'plain spools cover their ports generously; common practice, no source',
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
    leak: leakage(
      'leak of each shut land',
      1e-10,
      2e-14,
      'a new spool: some cm3 a minute at 1000 psi; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    pressure: { title: 'pressure', volume: 5e-6 },
    return: { title: 'return', volume: 5e-6 },
    up: { title: 'up line', volume: 5e-6 },
    down: { title: 'down line', volume: 5e-6 },
  },
  states: { spool: { title: 'spool position (1 up, -1 down)', unit: '', scale: 1, initial: 0 } },
  inputs: { up: coilInput('up coil'), down: coilInput('down coil') },
  flows: landFlows,
  modes: {
    neutral: {
      title: 'neutral',
      enter: (_d, states) => {
        states[SPOOL] = 0;
      },
      guards: [
        pulled('pulling-up', 1, 'the up coil pulls'),
        pulled('pulling-down', -1, 'the down coil pulls'),
      ],
    },
    ...side('up', 1),
    ...side('down', -1),
  },
  initialMode: (p) => (p.stuck === 'none' ? 'neutral' : (p.stuck as string)),
  prepare: (p) => {
    const k = new Float64Array(LANDS_SIZE + 5);
    writeLands(k, LANDS, p, POSITIONS[p.stuck as string]);
    k[RISE] = 1 / number(p, 'riseTime');
    k[FALL] = 1 / number(p, 'fallTime');
    const able = spareForce(p) > 0;
    k[UP_COIL] = able && p.dead !== 'up' ? 1 : 0;
    k[DOWN_COIL] = able && p.dead !== 'down' ? 1 : 0;
    k[STUCK] = p.stuck === 'none' ? 0 : 1;
    return k;
  },
  equations: (d) => {
    openLands(d, LANDS);
    d.rate(SPOOL, OUTWARDS[d.mode] * d.k[RISE] + INWARDS[d.mode] * d.k[FALL]);
  },
  symbol: {
    name: 'solenoid-selector',
    size: [12, 4],
    ports: { pressure: [-1, -2], return: [1, -2], up: [-1, 2], down: [1, 2] },
  },
};
