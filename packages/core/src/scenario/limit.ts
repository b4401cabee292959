import type * as z from 'zod/mini';
import type { Quantity } from '../define/parameter.js';
import { parseAnyQuantity } from '../quantity/index.js';
import { complain, field, quantityField } from './field.js';

/** The acceptance limits that scenarios may set, with their quantity and bounds (SI). */
export const LIMITS: Readonly<
  Record<string, { quantity: Quantity; range: readonly [number, number]; about: string }>
> = {
  timeUp: { quantity: 'time', range: [0, 600], about: 'longest time for the gear to go up' },
  timeDown: { quantity: 'time', range: [0, 600], about: 'longest time for the gear to go down' },
  spread: { quantity: 'time', range: [0, 600], about: 'largest difference between left and right' },
  timeBlowDown: {
    quantity: 'time',
    range: [0, 600],
    about: 'longest time from the blow-down handle to the last lock',
  },
  blowDownSpread: {
    quantity: 'time',
    range: [0, 600],
    about: 'largest difference between left and right in a blow-down',
  },
  returnGas: {
    quantity: 'free-gas',
    range: [0, 1],
    about: 'most free gas that may get into the hydraulic return',
  },
  arrivalSpeed: {
    quantity: 'angular-speed',
    range: [0, 100],
    about: 'fastest arrival of a leg at an end stop',
  },
  doorArrivalSpeed: {
    quantity: 'angular-speed',
    range: [0, 100],
    about: 'fastest arrival of a door at an end stop',
  },
  peakPressure: { quantity: 'gauge-pressure', range: [0, 1e8], about: 'highest pressure anywhere' },
  lineVelocity: { quantity: 'speed', range: [0, 100], about: 'fastest flow in a line' },
  residualPressure: {
    quantity: 'gauge-pressure',
    range: [0, 1e8],
    about: 'highest pressure left at rest',
  },
  suctionPressure: {
    quantity: 'pressure',
    range: [0, 1.2e5],
    about: 'lowest pressure at the inlet of a supply, absolute',
  },
  reservoirContent: { quantity: 'volume', range: [0, 0.1], about: 'least oil in a reservoir' },
  void: { quantity: 'volume', range: [0, 1e-2], about: 'largest gas or vapour space in a line' },
  clearance: { quantity: 'length', range: [0, 5], about: 'smallest distance of tyre and door' },
  doorClearance: {
    quantity: 'length',
    range: [0, 5],
    about: 'smallest distance of two doors; that of tyre and door where absent',
  },
  bayClearance: {
    quantity: 'length',
    range: [0, 5],
    about: 'smallest distance of tyre and well; that of tyre and door where absent',
  },
  creep: {
    quantity: 'angle',
    range: [0, 1],
    about: 'farthest a part may move from its end by itself',
  },
  cycleTime: {
    quantity: 'time',
    range: [0, 600],
    about: 'shortest time between two starts of a supply while nothing moves',
  },
};

/** Field of a limit by its name; one that only a rule knows takes whatever its unit says. */
export function limitField(name: string): z.ZodMiniType<number> {
  if (Object.hasOwn(LIMITS, name)) {
    const { quantity, range, about } = LIMITS[name];
    return quantityField(quantity, range, about);
  }
  return field(
    (value, context) => {
      if (typeof value !== 'string' && typeof value !== 'number') {
        return complain(context, value, {
          problem: 'a quantity belongs here',
          allowed: 'a number with its unit',
        });
      }
      const read = parseAnyQuantity(String(value));
      return 'problem' in read ? complain(context, value, read) : read.value;
    },
    { type: ['string', 'number'], description: `limit ${name}` },
  );
}
