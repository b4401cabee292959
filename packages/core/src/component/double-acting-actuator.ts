/**
 * Double-acting actuator (jack) with one rod: force p_head A - p_rod (A - a) - p_ambient a, seal
 * friction with a part that grows with the pressure across the piston, viscous drag, laminar
 * by-pass past the piston, a weep past the rod seal to the outside, and end cushions.
 *
 * A cushion narrows the way out of a chamber smoothly as the piston nears that end; the way in
 * stays free through a check valve. So each chamber is a node of its own behind its port. An
 * end without cushion: connect `head` and `head-chamber` (or `rod` and `rod-chamber`) to one
 * node, which also spares the solver a node. Travel counts from retracted (0) to extended.
 * Seals, a galled bore and stops of its own: shared/jack; by default nothing is worn or set wrong.
 * Equations: Merritt, Hydraulic Control Systems (from memory).
 */
import type { DeviceDefinition, Frame, NumberParameter } from '../define/index.js';
import { cushion, way, WAY_SIZE, writeWay } from './shared/cushion.js';
import {
  headArea,
  jackFindings,
  jackFriction,
  jackSize,
  jackWear,
  rodArea,
  rub,
  RUB_SIZE,
  rubStep,
  stopEnergy,
  stopForce,
  stopStiffness,
  writeRub,
} from './shared/jack.js';
import {
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const HEAD_WAY = 0;
const ROD_WAY = WAY_SIZE;
const RUB = 2 * WAY_SIZE;
const HEAD_AREA = RUB + RUB_SIZE;
const ROD_AREA = HEAD_AREA + 1;
const AMBIENT = HEAD_AREA + 2;
const WEEP = HEAD_AREA + 3;

/** Numbers it needs in `k`: what is built on it puts its own behind. */
export const ACTUATOR_SIZE = HEAD_AREA + 4;

const INTO_HEAD = 0;
const INTO_ROD = 1;
const DRIP = 3;

const HEAD_CHAMBER = 2;
const ROD_CHAMBER = 3;
const OUTSIDE = 4;

/** Place of the rod's travel in the force's `also`. */
const BY_ROD = 2;

/** A dry rod seal lets no air in: the weep begins smoothly over this pressure, Pa. */
const WEEP_BAND = 1e5;

/** Weep past the rod seal. */
function weep(d: Frame): void {
  const k = d.k;
  const over = d.pressure(ROD_CHAMBER) - d.pressure(OUTSIDE);
  const wet = rise(over / WEEP_BAND);
  const slope = k[WEEP] * (wet + (over * riseSlope(over / WEEP_BAND)) / WEEP_BAND);
  d.flow(DRIP, k[WEEP] * over * wet, slope, -slope);
}

/** Force of the oil and of its own stops on the rod, its seals' friction and drag. */
function push(d: Frame): void {
  const k = d.k;
  const a = k[HEAD_AREA];
  const b = k[ROD_AREA];
  const oil = d.pressure(HEAD_CHAMBER) * a - d.pressure(ROD_CHAMBER) * b - k[AMBIENT] * (a - b);
  d.force(0, oil + stopForce(d, RUB));
  d.forceAlso(0, 0, a);
  d.forceAlso(0, 1, -b);
  rub(d, RUB, HEAD_CHAMBER, ROD_CHAMBER, BY_ROD);
  d.forceAlso(0, BY_ROD, -stopStiffness(d, RUB));
}

const blocked = (end: string): NumberParameter => ({
  title: `share of the way out of the ${end} chamber that is blocked`,
  quantity: 'ratio',
  range: [0, 1],
  default: 0,
  why: 'none; a cushion or check stuck in the way leaves the way in free and needs a chamber of its own (not joined to its port)',
});

const air = (end: string): NumberParameter => ({
  title: `air trapped in the ${end} chamber, at ambient pressure`,
  quantity: 'volume',
  range: [0, 1e-3],
  default: 0,
  why: 'none once bled',
});

export const doubleActingActuator: DeviceDefinition = {
  kind: 'double-acting-actuator',
  title: 'Double-acting actuator',
  summary: 'Jack with one rod, pushed both ways; moves the leg or door its rod is linked to.',
  source:
    'piston force and leakage: Merritt, Hydraulic Control Systems (from memory); cushion as a narrowing orifice, common practice, no source',
  role: 'actuator',
  parameters: {
    ...jackSize,
    deadVolume: {
      title: 'oil left in each chamber at its end',
      quantity: 'volume',
      range: [1e-7, 1e-3],
      default: 5e-6,
      why: 'ports and clearances, a few cm3; common practice, no source',
    },
    portBore: {
      title: 'bore between port and chamber',
      quantity: 'length',
      range: [0.001, 0.03],
      default: 0.005,
      why: 'about the bore of the line; common practice, no source',
    },
    cushionHead: {
      title: 'length of the cushion at the retracted end',
      quantity: 'length',
      range: [0.001, 0.2],
      default: 0.012,
      why: 'about half the bore; common practice, no source',
    },
    cushionRod: {
      title: 'length of the cushion at the extended end',
      quantity: 'length',
      range: [0.001, 0.2],
      default: 0.012,
      why: 'about half the bore; common practice, no source',
    },
    cushionArea: {
      title: 'share of the way out left open at the end of a cushion',
      quantity: 'ratio',
      range: [0.001, 1],
      default: 1,
      why: '1 is no cushion; cushioned jacks leave one to five per cent; common practice, no source',
    },
    ...jackFriction,
    bypass: leakage(
      'by-pass past the piston',
      1e-9,
      1e-15,
      'soft seals: nothing to measure; common practice, no source',
    ),
    rodSealLeak: leakage('weep past the rod seal', 1e-11, 0, 'dry'),
    ...jackWear,
    blockedHead: blocked('head'),
    blockedRod: blocked('rod'),
    airHead: air('head'),
    airRod: air('rod'),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    head: { title: 'head port', volume: 2e-6 },
    rod: { title: 'rod port', volume: 2e-6 },
    headChamber: {
      title: 'head chamber',
      volume: (p) => number(p, 'deadVolume'),
      pocket: (p) => number(p, 'airHead'),
      optional: true,
    },
    rodChamber: {
      title: 'rod chamber',
      volume: (p) => number(p, 'deadVolume') + rodArea(p) * number(p, 'stroke'),
      pocket: (p) => number(p, 'airRod'),
      optional: true,
    },
    outside: { title: 'outside, for what drips', volume: 0, optional: true },
  },
  links: { rod: { title: 'rod', shape: 'travel' } },
  chambers: [
    { port: 'headChamber', link: 'rod', area: headArea },
    { port: 'rodChamber', link: 'rod', area: (p) => -rodArea(p) },
  ],
  flows: {
    headWay: way('head', 'headChamber', 'flow into the head end'),
    rodWay: way('rod', 'rodChamber', 'flow into the rod end'),
    bypass: {
      from: 'headChamber',
      to: 'rodChamber',
      title: 'by-pass past the piston',
      law: (p, s) => ({
        constant: 0,
        transition: 1,
        open: 0,
        leak: leakIn(s, number(p, 'bypass')),
      }),
    },
    drip: { from: 'rodChamber', to: 'outside', title: 'weep past the rod seal' },
  },
  forces: { push: { link: 'rod', also: ['headChamber', 'rodChamber', 'rod'] } },
  modes: { working: { title: 'working', longestStep: (d) => rubStep(d, RUB) } },
  energy: (d) => stopEnergy(d, RUB),
  check: (p) => [
    ...jackFindings(p),
    ...(number(p, 'cushionHead') + number(p, 'cushionRod') <= number(p, 'stroke')
      ? []
      : [{ parameter: 'cushionHead', message: 'the two cushions are longer than the stroke' }]),
  ],
  prepare: (p, s) => {
    const k = new Float64Array(ACTUATOR_SIZE);
    writeWay(k, HEAD_WAY, p, number(p, 'cushionHead'), 0, number(p, 'blockedHead'));
    const [length, stroke] = [number(p, 'cushionRod'), number(p, 'stroke')];
    writeWay(k, ROD_WAY, p, length, stroke, number(p, 'blockedRod'));
    writeRub(k, RUB, p, headArea(p));
    k[HEAD_AREA] = headArea(p);
    k[ROD_AREA] = rodArea(p);
    k[AMBIENT] = s.ambient;
    k[WEEP] = leakIn(s, number(p, 'rodSealLeak'));
    return k;
  },
  equations: (d) => {
    if (!d.joined(INTO_HEAD)) cushion(d, INTO_HEAD, HEAD_WAY, 1);
    if (!d.joined(INTO_ROD)) cushion(d, INTO_ROD, ROD_WAY, -1);
    if (d.k[WEEP] > 0) weep(d);
    else d.flow(DRIP, 0, 0, 0);
    push(d);
  },
  symbol: {
    name: 'cylinder',
    size: [10, 4],
    ports: {
      head: [-4, -2],
      rod: [4, -2],
      headChamber: [-4, 2],
      rodChamber: [4, 2],
      outside: [5, 0],
    },
  },
};
