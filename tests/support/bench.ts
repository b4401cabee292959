/** One device of the catalogue on a bench: a frame without a network, and its modes worked by hand. */
import { expect } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import { tailored } from '../../packages/core/src/define/index.js';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { FakeFrame } from './fake-frame.js';
import { SURROUNDINGS } from './sample-parameters.js';

export const OIL = SURROUNDINGS.mild;

/** One device on the bench, in its initial mode. */
export function bench(kind: string, given: Parameters = {}) {
  const usual = Object.entries(components[kind].parameters).flatMap(([name, p]) =>
    p.default === undefined ? [] : [[name, p.default] as const],
  );
  const parameters = { ...Object.fromEntries(usual), ...given };
  const device = tailored(components[kind], parameters);
  const frame = new FakeFrame(device, parameters, OIL);
  const names = Object.keys(device.modes!);
  const inputs = Object.keys(device.inputs ?? {});
  frame.mode = names.indexOf(device.initialMode?.(parameters) ?? names[0]);
  const fired = () =>
    device.modes![names[frame.mode]].guards?.filter((g) => g.when(frame) > 0) ?? [];
  return {
    device,
    frame,
    inputs,
    findings: device.check?.(parameters).map((f) => f.message) ?? [],
    set(input: string, word: string) {
      const at = inputs.indexOf(input);
      const value = device.inputs![input].choices!.indexOf(word);
      expect(value).toBeGreaterThanOrEqual(0);
      frame.inputs[at] = value;
    },
    cause: () => fired()[0]?.cause,
    /** The mode once every guard that fires at these values has fired. */
    settled(): string {
      for (let i = 0; i < 10; i++) {
        const [guard] = fired();
        if (guard === undefined) return names[frame.mode];
        frame.mode = names.indexOf(guard.to);
        device.modes![guard.to].enter?.(frame, frame.states);
      }
      throw new Error('never comes to rest');
    },
    /** Rate of the first own state. */
    rate(): number {
      frame.run(device);
      return frame.stateRates[0].value;
    },
    openings(): readonly number[] {
      frame.run(device);
      return [...frame.openings];
    },
    says: (signal: string) => device.signals![signal].value(frame),
  };
}
