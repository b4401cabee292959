import type { Run, Series } from '../../define/index.js';
import { firstPull, holding } from '../../monitor/index.js';
import type { MomentCurve, MomentPoint } from './shapes.js';

/** Channels that the curve of a leg is made of. */
function channels(run: Run, leg: string): string[] {
  const of = ['angle', 'speed', 'weight', 'friction', 'pressed-low', 'pressed-high'];
  return [...of.map((what) => `${leg}.${what}`), gauge(run)];
}

/** Channel of the bottle's gauge, the first bottle's where there are several. */
function gauge(run: Run): string {
  const names = Object.keys(run.scenario.components);
  return `${names.find((name) => run.role(name) === 'gas-supply')}.gauge`;
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
  if (run.scenario.units[unit] === undefined) throw new RangeError(`unknown unit: ${unit}`);
  const [curve] = lookAtMoments(run, [unit]).curves;
  if (curve === undefined) throw new RangeError('this run pulls no blow-down handle');
  return curve;
}

/** The same of every unit, from one look at the run; none when no handle is pulled. */
export function momentCurves(run: Run): readonly MomentCurve[] {
  return lookAtMoments(run, Object.keys(run.scenario.units)).curves;
}

/** Curves of some units, with some more channels, from one look at the run. */
export function lookAtMoments(
  run: Run,
  units: readonly string[],
  more: readonly string[] = [],
): { readonly curves: readonly MomentCurve[]; readonly seen: ReadonlyMap<string, Series> } {
  const pull = firstPull(run)?.t;
  const names = units.flatMap((unit) => channels(run, run.scenario.units[unit].leg));
  const seen = run.look(pull === undefined ? more : [...new Set([...names, ...more])]);
  const curves = pull === undefined ? [] : units.map((unit) => curveOf(run, unit, pull, seen));
  return { curves, seen };
}

function curveOf(
  run: Run,
  unit: string,
  pull: number,
  seen: ReadonlyMap<string, Series>,
): MomentCurve {
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
  const bottle = seen.get(gauge(run))?.v;
  const holders = run.log.filter(
    (e) =>
      ((e.device === uplock || e.device === downlock) && e.kind === 'mode') ||
      (e.device === leg && e.kind === 'motion'),
  );
  const points: MomentPoint[] = [];
  const engaged = new Set<string>();
  let next = 0;
  for (let i = 0; i < t.length; i++) {
    for (; next < holders.length && holders[next].t <= t[i]; next++) {
      const { device, to } = holders[next];
      // At its stop there is nothing left to move: what presses the other side there is no hindrance.
      if (device === leg ? to === 'at down' : holding(to)) engaged.add(device);
      else engaged.delete(device);
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

/** The point of the least margin while nothing but load holds the leg; undefined when a lock always does. */
export function worstPoint(points: readonly MomentPoint[]): MomentPoint | undefined {
  let worst: MomentPoint | undefined;
  for (const p of points) {
    if (p.held) continue;
    if (worst === undefined || p.available - p.needed < worst.available - worst.needed) worst = p;
  }
  return worst;
}
