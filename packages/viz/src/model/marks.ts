/** Marks of a run told by name, not by number: they outlast another severity, and a link can carry them. */
import type { Picture } from '../worker/message.js';
import { devicesOf } from './bearers.js';
import { placed } from './measured.js';
import type { MeasuredTime } from './measured.js';
import { plain } from './sentence.js';
import type { Selection } from './state.js';

export type Mark =
  | {
      readonly kind: 'event';
      readonly on: string;
      readonly to: string;
      /** Which of several alike, from 0. */
      readonly nth: number;
    }
  | { readonly kind: 'flag'; readonly rule: string; readonly nth: number }
  | {
      readonly kind: 'measured';
      readonly on: string;
      readonly event: string;
      readonly since: string;
    }
  | { readonly kind: 'time'; readonly t: number };

/** What is picked out; the play head's time when nothing is. */
export function markOf(picture: Picture, selection: Selection, time: number): Mark {
  if (selection.kind === 'event') {
    const entry = picture.log[selection.index];
    if (entry !== undefined) {
      const alike = picture.log.filter((e) => e.device === entry.device && e.to === entry.to);
      return { kind: 'event', on: entry.device, to: entry.to, nth: alike.indexOf(entry) };
    }
  }
  if (selection.kind === 'flag') {
    const flag = picture.flags[selection.index];
    if (flag !== undefined) {
      const alike = picture.flags.filter((f) => f.rule === flag.rule);
      return { kind: 'flag', rule: flag.rule, nth: alike.indexOf(flag) };
    }
  }
  return { kind: 'time', t: time };
}

/** Where it is among events or flags; nothing when the run does not have it, or for a mere time. */
export function selectionOf(picture: Picture, mark: Mark): Selection {
  const { log, flags } = picture;
  if (mark.kind === 'event') {
    const entry = log.filter((e) => e.device === mark.on && e.to === mark.to)[mark.nth];
    return entry === undefined ? { kind: 'none' } : { kind: 'event', index: log.indexOf(entry) };
  }
  if (mark.kind === 'flag') {
    const flag = flags.filter((f) => f.rule === mark.rule)[mark.nth];
    return flag === undefined ? { kind: 'none' } : { kind: 'flag', index: flags.indexOf(flag) };
  }
  return { kind: 'none' };
}

/** A mark in the run on show. */
export interface MarkPlace {
  readonly mark: Mark;
  readonly t: number;
  /** What it is, in words. */
  readonly words: string;
  /** The lanes it stands on, best first; none for a mere time. */
  readonly on: readonly string[];
}

/** Undefined when the run does not have it. */
export function placeOf(
  picture: Picture,
  mark: Mark,
  measured: readonly MeasuredTime[],
): MarkPlace | undefined {
  if (mark.kind === 'time') return { mark, t: mark.t, words: 'play head', on: [] };
  if (mark.kind === 'measured') {
    const found = measured.find(
      (m) => m.on === mark.on && m.event === mark.event && m.since === mark.since,
    );
    const p = found === undefined ? undefined : placed(picture, found);
    if (p === undefined) return undefined;
    const words = `${plain(mark.on)} ${mark.event}, measured`;
    return { mark, t: p.t, words, on: [mark.on] };
  }
  const at = selectionOf(picture, mark);
  if (at.kind === 'event') {
    const e = picture.log[at.index];
    return e && { mark, t: e.t, words: `${plain(e.device)} ${e.to}`, on: [e.device] };
  }
  if (at.kind === 'flag') {
    const f = picture.flags[at.index];
    return f && { mark, t: f.from, words: `flag ${f.title}`, on: devicesOf(picture, f) };
  }
  return undefined;
}

export function sameMark(a: Mark, b: Mark): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
