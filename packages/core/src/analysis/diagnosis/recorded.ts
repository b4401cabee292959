/**
 * Recordings as evidence: an angle tells when its leg leaves and arrives, a pressure what a gauge would have
 * shown. Both are read off the simulation in the same way. Where nobody says at which time of the file the
 * selector moved, the recording is laid on the sound run; that is not exact for a slow swing, so then only
 * how long a leg is on its way counts, not when it left. What falls into a gap is missing, and told.
 */
import type { Catalogues, Evidence, Series } from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import {
  drivenNodes,
  expectedSwings,
  type ObservationSheet,
  type ObservedSwing,
  type RecordingEntry,
} from '../../observation/index.js';
import { findOffset } from '../../recording/index.js';
import { BOUND, type Evidences, type FactEntry, type FigureEntry } from './entry.js';
import { glaring } from './fact.js';
import { HOME, passageOf, restOf, type Moment } from './passage.js';
import { columnsOf } from './recorded-columns.js';
import { gapsOf, pressuresOf, within, type Gap } from './recorded-series.js';
import type { SetupList } from './setup.js';
import { homeOf } from './signature.js';

/** A moment is seen to half the distance of its samples, and never to less than this, s. */
const LEAST_TIME = 0.05;
/** A logger's transducer, share of what it shows and Pa at least (common practice, no source). */
const PRESSURE_SHARE = 0.02;
const PRESSURE_LEAST = 1e5;
/** Less alike than this, a recording is not of this swing. */
const LIKE = 0.5;

type Recorded = Pick<Evidences, 'figures' | 'facts' | 'unused'>;

/** What is noted and what was recorded, as one. */
export function together(a: Evidences, b: Recorded): Evidences {
  return {
    figures: [...a.figures, ...b.figures],
    facts: [...a.facts, ...b.facts],
    looks: a.looks,
    unused: [...a.unused, ...b.unused],
  };
}

export function recordedOf(
  catalogues: Catalogues,
  setups: SetupList,
  sheet: ObservationSheet,
  setupOf: readonly number[],
  texts: Readonly<Record<string, string>> = {},
): Recorded {
  const runs = new Map<number, Evidence>();
  const soundRun = (setup: number): Evidence => {
    const { scenario, card } = setups.at(setup);
    const run = runs.get(setup) ?? simulateWith(catalogues, scenario, { card, tolerance: 'draft' });
    runs.set(setup, run);
    return run;
  };
  const figures: FigureEntry[] = [];
  const facts: FactEntry[] = [];
  const unused: string[] = [];
  sheet.swings.forEach((swing, index) => {
    if (setupOf[index] < 0) return;
    for (const entry of swing.recordings) {
      const name = `swing ${index + 1}: recording ${entry.file}`;
      const text = Object.hasOwn(texts, entry.file) ? texts[entry.file] : undefined;
      if (text === undefined) {
        unused.push(`${name}: its file is not there`);
        continue;
      }
      const one = new OneRecording(soundRun(setupOf[index]), swing, entry, text);
      one.read({ swing: index, setup: setupOf[index] });
      figures.push(...one.figures);
      facts.push(...one.facts);
      unused.push(...one.told.map((what) => `${name}: ${what}`));
    }
  });
  return { figures, facts, unused };
}

interface Place {
  readonly swing: number;
  readonly setup: number;
}

class OneRecording {
  readonly figures: FigureEntry[] = [];
  readonly facts: FactEntry[] = [];
  /** What could not be used, in words. */
  readonly told: string[] = [];

  constructor(
    private readonly run: Evidence,
    private readonly swing: ObservedSwing,
    private readonly entry: RecordingEntry,
    private readonly text: string,
  ) {}

  read(place: Place): void {
    const { recording, told } = columnsOf(this.run, this.entry, this.text);
    this.told.push(...told);
    const series = new Map(
      recording.series.flatMap((s) => (s.channel === '' ? [] : [[s.channel, s] as const])),
    );
    if (series.size === 0) {
      this.told.push('no column of it is taken for a channel of this aircraft');
      return;
    }
    const start = this.selectorIn(series);
    if (start === undefined) return;
    this.angles(place, series, start);
    const home = this.homeIn(series);
    const driven = drivenNodes(this.run, this.swing.direction);
    for (const [channel, s] of series) {
      if (!channel.endsWith('.pressure')) continue;
      const node = channel.slice(0, -'.pressure'.length);
      const { readings, told } = pressuresOf(s, start.at, home, driven.has(node));
      this.told.push(...told.map((what) => `${channel}: ${what}`));
      for (const [moment, p] of Object.entries(readings)) {
        if (moment === 'static' && !start.exact) continue;
        const value = p - this.run.scenario.ambient;
        const error = Math.max(PRESSURE_SHARE * Math.abs(value), PRESSURE_LEAST);
        this.figures.push({
          ...place,
          label: `${node}, ${moment}, recorded`,
          kind: 'gauge',
          key: `${this.swing.direction}/gauge/${node}/${moment}`,
          value,
          spread: error / BOUND,
          error,
        });
      }
    }
  }

  /** Time of the file at which the selector moved: as noted, else by laying it on the sound run. */
  private selectorIn(
    series: ReadonlyMap<string, Series>,
  ): { readonly at: number; readonly exact: boolean } | undefined {
    if (this.entry.offset !== undefined) return { at: this.entry.offset, exact: true };
    const move = expectedSwings(this.run).find((m) => m.direction === this.swing.direction);
    const pairs = [...series].flatMap(([channel, recorded]) => {
      const simulated = this.run.series(channel);
      return simulated === undefined ? [] : [{ recorded, simulated }];
    });
    const found = findOffset(pairs);
    if (move === undefined || found === undefined || found.likeness < LIKE) {
      this.told.push(
        'where in it the swing lies is not to be found: write `offset`, its time at which the selector moved',
      );
      return undefined;
    }
    return { at: move.start - found.offset, exact: false };
  }

  private angles(
    place: Place,
    series: ReadonlyMap<string, Series>,
    start: { readonly at: number; readonly exact: boolean },
  ): void {
    const d = this.swing.direction;
    const { scenario } = this.run;
    const units = Object.entries(scenario.units);
    for (const [unit, { leg }] of units) {
      const angle = series.get(`${leg}.angle`);
      if (angle === undefined) continue;
      const gaps = gapsOf(angle);
      // Laid on a sound run the selector's time is rough: the leg stands a while before it leaves.
      const from = start.exact ? start.at : -Infinity;
      const { leaves, arrives } = passageOf(angle, from, homeOf(scenario, unit, d));
      const seen = (moment: Moment | undefined, word: string): Moment | undefined => {
        const gap = moment && within(gaps, moment);
        if (gap === undefined) return moment;
        this.told.push(`${leg}.angle: when it ${word} falls into ${spanOf(gap)}`);
        return undefined;
      };
      const [left, came] = [seen(leaves, 'leaves'), seen(arrives, 'arrives')];
      const time = (event: string, value: number, error: number): void => {
        const bound = Math.max(error, LEAST_TIME);
        this.figures.push({
          ...place,
          label: `${unit} ${event}, recorded`,
          kind: 'time',
          key: `${d}/${unit}/${event}`,
          value,
          spread: bound / BOUND,
          error: bound,
        });
      };
      if (start.exact && left !== undefined) time('leaves', left.at - start.at, left.within / 2);
      if (start.exact && came !== undefined) time('arrives', came.at - start.at, came.within / 2);
      if (!start.exact && left !== undefined && came !== undefined)
        time('travel', came.at - left.at, (left.within + came.within) / 2);
      // A gap at its end hides an arrival.
      const open = gaps.some((g) => leaves === undefined || g.to >= leaves.at);
      if (leaves === undefined || (arrives === undefined && !open))
        this.facts.push({
          ...place,
          kind: 'fact',
          label: `${unit} ${leaves === undefined ? 'did not move' : 'did not arrive'}, recorded`,
          seen: (of) => {
            const at = of(`${d}/${unit}/${leaves === undefined ? 'leaves' : 'arrives'}`);
            return (v) => glaring(Number.isNaN(at(v)));
          },
        });
    }
  }

  /** When the last leg or door had come to rest, s of the file; NaN where not all of them were recorded. */
  private homeIn(series: ReadonlyMap<string, Series>): number {
    const { units } = this.run.scenario;
    let home = -Infinity;
    for (const [unit, { leg, doors }] of Object.entries(units))
      for (const part of [leg, ...doors]) {
        const angle = series.get(`${part}.angle`);
        const rest = angle && restOf(angle);
        const end = homeOf(this.run.scenario, unit, this.swing.direction);
        if (rest === undefined || (part === leg && Math.abs(rest.where - end) > HOME)) return NaN;
        home = Math.max(home, rest.since);
      }
    return home;
  }
}

const spanOf = ({ from, to }: Gap): string =>
  `a gap from ${from.toFixed(2)} s to ${to.toFixed(2)} s`;
