/** What is asked of the worker about a scenario's text, or a sheet, beside runs. */
import type { Edit, Issue, Quantity, Scenario } from '@wheelwell/core';
import type { SheetJob, SheetReply, WrittenScenario } from './sheet-message.js';

/** A figure that can be changed in place. */
export interface ParameterFacts {
  /** In the file, e.g. `components.left-jack.bore`. */
  readonly path: string;
  /** In the trade's words. */
  readonly title: string;
  /** Why the default or the range is what it is. */
  readonly why: string;
  /** `text`: a point, a curve or a table, on one line as in a file. */
  readonly kind: 'number' | 'choice' | 'switch' | 'text';
  /** Of a number. */
  readonly quantity?: Quantity;
  /** A difference: its unit has no zero of its own, and is K for a temperature. */
  readonly difference?: boolean;
  /** Of a number, inclusive, SI. */
  readonly range?: readonly [number, number];
  readonly choices?: readonly string[];
  /** SI; absent where the file has to say it. */
  readonly usual?: number | string | boolean;
  /** In the file as it is, SI for a number; absent where nothing is in force. */
  readonly value?: number | string | boolean;
  /** As the file has it; empty where it says nothing. */
  readonly written: string;
}

/** The figures of a device, a mechanism, the oil, the limits, a card. */
export interface ParameterGroup {
  /** Device or mechanism by its name; else `fluid`, `surroundings`, `limits`, `nodes`, or `cards.` and the card's name. */
  readonly name: string;
  /** What it is, in words. */
  readonly title: string;
  readonly note: string;
  readonly parameters: readonly ParameterFacts[];
}

/** Page to worker, beside runs; answered by {@link Told} of the same number. */
export type Question =
  | { readonly kind: 'parameters'; readonly file: string; readonly text: string }
  /** The text with changes in it, to be saved. */
  | {
      readonly kind: 'text';
      readonly file: string;
      readonly text: string;
      readonly edits: readonly Edit[];
    }
  /** What the test card wants. */
  | { readonly kind: 'sheet'; readonly job: SheetJob }
  /** A scenario as read, for workers that begin: they need not read it again. */
  | { readonly kind: 'scenario'; readonly scenario: WrittenScenario };

export type Told = { readonly number: number } & (
  | { readonly kind: 'parameters'; readonly groups: readonly ParameterGroup[] }
  | { readonly kind: 'text'; readonly text?: string; readonly issues: readonly Issue[] }
  | { readonly kind: 'sheet'; readonly reply: SheetReply }
  | { readonly kind: 'scenario'; readonly scenario: Scenario | undefined }
);
