/**
 * Rigid line: friction from laminar to turbulent with the losses of its fittings, read from a
 * table made once per run (shared/tube); half of its oil belongs to the node at each end. It may
 * have a hole, through which oil is lost to the outside, and hold a pocket of air at its outlet.
 * Without the inertia of the oil: for a few metres of line that decides milliseconds only. Use a
 * hose where the wall gives.
 */
import type { DeviceDefinition, Parameters } from '../define/index.js';
import { number } from './shared/parameters.js';
import {
  air,
  halfVolume,
  hole,
  readTube,
  tailorTube,
  tubeFlows,
  tubePorts,
  tubeSymbolPorts,
  TUBE,
  TUBE_SIZE,
  wallSwelling,
  writeTube,
} from './shared/tube.js';

const halfSwelling = (p: Parameters): number => wallSwelling(p, halfVolume(p));

export const line: DeviceDefinition = {
  kind: 'line',
  title: 'Line',
  summary: 'A rigid tube with its friction, fittings, oil volume and wall stiffness.',
  source: 'Hagen-Poiseuille and Colebrook-White; swelling of a thin-walled tube',
  role: 'line',
  parameters: {
    bore: {
      title: 'inside diameter',
      quantity: 'length',
      range: [0.002, 0.05],
      default: 0.0064,
      why: 'tube of 5/16 in outside diameter in light systems; common practice, no source',
    },
    length: {
      title: 'length',
      quantity: 'length',
      range: [0.05, 50],
      why: 'no default: measured on the aircraft',
    },
    roughness: {
      title: 'roughness height',
      quantity: 'length',
      range: [0, 1e-4],
      default: 1.5e-6,
      why: 'drawn tube, as in the friction charts of textbooks',
    },
    fittings: {
      title: 'sum of the loss coefficients of bends and fittings',
      quantity: 'ratio',
      range: [0, 200],
      default: 4,
      why: 'some four bends or unions of about 1 each; common practice, no source',
    },
    wall: {
      title: 'wall thickness',
      quantity: 'length',
      range: [2e-4, 0.01],
      default: 9e-4,
      why: '0.035 in, usual for aircraft tube; common practice, no source',
    },
    modulus: {
      title: "Young's modulus of the wall",
      quantity: 'pressure',
      range: [1e8, 3e11],
      default: 7e10,
      why: 'aluminium alloy; steel has 2e11',
    },
    hole,
    air,
  },
  ports: tubePorts(halfSwelling),
  flows: tubeFlows,
  tailor: tailorTube,
  prepare: (p, s) => {
    const k = new Float64Array(TUBE_SIZE);
    writeTube(k, p, s, number(p, 'bore'));
    return k;
  },
  equations: (d) => {
    readTube(d);
    d.flow(0, TUBE[0], TUBE[1], -TUBE[1]);
  },
  symbol: {
    name: 'line',
    size: [8, 2],
    ports: tubeSymbolPorts,
  },
};
