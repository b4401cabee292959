/** Flows of one device of the catalogue on a bench. */
import { components } from '../../packages/core/src/component/index.js';
import { tailored } from '../../packages/core/src/define/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { FakeFrame } from './fake-frame.js';
import { SURROUNDINGS } from './sample-parameters.js';

const OIL = SURROUNDINGS.mild;

/** Flows (m3/s) by path, at gauge pressures (Pa) by port in declared order; what is not given is as by default. */
export function valveFlows(
  kind: string,
  given: Parameters,
  pressures: readonly number[],
): Record<string, number> {
  const usual = Object.entries(components[kind].parameters).flatMap(([name, p]) =>
    p.default === undefined ? [] : [[name, p.default] as const],
  );
  const p = { ...Object.fromEntries(usual), ...given };
  const device = tailored(components[kind], p);
  const frame = new FakeFrame(device, p, OIL);
  pressures.forEach((gaugePressure, i) => (frame.pressures[i] = OIL.ambient + gaugePressure));
  frame.run(device);
  return Object.fromEntries(Object.keys(device.flows!).map((name, i) => [name, frame.flows[i].q]));
}
