/** How a fault shows in a small swing: the run with and without it, its times, its gauges. */
import { simulate } from '@wheelwell/core';
import type { FaultEntry, Run, Scenario } from '@wheelwell/core';

/** The run of a host's only card; with a fault where one is named. */
export function run(
  host: { readonly scenario: Scenario },
  fault?: string,
  on = '',
  severity = 1,
): Run {
  const entry: FaultEntry[] = fault === undefined ? [] : [{ fault, on, severity }];
  return simulate(host.scenario, { faults: entry });
}

/** Time of the (only) unit one way, s; infinite when it did not get there. */
export function time(r: Run, way: 'up' | 'down', unit = 'unit'): number {
  const total = r.timings.find((t) => t.direction === way && t.unit === unit)?.total;
  return total === undefined || Number.isNaN(total) ? Infinity : total;
}

/** Angle of a mechanism at a time, degrees. */
export function degrees(r: Run, mechanism: string, t: number): number {
  const { t: times, v } = r.series(`${mechanism}.angle`)!;
  const i = times.findIndex((x) => x >= t);
  return (v[i < 0 ? v.length - 1 : i] * 180) / Math.PI;
}

/** When a device or mechanism first comes to a mode or motion after `from`, s; infinite when never. */
export function first(r: Run, device: string, to: string, from = 0): number {
  return (
    r.log.find((e) => e.device === device && e.to === to && e.t >= from && e.kind !== 'operator')
      ?.t ?? Infinity
  );
}
