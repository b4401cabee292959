import type { Flag, LogEntry, Quantity, Run } from '@wheelwell/core';

/**
 * What a golden file holds of a run, and when two of them tell the same.
 *
 * A part that arrives or slips may chatter for milliseconds, and how often it does so depends on
 * the last bit of a number. So states shorter than FLICKER are left out, and where they follow
 * each other for longer than that, they are one state, 'to and fro'; times may differ by
 * SAME_TIME, margins by half a per cent or what is nothing in the trade. Order is compared per
 * device: two sides that switch in the same millisecond may do so either way round.
 */
export interface Telling {
  readonly end: string;
  readonly duration: number;
  /** States shorter than this are left out, s. */
  readonly flicker: number;
  readonly events: readonly Event[];
  readonly flags: readonly Told[];
}

interface Event {
  readonly t: number;
  readonly kind: string;
  readonly device: string;
  readonly from: string;
  readonly to: string;
}

interface Told {
  readonly severity: string;
  readonly rule: string;
  readonly devices: string;
  readonly margin: number;
  readonly quantity: string;
}

const FLICKER = 0.05;
/** By hand pump everything moves in strokes; this is longer than one there and back, s. */
const STROKE = 1.5;
/** The second look, for a state that lasts just about as long as flicker. */
const LONGER = 1.2;
const TO_AND_FRO = 'to and fro';
/** Times nearer than this are the same, s: twice what the named tolerances promise. */
const SAME_TIME = 0.002;
const SAME_SHARE = 0.005;
/** Differences of margins that nobody could measure, SI. */
const SAME_MARGIN: Partial<Record<Quantity, number>> = {
  time: SAME_TIME,
  length: 2e-4,
  volume: 1e-7,
  speed: 0.01,
  'angular-speed': 2e-3,
  pressure: 2e4,
  'gauge-pressure': 2e4,
};
const NONE = '-';

/** The log of a device without states shorter than `least`; a state begins where it was first reached. */
function steady(entries: readonly Event[], end: number, least: number): Event[] {
  const kept: Event[] = [];
  const keep = (e: Event, t: number, to: string): void => {
    const from = kept.at(-1)?.to ?? e.from;
    if (from !== to) kept.push({ ...e, t, from, to });
  };
  let flicker: Event[] = [];
  const settle = (until: number): boolean => {
    const long = flicker.length > 0 && until - flicker[0].t >= least;
    if (long) keep(flicker[0], flicker[0].t, TO_AND_FRO);
    return long;
  };
  entries.forEach((e, i) => {
    if (i > 0 && (entries[i + 1]?.t ?? end) - e.t < least) {
      flicker.push(e);
      return;
    }
    const t = settle(e.t) ? e.t : (flicker.find((f) => f.to === e.to)?.t ?? e.t);
    keep(e, t, e.to);
    flicker = [];
  });
  settle(end);
  return kept;
}

function streams(events: readonly Event[]): Map<string, Event[]> {
  const found = new Map<string, Event[]>();
  for (const e of events) {
    const key = `${e.kind} ${e.device}`;
    found.set(key, [...(found.get(key) ?? []), e]);
  }
  return found;
}

function without(events: readonly Event[], end: number, least: number): Event[] {
  return [...streams(events)]
    .flatMap(([key, own]) => (key.startsWith('operator') ? own : steady(own, end, least)))
    .sort((a, b) => a.t - b.t);
}

/** What is kept of a run. */
export function tell(run: Run): Telling {
  const plain = ({ t, kind, device, from, to }: LogEntry): Event => {
    return { t, kind, device, from: from === '' ? NONE : from, to };
  };
  const told = ({ severity, rule, devices, margin, marginQuantity }: Flag): Told => {
    return { severity, rule, devices: devices.join(' '), margin, quantity: marginQuantity };
  };
  const strokes = run.log.filter((e) => run.role(e.device) === 'hand-supply' && e.kind === 'mode');
  const flicker = strokes.length > 10 ? STROKE : FLICKER;
  return {
    end: run.outcome.kind,
    duration: run.duration,
    flicker,
    events: without(run.log.map(plain), run.duration, flicker),
    flags: run.flags.map(told),
  };
}

/** As a text for the eye; the title goes on top. */
export function write({ end, duration, flicker, events, flags }: Telling, title: string): string {
  const row = (...cells: readonly [string, number][]): string =>
    cells
      .map(([text, width]) => text.padEnd(width))
      .join('  ')
      .trimEnd();
  return [
    `# ${title}`,
    '# times in s, margins in SI',
    '',
    `flicker  ${flicker}`,
    `ended  ${end}  ${duration.toFixed(3)}`,
    '',
    ...events.map((e) => {
      const t = e.t.toFixed(3).padStart(8);
      return row(['event', 5], [t, 8], [e.kind, 8], [e.device, 24], [`${e.from} -> ${e.to}`, 0]);
    }),
    '',
    ...flags.map((f) => {
      const margin = `${f.margin.toPrecision(3)} ${f.quantity}`;
      return row(['flag', 5], [f.severity, 8], [f.rule, 24], [margin, 28], [f.devices, 0]);
    }),
    '',
  ].join('\n');
}

/** A text back again. */
export function parse(text: string): Telling {
  const rows = text.split('\n').map((line) => line.split(/ {2,}/));
  const head = (what: string): string[] => rows.find(([first]) => first === what) ?? [];
  const [, end, duration] = head('ended');
  const flicker = Number(head('flicker')[1]);
  const events = rows
    .filter(([what]) => what === 'event')
    .map(([, t, kind, device, change]) => {
      const [from, to] = change.split(' -> ');
      return { t: Number(t), kind, device, from, to };
    });
  const flags = rows
    .filter(([what]) => what === 'flag')
    .map(([, severity, rule, margin, devices]) => {
      const [value, quantity] = margin.split(' ');
      return { severity, rule, devices, margin: Number(value), quantity };
    });
  return { end, duration: Number(duration), flicker, events, flags };
}

/** The first difference that matters, as a sentence; undefined when both tell the same. */
export function difference(old: Telling, now: Telling): string | undefined {
  if (old.end !== now.end || Math.abs(old.duration - now.duration) > SAME_TIME) {
    return `ended ${old.end} at ${old.duration} s, now ${now.end} at ${now.duration} s`;
  }
  const first = eventDifference(old, now, 0);
  const again = LONGER * now.flicker;
  if (first !== undefined && eventDifference(old, now, again) !== undefined) return first;
  return flagDifference(old.flags, now.flags);
}

function eventDifference(old: Telling, now: Telling, least: number): string | undefined {
  const say = (e: Event | undefined): string =>
    e === undefined ? 'nothing' : `${e.t.toFixed(3)} s ${e.device} ${e.from} -> ${e.to}`;
  const before = streams(without(old.events, old.duration, least));
  const after = streams(without(now.events, now.duration, least));
  let found: { t: number; text: string } | undefined;
  for (const key of new Set([...before.keys(), ...after.keys()])) {
    const a = before.get(key) ?? [];
    const b = after.get(key) ?? [];
    for (let i = 0; i < Math.max(a.length, b.length); i++) {
      const [was, is] = [a[i], b[i]] as (Event | undefined)[];
      if (was?.from === is?.from && was?.to === is?.to) {
        if (Math.abs(was!.t - is!.t) <= SAME_TIME) continue;
      }
      const t = Math.min(was?.t ?? Infinity, is?.t ?? Infinity);
      if (t < (found?.t ?? Infinity)) found = { t, text: `was ${say(was)}, now ${say(is)}` };
      break;
    }
  }
  return found?.text;
}

/** A raised flag names its culprits; who is nearest to a limit that holds may change. */
function flagDifference(old: readonly Told[], now: readonly Told[]): string | undefined {
  const say = (f: Told | undefined): string =>
    f === undefined ? 'none' : `${f.rule} ${f.severity} ${f.devices} ${f.margin.toPrecision(3)}`;
  const key = (f: Told): string =>
    [f.rule, f.severity, f.quantity, ...(f.severity === 'note' ? [] : [f.devices])].join(' ');
  const ofKey = (flags: readonly Told[], wanted: string): (Told | undefined)[] =>
    flags.filter((f) => key(f) === wanted).sort((a, b) => a.margin - b.margin);
  for (const wanted of new Set([...old, ...now].map(key))) {
    const before = ofKey(old, wanted);
    const after = ofKey(now, wanted);
    for (let i = 0; i < Math.max(before.length, after.length); i++) {
      const [was, is] = [before[i], after[i]];
      if (was === undefined || is === undefined || !sameMargin(was, is)) {
        return `flag was ${say(was)}, now ${say(is)}`;
      }
    }
  }
  return undefined;
}

function sameMargin(a: Told, b: Told): boolean {
  const nothing = SAME_MARGIN[a.quantity as Quantity] ?? 0;
  return Math.abs(a.margin - b.margin) <= nothing + SAME_SHARE * Math.abs(a.margin);
}
