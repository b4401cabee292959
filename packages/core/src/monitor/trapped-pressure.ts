import type { Evidence, RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise } from './reading/flag.js';
import { lineOf } from './reading/line.js';
import { lockOf, moves, spells, units, type Direction } from './reading/motion.js';
import { endOf, trace, valueAt } from './reading/span.js';

/** Pressure left behind in a line that should be idle. */
export const trappedPressure: RuleDefinition = {
  name: 'trapped-pressure',
  title: 'No pressure trapped in idle lines',
  summary:
    'When the gear is at rest at the end, the line of the selector (or of a supply with a line for ' +
    'each way) that is not under supply holds no more than the residual limit, gauge; in neutral ' +
    'both, but for the one that holds legs without a lock. Margin: limit less residual, Pa.',
  source: 'Residual pressure check of a retraction test; common practice, no source.',
  kind: 'limit',
  limits: ['residualPressure'],
  judge: (e) => {
    const limit = e.scenario.limits.residualPressure;
    const end = endOf(e);
    // After a blow-down another rule asks whether the up side was let out.
    if (limit === undefined || moves(e).at(-1)?.by === 'gas') return [];
    // While something still moves, pressure in the return side is flow, not a trap.
    const parts = units(e).flatMap(({ unit }) => [unit.leg, ...unit.doors]);
    if (parts.some((m) => spells(e, m).some((s) => s.to >= end))) return [];
    return directing(e).flatMap((device) =>
      idleWays(e, device).flatMap((direction) => {
        const node = lineOf(e, device, direction);
        const series = node === undefined ? undefined : trace(e, `${node}.pressure`);
        if (node === undefined || series === undefined) return [];
        const residual = valueAt(series, end) - e.scenario.ambient;
        return [
          raise(trappedPressure, limitValue(residual, { high: limit }, 'gauge-pressure', end), {
            devices: [device, node],
            severity: 'caution',
            bad: `${node} kept pressure at the end, when it should be idle. It works against the next move and can hold a lock or a door.`,
            good: `${node} was idle at the end, as it should be.`,
            suggestion:
              'Look at the selector (leak across it, detent, neutral), at check valves and at a restricted return. Never open a line before its pressure is known.',
          }),
        ];
      }),
    );
  },
};

/** Devices that send oil up or down: they have a line for each way, and said or were told which. */
function directing(e: Evidence): readonly string[] {
  const worked = (name: string): boolean => e.log.some((x) => x.device === name && isWay(x.to));
  return Object.keys(e.scenario.components).filter((name) => {
    const role = e.role(name);
    if (role !== 'selector' && role !== 'supply' && !worked(name)) return false;
    return WAYS.every((way) => lineOf(e, name, way) !== undefined);
  });
}

/** The lines that should be idle at the end. */
function idleWays(e: Evidence, device: string): readonly Direction[] {
  const sent = moves(e).at(-1)?.direction;
  if (sent === undefined) return [];
  const other = WAYS.filter((way) => way !== sent);
  // A pack that has stopped still holds what it sent.
  if (e.role(device) === 'supply') return other;
  const word = e.log.filter((x) => x.device === device && x.kind !== 'note').at(-1)?.to ?? '';
  if (isWay(word)) return WAYS.filter((way) => way !== word);
  if (word !== 'neutral') return [];
  // A leg without a lock is held by the very pressure that sent it.
  const held = units(e).some(({ unit }) => lockOf(unit, sent) === undefined);
  return held ? other : WAYS;
}

const WAYS: readonly Direction[] = ['up', 'down'];

function isWay(word: string): word is Direction {
  return word === 'up' || word === 'down';
}
