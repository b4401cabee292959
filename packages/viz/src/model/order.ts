/** The order in which legs, doors and locks come to their ends, and what of it another run has otherwise. */
import type { Picture } from '../worker/message.js';
import { plain } from './sentence.js';

/** A leg or door has come to an end of its way, a lock has engaged or opened, for good in this movement. */
export interface Arrival {
  /** `up`, `down`; `up 2` where the gear goes up a second time. */
  readonly movement: string;
  readonly device: string;
  readonly to: string;
  /** s. */
  readonly t: number;
}

/** Two that came the other way round before. */
interface Swap {
  readonly first: Arrival;
  readonly second: Arrival;
  /** How long the first comes before the second, and came after it, s. */
  readonly now: number;
  readonly was: number;
}

const ROLES: readonly string[] = ['leg', 'door', 'uplock', 'downlock'];
const END = /^(at .+|engaged|open)$/;
/** Two that come together change places by chance: both gaps make this at least, s: what a stopwatch can tell; own choice. */
const CLEAR = 0.2;

export function orderOf({ log, timings, devices }: Picture): readonly Arrival[] {
  const movements = [...new Map(timings.map((t) => [t.start, t.direction]))]
    .sort(([a], [b]) => a - b)
    .map(([start, way], i, all) => {
      const nth = all.slice(0, i + 1).filter(([, w]) => w === way).length;
      return { start, name: nth === 1 ? way : `${way} ${nth}` };
    });
  const parts = new Set(devices.filter((d) => ROLES.includes(d.role)).map((d) => d.name));
  const last = new Map<string, Arrival>();
  for (const { t, device, to } of log) {
    const movement = movements.findLast((m) => m.start <= t)?.name;
    if (movement === undefined || !parts.has(device) || !END.test(to)) continue;
    last.set(nameOf({ movement, device, to }), { movement, device, to, t });
  }
  return [...last.values()].sort((a, b) => a.t - b.t);
}

const nameOf = ({ movement, device, to }: Omit<Arrival, 't'>): string =>
  [movement, device, to].join('|');

/** A sentence; of several differences the plainest. Movements that only one of the two has are left out. */
export function sentenceOfOrder(now: readonly Arrival[], then: readonly Arrival[]): string {
  const movements = new Set(now.map((a) => a.movement));
  const before = new Map(then.map((a) => [nameOf(a), a.t]));
  const known = now.filter((a) => before.has(nameOf(a)));
  const here = new Set(known.map(nameOf));
  const gone = then.filter((a) => movements.has(a.movement) && !here.has(nameOf(a)));
  const [lost] = gone;
  if (lost !== undefined)
    return `Not any more: ${told(lost)}${gone.length === 1 ? '' : `, and ${gone.length - 1} more`}.`;
  const swaps = known.flatMap((second, i) =>
    known.slice(0, i).flatMap((first): Swap[] => {
      const gap = second.t - first.t;
      const was = (before.get(nameOf(first)) ?? 0) - (before.get(nameOf(second)) ?? 0);
      const together = first.movement === second.movement;
      return together && was > 0 && gap + was >= CLEAR ? [{ first, second, now: gap, was }] : [];
    }),
  );
  if (known.length === 0) return '';
  if (swaps.length === 0) return 'Order: the same.';
  const { first, second, ...gap } = swaps.reduce((a, b) => (b.now + b.was > a.now + a.was ? b : a));
  const places = (seconds: number): string => `${seconds.toFixed(2)}\u00a0s`;
  return `Another order: ${told(first)} ${places(gap.now)} before ${told(second, false)}; it was ${places(gap.was)} after it.`;
}

function told({ movement, device, to }: Arrival, way = true): string {
  const what = `${plain(device)} ${to.replace(/^at /, '')}`;
  return way ? `going ${movement}, ${what}` : what;
}
