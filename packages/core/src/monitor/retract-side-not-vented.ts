import type { Evidence, Flag, RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import {
  blowDown,
  gasCame,
  gaugeAt,
  gaugesOf,
  legActuators,
  lockedDown,
} from './reading/blow-down.js';
import { raise } from './reading/flag.js';
import { devicesOf, lineOf } from './reading/line.js';
import type { Move } from './reading/motion.js';
import { trace, valueAt } from './reading/span.js';

/** Pressure that the up side may hold when the scenario gives no residual limit, Pa (100 psi). */
const USUAL = 6.9e5;

/** An up side that holds the legs against the gas. */
export const retractSideNotVented: RuleDefinition = {
  name: 'retract-side-not-vented',
  title: 'Up side vented for the blow-down',
  summary:
    'When the blow-down is over, or has come to a stop, the up line, and either side of the actuators ' +
    'of a leg that hangs or creeps, hold no more than the residual limit, gauge. Margin: limit less pressure, Pa.',
  source: 'An up line that stays pressurised slows or stops all legs: common practice, no source.',
  kind: 'limit',
  limits: ['residualPressure'],
  judge: (e) => {
    const move = blowDown(e);
    if (move === undefined || !gasCame(e, move)) return [];
    const limit = e.scenario.limits.residualPressure ?? USUAL;
    const dumps = devicesOf(e, 'dump').map((name) => ({
      name,
      node: e.scenario.components[name].ports.line,
    }));
    const selectors = devicesOf(e, 'selector').map((name) => ({
      name,
      node: lineOf(e, name, 'up'),
    }));
    const hanging = lockedDown(e, move).filter(({ at }) => at === undefined);
    const lines = dumps.length > 0 ? dumps : selectors;
    const flags = lines.flatMap(({ name, node }) => {
      const held = node === undefined ? undefined : gaugeAt(e, node, move.end);
      if (node === undefined || held === undefined) return [];
      const devices = [name, node, ...hanging.map(({ unit }) => unit.leg)];
      return [flag(held, limit, move.end, devices)];
    });
    // An up line that holds pressure explains the actuators; one that is let out does not.
    if (flags.some(({ margin }) => margin < 0)) return flags;
    const shutIn = hanging
      .filter(({ unit }) => !onItsWay(e, unit.leg, move))
      .flatMap(({ unit }) =>
        legActuators(e, unit).flatMap((name) => {
          const [least, ...others] = [...gaugesOf(e, name, move.end)].sort(
            (a, b) => a.gauge - b.gauge,
          );
          // Both sides above the limit: whichever is the up side, it is not let out.
          if (others.length === 0 || least.gauge <= limit) return [];
          return [flag(least.gauge, limit, move.end, [name, least.node, unit.leg])];
        }),
      );
    return [...flags, ...shutIn];
  },
};

function flag(held: number, limit: number, t: number, devices: readonly string[]): Flag {
  const [, node] = devices;
  return raise(retractSideNotVented, limitValue(held, { high: limit }, 'gauge-pressure', t), {
    devices,
    severity: 'fail',
    bad: `${node} kept pressure: oil that cannot leave the up side, or not fast enough, holds what it should let down against the gas.`,
    good: `${node} was let out.`,
    suggestion:
      'Look at dump valve, its rigging, the selector’s position, and restrictors on the way out. Cracking the up line frees the legs: never open it before its pressure is known and everybody is clear.',
  });
}

/** Whether a leg falls at the end of a move, and at its pace would be down in no more time than it has had. */
function onItsWay(e: Evidence, leg: string, { start, end }: Move): boolean {
  const said = e.log.filter((x) => x.device === leg && x.kind === 'motion' && x.t <= end);
  if (said.at(-1)?.to !== 'falling') return false;
  const angle = trace(e, `${leg}.angle`);
  if (angle === undefined) return true;
  const had = end - start;
  const look = Math.min(1, had);
  const left = valueAt(angle, end);
  return ((valueAt(angle, end - look) - left) / look) * had >= left;
}
