/** The bottle's part of a picture. */
import {
  blowDownBottle,
  blowDownCards,
  chargeTable,
  judgeBlowDown,
  momentCurves,
  rampCases,
  serviceSteps,
  worstPoint,
} from '@wheelwell/core';
import type { MomentCurve, MomentPoint, Run, Scenario } from '@wheelwell/core';
import type { BlowDownFacts, BlowDownRun, Condition, CurveSamples } from './blow-down-message.js';

/**
 * Undefined for an aircraft without a bottle and a card that pulls its handle. `condition` is what
 * the run was asked for instead of the card's own.
 */
export function blowDownFacts(
  scenario: Scenario,
  run: Run,
  condition: Condition | undefined,
): BlowDownFacts | undefined {
  const cards = blowDownCards(scenario);
  if (cards.length === 0) return undefined;
  const bottle = blowDownBottle(scenario);
  const { parameters } = scenario.components[bottle];
  const card = scenario.cards[run.cardName];
  const own: Condition = {
    charge: Number(card.set[`components.${bottle}.charge`] ?? parameters.charge),
    temperature: card.temperature ?? scenario.fluid.temperature,
  };
  return {
    cards,
    own,
    chargeTemperature: Number(parameters.chargeTemperature),
    table: chargeTable(scenario),
    ...(cards.includes(run.cardName) && { run: runFacts(run, condition ?? own) }),
  };
}

/** The buffers in it, to be transferred. */
export function arraysIn(facts: BlowDownFacts | undefined): Float32Array[] {
  return (facts?.run?.curves ?? []).flatMap((c) => [c.t, c.angle, c.available, c.needed, c.bottle]);
}

function runFacts(run: Run, condition: Condition): BlowDownRun {
  const { verdict, legs, gasLeft, endPressure } = judgeBlowDown(run);
  const curves = momentCurves(run).map(samplesOf);
  const steps = serviceSteps(run);
  return { condition, verdict, legs, gasLeft, endPressure, curves, steps, ramps: rampCases(run) };
}

function samplesOf({ unit, leg, points }: MomentCurve): CurveSamples {
  const worst = worstPoint(points);
  const of = (value: (p: MomentPoint) => number): Float32Array => Float32Array.from(points, value);
  return {
    unit,
    leg,
    t: of((p) => p.t),
    angle: of((p) => p.angle),
    available: of((p) => p.available),
    needed: of((p) => p.needed),
    bottle: of((p) => p.bottle),
    held: Uint8Array.from(points, (p) => Number(p.held)),
    // One that a lock holds all the time had no moment asked of it.
    worst: worst === undefined ? -1 : points.indexOf(worst),
  };
}
