/**
 * Manual lowering valve (free fall): opened by its handle it joins up line, down line and return,
 * so that no oil is shut in and the legs come down by their weight, with what their up sides give
 * drawn into their down sides. Shut it does nothing but leak a little. The handle moves it at a
 * constant rate; area opens smoothly (C1) with it.
 *
 * Left off its seat (`ajar`) it robs the normal system; with its linkage off (`linked: no`) or
 * its up side blocked it does not let the legs fall.
 */
import type { DeviceDefinition, FlowDefinition, Frame } from '../define/index.js';
import { liftModes, liftState, moveLift } from './shared/lift.js';
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

const AJAR = 1;
const BLOCKED = 2;
const LINKED = 3;

const LIFT = 0;

const UP = 0;
const DOWN = 1;

const passage = (of: string): Pick<FlowDefinition, 'also' | 'law'> => ({
  also: ['lift'],
  law: (p, s) => ({
    ...boreLaw(p, s, number(p, of)),
    open: 0,
    leak: leakIn(s, number(p, 'leak')),
  }),
});

/** Opens a passage; `most` is the share of it that can open. */
function openTo(d: Frame, path: number, blocked: boolean): void {
  const k = d.k;
  const most = blocked ? 1 - k[BLOCKED] : 1;
  const x = d.state(LIFT);
  d.opening(path, most * (k[AJAR] + (1 - k[AJAR]) * rise(x)));
  d.openingSlope(path, most * (1 - k[AJAR]) * riseSlope(x));
}

export const manualLoweringValve: DeviceDefinition = {
  kind: 'manual-lowering-valve',
  title: 'Manual lowering valve',
  summary: 'Joins up line, down line and return by hand, so that the legs fall by their weight.',
  source:
    'turbulent orifices: Merritt, Hydraulic Control Systems (from memory); free fall as a back-up: AC 43.13-1B chapter 9',
  role: 'other',
  parameters: {
    upBore: bore(
      'bore from the up line to return',
      0.004,
      'smaller than the line, which slows the fall; common practice, no source',
    ),
    downBore: bore(
      'bore from return to the down line',
      0.006,
      'wide, so that the down sides fill; common practice, no source',
    ),
    openingTime: {
      title: 'time the handle takes from shut to open',
      quantity: 'time',
      range: [0.01, 10],
      default: 0.5,
      why: 'a pull or a quarter turn by hand; common practice, no source',
    },
    leak: leakage(
      'leak of each passage when shut',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour; common practice, no source',
    ),
    ajar: {
      title: 'share of the area that stays open with the handle shut',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'shut home on its seat',
    },
    blocked: {
      title: "share of the up line's passage that does not open",
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a clear passage',
    },
    linked: {
      type: 'switch',
      title: 'handle linked to the valve',
      default: true,
      why: 'a broken cable leaves the valve shut',
    },
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    up: { title: 'up line', volume: 3e-6 },
    down: { title: 'down line', volume: 3e-6 },
    return: { title: 'return', volume: 3e-6 },
  },
  states: { lift: { ...liftState, title: 'position (0 shut, 1 open)' } },
  inputs: {
    handle: { title: 'lowering handle', choices: ['closed', 'open'], initial: 0 },
  },
  flows: {
    fromUp: { from: 'up', to: 'return', title: 'up line to return', ...passage('upBore') },
    toDown: { from: 'return', to: 'down', title: 'return to down line', ...passage('downBore') },
  },
  modes: liftModes(
    { more: (d) => d.k[LINKED] * d.input(0) - 0.5, less: (d) => 0.5 - d.input(0) },
    { opens: 'the handle is pulled', closes: 'the handle is pushed back', reads: ['handle'] },
  ),
  prepare: (p) =>
    Float64Array.of(
      1 / number(p, 'openingTime'),
      number(p, 'ajar'),
      number(p, 'blocked'),
      p.linked === false ? 0 : 1,
    ),
  equations: (d) => {
    openTo(d, UP, true);
    openTo(d, DOWN, false);
    moveLift(d);
  },
  symbol: {
    name: 'manual-valve',
    size: [8, 4],
    ports: { up: [-1, 2], down: [1, 2], return: [0, -2] },
  },
};
