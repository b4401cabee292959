/** Checks a student may make on a run with something wrong in it, each with what it shows. */
import type { Run, Series } from '../define/run.js';
import type { UnitEntry } from '../define/scenario.js';
import { settle } from '../report/settled.js';
import { partsOf } from '../scenario/index.js';
import type { LessonCheck, LessonLine } from './lesson.js';
import { phrase, plain, type Stage } from './stage.js';

/** Readings nearer than these are the same to whoever makes the check: a thumb on a stopwatch, s; a needle, Pa and share. */
const THUMB = 0.15;
const NEEDLE = 1e5;
const NEEDLE_SHARE = 0.05;
/** States of one part told at most. */
const MOST_STATES = 8;

/** Kinds of part that can be watched while the gear swings. */
const WATCHED: readonly string[] = [
  'sequence-valve',
  'uplock',
  'downlock',
  'relief',
  'shuttle',
  'dump',
  'blow-down',
];

/** All checks of a run; of some units and parts only, when any are named. */
export function checksOf(stage: Stage, run: Run, of: readonly string[]): LessonCheck[] {
  const { units, components } = stage.scenario;
  const wanted = (name: string, unit?: string): boolean =>
    of.length === 0 || of.includes(name) || (unit !== undefined && of.includes(unit));
  const homes = new Map(
    Object.entries(units).flatMap(([unit, u]) => partsOf(u).map((p) => [p, unit] as const)),
  );
  const out: LessonCheck[] = [];
  for (const [name, unit] of Object.entries(units)) {
    if (!wanted(name)) continue;
    out.push(...stopwatch(run, name), ...gauges(stage, run, name, unit));
  }
  for (const name of Object.keys(components)) {
    const role = run.role(name);
    if (role === undefined || !WATCHED.includes(role) || !wanted(name, homes.get(name))) continue;
    out.push({
      id: `look ${name}`,
      text: `Watch the ${plain(name)}`,
      reading: look(stage, run, name),
    });
  }
  return out;
}

function stopwatch(run: Run, unit: string): LessonCheck[] {
  return (['up', 'down'] as const).flatMap((direction) => {
    const times = run.timings.filter((t) => t.unit === unit && t.direction === direction);
    if (times.length === 0) return [];
    const reading = times.map(({ total }): LessonLine =>
      Number.isNaN(total)
        ? { text: 'Never home and locked', sort: 'word' }
        : {
            text: 'From the lever to home and locked',
            value: total,
            quantity: 'time',
            sort: 'figure',
          },
    );
    return [
      { id: `time ${unit} ${direction}`, text: `Stopwatch: ${plain(unit)}, ${direction}`, reading },
    ];
  });
}

/** A gauge teed into either side of the leg's jack, read while the leg moves. */
function gauges(stage: Stage, run: Run, unit: string, entry: UnitEntry): LessonCheck[] {
  const jack = entry.actuators.find((a) =>
    Object.values(stage.scenario.components[a]?.links ?? {}).some((l) => l.to === entry.leg),
  );
  if (jack === undefined) return [];
  const part = stage.scenario.components[jack];
  const kind = stage.catalogues.components[part.is];
  const inside = (kind.chambers ?? []).map((c) => c.port);
  const ports = Object.entries(part.ports).filter(([port]) => !inside.includes(port));
  const traces = run.look(ports.map(([, node]) => `${node}.pressure`));
  return (['up', 'down'] as const).flatMap((direction) => {
    const timing = run.timings.find((t) => t.unit === unit && t.direction === direction);
    if (timing === undefined) return [];
    const from = Number.isNaN(timing.moving) ? timing.start : timing.moving;
    const end = Number.isNaN(timing.locked) ? run.outcome.time : timing.locked;
    const lines = ports.flatMap(([port, node]): LessonLine[] => {
      const series = traces.get(`${node}.pressure`);
      if (series === undefined) return [];
      // Half way, not at either end where locks and stops have their say.
      const [a, b] = [from + 0.1 * (end - from), from + 0.9 * (end - from)];
      const value = mean(series, a, b) - stage.scenario.ambient;
      const at = port.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);
      return [
        {
          text: `At its ${at} side, while the leg moves`,
          value,
          quantity: 'gauge-pressure',
          sort: 'figure',
        },
      ];
    });
    if (lines.length === 0) return [];
    return [
      {
        id: `gauge ${unit} ${direction}`,
        text: `Gauges at the ${plain(jack)}, going ${direction}`,
        reading: lines,
      },
    ];
  });
}

/** Mean over time of samples between two times. */
function mean({ t, v }: Series, from: number, to: number): number {
  let sum = 0;
  let span = 0;
  for (let i = 1; i < t.length; i++) {
    const width = Math.min(t[i], to) - Math.max(t[i - 1], from);
    if (width <= 0) continue;
    sum += (width * (v[i] + v[i - 1])) / 2;
    span += width;
  }
  return span > 0 ? sum / span : NaN;
}

function look(stage: Stage, run: Run, part: string): LessonLine[] {
  const states = settle(run, false).changes.filter(
    (c) => c.entry.device === part && c.entry.kind !== 'operator',
  );
  if (states.length === 0) return [{ text: 'It does nothing in this run', sort: 'word' }];
  const lines = states.slice(0, MOST_STATES).map((c): LessonLine => {
    return { text: phrase(stage, part, c.to), t: c.entry.t, sort: 'event' };
  });
  return states.length > lines.length
    ? [...lines, { text: `and ${states.length - lines.length} more`, sort: 'word' }]
    : lines;
}

/** Whether somebody who makes the check would see a difference. */
export function differs(a: LessonCheck, b: LessonCheck): boolean {
  return (
    a.reading.length !== b.reading.length ||
    a.reading.some((line, i) => {
      const other = b.reading[i];
      if (line.text !== other.text) return true;
      if (Math.abs((line.t ?? 0) - (other.t ?? 0)) > THUMB) return true;
      const [x, y] = [line.value ?? 0, other.value ?? 0];
      const least =
        line.quantity === 'gauge-pressure'
          ? Math.max(NEEDLE, NEEDLE_SHARE * Math.max(Math.abs(x), Math.abs(y)))
          : THUMB;
      return Math.abs(x - y) > least;
    })
  );
}
