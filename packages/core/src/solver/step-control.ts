/**
 * How long the next step is: the elementary controller of Hairer and Wanner (Solving Ordinary
 * Differential Equations II, section IV.7) with what a network of valves needs besides.
 */
const SAFETY = 0.85;
const SHRINK_MOST = 0.1;
/**
 * At a kink the error does not fall by the order of the method: from the second refusal in a row on it is
 * taken to fall as it did from the last one to this, by this order at least, and the step shrinks to this
 * share at most.
 */
const ORDER_LEAST = 0.5;
const SHRINK_AGAIN = 0.03;
const GROW_MOST = 6;
/**
 * Crawling: within a loose tolerance the method can hop for ever to and fro over a kink that is
 * narrower than the tolerance (a check valve's opening beside a small volume). After so many
 * steps below CRAWL_STEP (s) the tolerance is tightened until the steps grow again.
 */
const CRAWL_STEP = 1e-4;
const CRAWL_COUNT = 40;
const CRAWL_STRICTNESS = 20;
const CRAWL_TOLERANCE = 1e-3;
/** A step that ends at an event is held to this share of the tolerance, unless shorter than EVENT_STEP, s. */
const EVENT_ERROR = 0.2;
const EVENT_STEP = 4e-3;
/** First step after a jump: a share of the last one, within bounds, s. */
const RESTART_SHARE = 0.3;
const RESTART_MOST = 2e-3;
const RESTART_LEAST = 2e-5;

export class StepControl {
  /** Length to try next, s. */
  h = RESTART_LEAST;
  /** Errors are multiplied by this before they are judged; above one while crawling. */
  strictness = 1;
  private readonly loose: boolean;
  /** The step the solution allowed before it was shortened for an event. */
  private cruise = 0;
  private crawled = 0;
  private rejectedLast = false;
  private approaching = false;
  /** The attempt that was refused last, s, and its error. */
  private refused = { step: 0, error: NaN };

  constructor(
    private readonly order: number,
    tolerance: number,
  ) {
    this.loose = tolerance > CRAWL_TOLERANCE;
  }

  private shorter(step: number, error: number, order = this.order, least = SHRINK_MOST): number {
    return step * Math.max(least, SAFETY * Math.pow(error, -1 / order));
  }

  /** The error was above one, or no number. */
  reject(step: number, error: number): void {
    const { refused } = this;
    const again = this.rejectedLast && step < refused.step && Number.isFinite(refused.error);
    this.rejectedLast = true;
    this.refused = { step, error };
    if (!Number.isFinite(error)) this.h = step * SHRINK_MOST;
    else if (!again) this.h = this.shorter(step, error);
    else {
      const seen = Math.log(refused.error / error) / Math.log(refused.step / step);
      const order = Math.min(Math.max(seen, ORDER_LEAST), this.order);
      this.h = this.shorter(step, error, order, SHRINK_AGAIN);
    }
  }

  /**
   * The step would end at an event. True when it is good enough for that; otherwise the next one
   * comes up to the event more exactly: it sets the clock.
   */
  mayEnd(step: number, error: number): boolean {
    if (error <= EVENT_ERROR || step <= EVENT_STEP) return true;
    this.approaching = true;
    this.h = this.shorter(step, error / EVENT_ERROR);
    return false;
  }

  /** The step is taken; `cut` when a break, not the solution, limited it. */
  accept(step: number, error: number, cut: boolean): void {
    if (step > 5 * CRAWL_STEP) {
      this.crawled = 0;
      this.strictness = 1;
    } else if (this.loose && step < CRAWL_STEP && ++this.crawled > CRAWL_COUNT) {
      this.strictness = CRAWL_STRICTNESS;
    }
    const most = this.rejectedLast ? 1 : GROW_MOST;
    const growth = SAFETY * Math.pow(Math.max(error, 1e-9), -1 / this.order);
    const wanted = step * Math.min(most, growth);
    // A step cut short says little about the step the solution allows.
    this.h = cut ? Math.max(this.h, wanted) : wanted;
    this.rejectedLast = false;
    if (!this.approaching) this.cruise = this.h;
    this.approaching = false;
  }

  /** A jump changed the right-hand side. */
  restart(): void {
    this.h = Math.min(Math.max(this.cruise * RESTART_SHARE, RESTART_LEAST), RESTART_MOST);
  }

  /** A jump changed nothing. */
  resume(): void {
    this.h = Math.max(this.h, this.cruise);
  }
}
