import type { Flag, Quantity, Severity } from '../../define/index.js';

/** What a rule kind finds: a signed margin (positive is good) and when it was decided. */
export interface Finding {
  /** SI, in the unit of `quantity`. */
  readonly margin: number;
  readonly quantity: Quantity;
  /** Span concerned, s. */
  readonly from: number;
  readonly to: number;
}

/** The words that turn a finding into a flag. */
export interface Wording {
  readonly devices: readonly string[];
  /** Severity when the margin is negative; a margin of zero or more is a note. */
  readonly severity: Severity;
  /** What happened, when the margin is negative. */
  readonly bad: string;
  /** What happened, when it is not. */
  readonly good: string;
  /** What to look at next, without the sentence that defers to approved data. */
  readonly suggestion: string;
}

/** Ends every suggestion: this is a model, and the aircraft has its own data. */
export const DEFER = "The aircraft's approved data decides; this is a simulation.";

/** A flag from a finding and its words. */
export function raise(
  rule: { readonly name: string; readonly title: string },
  finding: Finding,
  words: Wording,
): Flag {
  const bad = finding.margin < 0;
  return {
    rule: rule.name,
    title: rule.title,
    severity: bad ? words.severity : 'note',
    from: finding.from,
    to: finding.to,
    devices: words.devices,
    margin: finding.margin,
    marginQuantity: finding.quantity,
    explanation: bad ? words.bad : words.good,
    suggestion: bad ? `${words.suggestion} ${DEFER}` : `Nothing to do for this rule. ${DEFER}`,
  };
}

/**
 * Of flags on like subjects: every one with a negative margin, or else only the one nearest to
 * its limit, so that a healthy run is not buried in notes.
 */
export function tightest(flags: readonly Flag[]): readonly Flag[] {
  const bad = flags.filter((f) => f.margin < 0);
  if (bad.length > 0 || flags.length === 0) return bad;
  return [flags.reduce((a, b) => (b.margin < a.margin ? b : a))];
}

/** Seconds as written in explanations; milliseconds only where they are all there is. */
export function seconds(t: number): string {
  return `${t.toFixed(Math.abs(t) < 0.1 ? 3 : 2)} s`;
}
