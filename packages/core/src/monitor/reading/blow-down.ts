import type { Evidence, Series, UnitEntry } from '../../define/index.js';
import { devicesOf } from './line.js';
import { lockedSince, moves, units, type Move } from './motion.js';
import { above, trace, valueAt, type Span } from './span.js';

/** The move that the gas makes, if the handle is pulled in this run. */
export function blowDown(e: Evidence): Move | undefined {
  return moves(e).find(({ by }) => by === 'gas');
}

/** When each unit was locked down in that move; undefined where it never was. */
export function lockedDown(
  e: Evidence,
  move: Move,
): readonly { readonly name: string; readonly unit: UnitEntry; readonly at: number | undefined }[] {
  return units(e).map(({ name, unit }) => {
    const since = lockedSince(e, unit, 'down', move.end);
    return { name, unit, at: since === undefined ? undefined : Math.max(since, move.start) };
  });
}

/** Gas that must stand there before anything is judged by it, Pa above ambient. */
const GAS_CAME = 5e5;

/**
 * Whether gas got to the shuttles in a move, or out of the blow-down valve where no pressure at a
 * shuttle is known; true where no pressure tells.
 */
export function gasCame(e: Evidence, move: Move): boolean {
  const at = (role: 'shuttle' | 'blow-down', port: string): Series[] =>
    devicesOf(e, role).flatMap(
      (name) => trace(e, `${e.scenario.components[name].ports[port]}.pressure`) ?? [],
    );
  const shuttles = at('shuttle', 'emergency');
  const known = shuttles.length > 0 ? shuttles : at('blow-down', 'outlet');
  const level = e.scenario.ambient + GAS_CAME;
  const during = (s: Span): boolean => s.to > move.start && s.from <= move.end;
  return known.length === 0 || known.some((series) => above(series, level).some(during));
}

/** Gauge pressure of a node at a time, Pa; undefined when it is not known. */
export function gaugeAt(e: Evidence, node: string, t: number): number | undefined {
  const series = trace(e, `${node}.pressure`);
  return series === undefined ? undefined : valueAt(series, t) - e.scenario.ambient;
}

/** The bottles of the aircraft with what their gauge shows at a time, Pa. */
export function bottlesAt(
  e: Evidence,
  t: number,
): readonly { readonly name: string; readonly gauge: number }[] {
  return devicesOf(e, 'gas-supply').flatMap((name) => {
    const series = trace(e, `${name}.gauge`);
    return series === undefined ? [] : [{ name, gauge: valueAt(series, t) }];
  });
}

/** Roles of devices that gas goes through, from any port to any other. */
const THROUGH: readonly unknown[] = ['gas-supply', 'blow-down', 'line', 'sequence-valve', 'other'];

/** The vented node, which joins nothing to anything. */
const OUTSIDE = 'outside';

/** Nodes that a bottle's gas is meant to get to: through its valve, lines and shuttles up to the actuators. */
export function fedBy(e: Evidence, bottle: string): ReadonlySet<string> {
  const { components } = e.scenario;
  const fed = new Set(Object.values(components[bottle].ports));
  for (let before = -1; before < fed.size;) {
    before = fed.size;
    for (const [name, { ports }] of Object.entries(components)) {
      const role = e.role(name);
      if (role === 'shuttle' && fed.has(ports.emergency)) fed.add(ports.outlet);
      const nodes = THROUGH.includes(role) ? Object.values(ports) : [];
      if (nodes.some((node) => node !== OUTSIDE && fed.has(node)))
        nodes.forEach((node) => fed.add(node));
    }
  }
  return fed;
}

/** Names of the actuators that move a unit's leg itself. */
export function legActuators(e: Evidence, unit: UnitEntry): readonly string[] {
  return unit.actuators.filter((name) =>
    Object.values(e.scenario.components[name].links).some(({ to }) => to === unit.leg),
  );
}

/** Gauge pressures at an actuator's ports at a time, by node, where they are known, Pa. */
export function gaugesOf(
  e: Evidence,
  actuator: string,
  t: number,
): readonly { readonly node: string; readonly gauge: number }[] {
  const nodes = [...new Set(Object.values(e.scenario.components[actuator].ports))];
  return nodes.flatMap((node) => {
    const gauge = gaugeAt(e, node, t);
    return gauge === undefined ? [] : [{ node, gauge }];
  });
}
