/** Which traces are shown, and the recordings laid over them. */
import type { Picture } from '../worker/message.js';
import type {
  ColumnChoice,
  Offset,
  Recording,
  RecordingJob,
  RecordingReply,
} from '../worker/recording-message.js';
import { usualChannels } from './channel-words.js';
import type { GivenFile } from './file.js';
import { count } from './sentence.js';
import type { State } from './state.js';
import type { Store } from './store.js';
import { whyOf } from '../worker/why.js';

/** A trace and the number of its line style, which stays while others come and go. */
export interface Chosen {
  readonly name: string;
  readonly style: number;
}

export interface LaidOver {
  readonly id: number;
  readonly file: string;
  readonly text: string;
  /** What the user has said of its columns. */
  readonly choices: Readonly<Record<number, ColumnChoice>>;
  /** Undefined until it has been read. */
  readonly recording: Recording | undefined;
  /** Added to its times, s. */
  readonly offset: number;
  /** How the offset was found; undefined when it was set by hand. */
  readonly found: Offset | undefined;
  /** Its offset is being looked for. */
  readonly seeking: boolean;
  /** Why it could not be read or moved. */
  readonly failure: string;
}

export interface TracesState {
  /** By aircraft's file; the usual ones for one that is not here. */
  readonly chosen: Readonly<Record<string, readonly Chosen[]>>;
  readonly recordings: readonly LaidOver[];
}

export const NO_TRACES: TracesState = { chosen: {}, recordings: [] };

/** Whoever reads recordings: a worker, or a stand-in. */
export interface Reader {
  listen(hear: (reply: RecordingReply) => void): void;
  post(job: RecordingJob): void;
}

/** What outlives the visit. */
export interface Memory {
  get(name: string): unknown;
  put(name: string, value: unknown): void;
}

/** A swing at a thousand rows a second for an hour; a far larger file is something else, bytes. */
const LARGEST = 200e6;

/** Whether a file is a recording by its name. */
export function isRecordingName(name: string): boolean {
  return /\.(csv|tsv)$/i.test(name);
}

const known = new WeakMap<Picture, readonly Chosen[]>();

/** The traces shown of the run on show. */
export function chosenOf({ picture, traces }: State): readonly Chosen[] {
  if (picture === undefined) return [];
  const usual = known.get(picture) ?? styled(usualChannels(picture));
  known.set(picture, usual);
  return traces.chosen[picture.file] ?? usual;
}

function isWords(kept: unknown): kept is string[] {
  return Array.isArray(kept) && kept.every((k) => typeof k === 'string');
}

function styled(names: readonly string[], before: readonly Chosen[] = []): Chosen[] {
  const kept = before.filter((c) => names.includes(c.name));
  const taken = new Set(kept.map((c) => c.style));
  return names.map((name) => {
    const old = kept.find((c) => c.name === name);
    if (old !== undefined) return old;
    let style = 0;
    while (taken.has(style)) style += 1;
    taken.add(style);
    return { name, style };
  });
}

/** With these channels on show of this aircraft, as far as it has them. */
export function withChosen(state: State, names: readonly string[]): TracesState {
  const { picture, traces } = state;
  if (picture === undefined) return traces;
  const there = names.filter((name) => picture.channels.some((c) => c.name === name));
  const chosen = styled(there, chosenOf(state));
  return { ...traces, chosen: { ...traces.chosen, [picture.file]: chosen } };
}

export class TracesWork {
  #id = 0;
  /** The recording that each open job is about. */
  #jobs = new Map<number, number>();
  #file = '';

  constructor(
    private readonly store: Store,
    private readonly reader: Reader,
    private readonly memory: Memory,
  ) {
    reader.listen((reply) => this.#receive(reply));
    store.watch((changed) => {
      if (changed.has('picture')) this.#newPicture();
      if (changed.has('series') || changed.has('traces')) this.#seek();
    });
  }

  // Which are shown

  choose(names: readonly string[]): void {
    const { picture } = this.store.state;
    if (picture === undefined) return;
    this.#set(withChosen(this.store.state, names));
    this.memory.put(`traces.${picture.file}`, names);
  }

  toggle(name: string): void {
    const names = chosenOf(this.store.state).map((c) => c.name);
    this.choose(names.includes(name) ? names.filter((n) => n !== name) : [...names, name]);
  }

  /** Back to what is usual for this aircraft. */
  usual(): void {
    const { picture } = this.store.state;
    if (picture !== undefined) this.choose(usualChannels(picture));
  }

  #newPicture(): void {
    const { picture, traces } = this.store.state;
    if (picture === undefined || picture.file === this.#file) return;
    this.#file = picture.file;
    const kept = this.memory.get(`traces.${picture.file}`);
    if (isWords(kept) && traces.chosen[picture.file] === undefined)
      this.#set({ chosen: { ...traces.chosen, [picture.file]: styled(kept) } });
    // Columns are taken for channels of this aircraft now.
    for (const { id } of traces.recordings) this.#read(id);
  }

  // Recordings

  async open(files: readonly GivenFile[]): Promise<void> {
    for (const file of files) {
      const id = ++this.#id;
      const bare = { id, file: file.name, choices: {}, recording: undefined, offset: 0 };
      const laid = { ...bare, text: '', found: undefined, seeking: false };
      try {
        if (file.size > LARGEST)
          throw new Error(`it has ${(file.size / 1e6).toFixed(0)} megabytes, at most 200 are read`);
        const text = await file.text();
        this.#add({ ...laid, text, failure: '', seeking: true });
        this.#read(id);
      } catch (error) {
        const why = whyOf(error);
        this.#add({ ...laid, failure: `${file.name} was not read: ${why}.` });
      }
    }
  }

  /** What the user says of a column; what was said of it before stays where it is not named. */
  setColumn(id: number, column: number, choice: ColumnChoice): void {
    const laid = this.#laid(id);
    if (laid === undefined) return;
    const choices = { ...laid.choices, [column]: { ...laid.choices[column], ...choice } };
    this.#change(id, { choices });
    this.#read(id);
  }

  setOffset(id: number, offset: number): void {
    if (Number.isFinite(offset)) this.#change(id, { offset, found: undefined, seeking: false });
  }

  /** Moves it to where it fits the run best. */
  findOffset(id: number): void {
    this.#change(id, { seeking: true, failure: '' });
  }

  remove(id: number): void {
    const { recordings } = this.store.state.traces;
    this.#set({ recordings: recordings.filter((r) => r.id !== id) });
  }

  #read(id: number): void {
    const laid = this.#laid(id);
    const { picture } = this.store.state;
    if (laid === undefined || picture === undefined || laid.text === '') return;
    const { file, text, choices } = laid;
    const { channels, ambient } = picture;
    this.#post(id, { kind: 'recording', file, text, channels, choices, ambient });
  }

  #post(about: number, job: WithoutId<RecordingJob>): void {
    const id = ++this.#id;
    this.#jobs.set(id, about);
    this.reader.post({ ...job, id });
  }

  #receive(reply: RecordingReply): void {
    const about = this.#jobs.get(reply.id);
    this.#jobs.delete(reply.id);
    const laid = about === undefined ? undefined : this.#laid(about);
    if (laid === undefined) return;
    // A later reading is on its way.
    const later = [...this.#jobs.values()].includes(laid.id);
    if (reply.kind === 'broken') {
      const failure = `${laid.file} could not be laid over: ${reply.message}.`;
      this.#change(laid.id, { failure, seeking: false });
      this.store.set({ said: failure });
    } else if (reply.kind === 'offset') this.#moved(laid, reply.found);
    else if (!later) this.#arrived(laid, reply.recording);
  }

  #arrived(laid: LaidOver, recording: Recording): void {
    this.#change(laid.id, { recording, failure: '' });
    const taken = recording.series.map((s) => s.channel).filter((c) => c !== '');
    const names = chosenOf(this.store.state).map((c) => c.name);
    const more = taken.filter((c) => !names.includes(c));
    if (more.length > 0) this.choose([...names, ...new Set(more)]);
    if (taken.length === 0) this.#change(laid.id, { seeking: false });
    const { issues, series } = recording;
    const wrong = issues.length === 0 ? '' : `, ${count(issues.length, 'thing')} to look at`;
    const said = `${laid.file}: ${count(series.length, 'column')} of figures, ${taken.length} laid over${wrong}.`;
    this.store.set({ said });
  }

  #moved(laid: LaidOver, found: Offset | undefined): void {
    if (found === undefined) {
      const failure = 'No offset was found: nothing that varies is in both.';
      this.#change(laid.id, { seeking: false, failure });
      this.store.set({ said: failure });
      return;
    }
    const offset = Math.round(found.offset * 1e3) / 1e3;
    this.#change(laid.id, { offset, found, seeking: false, failure: '' });
    this.store.set({ said: `${laid.file} moved by ${offset} seconds to fit the run.` });
  }

  /** Looks for offsets once the run's side of the comparison is there. */
  #seek(): void {
    const { picture, series, traces } = this.store.state;
    for (const { id, recording, seeking } of traces.recordings) {
      if (!seeking || recording === undefined || picture === undefined) continue;
      if ([...this.#jobs.values()].includes(id)) continue;
      const mapped = recording.series.filter((s) => s.channel !== '');
      this.store.series.want(
        mapped.map((s) => s.channel),
        true,
      );
      const pairs = mapped.flatMap((recorded) => {
        const simulated = series.get(recorded.channel);
        if (simulated?.run !== picture.run) return [];
        return [
          {
            recorded: { t: recorded.t, v: recorded.v },
            simulated: { t: simulated.t, v: simulated.v },
          },
        ];
      });
      if (pairs.length > 0 && pairs.length === mapped.length)
        this.#post(id, { kind: 'offset', pairs });
    }
  }

  #laid(id: number): LaidOver | undefined {
    return this.store.state.traces.recordings.find((r) => r.id === id);
  }

  #add(laid: LaidOver): void {
    this.#set({ recordings: [...this.store.state.traces.recordings, laid] });
  }

  #change(id: number, patch: Partial<LaidOver>): void {
    const { recordings } = this.store.state.traces;
    this.#set({ recordings: recordings.map((r) => (r.id === id ? { ...r, ...patch } : r)) });
  }

  #set(patch: Partial<TracesState>): void {
    this.store.set({ traces: { ...this.store.state.traces, ...patch } });
  }
}

type WithoutId<T> = T extends unknown ? Omit<T, 'id'> : never;
