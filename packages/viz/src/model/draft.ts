/** A sheet being filled in for one aircraft, kept over a reload. */
import type {
  ObservationConditions,
  ObservationSheet,
  ObservedSwing,
} from '../worker/sheet-message.js';
import { LONGEST, swingOf } from './watch.js';
import type { Clock, Watch } from './watch.js';

/** Plain data. */
export interface Draft {
  readonly sheet: ObservationSheet;
  /** The watch that runs. */
  readonly watch?: Watch;
  /** The row struck out last, to be put back. */
  readonly struck?: { readonly row: number; readonly swing: ObservedSwing };
  /** How the next swings are made, where a check asks for it; its title is their note. */
  readonly under?: { readonly title: string; readonly conditions: ObservationConditions };
  /** Nothing has changed since it was saved or opened. */
  readonly saved: boolean;
}

/** Where drafts are kept; null where there is none. */
export interface Keep {
  get(name: string): unknown;
  put(name: string, value: unknown): void;
}

/** Drafts of an older page are not taken for those of this one. */
const FORM = 1;

const keyOf = (file: string): string => `test-card.${file}`;

export function keepDraft(keep: Keep, file: string, draft: Draft): void {
  keep.put(keyOf(file), { form: FORM, draft });
}

export function keptDraft(keep: Keep, file: string, clock: Clock): Draft | undefined {
  const kept = keep.get(keyOf(file)) as { form?: number; draft?: Draft } | null;
  const { form, draft } = kept ?? {};
  if (form !== FORM || draft === undefined) return undefined;
  const { watch, ...rest } = draft;
  if (watch === undefined || clock() - watch.started < LONGEST) return draft;
  // Left running and gone home: what was tapped is kept.
  const swings = [...rest.sheet.swings, swingOf(watch, rest.sheet.readingError)];
  return { ...rest, sheet: { ...rest.sheet, swings }, saved: false };
}
