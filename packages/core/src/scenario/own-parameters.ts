/** The figures of a scenario besides those of its devices and mechanisms, declared as theirs are. */
import type { NumberParameter } from '../define/parameter.js';
import { LIMITS } from './limit.js';

type Figures<K extends string> = Readonly<Record<K, NumberParameter>>;

const AIRSPEED = [0, 200] as const;
const SIDESLIP = [-Math.PI / 6, Math.PI / 6] as const;
const OIL_TEMPERATURE = [203.15, 423.15] as const;

export const SURROUNDINGS: Figures<'ambient' | 'airspeed' | 'sideslip'> = {
  ambient: {
    title: 'pressure of the surrounding air',
    why: 'standard atmosphere at sea level (ISO 2533)',
    quantity: 'pressure',
    range: [1e4, 1.2e5],
    default: 101325,
  },
  airspeed: {
    title: 'equivalent airspeed',
    why: 'none in a hangar',
    quantity: 'speed',
    range: AIRSPEED,
    default: 0,
  },
  sideslip: {
    title: 'angle of sideslip, positive with the wind from the right',
    why: 'none in straight flight',
    quantity: 'angle',
    range: SIDESLIP,
    default: 0,
  },
};

export const OIL: Figures<'temperature' | 'freeAir' | 'thickness' | 'warmedBy'> = {
  temperature: {
    title: 'oil temperature',
    why: 'room temperature',
    quantity: 'temperature',
    range: OIL_TEMPERATURE,
    default: 293.15,
  },
  freeAir: {
    title: 'free air by volume at ambient pressure',
    why: 'what oil in service usually holds (common practice, no source)',
    quantity: 'ratio',
    range: [0, 0.2],
    default: 0.005,
  },
  thickness: {
    title: "viscosity as a share of what the oil's data say",
    why: '1 for the right oil',
    quantity: 'ratio',
    range: [0.05, 20],
    default: 1,
  },
  /** A difference, though its quantity does not say so. */
  warmedBy: {
    title: 'how much warmer it is than when it was shut in',
    why: 'nothing shut in has changed its temperature',
    quantity: 'temperature',
    range: [-80, 80],
    default: 0,
  },
};

export const NODE: Figures<'volume' | 'air'> = {
  volume: {
    title: 'extra oil volume',
    why: 'the ports that join here bring their own',
    quantity: 'volume',
    range: [0, 1],
    default: 0,
  },
  air: {
    title: 'trapped air at ambient pressure',
    why: 'a line that was bled',
    quantity: 'volume',
    range: [0, 0.1],
    default: 0,
  },
};

/** A card's own conditions; those that may be absent then are the scenario's. */
export const CARD: Figures<'duration' | 'temperature' | 'airspeed' | 'sideslip'> = {
  duration: {
    title: 'how long the run lasts',
    why: 'long enough for all that moves to come to rest',
    quantity: 'time',
    range: [1e-3, 3600],
  },
  temperature: {
    title: 'oil temperature for this card',
    why: "the scenario's own where the card has none",
    quantity: 'temperature',
    range: OIL_TEMPERATURE,
  },
  airspeed: {
    title: 'equivalent airspeed for this card',
    why: "the scenario's own where the card has none",
    quantity: 'speed',
    range: AIRSPEED,
  },
  sideslip: {
    title: 'angle of sideslip for this card',
    why: "the scenario's own where the card has none",
    quantity: 'angle',
    range: SIDESLIP,
  },
};

const limits: Figures<string> = Object.fromEntries(
  Object.entries(LIMITS).map(([name, { quantity, range, about }]) => [
    name,
    {
      title: about,
      why: "the aircraft's own data say it; where there is none, nothing is judged by it",
      quantity,
      range,
    },
  ]),
);

/** All of them, by where they stand in the file; names as in the scenario that was read. */
export const OWN_PARAMETERS = {
  surroundings: SURROUNDINGS,
  fluid: OIL,
  nodes: NODE,
  card: CARD,
  limits,
} as const;
