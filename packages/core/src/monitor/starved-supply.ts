import type { RuleDefinition } from '../define/index.js';
import { limit } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { trace } from './reading/span.js';

/** Part of ambient pressure below which a pump's inlet counts as starved; plausibility, from memory. */
const STARVED = 0.7;

/** A pump that does not get its oil. */
export const starvedSupply: RuleDefinition = {
  name: 'starved-supply',
  title: 'Supply has its oil',
  summary:
    'The inlet of every pump stays above the suction limit (absolute; 0.7 of ambient where the ' +
    'scenario has none), and the reservoir above its least content where the scenario gives one. ' +
    'Margin: lowest value less the limit, Pa or m3.',
  source: 'Suction pressure from memory, plausibility only; the rest common practice, no source.',
  kind: 'limit',
  limits: ['suctionPressure', 'reservoirContent'],
  judge: (e) => {
    const low = e.scenario.limits.suctionPressure ?? STARVED * e.scenario.ambient;
    const inlets = [...devicesOf(e, 'supply'), ...devicesOf(e, 'hand-supply')].flatMap((pump) => {
      const { inlet, suction } = e.scenario.components[pump].ports;
      const node = inlet ?? suction;
      const series = node === undefined ? undefined : trace(e, `${node}.pressure`);
      const found = series && limit(series, { low }, 'pressure');
      if (found === undefined) return [];
      return [
        raise(starvedSupply, found, {
          devices: [pump, node],
          severity: 'caution',
          bad: `The pressure at the inlet of ${pump} fell too low from ${seconds(found.from)} to ${seconds(found.to)}. A starved pump delivers less, foams and wears.`,
          good: `The inlet of ${pump} was well supplied.`,
          suggestion: 'Look at the reservoir level, its vent, the suction line and cold oil.',
        }),
      ];
    });
    const least = e.scenario.limits.reservoirContent;
    const tanks = devicesOf(e, 'reservoir').flatMap((tank) => {
      const level = e.channels.find((c) => c.of === tank && c.quantity === 'volume')?.name;
      const series = level === undefined ? undefined : trace(e, level);
      const found =
        least === undefined ? undefined : series && limit(series, { low: least }, 'volume');
      if (found === undefined) return [];
      return [
        raise(starvedSupply, found, {
          devices: [tank],
          severity: 'caution',
          bad: `${tank} held too little oil from ${seconds(found.from)} to ${seconds(found.to)}. Some gear positions take more oil than others; air gets in when it runs low.`,
          good: `${tank} held enough oil all along.`,
          suggestion: 'Look for a leak, and fill to the level for this gear position.',
        }),
      ];
    });
    return [...tightest(inlets), ...tightest(tanks)];
  },
};
