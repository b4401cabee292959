import type { RuleDefinition } from '../define/index.js';
import { raise, seconds } from './reading/flag.js';

/** A run that did not play the card to its end. */
export const notFinished: RuleDefinition = {
  name: 'not-finished',
  title: 'Run played to its end',
  summary:
    'The run plays the whole card. Margin: minus the time that is missing, s. What was computed ' +
    'until then is shown and judged.',
  source: 'Outcome of the computation.',
  kind: 'holds',
  limits: [],
  judge: (e) => {
    const { kind, time, where, why, hint } = e.outcome;
    if (kind === 'done') return [];
    // A run that broke off at the last instant has not finished either: keep the sign.
    const margin = Math.min(time - e.duration, -Number.MIN_VALUE);
    return [
      raise(
        notFinished,
        { margin, quantity: 'time', from: time, to: time },
        {
          devices: where,
          severity: 'fail',
          bad: `The run ended at ${seconds(time)} of ${seconds(e.duration)} (${kind}): ${why}`,
          good: '',
          suggestion: hint,
        },
      ),
    ];
  },
};
