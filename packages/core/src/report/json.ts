import type { Flag, LogEntry, Outcome, Run, Statistics, Timing } from '../define/index.js';
import { CAUTIONS } from './caution.js';
import { differences, type Difference } from './figure.js';

/** A number, or null for what was not reached (JSON has no NaN). */
type Maybe = number | null;

/**
 * A run as JSON. Everything is in SI: s, rad, rad/s, m, m3, m3/s, Pa, K; pressures absolute
 * unless `marginQuantity` says gauge. Members are only added within one `version`.
 */
export interface RunDocument {
  readonly format: 'wheelwell-run';
  readonly version: 1;
  readonly units: 'SI';
  readonly cautions: readonly string[];
  readonly scenario: { readonly file: string; readonly title: string };
  readonly card: {
    readonly name: string;
    readonly title: string;
    readonly duration: number;
    readonly temperature: number;
    readonly faults: readonly {
      readonly fault: string;
      readonly on: string;
      readonly severity: number;
    }[];
    readonly expect: readonly string[];
  };
  readonly outcome: Outcome;
  readonly tolerance: Run['tolerance'];
  readonly tick: number;
  readonly timings: readonly (Omit<Timing, 'moving' | 'locked' | 'doors' | 'total'> & {
    readonly moving: Maybe;
    readonly locked: Maybe;
    readonly doors: Maybe;
    readonly total: Maybe;
  })[];
  readonly differences: readonly (Omit<Difference, 'seconds'> & { readonly seconds: Maybe })[];
  readonly flags: readonly Flag[];
  readonly events: readonly LogEntry[];
  readonly statistics: Statistics;
}

const known = (x: number): Maybe => (Number.isFinite(x) ? x : null);

/** The document of a run; see {@link RunDocument}. */
export function toDocument(run: Run): RunDocument {
  const { scenario, card } = run;
  return {
    format: 'wheelwell-run',
    version: 1,
    units: 'SI',
    cautions: CAUTIONS.map(({ head, text }) => `${head} ${text}`),
    scenario: { file: scenario.file, title: scenario.title },
    card: {
      name: run.cardName,
      title: card.title,
      duration: card.duration,
      temperature: card.temperature ?? scenario.fluid.temperature,
      faults: card.faults.map(({ fault, on, severity }) => ({ fault, on, severity })),
      expect: card.expect,
    },
    outcome: run.outcome,
    tolerance: run.tolerance,
    tick: run.tick,
    timings: run.timings.map((t) => ({
      ...t,
      moving: known(t.moving),
      locked: known(t.locked),
      doors: known(t.doors),
      total: known(t.total),
    })),
    differences: differences(run.timings).map((d) => ({ ...d, seconds: known(d.seconds) })),
    flags: run.flags,
    events: run.log,
    statistics: run.statistics,
  };
}

/** The document as text, two spaces a level, with a line break at the end. */
export function toJson(run: Run): string {
  return `${JSON.stringify(toDocument(run), null, 2)}\n`;
}
