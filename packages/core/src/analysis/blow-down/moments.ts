import type { Run, Scenario, Series } from '../../define/index.js';
import type { MomentCurve, MomentPoint } from './shapes.js';

/** The pull of the first blow-down handle, s; NaN without one. */
export function pullTime(run: Run): number {
  return (
    run.log.find(
      (e) => e.kind === 'operator' && run.role(e.device) === 'blow-down' && e.to !== 'closed',
    )?.t ?? NaN
  );
}

/** Channels that the curve of a leg is made of. */
function channels(scenario: Scenario, leg: string): string[] {
  const bottles = Object.keys(scenario.components).map((name) => `${name}.gauge`);
  const of = ['angle', 'speed', 'weight', 'friction', 'pressed-low', 'pressed-high'];
  return [...of.map((what) => `${leg}.${what}`), ...bottles];
}

/**
 * Moment available against moment needed over a leg's travel, from the pull of the handle on.
 * Available is what the gas side of the actuators gives and what weight and springs help; needed is what
 * weight and springs hinder, what friction can hold, and, while the leg stands, what is shut in on
 * the up side. (While it moves the up side only carries what its own flow makes.)
 *
 * @throws RangeError when there is no unit of that name, or no handle is pulled.
 */
export function momentCurve(run: Run, unit: string): MomentCurve {
  const entry = run.scenario.units[unit];
  if (entry === undefined) throw new RangeError(`unknown unit: ${unit}`);
  const seen = run.look(channels(run.scenario, entry.leg));
  return curveOf(run, unit, seen);
}

/** The same of several units, with some more channels, from one look at the run. */
export function momentCurves(
  run: Run,
  units: readonly string[],
  more: readonly string[],
): [MomentCurve[], ReadonlyMap<string, Series>] {
  const legs = units.map((unit) => run.scenario.units[unit].leg);
  const names = new Set([...legs.flatMap((leg) => channels(run.scenario, leg)), ...more]);
  const seen = run.look([...names]);
  return [units.map((unit) => curveOf(run, unit, seen)), seen];
}

function curveOf(run: Run, unit: string, seen: ReadonlyMap<string, Series>): MomentCurve {
  const pull = pullTime(run);
  if (Number.isNaN(pull)) throw new RangeError('this run pulls no blow-down handle');
  const { leg, uplock, downlock } = run.scenario.units[unit];
  const of = (what: string): Float64Array =>
    seen.get(`${leg}.${what}`)?.v ?? seen.get([...seen.keys()][0])!.v.map(() => 0);
  const { t } = [...seen.values()][0];
  const angle = of('angle');
  const speed = of('speed');
  const low = of('pressed-low');
  const high = of('pressed-high');
  const weight = of('weight');
  const friction = of('friction');
  const supply = Object.keys(run.scenario.components).find((n) => run.role(n) === 'gas-supply');
  const bottle = seen.get(`${supply}.gauge`)?.v;
  const locks = run.log.filter(
    (e) => (e.device === uplock || e.device === downlock) && e.kind === 'mode',
  );
  const points: MomentPoint[] = [];
  const engaged = new Set<string>();
  let next = 0;
  for (let i = 0; i < t.length; i++) {
    for (; next < locks.length && locks[next].t <= t[i]; next++) {
      if (holds(locks[next].to)) engaged.add(locks[next].device);
      else engaged.delete(locks[next].device);
    }
    if (t[i] < pull) continue;
    // The static moment counts towards up; the way wanted is down.
    const help = -weight[i];
    points.push({
      t: t[i],
      angle: angle[i],
      available: low[i] + Math.max(help, 0),
      needed:
        Math.max(-help, 0) + friction[i] + (Math.abs(speed[i]) < STANDS ? Math.max(high[i], 0) : 0),
      bottle: bottle?.[i] ?? NaN,
      held: engaged.size > 0,
    });
  }
  return { unit, leg, points };
}

/** Below this a leg stands, rad/s. */
const STANDS = 1e-4;

/** Words of a lock that holds. */
function holds(word: string): boolean {
  return word === 'engaged' || word.startsWith('locked ');
}

/** The point of the least margin while nothing but load holds the leg; undefined when there is none. */
export function worstPoint(points: readonly MomentPoint[]): MomentPoint | undefined {
  let worst: MomentPoint | undefined;
  for (const p of points) {
    if (p.held) continue;
    if (worst === undefined || p.available - p.needed < worst.available - worst.needed) worst = p;
  }
  return worst ?? points.at(-1);
}
