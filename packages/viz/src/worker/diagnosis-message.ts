/** What passes between page and workers about what explains a sheet: plain data. */
import type { CheckLine, DiagnosisDocument, Scenario } from '@wheelwell/core';
import type { System } from './message.js';
import type {
  ObservationConditions,
  ObservationSheet,
  SwingDirection,
  WrittenScenario,
} from './sheet-message.js';

export type {
  CheckLine,
  ComparisonLine,
  DiagnosisDocument,
  MemberLine,
  RankedLine,
} from '@wheelwell/core';

export interface DiagnosisRequest {
  readonly id: number;
  readonly scenario: WrittenScenario;
  /** The same as read; without it whoever gets the request reads it. */
  readonly read?: Scenario;
  readonly sheet: ObservationSheet;
  /** Ways that the card goes, whether they are on the sheet yet or not. */
  readonly ways: readonly SwingDirection[];
  /** Texts of recordings that the sheet names, by file. */
  readonly recordings: Readonly<Record<string, string>>;
}

/** Page to worker: rank, or play what a sheet like this may want; play for one who does; or let go of it. */
export type DiagnosisJob =
  | {
      readonly kind: 'diagnose' | 'play-ahead';
      readonly request: DiagnosisRequest;
      readonly ports: readonly MessagePort[];
    }
  | { readonly kind: 'play-signatures'; readonly port: MessagePort }
  | { readonly kind: 'leave-diagnosis' };

/** A check with how the aircraft stands for it, where it is a swing. */
export type CheckFacts = CheckLine & { readonly conditions?: ObservationConditions };

/** A ranking in the units of either system. */
export type Ranking = Readonly<
  Record<System, Omit<DiagnosisDocument, 'checks'> & { readonly checks: readonly CheckFacts[] }>
>;

/** Worker to page. */
export type DiagnosisReply = { readonly id: number } & (
  | {
      readonly kind: 'ranked';
      readonly share: number;
      readonly ranking: Ranking;
      /** The ranking stands; what is still played is for the checks. */
      readonly whole: boolean;
    }
  | { readonly kind: 'played'; readonly share: number }
  | { readonly kind: 'whole'; readonly runs: number; readonly ranking: Ranking }
  | { readonly kind: 'broken'; readonly message: string }
);

export function isDiagnosisJob(job: { readonly kind: string }): job is DiagnosisJob {
  return /^(diagnose|play-ahead|play-signatures|leave-diagnosis)$/.test(job.kind);
}
