/** The blow-down bench: the map over charge and temperature, and what is picked out of it. */
import { bisectRight } from 'd3-array';
import { FAILED, LOCKED, NOT_LOCKED, UNKNOWN } from '../worker/blow-down-message.js';
import type {
  BlowDownFacts,
  Condition,
  CurveSamples,
  FollowUp,
  Least,
  MapPicture,
  MapReply,
  MapRequest,
} from '../worker/blow-down-message.js';
import type { Picture } from '../worker/message.js';
import type { Store } from './store.js';

/** What a cell of the map tells. */
export type Telling = 'time' | 'margin' | 'gas';
export const TELLINGS: readonly Telling[] = ['time', 'margin', 'gas'];

export type Fineness = 'plain' | 'fine';

export interface BlowDownState {
  readonly map: MapPicture | undefined;
  readonly least: Least | undefined;
  /** What a swing after the blow-down of a run is like, where it was asked for. */
  readonly after: { readonly run: number; readonly found: FollowUp | undefined } | undefined;
  /** Being made; share of it that is done, 0..1. */
  readonly busy: boolean;
  readonly share: number;
  /** Why there is none. */
  readonly failure: string;
  readonly fineness: Fineness;
  /** Test that map and least charge belong to. */
  readonly test: string;
}

export const NO_MAP: BlowDownState = {
  map: undefined,
  least: undefined,
  after: undefined,
  busy: false,
  share: 0,
  failure: '',
  fineness: 'plain',
  test: '',
};

/** Whoever makes maps: workers, or a stand-in. */
export interface MapMaker {
  make(request: MapRequest, hear: (reply: MapReply) => void): void;
  stop(): void;
}

/** Steps of charge as shares of the charge that the table asks for, and of temperature, K; both meet the full charge at 20 degC. */
const STEPS: Readonly<Record<Fineness, { readonly charge: number; readonly kelvin: number }>> = {
  plain: { charge: 0.05, kelvin: 5 },
  fine: { charge: 0.025, kelvin: 2.5 },
};
/** Ends of both, as shares and K: a nearly empty bottle to a rash one, arctic night to desert sun. */
const SHARES = [0.2, 1.4] as const;
const KELVIN = [233.15, 323.15] as const;

/** The play head starts this long before the handle is pulled, s. */
const LEAD = 0.2;

/** From a to b in equal steps of about `step`. */
function even(a: number, b: number, step: number): number[] {
  const n = Math.max(1, Math.round((b - a) / step));
  return Array.from({ length: n + 1 }, (_, i) => a + ((b - a) * i) / n);
}

/** Charges and temperatures that are looked at, Pa gauge and K. */
export function rangesOf(
  facts: BlowDownFacts,
  fineness: Fineness,
): Pick<MapRequest, 'charge' | 'temperature'> {
  const { charge, kelvin } = STEPS[fineness];
  const full = Math.max(facts.table.charge, 1e5);
  return {
    charge: even(SHARES[0] * full, SHARES[1] * full, charge * full),
    temperature: even(KELVIN[0], KELVIN[1], kelvin),
  };
}

/** What a map belongs to: another card or other faults need another one. */
export function testOf(picture: Picture, text: string): string {
  return JSON.stringify([picture.file, text, picture.card, picture.faults, picture.edits]);
}

/** The verbs of the bench, on the page's one store. */
export class BlowDownWork {
  readonly #store: Store;
  readonly #maker: MapMaker;
  /** A run that was asked for to be played. */
  #awaited = false;

  constructor(store: Store, maker: MapMaker) {
    this.#store = store;
    this.#maker = maker;
    store.watch((changed) => {
      if (changed.has('picture') && this.#awaited) this.#playFromPull();
      if (changed.has('picture') || changed.has('bench')) this.#follow();
    });
  }

  /** Makes the map of the card on show. */
  start(): void {
    const { source, picture, bench, blowDown } = this.#store.state;
    const facts = picture?.blowDown;
    if (source === undefined || picture === undefined || facts?.run === undefined) return;
    const { file, text } = source;
    const { card, faults, edits } = picture;
    const test = testOf(picture, text);
    const { fineness } = blowDown;
    this.#store.set({ blowDown: { ...NO_MAP, fineness, test, busy: true } });
    this.#maker.make(
      { file, text, card, faults, edits, ...rangesOf(facts, fineness), at: facts.own.temperature },
      (reply) => this.#hear(reply),
    );
    if (bench !== '') this.#store.set({ said: 'The map is being computed.' });
  }

  /** Gives up; what is known stays. */
  stop(): void {
    this.#maker.stop();
    this.#put({ busy: false });
    this.#store.set({ said: 'The map was stopped; what is known of it stays.' });
  }

  setFineness(fineness: Fineness): void {
    this.#put({ fineness });
    this.start();
  }

  /** Plays the run of a cell. */
  play(i: number, j: number): void {
    const { map } = this.#store.state.blowDown;
    const charge = map?.charge[i];
    const temperature = map?.temperature[j];
    if (charge === undefined || temperature === undefined) return;
    this.#awaited = true;
    this.#store.setCondition({ charge, temperature });
  }

  /** Back to what the card itself has. */
  playOwn(): void {
    this.#awaited = true;
    this.#store.setCondition(undefined);
  }

  #playFromPull(): void {
    this.#awaited = false;
    const pull = this.#store.state.picture?.blowDown?.run?.curves[0]?.t[0];
    if (pull === undefined) return;
    this.#store.scrub(pull - LEAD);
    this.#store.play();
  }

  #put(patch: Partial<BlowDownState>): void {
    this.#store.set({ blowDown: { ...this.#store.state.blowDown, ...patch } });
  }

  /** Another test: the former map says nothing about it. The bench makes its own as long as it is in sight. */
  #follow(): void {
    const { source, picture, bench, blowDown } = this.#store.state;
    if (picture === undefined || source === undefined) return;
    if (blowDown.test !== '' && blowDown.test !== testOf(picture, source.text)) {
      this.#maker.stop();
      this.#store.set({ blowDown: { ...NO_MAP, fineness: blowDown.fineness } });
    }
    if (bench === 'blow-down' && this.#store.state.blowDown.test === '') this.start();
  }

  #hear(reply: MapReply): void {
    if (reply.kind === 'part') this.#put({ map: reply.map, share: reply.share });
    if (reply.kind === 'least') this.#put({ least: reply.least });
    if (reply.kind === 'broken') this.#put({ busy: false, failure: reply.message });
    if (reply.kind !== 'whole') return;
    this.#put({ map: reply.map, share: 1, busy: false });
    this.#store.set({ said: `The map is whole: ${reply.runs} runs.` });
  }
}

/** What is known of a cell. */
export interface Cell {
  readonly condition: Condition;
  readonly verdict: 'unknown' | 'locked' | 'not locked' | 'failed';
  /** s, N m, share; NaN where there is none. */
  readonly time: number;
  readonly margin: number;
  readonly gas: number;
  readonly computed: boolean;
}

const WORD = {
  [UNKNOWN]: 'unknown',
  [LOCKED]: 'locked',
  [NOT_LOCKED]: 'not locked',
  [FAILED]: 'failed',
} as const;

/** A cell of a unit, or of the worst of all units for -1; with it the last to lock and the least margin. */
export function cellAt(map: MapPicture, i: number, j: number, unit: number): Cell {
  const at = j * map.charge.length + i;
  const among = (all: readonly Float32Array[], worst: (v: number[]) => number): number =>
    unit >= 0 ? (all[unit]?.[at] ?? NaN) : worst(all.map((a) => a[at] ?? NaN));
  /** A leg that its lock never let go has no margin, and takes none from the others. */
  const least = (all: number[]): number => {
    const free = all.filter((v) => !Number.isNaN(v));
    return free.length === 0 ? NaN : Math.min(...free);
  };
  return {
    condition: { charge: map.charge[i] ?? NaN, temperature: map.temperature[j] ?? NaN },
    verdict: WORD[(map.verdict[at] ?? UNKNOWN) as keyof typeof WORD],
    time: among(map.time, (all) => Math.max(...all)),
    margin: among(map.margin, least),
    gas: map.gasLeft[at] ?? NaN,
    computed: map.computed[at] === 1,
  };
}

export function valueOf(cell: Cell, telling: Telling): number {
  return cell[telling];
}

/** The cell nearest to a condition; undefined when it lies outside by more than half a step. */
export function nearest(
  map: Pick<MapPicture, 'charge' | 'temperature'>,
  { charge, temperature }: Condition,
): readonly [number, number] | undefined {
  const find = (values: readonly number[], wanted: number): number => {
    const step = (values[1] ?? 0) - (values[0] ?? 0);
    const i = values.reduce(
      (best, v, k) => (Math.abs(v - wanted) < Math.abs((values[best] ?? 0) - wanted) ? k : best),
      0,
    );
    return Math.abs((values[i] ?? NaN) - wanted) <= 0.501 * step ? i : -1;
  };
  const i = find(map.charge, charge);
  const j = find(map.temperature, temperature);
  return i < 0 || j < 0 ? undefined : [i, j];
}

/** The sample at or before a time; -1 before the handle is pulled. */
export function sampleAt(curve: CurveSamples, time: number): number {
  return bisectRight(curve.t, time + 1e-6) - 1;
}
