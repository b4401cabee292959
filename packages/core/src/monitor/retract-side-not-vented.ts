import type { RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { blowDown, gaugeAt, lockedDown } from './reading/blow-down.js';
import { raise } from './reading/flag.js';
import { devicesOf, lineOf } from './reading/line.js';

/** Pressure that the up side may hold when the scenario gives no residual limit, Pa (100 psi). */
const USUAL = 6.9e5;

/** An up side that holds the legs against the gas. */
export const retractSideNotVented: RuleDefinition = {
  name: 'retract-side-not-vented',
  title: 'Up side vented for the blow-down',
  summary:
    'When the blow-down is over, or has come to a stop, the up line holds no more than the residual ' +
    'limit, gauge. Margin: limit less pressure, Pa.',
  source: 'An up line that stays pressurised slows or stops all legs: common practice, no source.',
  kind: 'limit',
  limits: ['residualPressure'],
  judge: (e) => {
    const move = blowDown(e);
    if (move === undefined) return [];
    const limit = e.scenario.limits.residualPressure ?? USUAL;
    const dumps = devicesOf(e, 'dump').map((name) => ({
      name,
      node: e.scenario.components[name].ports.line,
    }));
    const selectors = devicesOf(e, 'selector').map((name) => ({
      name,
      node: lineOf(e, name, 'up'),
    }));
    return (dumps.length > 0 ? dumps : selectors).flatMap(({ name, node }) => {
      const held = node === undefined ? undefined : gaugeAt(e, node, move.end);
      if (node === undefined || held === undefined) return [];
      const hanging = lockedDown(e, move).filter(({ at }) => at === undefined);
      return [
        raise(retractSideNotVented, limitValue(held, { high: limit }, 'gauge-pressure', move.end), {
          devices: [name, node, ...hanging.map(({ unit }) => unit.leg)],
          severity: 'fail',
          bad: `${node} kept pressure: oil that cannot leave the up side holds the legs against the gas.`,
          good: `${node} was let out.`,
          suggestion:
            'Look at dump valve, its rigging and the selector’s position. Cracking the up line frees the legs: never open it before its pressure is known and everybody is clear.',
        }),
      ];
    });
  },
};
