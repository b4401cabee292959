import type { Evidence, RuleDefinition } from '../define/index.js';
import { never } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { channelsOf, devicesOf } from './reading/line.js';
import { above, below, endOf, overlap, trace, type Span } from './reading/span.js';

/** Current that counts as switched on, A: own choice, far below what any pump motor draws. */
const ON = 1;
/** Slower than this part of its fastest, a motor counts as standing; own choice. */
const STANDING = 0.05;
/** ... and slower than this in any case, rad/s (10 rpm); own choice. */
const CRAWLING = 1;
/** A motor may take this long to run up, or to turn round, s; own choice. */
const GRACE = 0.3;

/** An electric motor that draws current and does not turn. */
export const motorStalled: RuleDefinition = {
  name: 'motor-stalled',
  title: 'Motor turns while it is switched on',
  summary:
    'The motor of an electric supply does not stand still under current for longer than it needs ' +
    'to run up (0.3 s). Margin: minus the time it stood, or the shortest time between the two, s.',
  source: 'A weak battery or too much load stalls a pack; common practice, no source.',
  kind: 'never',
  limits: [],
  judge: (e) =>
    devicesOf(e, 'supply').flatMap((device) => {
      const spans = stalls(e, device);
      if (spans === undefined) return [];
      const end = endOf(e);
      const found = never(spans, [{ from: 0, to: end }], end);
      return [
        raise(motorStalled, found, {
          devices: [device],
          severity: 'caution',
          bad: `The motor of ${device} stood still under current from ${seconds(found.from)}, for ${seconds(-found.margin)} in all. It burns out, or its breaker opens, before the gear is home.`,
          good: `The motor of ${device} turned whenever it was switched on.`,
          suggestion:
            'Read volts at the motor while it is loaded, then the pressure it works against: a load, a relief valve set too high, a line that is shut.',
        }),
      ];
    }),
};

/** Spans under current without turning; undefined for what has no motor or says nothing of it. */
function stalls(e: Evidence, device: string): readonly Span[] | undefined {
  const current = trace(e, channelsOf(e, device, 'current')[0] ?? '');
  const turning = trace(e, channelsOf(e, device, 'angular-speed')[0] ?? '');
  if (current === undefined || turning === undefined) return undefined;
  const speed = { t: turning.t, v: turning.v.map(Math.abs) };
  const slow = Math.max(CRAWLING, STANDING * speed.v.reduce((a, b) => Math.max(a, b)));
  return overlap(above(current, ON), below(speed, slow)).filter((s) => s.to - s.from > GRACE);
}
