import type { Scenario } from '../../define/index.js';
import type { SimulatedRun } from '../../machine/index.js';
import { expectedSwings, type SwingDirection } from '../../observation/index.js';

/** A card, the ways it is read for, and the longest that was noted of them, s from the selector. */
interface Waiting {
  readonly scenario: Scenario;
  readonly card: string;
  readonly directions: ReadonlySet<SwingDirection>;
  readonly noted: number;
}

/** Where the card is done with a movement before the sheet is, it waits so much longer, as a share of what was noted. */
const SPARE = 0.25;
/** In whole steps of this, s, so that a sheet with another slow time need not be played anew. */
const STEP = 10;

/** The card with time for all that was noted: whoever holds the lever waits for the gear. */
export function patient(
  { scenario, card: name, directions, noted }: Waiting,
  play: (scenario: Scenario) => SimulatedRun,
): { scenario: Scenario; run: SimulatedRun; longer: number } {
  const run = play(scenario);
  const moves = expectedSwings(run);
  const spans = moves.map((m, i) => (moves[i + 1]?.start ?? run.duration) - m.start);
  const short = moves.some((m, i) => directions.has(m.direction) && spans[i] < noted);
  if (!short) return { scenario, run, longer: 0 };
  const longer = STEP * Math.ceil(((1 + SPARE) * noted - Math.min(...spans)) / STEP);
  const card = scenario.cards[name];
  // Every movement gets as much more: what waits for something waits on.
  const later = (at: number): number =>
    at + longer * moves.filter((m, i) => i > 0 && m.start <= at + 1e-9).length;
  const steps = card.steps.map((s) => (s.after === undefined ? { ...s, at: later(s.at) } : s));
  const patient = { ...card, steps, duration: card.duration + longer * moves.length };
  const made = { ...scenario, cards: { ...scenario.cards, [name]: patient } };
  return { scenario: made, run: play(made), longer };
}
