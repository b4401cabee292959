/**
 * Hand pump, single acting: the operator takes a constant time for each working stroke and each
 * return. The flow falls smoothly to none at the pressure where the handle force reaches what
 * the operator can do: stall = force x handle travel / stroke volume (energy of a stroke).
 * The oil of a working stroke is taken from the inlet as it is delivered: the pump's own
 * barrel, a few cm3, is left out.
 *
 * Its own two check valves and its piston are tight by default. A leak past the inlet check or
 * the piston loses part of a working stroke to the suction side, the smooth difference
 * (a - b + sqrt((a - b)^2 + w a b)) / 2 of what the stroke gives and what leaks, since the outlet
 * check lets nothing back: strokes grow, and a little pressure stops all gain (the handle
 * creeps). A leak past the outlet check lets the line back into the barrel on the return stroke
 * (the handle kicks), and at rest as far as inlet check and piston leak too.
 *
 * A handle that stands solid because the main pump already holds more pressure than the operator can
 * reach is no fault of the hand pump: with the main pump off it moves.
 */
import type { DeviceDefinition } from '../define/index.js';
import { leakage, leakIn, number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import { fed, fedSlope, INLET_VOLUME } from './shared/suction.js';

const FLOW = 0;
const STROKE_RATE = 1;
const RETURN_RATE = 2;
const STALL_STARTS = 3;
const PER_STALL_BAND = 4;
const EFFORT = 5;
const LOST = 6;
const BACK = 7;
const BACK_AT_REST = 8;
const STALL_FORCE = 9;

/** Width of the smooth difference between stroke and leak, relative. */
const WIDTH = 0.01;

const INLET = 0;
const OUTLET = 1;
const POSITION = 0;
const STROKES = 1;
const DELIVERING = 1;
const REFILLING = 2;

/** Share of the stall pressure over which the operator's flow fades. */
const FADE = 0.15;

export const handPump: DeviceDefinition = {
  kind: 'hand-pump',
  title: 'Hand pump',
  summary: 'Worked by the operator, stroke by stroke, when there is no other supply.',
  source: 'displacement and energy of a stroke; the rest common practice, no source',
  role: 'hand-supply',
  parameters: {
    strokeVolume: {
      title: 'oil per working stroke',
      quantity: 'volume',
      range: [5e-7, 1e-4],
      default: 1.2e-5,
      why: 'about 3/4 cubic inch; common practice, no source',
    },
    strokeTime: {
      title: 'time of a working stroke',
      quantity: 'time',
      range: [0.2, 10],
      default: 0.7,
      why: 'a steady operator, some 45 strokes a minute; common practice, no source',
    },
    returnTime: {
      title: 'time of a return stroke',
      quantity: 'time',
      range: [0.1, 10],
      default: 0.6,
      why: 'a little faster than the working stroke; common practice, no source',
    },
    handleTravel: {
      title: 'travel of the hand in a stroke',
      quantity: 'length',
      range: [0.05, 1.5],
      default: 0.45,
      why: 'a lever of half a metre through some 50 degrees; common practice, no source',
    },
    force: {
      title: 'force at which the operator gives up',
      quantity: 'force',
      range: [20, 1000],
      default: 300,
      why: 'what a person keeps up for a minute on a lever; common practice, no source',
    },
    outletLeak: leakage('leak back past the outlet check', 1e-9, 0, 'a sound seat'),
    inletLeak: leakage('leak back past the inlet check', 1e-9, 0, 'a sound seat'),
    pistonLeak: leakage('leak past the piston', 1e-9, 0, 'sound seals'),
    outletReversed: {
      type: 'switch',
      title: 'outlet check fitted the wrong way round',
      default: false,
      why: 'it is not; the handle would not move in the pumping direction',
    },
    air: {
      title: 'air in the pump and its pressure line, at ambient pressure',
      quantity: 'volume',
      range: [0, 1e-3],
      default: 0,
      why: 'primed; air makes the handle spring and the first strokes give little',
    },
  },
  ports: {
    inlet: { title: 'suction', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 5e-6, pocket: (p) => number(p, 'air') },
  },
  states: {
    position: { title: 'piston position, share of the stroke', unit: '', scale: 1, initial: 0 },
    strokes: { title: 'working strokes made', unit: '', scale: 1, initial: 0 },
  },
  inputs: { pumping: { title: 'operator', choices: ['off', 'on'], initial: 0 } },
  flows: {
    delivery: { from: 'inlet', to: 'outlet', source: true, title: 'hand pump flow' },
    back: { from: 'outlet', to: 'inlet', title: 'flow back past the outlet check' },
  },
  readings: {
    effort: {
      title: 'handle force',
      quantity: 'force',
      value: (d) => {
        if (d.mode === DELIVERING && d.k[STROKE_RATE] === 0) return d.k[STALL_FORCE];
        // Kicking back on the return stroke when the outlet check is not tight.
        const works = d.mode === DELIVERING || (d.mode === REFILLING && d.k[BACK] > 0);
        return works ? Math.max(0, d.pressure(OUTLET) - d.pressure(INLET)) * d.k[EFFORT] : 0;
      },
    },
  },
  modes: {
    idle: {
      title: 'idle',
      guards: [
        {
          to: 'delivering',
          when: (d) => d.input(0) - 0.5,
          cause: 'the operator pumps',
          reads: ['pumping'],
        },
      ],
    },
    delivering: {
      title: 'working stroke',
      active: true,
      guards: [
        {
          to: 'idle',
          when: (d) => 0.5 - d.input(0),
          cause: 'the operator stops',
          reads: ['pumping'],
        },
        { to: 'refilling', when: (d) => d.state(POSITION) - 1, cause: 'end of the working stroke' },
      ],
    },
    refilling: {
      title: 'return stroke',
      active: true,
      guards: [
        {
          to: 'idle',
          when: (d) => 0.5 - d.input(0),
          cause: 'the operator stops',
          reads: ['pumping'],
        },
        { to: 'delivering', when: (d) => -d.state(POSITION), cause: 'end of the return stroke' },
      ],
    },
  },
  prepare: (p, s) => {
    const volume = number(p, 'strokeVolume');
    const travel = number(p, 'handleTravel');
    const stall = (number(p, 'force') * travel) / volume;
    const back = leakIn(s, number(p, 'outletLeak'));
    const lost = leakIn(s, number(p, 'inletLeak')) + leakIn(s, number(p, 'pistonLeak'));
    const moves = p.outletReversed === true ? 0 : 1;
    return Float64Array.of(
      (moves * volume) / number(p, 'strokeTime'),
      moves / number(p, 'strokeTime'),
      1 / number(p, 'returnTime'),
      s.ambient + stall * (1 - FADE),
      1 / (stall * FADE),
      volume / travel,
      lost,
      back,
      back + lost > 0 ? (back * lost) / (back + lost) : 0,
      number(p, 'force'),
    );
  },
  equations: (d) => {
    const k = d.k;
    if (d.mode === DELIVERING) {
      d.flow(1, 0, 0, 0);
      const x = (d.pressure(OUTLET) - k[STALL_STARTS]) * k[PER_STALL_BAND];
      const left = 1 - rise(x);
      const share = fed(d, INLET);
      const swept = k[FLOW] * left * share;
      const byInlet = k[FLOW] * left * fedSlope(d, INLET);
      const byOutlet = -k[FLOW] * riseSlope(x) * k[PER_STALL_BAND] * share;
      const dp = d.pressure(OUTLET) - d.pressure(INLET);
      if (k[LOST] === 0 || dp <= 0 || swept <= 0) d.flow(0, swept, byInlet, byOutlet);
      else {
        const lost = k[LOST] * dp;
        const rest = swept - lost;
        const product = WIDTH * swept * lost;
        const root = Math.sqrt(rest * rest + product);
        // The same either way; each without a difference of like numbers.
        const net = 0.5 * (rest > 0 ? rest + root : product / (root - rest));
        const bySwept = (net + 0.25 * WIDTH * lost) / root;
        const byLost = ((0.25 * WIDTH * swept - net) / root) * k[LOST];
        d.flow(0, net, bySwept * byInlet - byLost, bySwept * byOutlet + byLost);
      }
      d.rate(POSITION, k[STROKE_RATE]);
      d.rate(STROKES, k[STROKE_RATE]);
      return;
    }
    d.flow(0, 0, 0, 0);
    const back = d.mode === REFILLING ? k[BACK] : k[BACK_AT_REST];
    d.flow(1, back * (d.pressure(OUTLET) - d.pressure(INLET)), back, -back);
    d.rate(POSITION, d.mode === REFILLING ? -k[RETURN_RATE] : 0);
    d.rate(STROKES, 0);
  },
  symbol: { name: 'hand-pump', size: [6, 6], ports: { inlet: [0, -3], outlet: [0, 3] } },
};
