import type { Issue } from '../define/issue.js';
import type { Scenario } from '../define/scenario.js';
import { check } from '../scenario/check.js';
import { isMap, list } from '../scenario/draft.js';
import type { FileKind } from '../scenario/file-kind.js';
import { shown } from '../scenario/issue-list.js';
import { parseText, type Plain } from '../scenario/parse.js';
import { contradictions, type Contradiction } from './contradiction.js';
import { filled, PartReader, type Path } from './part-reader.js';
import * as fields from './schema.js';
import {
  HAND_STOPWATCH,
  type GaugeReadings,
  type ObservationConditions,
  type ObservationSheet,
  type ObservedEvent,
  type ObservedLook,
  type ObservedSwing,
  type ObservedTimes,
  type ObservedColumn,
  type RecordingEntry,
  type Remark,
  type SupplyReadings,
} from './sheet.js';

/** A sheet as far as it can be read, and everything that cannot be, or cannot be true. */
export interface ObservationReading {
  /** There whenever the text is a sheet at all; what the issues name is left out of it. */
  readonly sheet?: ObservationSheet;
  /** What could not be read, in the order of the file. */
  readonly issues: readonly Issue[];
  /** Entries that do not go together; both are in the sheet. */
  readonly contradictions: readonly Contradiction[];
}

/** Ten thousand swings with every field filled in, and more; a JSON file may be one line. */
const SHEET_FILE: FileKind = {
  what: 'an observation sheet',
  firstLine: 'wheelwell-observations: 1',
  characters: 16_000_000,
  lineCharacters: 16_000_000,
  values: 1_000_000,
};

/**
 * Reads an observation sheet from YAML (or JSON, which is YAML). Never throws, and its cost is bounded.
 * What cannot be read is told and left out, the rest is kept; nothing is ever taken as zero.
 * @param options.scenario names of units and nodes, and the aircraft, are held against it
 */
export function readObservations(
  text: string,
  options: { readonly file?: string; readonly scenario?: Scenario } = {},
): ObservationReading {
  const { data, issues } = parseText(text, options.file ?? '<text>', SHEET_FILE);
  if (data === undefined) return { issues: issues.sorted(), contradictions: [] };
  const reader = new Reader(issues, options.scenario);
  const sheet = reader.sheet(data);
  return {
    ...(sheet && { sheet }),
    issues: issues.sorted(),
    contradictions: sheet === undefined ? [] : contradictions(sheet, issues, reader.pathOf),
  };
}

class Reader extends PartReader {
  private readonly paths = new Map<object, Path>();

  /** Where in the file a swing or an entry of an order stands. */
  readonly pathOf = (entry: object): Path => this.paths.get(entry) ?? [];

  sheet(data: Plain): ObservationSheet | undefined {
    const { issues } = this;
    const version = isMap(data) ? data['wheelwell-observations'] : undefined;
    if (!isMap(data) || version === undefined) {
      const other = isMap(data) && data.wheelwell !== undefined;
      issues.add([], {
        message: other
          ? 'this is a scenario, not an observation sheet'
          : 'this is not an observation sheet',
        found: isMap(data) ? '' : shown(data),
        allowed: "lines of `key: value`, the first 'wheelwell-observations: 1'",
      });
      return undefined;
    }
    const own = ['conditions', 'swings', 'looks'];
    const head = this.values(fields.sheet, data, [], own);
    this.hold(head.aircraft);
    const readingError = head['reading-error'] ?? HAND_STOPWATCH;
    return {
      aircraft: head.aircraft ?? '',
      scenario: head.scenario ?? '',
      card: head.card ?? '',
      date: head.date ?? '',
      by: head.by ?? '',
      readingError,
      conditions: this.conditions(data.conditions, ['conditions']),
      swings: list(data.swings, ['swings'], issues).flatMap((raw, i) => {
        const swing = this.swing(raw, ['swings', i], readingError);
        if (swing !== undefined) this.paths.set(swing, ['swings', i]);
        return swing === undefined ? [] : [swing];
      }),
      ...(data.looks != null && {
        looks: list(data.looks, ['looks'], issues).flatMap((raw, i) =>
          this.look(raw, ['looks', i]),
        ),
      }),
      note: head.note ?? '',
    };
  }

  private swing(raw: Plain, path: Path, error: number): ObservedSwing | undefined {
    const { issues } = this;
    if (!isMap(raw)) {
      issues.add(path, {
        message: 'a swing belongs here',
        found: shown(raw),
        allowed: 'direction: and what was seen',
      });
      return undefined;
    }
    const own = [
      ...['conditions', 'times', 'order', 'never', 'gauges', 'supply'],
      ...['remarks', 'recordings'],
    ];
    const { direction, note } = this.values(fields.swing, raw, path, own);
    if (direction === undefined) {
      if (raw.direction == null)
        issues.add([...path, 'direction'], {
          message: 'the direction of this swing is missing',
          allowed: 'up, down, blow-down',
          hint: 'the swing is left out until it is there',
        });
      return undefined;
    }
    const never = this.events(raw.never, [...path, 'never']);
    const supply = this.named(raw.supply, [...path, 'supply'], 'device', (of, at) =>
      filled<SupplyReadings>(this.values(fields.supply, of, at)),
    );
    return {
      direction,
      conditions: this.conditions(raw.conditions, [...path, 'conditions']),
      times: this.named(raw.times, [...path, 'times'], 'unit', (of, at) =>
        this.times(of, at, error),
      ),
      order: this.events(raw.order, [...path, 'order']),
      ...(never.length > 0 && { never }),
      gauges: this.named(raw.gauges, [...path, 'gauges'], 'node', (of, at) =>
        filled<GaugeReadings>(this.values(fields.gauges, of, at)),
      ),
      ...(filled(supply) && { supply }),
      remarks: this.named(raw.remarks, [...path, 'remarks'], 'unit', (of, at) =>
        this.remarks(of, at),
      ),
      recordings: list(raw.recordings, [...path, 'recordings'], issues).flatMap((entry, i) =>
        this.recording(entry, [...path, 'recordings', i]),
      ),
      note: note ?? '',
    };
  }

  private events(raw: Plain | undefined, path: Path): readonly ObservedEvent[] {
    return list(raw, path, this.issues).flatMap((item, i) => {
      const event = check(fields.event, item, [...path, i], this.issues);
      if (event === undefined) return [];
      this.unit(event.unit, [...path, i], false);
      this.paths.set(event, [...path, i]);
      return [event];
    });
  }

  private look(raw: Plain, path: Path): ObservedLook[] {
    const { check: kind, on, found } = this.values(fields.look, raw, path);
    if (on !== undefined) this.part(on, [...path, 'on']);
    if (kind !== undefined && on !== undefined && found !== undefined)
      return [{ check: kind, on, found }];
    if (isMap(raw) && [raw.check, raw.on, raw.found].some((part) => part == null))
      this.issues.add(path, {
        message: 'a part of this look is missing',
        allowed: 'check, on and found',
        hint: '{ check: wet-look, on: left-hose, found: yes }',
      });
    return [];
  }

  private times(raw: Plain, path: Path, error: number): ObservedTimes | undefined {
    const written = this.values(fields.times, raw, path);
    const times = Object.entries(written).map(([event, t]) => [
      event,
      { at: t.at, error: t.error ?? error },
    ]);
    return filled<ObservedTimes>(Object.fromEntries(times) as ObservedTimes);
  }

  private remarks(raw: Plain, path: Path): readonly Remark[] | undefined {
    const items = typeof raw === 'string' ? [raw] : list(raw, path, this.issues);
    const found = items.flatMap((item, i) => {
      const at = typeof raw === 'string' ? path : [...path, i];
      const remark = check(fields.remark, item, at, this.issues);
      return remark === undefined ? [] : [remark];
    });
    return found.length > 0 ? found : undefined;
  }

  private recording(raw: Plain, path: Path): RecordingEntry[] {
    const { columns, ...rest } = isMap(raw) ? raw : { columns: undefined };
    const values = this.values(fields.recording, isMap(raw) ? rest : raw, path);
    if (!isMap(raw)) return [];
    if (values.file === undefined) {
      if (raw.file == null)
        this.issues.add([...path, 'file'], { message: 'the name of the recording is missing' });
      return [];
    }
    const at = [...path, 'columns'];
    const found: Record<string, ObservedColumn> = {};
    for (const [channel, written] of this.entries(columns, at)) {
      const column = check(fields.column, written, [...at, channel], this.issues);
      if (column !== undefined) found[channel] = column;
    }
    return [{ ...values, file: values.file, columns: found }];
  }

  private conditions(raw: Plain | undefined, path: Path): ObservationConditions {
    if (raw === undefined || raw === null) return {};
    const {
      'supply-flow': flow,
      'supply-pressure': pressure,
      'left-for': leftFor,
      ...rest
    } = this.values(fields.conditions, raw, path);
    return {
      ...(flow !== undefined && { supplyFlow: flow }),
      ...(pressure !== undefined && { supplyPressure: pressure }),
      ...(leftFor !== undefined && { leftFor }),
      ...rest,
    };
  }
}
