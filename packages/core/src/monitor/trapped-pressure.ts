import type { RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise } from './reading/flag.js';
import { devicesOf, selectorLine } from './reading/line.js';
import { moves, spells, units, type Direction } from './reading/motion.js';
import { endOf, trace, valueAt } from './reading/span.js';

/** Pressure left behind in a line that should be idle. */
export const trappedPressure: RuleDefinition = {
  name: 'trapped-pressure',
  title: 'No pressure trapped in idle lines',
  summary:
    'When the gear is at rest at the end, the selector line that is not under supply (both, in ' +
    'neutral) holds no more than the residual limit, gauge. Margin: limit less residual, Pa.',
  source: 'Residual pressure check of a retraction test; common practice, no source.',
  kind: 'limit',
  limits: ['residualPressure'],
  judge: (e) => {
    const limit = e.scenario.limits.residualPressure;
    const end = endOf(e);
    if (limit === undefined) return [];
    // While something still moves, pressure in the return side is flow, not a trap.
    const parts = units(e).flatMap(({ unit }) => [unit.leg, ...unit.doors]);
    if (parts.some((m) => spells(e, m).some((s) => s.to >= end))) return [];
    return devicesOf(e, 'selector').flatMap((selector) => {
      const last = e.log.filter((x) => x.device === selector && x.kind !== 'note').pop()?.to;
      const idle: readonly Direction[] =
        last === 'up'
          ? ['down']
          : last === 'down'
            ? ['up']
            : last === 'neutral'
              ? ['up', 'down']
              : [];
      return idle.flatMap((direction) => {
        const node = selectorLine(e, selector, direction);
        const series = node === undefined ? undefined : trace(e, `${node}.pressure`);
        if (node === undefined || series === undefined || moves(e).length === 0) return [];
        const residual = valueAt(series, end) - e.scenario.ambient;
        return [
          raise(trappedPressure, limitValue(residual, { high: limit }, 'gauge-pressure', end), {
            devices: [selector, node],
            severity: 'caution',
            bad: `${node} kept pressure at the end, when it should be idle. It works against the next move and can hold a lock or a door.`,
            good: `${node} was idle at the end, as it should be.`,
            suggestion:
              'Look at the selector (leak across it, detent, neutral), at check valves and at a restricted return. Never open a line before its pressure is known.',
          }),
        ];
      });
    });
  },
};
