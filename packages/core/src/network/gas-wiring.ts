import { CRITICAL_RATIO } from '../define/index.js';
import { holds } from './gas-reach.js';
import { settle, type AlsoSlots } from './slots.js';
import type { Plan } from './plan.js';

/** One end of a path as the upstream one: Jacobian slots against what its gas share depends on. */
export interface GasSide {
  /** Slots of the rows oil-from, oil-to, gas-from, gas-to against the gas there. */
  readonly byGas: Int32Array;
  /** The same against its temperature; empty where that is constant. */
  readonly byHeat: Int32Array;
  /** Chambers there, and the four slots of each against its angle. */
  readonly chambers: Int32Array;
  readonly byAngle: Int32Array;
}

/** A flow path that gas may take. */
export interface GasPathWiring {
  /** Number among all flows. */
  readonly path: number;
  readonly from: number;
  readonly to: number;
  /** Whether gas may go from `from` to `to`, and back. */
  readonly forth: boolean;
  readonly back: boolean;
  /** Carries gas by volume (pumps, lines with inertia), not by ISO 6358. */
  readonly byVolume: boolean;
  readonly ratio: number;
  /** Pressure partials of the gas rows: from/from, from/to, to/from, to/to. */
  readonly entries: Int32Array;
  readonly sides: readonly [GasSide | undefined, GasSide | undefined];
  /** Slots of the gas rows for the path's further dependences. */
  readonly also: readonly AlsoSlots[];
}

/** The temperature row of a vessel. */
export interface VesselWiring {
  readonly node: number;
  readonly bySelf: number;
  readonly byGas: number;
  /** Paths that end there: their number among the gas paths, 1 where it is their `from`, pressure partials. */
  readonly paths: readonly { path: number; leaves: boolean; byFrom: number; byTo: number }[];
}

export interface GasWiring {
  /** State of the gas in every node, -1 where none can come; of a vessel's temperature, else -1. */
  readonly gasState: Int32Array;
  readonly heatState: Int32Array;
  readonly paths: readonly GasPathWiring[];
  readonly vessels: readonly VesselWiring[];
  /** Pressure partials whose node holds gas, and their slots against the gas and the temperature. */
  readonly gasEntries: Int32Array;
  readonly gasSlots: Int32Array;
  readonly heatEntries: Int32Array;
  readonly heatSlots: Int32Array;
}

/** What the wiring lends: rows and columns in raw numbering. */
export interface GasWireContext {
  readonly content: readonly number[];
  readonly gas: readonly number[];
  readonly heat: readonly number[];
  readonly angle: readonly number[];
  readonly chamberStart: Int32Array;
  readonly entry: (row: number, node: number, scaledBy: number) => number;
  readonly direct: (row: number, column: number) => number;
  /** Further dependences of an instance's flow for two rows. */
  readonly also: (instance: number, flow: number, rows: readonly number[]) => AlsoSlots[];
}

/** Wires all paths that gas may take, in raw numbering; {@link settleGas} makes slots of it. */
export function wireGas(plan: Plan, c: GasWireContext): Omit<GasWiring, keyof GasEntries> {
  const reached = (node: number): boolean => c.gas[node] >= 0;
  const giving = (node: number): boolean => reached(node) && holds(plan.nodes[node]);
  const paths: GasPathWiring[] = [];
  let path = -1;
  plan.instances.forEach((instance, i) => {
    const ports = Object.keys(instance.definition.ports);
    Object.values(instance.definition.flows ?? {}).forEach((flow, f) => {
      path++;
      const from = instance.nodes[ports.indexOf(flow.from)];
      const to = instance.nodes[ports.indexOf(flow.to)];
      if (from === to || !reached(from) || !reached(to)) return;
      const forth = giving(from);
      const back = giving(to);
      if (!forth && !back) return;
      const rows = [c.content[from], c.content[to], c.gas[from], c.gas[to]];
      const side = (node: number): GasSide => {
        const against = (column: number): number[] => rows.map((row) => c.direct(row, column));
        const chambers = plan.nodes[node].chambers.map((_, k) => c.chamberStart[node] + k);
        return {
          byGas: Int32Array.from(against(c.gas[node])),
          byHeat: Int32Array.from(c.heat[node] < 0 ? [] : against(c.heat[node])),
          chambers: Int32Array.from(chambers),
          byAngle: Int32Array.from(
            plan.nodes[node].chambers.flatMap(({ attachment }) =>
              against(c.angle[plan.attachments[attachment].coordinate]),
            ),
          ),
        };
      };
      paths.push({
        path,
        from,
        to,
        forth,
        back,
        byVolume: flow.source === true || flow.inertial === true,
        ratio: flow.criticalRatio?.(instance.parameters) ?? CRITICAL_RATIO,
        entries: Int32Array.from(
          [c.gas[from], c.gas[to]].flatMap((row) => [c.entry(row, from, -1), c.entry(row, to, -1)]),
        ),
        sides: [forth ? side(from) : undefined, back ? side(to) : undefined],
        also: c.also(i, f, [c.gas[from], c.gas[to]]),
      });
    });
  });
  const vessels = plan.nodes.flatMap((_, node): VesselWiring[] => {
    const row = c.heat[node];
    if (row < 0) return [];
    return [
      {
        node,
        bySelf: c.direct(row, row),
        byGas: c.direct(row, c.gas[node]),
        paths: paths.flatMap(({ from, to }, p) =>
          from === node || to === node
            ? [
                {
                  path: p,
                  leaves: from === node,
                  byFrom: c.entry(row, from, -1),
                  byTo: c.entry(row, to, -1),
                },
              ]
            : [],
        ),
      },
    ];
  });
  return {
    gasState: Int32Array.from(c.gas),
    heatState: Int32Array.from(c.heat),
    paths,
    vessels,
  };
}

type GasEntries = Pick<GasWiring, 'gasEntries' | 'gasSlots' | 'heatEntries' | 'heatSlots'>;

/** Columns against gas and temperature of every pressure partial whose node has them, in raw numbering. */
export function wireGasEntries(
  entries: readonly { readonly row: number; readonly node: number }[],
  gas: readonly number[],
  heat: readonly number[],
  direct: (row: number, column: number) => number,
): GasEntries {
  const columns = (state: readonly number[]): [Int32Array, Int32Array] => {
    const at = entries.flatMap(({ node }, i) => (i > 0 && state[node] >= 0 ? [i] : []));
    const slots = at.map((i) => direct(entries[i].row, state[entries[i].node]));
    return [Int32Array.from(at), Int32Array.from(slots)];
  };
  const [gasEntries, gasSlots] = columns(gas);
  const [heatEntries, heatSlots] = columns(heat);
  return { gasEntries, gasSlots, heatEntries, heatSlots };
}

/** Raw places and states become slots and state numbers. */
export function settleGas(
  wired: GasWiring,
  slot: readonly number[],
  number: Int32Array,
): GasWiring {
  const slots = (list: Int32Array): Int32Array => list.map((p) => slot[p]);
  const states = (list: Int32Array): Int32Array => list.map((s) => (s < 0 ? s : number[s]));
  const side = (s: GasSide | undefined): GasSide | undefined =>
    s && { ...s, byGas: slots(s.byGas), byHeat: slots(s.byHeat), byAngle: slots(s.byAngle) };
  return {
    gasState: states(wired.gasState),
    heatState: states(wired.heatState),
    paths: wired.paths.map((p) => ({
      ...p,
      sides: [side(p.sides[0]), side(p.sides[1])],
      also: p.also.map((a) => settle(a, slot)),
    })),
    vessels: wired.vessels.map((v) => ({ ...v, bySelf: slot[v.bySelf], byGas: slot[v.byGas] })),
    gasEntries: wired.gasEntries,
    gasSlots: slots(wired.gasSlots),
    heatEntries: wired.heatEntries,
    heatSlots: slots(wired.heatSlots),
  };
}
