import type { Scenario } from '../../define/index.js';
import type { SimulatedRun } from '../../machine/index.js';
import {
  expectedSwings,
  WHOLE_GEAR,
  type ExpectedSwing,
  type SwingDirection,
} from '../../observation/index.js';

/** A card, the ways it is read for, and the longest that was noted of them, s from the selector. */
interface Waiting {
  readonly scenario: Scenario;
  readonly card: string;
  readonly directions: ReadonlySet<SwingDirection>;
  readonly noted: number;
}

interface Waited {
  readonly scenario: Scenario;
  readonly run: SimulatedRun;
  /** How much longer each movement is given than by the card, s. */
  readonly longer: number;
}

/** Where the card is done with a movement before the sheet is, it waits so much longer, as a share of what was noted. */
const SPARE = 0.25;
/** In whole steps of this, s, so that a sheet with another slow time need not be played anew. */
const STEP = 10;
/** A sound gear that the card does not give enough time, in cold or on little flow, is given so many times that of its movement. */
const MORE = [1, 3] as const;

/**
 * The card with time for all that was noted, and for a sound gear: whoever holds the lever waits for it.
 *
 * @param play plays the card, each movement of which is given so much longer, s
 */
export function patient(
  { scenario, card: name, directions, noted }: Waiting,
  play: (scenario: Scenario, longer: number) => SimulatedRun,
): Waited {
  const run = play(scenario, 0);
  const moves = expectedSwings(run);
  const asked = (m: ExpectedSwing): boolean => directions.has(m.direction);
  const spans = moves.map((m, i) => (moves[i + 1]?.start ?? run.duration) - m.start);
  const whole = (seconds: number): number => STEP * Math.ceil(seconds / STEP);
  const needed = moves.some((m, i) => asked(m) && spans[i] < noted)
    ? whole((1 + SPARE) * noted - Math.min(...spans))
    : 0;
  const home = (of: SimulatedRun): boolean =>
    expectedSwings(of).every((m) => !asked(m) || m.times[WHOLE_GEAR]?.total !== undefined);
  const card = scenario.cards[name];
  const waiting = (longer: number): Waited => {
    // Every movement gets as much more: what waits for something waits on.
    const later = (at: number): number =>
      at + longer * moves.filter((m, i) => i > 0 && m.start <= at + 1e-9).length;
    const steps = card.steps.map((s) => (s.after === undefined ? { ...s, at: later(s.at) } : s));
    const patient = { ...card, steps, duration: card.duration + longer * moves.length };
    const made = { ...scenario, cards: { ...scenario.cards, [name]: patient } };
    return { scenario: made, run: play(made, longer), longer };
  };
  const first = needed > 0 ? waiting(needed) : { scenario, run, longer: 0 };
  if (home(first.run)) return first;
  for (const times of MORE) {
    const waited = waiting(needed + whole(times * Math.max(0, ...spans)));
    if (home(waited.run)) return waited;
  }
  return first;
}
