/** More transitions of one part than this within CHATTER_SPAN seconds is chatter. */
const CHATTER_COUNT = 80;
const CHATTER_SPAN = 0.02;

/** Watches for parts that switch for ever while time hardly goes on. */
export class ChatterWatch {
  private readonly since: Float64Array;
  private readonly counts: Int32Array;

  constructor(parts: number) {
    this.since = new Float64Array(parts);
    this.counts = new Int32Array(parts);
  }

  /** Counts a transition of a part; true when that was one too many. */
  count(part: number, t: number): boolean {
    if (t - this.since[part] > CHATTER_SPAN) {
      this.since[part] = t;
      this.counts[part] = 0;
    }
    return ++this.counts[part] > CHATTER_COUNT;
  }
}
