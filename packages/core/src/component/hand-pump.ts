/**
 * Hand pump, single acting: the operator takes a constant time for each working stroke and each
 * return. The flow falls smoothly to none at the pressure where the handle force reaches what
 * the operator can do: stall = force x handle travel / stroke volume (energy of a stroke).
 * The oil of a working stroke is taken from the inlet as it is delivered: the pump's own
 * barrel, a few cm3, is left out. Needs a check valve in its pressure line, as the real one has.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import { fed, fedSlope, INLET_VOLUME } from './shared/suction.js';

const FLOW = 0;
const STROKE_RATE = 1;
const RETURN_RATE = 2;
const STALL_STARTS = 3;
const PER_STALL_BAND = 4;
const EFFORT = 5;

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
  },
  ports: {
    inlet: { title: 'suction', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 5e-6 },
  },
  states: {
    position: { title: 'piston position, share of the stroke', unit: '', scale: 1, initial: 0 },
    strokes: { title: 'working strokes made', unit: '', scale: 1, initial: 0 },
  },
  inputs: { pumping: { title: 'operator', choices: ['off', 'on'], initial: 0 } },
  flows: { delivery: { from: 'inlet', to: 'outlet', source: true, title: 'hand pump flow' } },
  readings: {
    effort: {
      title: 'handle force',
      quantity: 'force',
      value: (d) =>
        d.mode === DELIVERING
          ? Math.max(0, d.pressure(OUTLET) - d.pressure(INLET)) * d.k[EFFORT]
          : 0,
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
    return Float64Array.of(
      volume / number(p, 'strokeTime'),
      1 / number(p, 'strokeTime'),
      1 / number(p, 'returnTime'),
      s.ambient + stall * (1 - FADE),
      1 / (stall * FADE),
      volume / travel,
    );
  },
  equations: (d) => {
    const k = d.k;
    if (d.mode === DELIVERING) {
      const x = (d.pressure(OUTLET) - k[STALL_STARTS]) * k[PER_STALL_BAND];
      const left = 1 - rise(x);
      const share = fed(d, INLET);
      d.flow(
        0,
        k[FLOW] * left * share,
        k[FLOW] * left * fedSlope(d, INLET),
        -k[FLOW] * riseSlope(x) * k[PER_STALL_BAND] * share,
      );
      d.rate(POSITION, k[STROKE_RATE]);
      d.rate(STROKES, k[STROKE_RATE]);
      return;
    }
    d.flow(0, 0, 0, 0);
    d.rate(POSITION, d.mode === REFILLING ? -k[RETURN_RATE] : 0);
    d.rate(STROKES, 0);
  },
  symbol: { name: 'hand-pump', size: [6, 6], ports: { inlet: [0, -3], outlet: [0, 3] } },
};
