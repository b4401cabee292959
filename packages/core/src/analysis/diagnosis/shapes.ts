import type { FaultDefinition, FaultEntry, Scenario } from '../../define/index.js';
import type { Ending } from './ending.js';

/** Something that can be wrong, and where; more than one for a pair. None: the aircraft is healthy. */
export interface Cause {
  readonly fault: string;
  readonly on: string;
}

/** What could explain a sheet, and how likely it is before anything was seen. */
export interface Hypothesis {
  readonly causes: readonly Cause[];
  readonly prior: number;
  /** As its fault's; of a single one. */
  readonly hangsOn?: FaultDefinition['hangsOn'];
}

/**
 * Figures and facts that a swing would put on a sheet, by key (`up/left/locked`, `down/nose/moved`,
 * `up/gauge/pressure/peak`): s from the selector, Pa gauge, or 0 and 1. What does not happen is left out.
 */
export type Signature = Readonly<Record<string, number>>;

/** One swing to play: under which conditions of the sheet, with what wrong, and how off from nominal. */
export interface SignatureJob {
  /** Place among the sheet's setups. */
  readonly setup: number;
  readonly faults: readonly FaultEntry[];
  /** Place among the unknowns of the healthy aircraft, moved by one standard deviation; absent: nominal. */
  readonly unknown?: number;
  /** Which aircraft of the healthy ones' scatter; absent: the nominal one. */
  readonly drawn?: number;
}

/** What a run is read for beside its times. */
export interface SwingReading {
  /** Points of the system that the sheet has gauges on, beside the usual ones. */
  readonly nodes?: readonly string[];
  /** From when on it was left to itself, s of the run. */
  readonly leftAt?: number;
}

/** Under what a swing is played and how far, and what is read of it; plain data. */
export interface SwingSetup {
  /** The same for the same card under the same conditions. */
  readonly key: string;
  readonly scenario: Scenario;
  readonly card: string;
  /** What is read off its runs beside the usual. */
  readonly reading: SwingReading;
  /** With what the operator ends it; absent where it is played to the card's end. */
  readonly ending?: Ending;
}

/** A job with all that it takes to play it; plain data. */
export interface SignatureTask extends Omit<SignatureJob, 'setup'> {
  readonly setup: SwingSetup;
}

/** A task as it travels: of a setup that the player has got already its key is enough. */
export interface SentTask extends Omit<SignatureTask, 'setup'> {
  readonly setup: SwingSetup | Pick<SwingSetup, 'key'>;
}

/**
 * Plays swings somewhere, e.g. in workers; the order of answers does not matter. Of the tasks of one diagnosis those
 * with the same setup share one object, a scenario and all: who sends them far sends it once.
 */
export interface SignaturePool {
  play(
    tasks: readonly SignatureTask[],
    onSignature: (index: number, signature: Signature) => void,
    signal?: { readonly aborted: boolean },
  ): Promise<void>;
}

/** An entry of the sheet against what a cause foretells for it. */
export interface Comparison {
  /** Swing of the sheet, from 0, and what of it: `left locked`. */
  readonly swing: number;
  readonly label: string;
  readonly kind: 'time' | 'gauge' | 'flow' | 'strokes' | 'fact';
  /** s, Pa gauge, m3/s, strokes; 1 for a fact that was seen. */
  readonly observed: number;
  readonly error: number;
  /** NaN where it foretells that this never happens. For a fact the probability that it is seen. */
  readonly foretold: number;
}

/** How bad a cause is, 0..1, by what it explains. */
export interface FittedSeverity {
  readonly at: number;
  /** The middle 90 % of what it may be. */
  readonly range: readonly [number, number];
}

/** One ranked explanation. */
export interface Explanation {
  readonly causes: readonly Cause[];
  readonly probability: number;
  /** Of each cause. */
  readonly severities: readonly FittedSeverity[];
  /** What is foretold is of an aircraft within the tolerances of healthy ones: on the nominal one another thing happens. */
  readonly offNominal?: true;
  /** What is foretold is of oil by so much colder than was noted, K, by which this fault is worse; negative: warmer. */
  readonly colder?: number;
  readonly comparisons: readonly Comparison[];
}

/** Explanations that these observations cannot tell apart; the likeliest first. */
export interface ExplanationGroup {
  readonly probability: number;
  readonly members: readonly Explanation[];
}

/** A check that would tell causes apart, with what it is worth now. */
export interface RankedCheck {
  /** Name in the catalogue of checks. */
  readonly check: string;
  /** Part to look at; empty for a swing. */
  readonly on: string;
  /** Expected information, bit, and the same per minute of work. */
  readonly information: number;
  readonly perMinute: number;
  /** Probability that a look finds something; NaN for a swing. */
  readonly finds: number;
}

export interface Diagnosis {
  /** What to do next, the most information per minute first; empty when nothing is worth it. */
  readonly checks: readonly RankedCheck[];
  /** True when the first group is as likely as {@link ESTABLISHED} says. */
  readonly established: boolean;
  /** Likeliest first. A group whose member has no causes is the healthy aircraft. */
  readonly groups: readonly ExplanationGroup[];
  /** Probability that none of the known causes is it. */
  readonly unknown: number;
  /** Swings played, and whether all that was wanted was. */
  readonly runs: number;
  readonly whole: boolean;
  /** What of the sheet could not be used, in words. */
  readonly unused: readonly string[];
}

/** Signatures that were played, to be used again when the sheet has grown; by what they are. */
export type SignatureMemory = Map<string, Signature>;

export interface DiagnosisOptions {
  /** Texts of the recordings that the sheet names, by their file names. */
  readonly recordings?: Readonly<Record<string, string>>;
  readonly memory?: SignatureMemory;
  readonly pool?: SignaturePool;
  /** Share done, 0..1; `sofar` works out the ranking so far, which takes as long as some swings. */
  readonly onProgress?: (share: number, sofar: () => Diagnosis) => void;
  /** Hears the whole ranking as soon as it stands; its checks are the looks until swings are weighed, too. */
  readonly onRanked?: (ranked: Diagnosis) => void;
  readonly signal?: { readonly aborted: boolean };
}
