import type { Card, CardStep, LogEntry } from '../define/index.js';

/**
 * The operator: plays a card's steps in order. A timed step is due at its time; a step `after`
 * an event waits, from the moment its predecessor is done, for the first such event.
 */
export class Operator {
  private next = 0;
  private due: number;

  constructor(private readonly card: Card) {
    this.due = this.arm(0);
  }

  /** Time of the next step, Infinity while waiting for an event or when done. */
  get nextTime(): number {
    return this.due;
  }

  /** The step that is still waiting, if any. */
  get waiting(): CardStep | undefined {
    return this.card.steps[this.next];
  }

  /** Takes the step that is due at `t`, if any. */
  take(t: number): CardStep | undefined {
    if (t < this.due) return undefined;
    const step = this.card.steps[this.next++];
    this.due = this.arm(t);
    return step;
  }

  /** Tells the operator of a log entry. */
  see(entry: LogEntry): void {
    const step = this.card.steps[this.next];
    if (step?.after === undefined || this.due !== Infinity) return;
    if (entry.device === step.after.device && entry.to === step.after.to) {
      this.due = entry.t + step.at;
    }
  }

  private arm(t: number): number {
    const step = this.card.steps[this.next];
    if (step === undefined || step.after !== undefined) return Infinity;
    return Math.max(step.at, t);
  }
}
