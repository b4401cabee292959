/** What passes between page and worker about the test card and its observation sheet: plain data. */
import type {
  Contradiction,
  ExpectedSwing,
  Issue,
  ObservationConditions,
  ObservationSheet,
} from '@wheelwell/core';
import type { Edit, System } from './message.js';

export type {
  Contradiction,
  ExpectedSwing,
  GaugeMoment,
  GaugeReadings,
  ObservationConditions,
  ObservationSheet,
  ObservedEvent,
  ObservedSwing,
  ObservedTime,
  ObservedTimes,
  Remark,
  SupplyReading,
  SupplyReadings,
  SwingDirection,
  TimedEvent,
} from '@wheelwell/core';

/** A scenario text, with the changes in force. */
export interface WrittenScenario {
  readonly file: string;
  readonly text: string;
  readonly edits: readonly Edit[];
}

/** What a sound aircraft does on a card. */
export interface Expectation {
  readonly title: string;
  readonly card: string;
  readonly cardTitle: string;
  readonly swings: readonly ExpectedSwing[];
  /** As the sheet has them, or else the card. */
  readonly conditions: ObservationConditions;
  /** Whether the sheet says anything of them. */
  readonly stood: boolean;
  /** Oils that a sheet may name: name in the file, and title. */
  readonly fluids: readonly (readonly [string, string])[];
  readonly limits: {
    readonly up?: number;
    readonly down?: number;
    readonly blowDown?: number;
    readonly spread?: number;
  };
}

/** Page to worker. */
export type SheetJob =
  | {
      readonly kind: 'expect';
      readonly scenario: WrittenScenario;
      readonly card: string;
      /** As far as the sheet says how the aircraft stands. */
      readonly stood: ObservationConditions;
    }
  | { readonly kind: 'write'; readonly sheet: ObservationSheet; readonly units: System }
  | {
      readonly kind: 'read';
      readonly file: string;
      readonly text: string;
      readonly scenario?: WrittenScenario;
    };

/** Worker to page. */
export type SheetReply =
  | { readonly kind: 'expected'; readonly expectation: Expectation }
  | {
      readonly kind: 'written';
      readonly text: string;
      readonly contradictions: readonly Contradiction[];
    }
  | {
      readonly kind: 'sheet';
      readonly sheet?: ObservationSheet;
      readonly issues: readonly Issue[];
      readonly contradictions: readonly Contradiction[];
    }
  | { readonly kind: 'broken'; readonly message: string };
