import type { RuleDefinition } from '../define/index.js';
import { limit } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { pressureNodes } from './reading/line.js';
import { trace } from './reading/span.js';

/** Pressure above what the system may see. */
export const peakPressure: RuleDefinition = {
  name: 'peak-pressure',
  title: 'Pressure peaks',
  summary:
    'No node sees more than the peak limit, gauge; spikes when something arrives at a stop count. ' +
    'Margin: limit less the highest peak, Pa. The nearest node is shown when all are inside.',
  source:
    "The limit is the scenario's; peaks of up to 135 % of working pressure are usual in aircraft standards (from memory, plausibility only).",
  kind: 'limit',
  limits: ['peakPressure'],
  judge: (e) => {
    const high = e.scenario.limits.peakPressure;
    if (high === undefined) return [];
    return tightest(
      pressureNodes(e).flatMap((node) => {
        const series = trace(e, `${node}.pressure`);
        const found =
          series && limit(series, { high: high + e.scenario.ambient }, 'gauge-pressure');
        if (found === undefined) return [];
        return [
          raise(peakPressure, found, {
            devices: [node],
            severity: 'caution',
            bad: `The pressure in ${node} rose above the peak limit from ${seconds(found.from)} to ${seconds(found.to)}.`,
            good: `The highest peak against the limit was in ${node} at ${seconds(found.from)}; it was inside.`,
            suggestion:
              'Look at the relief setting, at what stopped suddenly at that time, and at lines closed at both ends.',
          }),
        ];
      }),
    );
  },
};
