import type { RuleDefinition } from '../define/index.js';
import { limit } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { channelsOf, devicesOf } from './reading/line.js';
import { trace } from './reading/span.js';

/** Guide for pressure lines, m/s: 15 ft/s, plausibility, from memory. */
const GUIDE = 15 * 0.3048;

/** Oil that runs too fast for its line. */
export const lineVelocity: RuleDefinition = {
  name: 'line-velocity',
  title: 'Oil speed in lines',
  summary:
    'Mean oil speed (flow over bore area) stays below the limit, or below a guide of 15 ft/s where ' +
    'the scenario has none; past the guide alone the worst line is only noted. Margin: limit less speed, m/s.',
  source: 'Continuity v = Q / A; guide of 15 ft/s: plausibility, from memory.',
  kind: 'limit',
  limits: ['lineVelocity'],
  judge: (e) => {
    const own = e.scenario.limits.lineVelocity;
    const high = own ?? GUIDE;
    const flags = tightest(
      devicesOf(e, 'line').flatMap((line) => {
        const bore = e.scenario.components[line].parameters.bore;
        if (typeof bore !== 'number' || !(bore > 0)) return [];
        const area = (Math.PI / 4) * bore * bore;
        return channelsOf(e, line, 'flow').flatMap((channel) => {
          const flow = trace(e, channel);
          const found = flow && limit({ t: flow.t, v: speeds(flow.v, area) }, { high }, 'speed');
          if (found === undefined) return [];
          return [
            raise(lineVelocity, found, {
              devices: [line],
              severity: own === undefined ? 'note' : 'caution',
              bad: `Oil ran faster through ${line} than ${own === undefined ? 'the usual guide' : 'the limit'} from ${seconds(found.from)} to ${seconds(found.to)}. Fast oil loses pressure and hammers when it is stopped.`,
              good: `The fastest oil against the limit was in ${line} at ${seconds(found.from)}; it was inside.`,
              suggestion:
                'Look at the bore of the line and at what drives so much flow through it.',
            }),
          ];
        });
      }),
    );
    // The guide is worth one word, not one for every line.
    return own === undefined
      ? flags.filter((f) => f.margin === Math.min(...flags.map((x) => x.margin))).slice(0, 1)
      : flags;
  },
};

/** Speeds, m/s, whichever way the oil flows. */
function speeds(flow: Float64Array, area: number): Float64Array {
  const out = new Float64Array(flow.length);
  for (let i = 0; i < out.length; i++) out[i] = Math.abs(flow[i]) / area;
  return out;
}
