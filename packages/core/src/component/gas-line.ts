/**
 * Gas line: volume, and friction as an orifice of equivalent area,
 *   Cd A = A_bore / sqrt(f L / d + fittings + 1),
 * with a friction factor for turbulent flow, which gas under pressure in a small tube has. Where
 * oil may come, behind the shuttle, use a line.
 */
import type { DeviceDefinition } from '../define/index.js';
import { orificeConstant } from '../medium/index.js';
import { circle, number, SMOOTHING_DROP } from './shared/parameters.js';

/** Friction factor of a drawn tube at Reynolds numbers of some 1e5 (Moody's chart). */
const FRICTION = 0.02;

export const gasLine: DeviceDefinition = {
  kind: 'gas-line',
  title: 'Gas line',
  summary: 'A small tube between bottle, valve and shuttles.',
  source:
    'Darcy-Weisbach with the friction factor of a drawn tube (Moody); choked and unchoked flow by ISO 6358',
  role: 'line',
  parameters: {
    bore: {
      title: 'inside diameter',
      quantity: 'length',
      range: [0.001, 0.02],
      default: 0.0049,
      why: 'tube of 1/4 in outside diameter and 0.028 in wall; common practice, no source',
    },
    length: {
      title: 'length',
      quantity: 'length',
      range: [0.05, 50],
      why: 'no default: measured on the aircraft',
    },
    fittings: {
      title: 'sum of the loss coefficients of bends and fittings',
      quantity: 'ratio',
      range: [0, 200],
      default: 4,
      why: 'some four bends or unions of about 1 each; common practice, no source',
    },
  },
  ports: {
    inlet: {
      title: 'inlet',
      volume: (p) => 0.5 * circle(number(p, 'bore')) * number(p, 'length'),
      dry: true,
    },
    outlet: {
      title: 'outlet',
      volume: (p) => 0.5 * circle(number(p, 'bore')) * number(p, 'length'),
      dry: true,
    },
  },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      title: 'flow',
      law: (p, s) => {
        const bore = number(p, 'bore');
        const losses = (FRICTION * number(p, 'length')) / bore + number(p, 'fittings') + 1;
        return {
          constant: orificeConstant(1 / Math.sqrt(losses), circle(bore), s.density),
          transition: SMOOTHING_DROP,
          open: 1,
          leak: 0,
        };
      },
    },
  },
  prepare: () => new Float64Array(0),
  symbol: { name: 'gas-line', size: [8, 2], ports: { inlet: [-4, 0], outlet: [4, 0] } },
};
