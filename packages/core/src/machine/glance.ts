/** Plays a card for the sake of a few channels at the ends of its steps: no time and no memory for all the rest. */
import type { Catalogues, Gear, Scenario, Series } from '../define/index.js';
import type { Recorder } from '../solver/index.js';
import type { ReadableChannel } from './channel.js';
import { play, type PlayOptions } from './play.js';
import { PlayedCard, roleIn, type PlayedParts } from './played.js';

/** Has the channels asked for, at the ends of steps; of others it knows nothing. */
export class Glance extends PlayedCard {
  constructor(
    parts: PlayedParts,
    private readonly ends: Ends,
  ) {
    super(parts);
  }

  override series(channel: string): Series | undefined {
    return this.ends.series(channel);
  }
}

/**
 * @param wanted of an aircraft whose faults are in it: which channels
 * @throws RangeError when `card` names no card.
 */
export function glanceWith(
  catalogues: Catalogues,
  scenario: Scenario,
  options: PlayOptions,
  wanted: (gear: Gear) => (channel: string) => boolean,
): Glance {
  const { recorder, ...parts } = play(catalogues, scenario, options, (stage) => {
    const own = stage.scenario;
    const is = wanted({ scenario: own, role: (name) => roleIn(catalogues, own, name) });
    return new Ends(stage.channels.filter((c) => is(c.info.name)));
  });
  return new Glance(parts, recorder);
}

/** Reads channels from the network at the end of every step, while it stands there. Grows by doubling. */
class Ends implements Recorder {
  private count = 0;
  /** Per step its end, s, then the channels. */
  private rows: Float64Array;
  private readonly width: number;
  private times: Float64Array | undefined;
  private readonly known = new Map<string, Series>();

  constructor(
    private readonly channels: readonly ReadableChannel[],
    capacity = 1024,
  ) {
    this.width = channels.length + 1;
    this.rows = new Float64Array(this.width * capacity);
  }

  step(t0: number, t1: number): void {
    if (!(t1 > t0)) return;
    const { channels, width } = this;
    let at = this.count * width;
    if (at === this.rows.length) {
      const longer = new Float64Array(2 * this.rows.length);
      longer.set(this.rows);
      this.rows = longer;
    }
    const { rows } = this;
    rows[at++] = t1;
    for (let i = 0; i < channels.length; i++) rows[at++] = channels[i].read();
    this.count++;
  }

  /** Read out once for each channel, its times once for all: asked for again and again when the run is over. */
  series(name: string): Series | undefined {
    const known = this.known.get(name);
    if (known !== undefined) return known;
    const place = this.channels.findIndex((c) => c.info.name === name);
    if (place < 0) return undefined;
    this.times ??= this.column(0);
    const series = { t: this.times, v: this.column(place + 1) };
    this.known.set(name, series);
    return series;
  }

  private column(place: number): Float64Array {
    const { rows, width, count } = this;
    const column = new Float64Array(count);
    for (let i = 0, at = place; i < count; i++, at += width) column[i] = rows[at];
    return column;
  }
}
