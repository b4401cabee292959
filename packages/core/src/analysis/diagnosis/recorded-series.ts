/** What a logger's samples leave out, and what a gauge would have shown of them. */
import type { Series } from '../../define/index.js';
import { HELD, type GaugeMoment } from '../../observation/index.js';
import type { Moment } from './passage.js';

/** Samples so many times farther apart than usual have a gap between them. */
const WIDE = 5;
const SAMPLES = 41;

export interface Gap {
  readonly from: number;
  readonly to: number;
}

/** Stretches without a figure, s. */
export function gapsOf({ t, v }: Series): readonly Gap[] {
  const there = Array.from(t.keys()).filter((i) => Number.isFinite(v[i]));
  const steps = there.slice(1).map((i, k) => t[i] - t[there[k]]);
  const usual = [...steps].sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  return steps.flatMap((step, k) =>
    step > WIDE * usual ? [{ from: t[there[k]], to: t[there[k + 1]] }] : [],
  );
}

/** The gap that a moment falls into. */
export function within(gaps: readonly Gap[], { at }: Moment): Gap | undefined {
  return gaps.find((g) => at >= g.from && at <= g.to);
}

/**
 * Pa absolute. @param home when the last leg is home, s; NaN when that is not known: then there is no telling
 * how long it moved. @param driven whether the line is under the supply's pressure (drivenNodes)
 */
export function pressuresOf(
  series: Series,
  start: number,
  home: number,
  driven: boolean,
): { readings: Partial<Record<GaugeMoment, number>>; told: string[] } {
  const gaps = gapsOf(series);
  const told: string[] = [];
  const readings: Partial<Record<GaugeMoment, number>> = {};
  const there = Array.from(series.t.keys()).filter((i) => Number.isFinite(series.v[i]));
  const value = (at: number): number | undefined => {
    const after = there.find((i) => series.t[i] >= at);
    const before = there.findLast((i) => series.t[i] <= at);
    if (after === undefined || before === undefined || within(gaps, { at, within: 0 })) return;
    const [a, b] = [series.t[before], series.t[after]];
    const share = b > a ? (at - a) / (b - a) : 0;
    return series.v[before] + share * (series.v[after] - series.v[before]);
  };
  const put = (moment: GaugeMoment, p: number | undefined): void => {
    if (p === undefined) told.push(`${moment}: there is no figure at that time`);
    else readings[moment] = p;
  };
  put('static', value(start));
  if (!Number.isFinite(home)) return { readings, told };
  const travel = Array.from({ length: SAMPLES }, (_, k) =>
    value(start + ((home - start) * (k + 0.5)) / SAMPLES),
  );
  const known = travel.filter((p) => p !== undefined).sort((a, b) => a - b);
  put('moving', known.length > SAMPLES / 2 ? known[known.length >> 1] : undefined);
  const highest = (from: number): number | undefined => {
    const to = home + HELD.to;
    const seen = there.filter((i) => series.t[i] >= from && series.t[i] <= to);
    if (seen.length === 0 || gaps.some((g) => g.to > from && g.from < to)) return undefined;
    return Math.max(...seen.map((i) => series.v[i]));
  };
  const settled = value(home + HELD.to);
  put('dead-head', driven && settled !== undefined ? highest(home + HELD.from) : settled);
  put('peak', highest(start));
  return { readings, told };
}
