/** What the diagnosis bench shows: the ranking of the sheet on the desk, and what of it is looked at. */
import type { DiagnosisReply, MemberLine, Ranking } from '../worker/diagnosis-message.js';
import type { DiagnosisQuestion } from '../worker/diagnosis-client.js';
import type { System } from '../worker/message.js';

export interface DiagnosisState {
  /** As far as it goes; that of the former sheet until there is a new one. */
  readonly ranking: Ranking | undefined;
  /** Being worked out; share of it that is done, 0..1. */
  readonly busy: boolean;
  readonly share: number;
  /** All that was wanted was played. */
  readonly whole: boolean;
  /** Why there is none. */
  readonly failure: string;
  /** Explanation looked at, by its key; empty: the likeliest. */
  readonly picked: string;
}

export const NO_DIAGNOSIS: DiagnosisState = {
  ranking: undefined,
  busy: false,
  share: 0,
  whole: false,
  failure: '',
  picked: '',
};

/** Whoever explains a sheet: workers, or a stand-in. */
export interface Explainer {
  explain(question: DiagnosisQuestion, hear: (reply: DiagnosisReply) => void): void;
  /** Plays what a sheet like this may want; what was being explained is given up. */
  ahead(question: DiagnosisQuestion, hear: (reply: DiagnosisReply) => void): void;
  stop(): void;
}

/** The same for the same causes, however they rank. */
export function keyOf({ causes }: Pick<MemberLine, 'causes'>): string {
  return causes.length === 0 ? 'healthy' : causes.map((c) => `${c.fault} ${c.on}`).join('+');
}

/** The explanation looked at: the one picked while it is in the ranking, else the likeliest. */
export function pickedOf(
  { ranking, picked }: DiagnosisState,
  system: System,
): MemberLine | undefined {
  const all = (ranking?.[system].ranking ?? []).flatMap((line) => line.members);
  return all.find((m) => keyOf(m) === picked) ?? all[0];
}
