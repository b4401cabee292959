/** Analyses of a blow-down, with the catalogues that come with core. */
import * as analysis from '../analysis/index.js';
import type { Run, Scenario } from '../define/index.js';
import { catalogues } from './catalogues.js';

/** The card of a scenario that pulls a blow-down handle: the named one or the first. @throws RangeError when there is none. */
export function blowDownCard(scenario: Scenario, card?: string): string {
  return analysis.blowDownCard(scenario, catalogues, card);
}

/** The cards of a scenario that pull a blow-down handle; none without one. */
export function blowDownCards(scenario: Scenario): string[] {
  return analysis.blowDownCards(scenario, catalogues);
}

/** The bottle whose charge is looked at: the first of the scenario. @throws RangeError when there is none. */
export function blowDownBottle(scenario: Scenario): string {
  return analysis.bottleOf(scenario, catalogues);
}

/** The scenario with one of its cards under another charge and temperature, to simulate. */
export function blowDownUnder(
  scenario: Scenario,
  card: string,
  condition: analysis.BlowDownCondition,
): Scenario {
  return analysis.under(scenario, catalogues, card, condition);
}

/**
 * A blow-down under another charge and temperature: what locks, when, with what margin.
 *
 * @throws RangeError when the scenario has no bottle or no such card.
 */
export function playBlowDown(
  scenario: Scenario,
  card: string,
  condition: analysis.BlowDownCondition,
): analysis.BlowDownCell {
  return analysis.playCell(catalogues, scenario, card, condition);
}

/** How every leg fared in a run that pulls a blow-down handle. @throws RangeError when the scenario has no bottle. */
export function judgeBlowDown(run: Run): analysis.BlowDownCell {
  return analysis.judgeRun(catalogues, run);
}

/**
 * The map of a blow-down over charge and temperature (and a third parameter).
 *
 * @throws RangeError when the scenario has no bottle or card for it, or a range is empty or not rising.
 */
export function blowDownMargin(
  scenario: Scenario,
  ranges: analysis.BlowDownRanges,
  options?: analysis.BlowDownOptions,
): Promise<analysis.BlowDownMap> {
  return analysis.blowDownMargin(catalogues, scenario, ranges, options);
}

/** The least charge with which every leg still locks. @throws RangeError as {@link blowDownMargin}. */
export function minimumCharge(
  scenario: Scenario,
  options?: { readonly card?: string; readonly temperature?: number },
): analysis.MinimumCharge {
  return analysis.minimumCharge(catalogues, scenario, options);
}

/** The pressure to see on the gauge at each temperature, K. @throws RangeError without a bottle. */
export function chargeTable(
  scenario: Scenario,
  temperatures?: readonly number[],
): analysis.ChargeTable {
  return analysis.chargeTable(catalogues, scenario, temperatures);
}

/** What has to be done after a blow-down, each step with its reason from the run. */
export function serviceSteps(run: Run): readonly analysis.ServiceStep[] {
  return analysis.serviceSteps(catalogues, run);
}

/** Times of a normal swing, and with the gas of a blow-down still in the oil; undefined without a card for one. */
export function followUp(run: Run): analysis.FollowUp | undefined {
  return analysis.followUp(catalogues, run);
}

/** A normal swing with the gas of a blow-down still in the oil. @throws RangeError when there is no such card. */
export function followUpSwing(run: Run, card: string): Run {
  return analysis.followUpSwing(catalogues, run, card);
}
