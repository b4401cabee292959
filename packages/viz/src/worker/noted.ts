import type { ObservedSwing } from '@wheelwell/core';

/** Whether anything was taken down of a swing. */
export function isNoted(swing: ObservedSwing): boolean {
  const { times, order, never = [], gauges, supply = {}, remarks, recordings } = swing;
  const all = [times, order, never, gauges, supply, remarks, recordings];
  return all.some((of) => Object.keys(of).length > 0);
}
