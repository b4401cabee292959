/** An engine's pump in a small swing, and when a device's mode begins. */
import type { Run } from '@wheelwell/core';
import type { Written } from './small-swing.js';

/** Times at which a device's mode begins, s. */
export const begins = (r: Run, device: string, mode: string): number[] =>
  r.log.filter((e) => e.device === device && e.kind === 'mode' && e.to === mode).map((e) => e.t);

/** An engine's pump of 0.36 cubic inches a turn. */
export const enginePump: Written = {
  is: 'engine-pump',
  ports: { inlet: 'suction', outlet: 'stand' },
  displacement: '0.36 in^3/rev',
  'rated-speed': '2000 rpm',
};

/** The engine runs from then on; 0 stops it. */
export const turning = (t: number, rpm = 2000): Written => ({
  at: `${t} s`,
  device: 'supply',
  input: 'speed',
  value: `${rpm} rpm`,
});
