/** Figures that a page quotes from a run: `**5.7 s**<!-- card: time left up -->`. */
import { toDisplay, type Flag, type Run } from '@wheelwell/core';

export interface Figure {
  readonly text: string;
  readonly card: string;
  readonly metric: string;
  /** Place of `text` in the page. */
  readonly at: number;
}

export function figuresIn(page: string): Figure[] {
  return [...page.matchAll(/\*\*([^*\n]+)\*\*<!-- ([a-z0-9-]+): ([^>]+?) -->/g)].map((match) => ({
    text: match[1],
    card: match[2],
    metric: match[3],
    at: match.index + 2,
  }));
}

/** What a metric is in a run, as the page should show it. Throws for a metric it does not know. */
export function figureOf(run: Run, metric: string): string {
  const [name, ...words] = metric.split(' ');
  switch (name) {
    case 'peak':
      return gauge(run, Math.max(...valuesOf(run, `${words[0]}.pressure`)));
    case 'end':
      return gauge(run, valuesOf(run, `${words[0]}.pressure`).at(-1)!);
    case 'fastest': {
      const sense = words[1] === 'falling' ? -1 : 1;
      const fastest = Math.max(...valuesOf(run, `${words[0]}.speed`).map((v) => sense * v));
      const { value, unit } = toDisplay(fastest, 'angular-speed', 'us');
      return `${Math.round(value / 5) * 5} ${unit}`;
    }
    case 'time': {
      const found = run.timings.find((t) => t.unit === words[0] && t.direction === words[1]);
      return seconds(found!.total);
    }
    case 'when': {
      // The last word may be the time from which to look, s.
      const from = Number(words.at(-1));
      const to = words.slice(1, Number.isNaN(from) ? undefined : -1).join(' ');
      const entry = run.log.find(
        (e) => e.device === words[0] && e.to === to && e.t >= (Number.isNaN(from) ? 0 : from),
      );
      return seconds(entry!.t);
    }
    case 'margin': {
      const flags = run.flags.filter((flag) => flag.rule === words[0]);
      const worst = flags.reduce<Flag>((a, b) => (b.margin < a.margin ? b : a), flags[0]);
      const { margin, marginQuantity } = worst;
      if (marginQuantity === 'time') return seconds(Math.abs(margin));
      const { value, unit } = toDisplay(Math.abs(margin), marginQuantity, 'us');
      return `${Number(value.toPrecision(2))} ${unit}`;
    }
    case 'flags':
      return String(run.flags.filter(({ severity }) => severity !== 'note').length);
    default:
      throw new Error(`no figure is called ${metric}`);
  }
}

function valuesOf(run: Run, channel: string): number[] {
  const series = run.series(channel);
  if (series === undefined) throw new Error(`there is no channel ${channel}`);
  return Array.from(series.v);
}

/** Rounded as a gauge is read. */
function gauge(run: Run, absolute: number): string {
  const { value, unit } = toDisplay(absolute - run.scenario.ambient, 'gauge-pressure', 'us');
  return `${Math.round(value / 10) * 10} ${unit}`;
}

/** To a tenth of a second; to the millisecond where that would leave nothing. */
function seconds(time: number): string {
  return time < 0.1 ? `${Math.round(time * 1000)} ms` : `${time.toFixed(1)} s`;
}
