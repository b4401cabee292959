import type { RuleDefinition, Series } from '../define/index.js';
import { limit } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { trace, valueAt } from './reading/span.js';

/** Gas and vapour that opens up below ambient before it counts, m3: 1 cm3, own choice; small against any actuator. */
const ALLOWED = 1e-6;

/** Oil that cannot follow: gaps of vapour and swollen air. */
export const cavitation: RuleDefinition = {
  name: 'cavitation',
  title: 'No cavitation',
  summary:
    'Nowhere does the pressure fall so far below ambient that vapour and swollen air take up more ' +
    'than the allowed volume (limit void, else 1 cm3). What free air takes up at ambient pressure ' +
    'does not count. Margin: allowed volume less the largest gap, m3.',
  source: "Boyle's law for the air's share; the allowed volume is our own choice, no source.",
  kind: 'limit',
  limits: ['void'],
  judge: (e) => {
    const high = e.scenario.limits.void ?? ALLOWED;
    return tightest(
      e.channels
        .filter((c) => c.name === `${c.of}.void`)
        .flatMap(({ name, of: node }) => {
          const gas = trace(e, name);
          if (gas === undefined) return [];
          const gap = opened(gas, trace(e, `${node}.pressure`), e.scenario.ambient);
          const found = limit(gap, { high }, 'volume');
          if (found === undefined) return [];
          return [
            raise(cavitation, found, {
              devices: [node],
              severity: 'caution',
              bad: `${node} was starved of oil from ${seconds(found.from)} to ${seconds(found.to)}: vapour and swollen air opened a gap there. Until it is filled again nothing pushes on that side, and it closes with a blow.`,
              good: `No gap to speak of opened in any node; the nearest to it was ${node}.`,
              suggestion:
                'Look at what outruns its supply there: a missing or reversed restrictor, a starved pump, a blocked line, a low reservoir.',
            }),
          ];
        }),
    );
  },
};

/**
 * The part of the gas that is there only because the pressure is below ambient: at constant
 * temperature its air would fill V p / p_ambient there (Boyle). Without pressures, the growth.
 */
function opened(gas: Series, pressure: Series | undefined, ambient: number): Series {
  // Channels of one run share their times: then there is nothing to look up.
  const shared = pressure?.t === gas.t;
  const v = new Float64Array(gas.v.length);
  for (let i = 0; i < v.length; i++) {
    if (pressure === undefined) {
      v[i] = gas.v[i] - gas.v[0];
      continue;
    }
    const p = shared ? pressure.v[i] : valueAt(pressure, gas.t[i]);
    if (p < ambient) v[i] = gas.v[i] * (1 - p / ambient);
  }
  return { t: gas.t, v };
}
