/** Work in progress kept in the browser's storage, and offered again after a reload or a crash. */
import { NO_CHANGES } from './changes.js';
import type { Edit, FaultEntry } from '../worker/message.js';
import { decode, encode } from './kept-text.js';
import type { Kept } from './kept-text.js';
import { BENCH as LESSON } from './lesson.js';
import { loopWithin } from './loop.js';
import type { Source, State } from './state.js';
import type { Store } from './store.js';

/** Storage by name. Every page has a name of its own, so that two never write over each other. */
export interface Drawer {
  names(): readonly string[];
  get(name: string): string | null;
  /** Why it could not be kept; empty when it was. */
  put(name: string, text: string): string;
  remove(name: string): void;
  /** Names that other open pages write under. */
  others(own: string): Promise<ReadonlySet<string>>;
}

export interface Offer {
  readonly name: string;
  readonly kept: Kept;
  /** What to call it. */
  readonly title: string;
}

export interface KeptState {
  readonly offers: readonly Offer[];
  /** What is wrong with the storage, as sentences. */
  readonly trouble: string;
}

export const NOTHING_KEPT: KeptState = { offers: [], trouble: '' };

const WORK = 'work.';
const ASIDE = 'aside.';
/** What the user does is kept at once; where time stands, now and then, ms. */
const PAUSE = 1000;
/** Further ones are left where they are. */
const MOST_OFFERS = 5;
/** Steps that can still be taken back after a reload; storage is small. */
const MOST_STEPS = 40;

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

export class KeepWork {
  readonly #store: Store;
  readonly #drawer: Drawer;
  readonly #demos: readonly Source[];
  readonly #name: string;
  readonly #now: () => number;
  #written = '';
  #next = 0;
  #restoring: Offer | undefined;

  constructor(
    store: Store,
    drawer: Drawer,
    demos: readonly Source[],
    id: string,
    now = (): number => Date.now(),
  ) {
    this.#store = store;
    this.#drawer = drawer;
    this.#demos = demos;
    this.#name = WORK + id;
    this.#now = now;
    store.watch((changed) => this.#changed(changed));
  }

  /** Looks for what was left behind. */
  async start(): Promise<void> {
    const taken = await this.#drawer.others(this.#name);
    const offers: Offer[] = [];
    let trouble = '';
    for (const name of this.#drawer.names()) {
      if (!name.startsWith(WORK) || name === this.#name || taken.has(name)) continue;
      const text = this.#drawer.get(name) ?? '';
      const kept = decode(text);
      if (kept === undefined) {
        // Kept for whoever can make something of it, out of the way of the page.
        this.#drawer.put(ASIDE + name.slice(WORK.length), text);
        this.#drawer.remove(name);
        trouble = 'Work kept from an earlier visit could not be read; it was put aside.';
      } else offers.push({ name, kept, title: this.#titleOf(kept) });
    }
    offers.sort((a, b) => b.kept.when - a.kept.when);
    this.#put({
      offers: [...this.#store.state.kept.offers, ...offers].slice(0, MOST_OFFERS),
      ...(trouble !== '' && { trouble }),
    });
  }

  /** Takes up again what was left; the offer goes when it is on show. */
  restore(offer: Offer): void {
    const { kept } = offer;
    const source = this.#sourceOf(kept);
    if (source === undefined) {
      this.#put({ trouble: `${offer.title} does not come with this page any more.` });
      return;
    }
    this.#shelve();
    this.#restoring = offer;
    const { files } = this.#store.state;
    if (kept.text !== undefined)
      this.#store.set({ files: [...files.filter((f) => f.file !== source.file), source] });
    this.#store.reopen(source, { card: kept.card, faults: kept.faults, edits: kept.edits });
  }

  discard({ name }: Offer): void {
    this.#drawer.remove(name);
    this.#put({ offers: this.#store.state.kept.offers.filter((o) => o.name !== name) });
  }

  /** Puts the offers out of sight; they come again at the next visit. */
  later(): void {
    this.#put({ offers: [], trouble: '' });
  }

  /** Writes what is due; for when the page is left. */
  flush(): void {
    this.#write();
  }

  #changed(changed: ReadonlySet<keyof State>): void {
    // Another source takes the place of this one: its work stays, as an offer.
    if (changed.has('source')) this.#shelve();
    const { picture } = this.#store.state;
    const offer = this.#restoring;
    if (offer !== undefined && changed.has('picture') && picture?.file === offer.kept.file)
      this.#restored(offer);
    // What is set for another source, which has not come yet, is not this one's.
    const { asked, source } = this.#store.state;
    if (asked !== undefined && asked.source !== source) return;
    if (KEPT.some((key) => changed.has(key))) this.#write();
    else if (changed.has('time') && this.#now() >= this.#next) this.#write();
  }

  #restored(offer: Offer): void {
    this.#restoring = undefined;
    const { kept } = offer;
    const { picture } = this.#store.state;
    if (picture === undefined) return;
    const { measured, bench, large, held, past = [] } = kept;
    this.#store.set({ measured, bench, large, held, changes: { ...NO_CHANGES, past } });
    this.#store.seek(kept.time);
    const [a, b] = kept.span;
    if (a < b && b <= picture.duration) this.#store.set({ span: [a, b] });
    const { loop } = this.#store.state;
    if (loop !== undefined) this.#store.set({ loop: loopWithin(loop, picture) });
    this.#store.set({ said: `${offer.title} is as it was left.` });
    this.discard(offer);
  }

  #shelve(): void {
    const before = this.#written === '' ? undefined : decode(this.#written);
    if (before === undefined) return;
    const changes = before.edits.length + before.measured.length > 0;
    if (!changes && same(before.faults, before.own)) return;
    const name = `${this.#name}-${this.#now()}`;
    this.#keep(name, this.#written);
    this.#written = '';
    const offer = { name, kept: before, title: this.#titleOf(before) };
    this.#put({ offers: [offer, ...this.#store.state.kept.offers].slice(0, MOST_OFFERS) });
  }

  #write(): void {
    this.#next = this.#now() + PAUSE;
    const kept = this.#worth();
    if (kept === undefined) {
      if (this.#written !== '') this.#drawer.remove(this.#name);
      this.#written = '';
      return;
    }
    this.#written = encode(kept);
    this.#keep(this.#name, this.#written);
  }

  #keep(name: string, text: string): void {
    const trouble = this.#drawer.put(name, text);
    if (trouble !== '' && this.#store.state.kept.trouble !== trouble) this.#put({ trouble });
  }

  /** What would be lost; undefined when it is all in a file or comes with the page. */
  #worth(): Kept | undefined {
    const { state } = this.#store;
    const { picture, source, edits, faults, measured, saved, changes, held } = state;
    const { time, span, bench, large } = state;
    // A lesson keeps itself.
    if (picture === undefined || source === undefined || bench === LESSON) return undefined;
    if (picture.file !== source.file) return undefined;
    const demo = this.#demos.some((d) => d.file === source.file && d.text === source.text);
    const own = picture.cards.find((c) => c.name === picture.card)?.faults ?? [];
    const unsaved = edits.length > 0 && !same(edits, saved);
    const asCame = !unsaved && measured.length === 0 && held === undefined && same(faults, own);
    if (demo && asCame) return undefined;
    return {
      when: this.#now(),
      file: source.file,
      ...(!demo && { text: source.text }),
      card: picture.card,
      edits: plainEdits(edits),
      faults: plainFaults(faults),
      own: plainFaults(own),
      measured,
      past: changes.past.slice(-MOST_STEPS),
      ...(held && { held }),
      time,
      span,
      bench,
      large,
    };
  }

  #sourceOf({ file, text }: Kept): Source | undefined {
    return text === undefined ? this.#demos.find((d) => d.file === file) : { file, text };
  }

  #titleOf(kept: Kept): string {
    const text = this.#sourceOf(kept)?.text ?? '';
    const title = /^title:\s*(.+)$/m.exec(text)?.[1]?.replace(/^(['"])(.*)\1$/, '$2');
    return title ?? kept.file;
  }

  #put(patch: Partial<KeptState>): void {
    this.#store.set({ kept: { ...this.#store.state.kept, ...patch } });
  }
}

/** A change of these is kept at once. */
const KEPT: readonly (keyof State)[] = [
  'picture',
  'edits',
  'faults',
  'measured',
  'held',
  'saved',
  'bench',
  'large',
  'span',
];

const plainEdits = (all: readonly Edit[]): Edit[] =>
  all.map(({ path, value }) => ({ path, value }));
const plainFaults = (all: readonly FaultEntry[]): FaultEntry[] =>
  all.map(({ fault, on, severity }) => ({ fault, on, severity }));
