/**
 * Selector valve, four ways and three positions: see shared/spool for its lands and its lever.
 * A negative overlap (open centre) leaves a land partly open in neutral. Use an open-centre
 * selector where the pump is to circulate in neutral while both lines stay shut.
 *
 * Spool: +1 is up (pressure to the up line, down line to return), -1 is down.
 */
import type { DeviceDefinition } from '../define/index.js';
import { leakIn, number } from './shared/parameters.js';
import {
  spoolFlows,
  spoolInputs,
  spoolParameters,
  spoolPorts,
  spoolStates,
} from './shared/selector.js';
import {
  DRIVE,
  lands,
  shiftRate,
  SPOOL,
  spoolModes,
  spoolStart,
  SPOOL_SIZE,
  writeSpool,
  spoolCheck,
} from './shared/spool.js';
import { without } from './shared/without.js';

const SHIFTING = 3;

/** Laps of the feeding and the returning lands of each centre, as signs of the overlap. */
const CENTRES: Readonly<Record<string, readonly [number, number]>> = {
  closed: [1, 1],
  open: [-1, -1],
  'lines-to-return': [1, -1],
};

export const selectorValve: DeviceDefinition = {
  kind: 'selector-valve',
  title: 'Selector valve',
  summary:
    'Sends pressure to the up or the down line and the other line to return; neutral between.',
  source:
    'turbulent orifices and laminar land leakage: Merritt, Hydraulic Control Systems (from memory)',
  role: 'selector',
  parameters: spoolParameters({
    centre: {
      type: 'choice',
      title: 'neutral position',
      choices: Object.keys(CENTRES),
      default: 'closed',
      why: 'closed holds the gear where it is; open unloads the pump; lines-to-return lets the gear fall',
    },
  }),
  ports: spoolPorts,
  states: spoolStates,
  inputs: spoolInputs,
  flows: {
    ...spoolFlows,
    across: {
      from: 'pressure',
      to: 'return',
      title: 'pressure to return',
      law: (p, s) => ({
        constant: 0,
        transition: 1,
        open: 0,
        leak: leakIn(s, number(p, 'leakAcross')),
      }),
    },
  },
  tailor: (p) => without({ flows: spoolFlows }, number(p, 'leakAcross') === 0),
  modes: spoolModes,
  initialMode: spoolStart,
  check: spoolCheck,
  prepare: (p) => {
    const k = new Float64Array(SPOOL_SIZE);
    const [feed, back] = CENTRES[p.centre as string];
    writeSpool(k, p, feed, back);
    return k;
  },
  equations: (d) => {
    lands(d);
    d.rate(SPOOL, d.mode === SHIFTING ? shiftRate(d) : 0);
    d.rate(DRIVE, 0);
  },
  symbol: {
    name: 'selector',
    size: [12, 4],
    ports: { pressure: [-1, -2], return: [1, -2], up: [-1, 2], down: [1, 2] },
  },
};
