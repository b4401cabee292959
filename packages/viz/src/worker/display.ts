/** The user's units as plain numbers, taken from core so that there is one table of them. */
import { SI_UNIT, toDisplay } from '@wheelwell/core';
import type { Quantity } from '@wheelwell/core';
import type { Display, System } from './message.js';

export function displayTable(system: System): Record<Quantity, Display> {
  const quantities = Object.keys(SI_UNIT) as Quantity[];
  const entries = quantities.map((quantity): [Quantity, Display] => {
    const zero = toDisplay(0, quantity, system);
    const one = toDisplay(1, quantity, system);
    return [quantity, { factor: one.value - zero.value, shift: zero.value, unit: zero.unit }];
  });
  return Object.fromEntries(entries) as Record<Quantity, Display>;
}
