import type { RuleDefinition } from '../define/index.js';
import { raise, seconds } from './reading/flag.js';

/** A run that broke off at the last instant has not finished either: its margin keeps its sign, s. */
const LEAST = 1e-3;

/** A run that did not play the card to its end. */
export const notFinished: RuleDefinition = {
  name: 'not-finished',
  title: 'Run played to its end',
  summary:
    'The run plays the whole card, every step of it. Margin: minus the time that is missing, or ' +
    'for which the operator waited in vain, s. What was computed until then is shown and judged.',
  source: 'Outcome of the computation.',
  kind: 'holds',
  limits: [],
  judge: (e) => {
    const { kind, time, where, why, hint } = e.outcome;
    const whole = Math.max(e.duration, e.card.duration);
    if (kind === 'done') {
      if (where.length === 0) return [];
      // Played to the end of its time, but the operator was left waiting for something.
      const last = e.log.filter((x) => x.kind === 'operator').pop()?.t ?? 0;
      const waited = {
        margin: Math.min(last - time, -LEAST),
        quantity: 'time',
        from: last,
        to: time,
      } as const;
      return [
        raise(notFinished, waited, {
          devices: where,
          severity: 'caution',
          bad: why,
          good: '',
          suggestion: hint,
        }),
      ];
    }
    return [
      raise(
        notFinished,
        { margin: Math.min(time - whole, -LEAST), quantity: 'time', from: time, to: time },
        {
          devices: where.length === 0 ? ['run'] : where,
          severity: 'fail',
          bad: `The run ended at ${seconds(time)} of ${seconds(whole)} (${kind}): ${why}`,
          good: '',
          suggestion: hint,
        },
      ),
    ];
  },
};
