/** Where a run ends because the operator goes on to something that nobody asks for. */
import type { Evidence, LogEntry } from '../../define/index.js';

/** What an operator does for the nth time. */
export interface Ending {
  readonly device: string;
  readonly to: string;
  readonly time: number;
}

/** What the operator does at a time of a run, s, and for which time; undefined for nothing. */
export function endingAt({ log }: Evidence, t: number): Ending | undefined {
  const acts = log.filter((x) => x.kind === 'operator' && x.t <= t);
  const act = acts.findLast((x) => x.t === t);
  if (act === undefined) return undefined;
  const { device, to } = act;
  return { device, to, time: acts.filter((x) => x.device === device && x.to === to).length };
}

/** What the operator waited for with what he does at a time of a run, s: a device or unit; undefined where he waited for nothing. */
export function awaitedAt({ log, card }: Evidence, t: number): string | undefined {
  const act = log.find((x) => x.kind === 'operator' && x.t === t);
  return card.steps.find(
    (s) => s.after !== undefined && s.device === act?.device && s.text === act.to,
  )?.after?.device;
}

/** Asked of every entry of a run's log, in order: true where the operator ends it. */
export function endsWith({ device, to, time }: Ending): (entry: LogEntry) => boolean {
  let seen = 0;
  return (x) => x.kind === 'operator' && x.device === device && x.to === to && ++seen === time;
}
