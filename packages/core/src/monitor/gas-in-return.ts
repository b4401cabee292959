import type { RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { endOf, trace, valueAt } from './reading/span.js';

/** Free gas that may get into the return when the scenario gives no limit, m3. */
const USUAL = 1e-4;

/** Gas that has got into the hydraulic return. */
export const gasInReturn: RuleDefinition = {
  name: 'gas-in-return',
  title: 'No gas in the hydraulic return',
  summary:
    'No more free gas than the limit gets into a reservoir: it foams, and the pump draws it. Margin: ' +
    'limit less gas, m3 of free gas.',
  source: 'Foam after a shuttle that leaks across: common practice, no source.',
  kind: 'limit',
  limits: ['returnGas'],
  judge: (e) => {
    const limit = e.scenario.limits.returnGas ?? USUAL;
    const end = endOf(e);
    return devicesOf(e, 'reservoir').flatMap((name) => {
      const nodes = [...new Set(Object.values(e.scenario.components[name].ports))];
      return nodes.flatMap((node) => {
        const series = trace(e, `${node}.gas`);
        if (series === undefined) return [];
        const gas = valueAt(series, end);
        return [
          raise(gasInReturn, limitValue(gas, { high: limit }, 'free-gas', end), {
            devices: [name],
            severity: 'caution',
            bad: `${(gas * 1e3).toFixed(2)} L of free gas went into ${name}: foam, and a pump that draws it.`,
            good: `Next to no gas went into ${name}.`,
            suggestion:
              'Look at shuttles that leak across or were slow, and at piston seals. Let the foam settle, bleed, and check the level before the pump runs.',
          }),
        ];
      });
    });
  },
};
