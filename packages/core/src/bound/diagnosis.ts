/** Diagnosis, with the catalogues that come with core. */
import * as analysis from '../analysis/index.js';
import type { Scenario } from '../define/index.js';
import type { ObservationConditions, ObservationSheet } from '../observation/index.js';
import { catalogues } from './catalogues.js';

/**
 * What explains a sheet: every known fault, wherever it can befall, against what was noted, with its
 * probability. Cancelled, it gives what it has.
 */
export function diagnose(
  scenario: Scenario,
  sheet: ObservationSheet,
  options?: analysis.DiagnosisOptions,
): Promise<analysis.Diagnosis> {
  return analysis.diagnose(catalogues, scenario, sheet, options);
}

/**
 * Plays into `memory` what a diagnosis of this sheet will want when more has been noted on it: a sheet
 * that is still empty counts by its conditions and the ways of its swings. @returns swings played
 */
export function playAhead(
  scenario: Scenario,
  sheet: ObservationSheet,
  options?: analysis.AheadOptions,
): Promise<number> {
  return analysis.playAhead(catalogues, scenario, sheet, options);
}

/** How the aircraft stands for the swing that a check asks for; undefined for a check that is a look. */
export function checkConditions(
  scenario: Scenario,
  sheet: ObservationSheet,
  check: string,
): ObservationConditions | undefined {
  return analysis.checkConditions(catalogues, scenario, sheet, check);
}

/**
 * A player of the swings that one diagnosis asks for, e.g. in a worker: of tasks as they come, or as `taskSender`
 * sends them.
 */
export function signaturePlayer(): (task: analysis.SentTask) => analysis.Signature {
  return analysis.signaturePlayer(catalogues);
}
