/**
 * Relief valve, direct acting: shut below its crack setting, passing its rated flow at its
 * full-flow setting, opening smoothly between (C1). With `reseat` below 1 it pops open and
 * shuts again only when the pressure has fallen to that share of the crack setting.
 * Settings are drops from inlet to outlet, which is the gauge pressure when the outlet goes to
 * a vented tank.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { transitionDrop } from '../medium/index.js';
import {
  bore,
  leakage,
  leakIn,
  number,
  dischargeCoefficient,
  transitionReynolds,
} from './shared/parameters.js';
import { poppetFlow, POPPET_SIZE, writePoppet } from './shared/poppet.js';

const SHUT_CURVE = 0;
const FLOWING_CURVE = POPPET_SIZE;
const OPENS = 2 * POPPET_SIZE;
const SHUTS = OPENS + 1;

const CLOSED = 0;

/** Share of the rise from crack to full at which the log says that it flows (a weep does not count). */
const LOGGED = 0.05;

const drop = (d: GuardFrame): number => d.pressure(0) - d.pressure(1);

export const reliefValve: DeviceDefinition = {
  kind: 'relief-valve',
  title: 'Relief valve',
  summary:
    'Limits pressure by passing oil back to the tank: a safety device, not the normal limiter.',
  source: 'quasi-static poppet and orifice: Merritt, Hydraulic Control Systems (from memory)',
  role: 'relief',
  parameters: {
    crack: {
      title: 'crack setting',
      quantity: 'gauge-pressure',
      range: [1e5, 4e7],
      why: 'no default: it belongs to the system it protects',
    },
    full: {
      title: 'full-flow setting',
      quantity: 'gauge-pressure',
      range: [1.1e5, 5e7],
      why: 'no default: 10 to 20 % above crack for direct-acting valves; common practice, no source',
    },
    flow: {
      title: 'rated flow at the full-flow setting',
      quantity: 'flow',
      range: [1e-6, 5e-3],
      why: 'no default: at least the flow of the pump it guards (MIL-H-8891A for system relief valves)',
    },
    reseat: {
      title: 'reseat pressure as a share of crack',
      quantity: 'ratio',
      range: [0.6, 1],
      default: 1,
      why: 'direct-acting valves reseat within a few per cent of crack; worn or pilot-operated ones at 0.8 to 0.9; common practice, no source',
    },
    leak: leakage(
      'leak when shut',
      1e-9,
      1e-14,
      'a weep of some drops a minute at system pressure; common practice, no source',
    ),
    seat: bore(
      'seat diameter',
      0.006,
      'decides only where its flow turns laminar; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'pressure', volume: 3e-6 },
    outlet: { title: 'to tank', volume: 3e-6 },
  },
  flows: { through: { from: 'inlet', to: 'outlet', title: 'relief flow' } },
  modes: {
    closed: {
      title: 'closed',
      guards: [
        {
          to: 'flowing',
          when: (d) => drop(d) - d.k[OPENS],
          cause: 'pressure at the inlet above the crack setting',
          reads: ['inlet', 'outlet'],
        },
      ],
    },
    flowing: {
      title: 'flowing',
      active: true,
      guards: [
        {
          to: 'closed',
          when: (d) => d.k[SHUTS] - drop(d),
          cause: 'pressure at the inlet below the reseat pressure',
          reads: ['inlet', 'outlet'],
        },
      ],
    },
  },
  check: (p) =>
    number(p, 'full') >= 1.005 * number(p, 'crack')
      ? []
      : [{ parameter: 'full', message: 'must be above the crack setting' }],
  prepare: (p, s) => {
    const k = new Float64Array(2 * POPPET_SIZE + 2);
    const crack = number(p, 'crack');
    const full = number(p, 'full');
    const reseat = number(p, 'reseat') * crack;
    const constant = number(p, 'flow') / Math.sqrt(full);
    const leak = leakIn(s, number(p, 'leak'));
    const transition = transitionDrop(
      number(p, 'dischargeCoefficient'),
      number(p, 'seat'),
      s.density,
      s.viscosity,
      number(p, 'transitionReynolds'),
    );
    // A valve that pops stays shut up to its crack setting: its shut curve starts just there.
    const pops = number(p, 'reseat') < 1;
    const opens = pops ? crack : crack + LOGGED * (full - crack);
    writePoppet(k, SHUT_CURVE, crack, full, pops ? 0 : constant, transition, leak);
    writePoppet(k, FLOWING_CURVE, reseat, full, constant, transition, leak);
    k[OPENS] = opens;
    k[SHUTS] = pops ? reseat : crack;
    return k;
  },
  equations: (d) => poppetFlow(d, 0, d.mode === CLOSED ? SHUT_CURVE : FLOWING_CURVE, 0, 1),
  symbol: { name: 'relief', size: [4, 4], ports: { inlet: [0, -2], outlet: [0, 2] } },
};
