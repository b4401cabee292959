/** Changing figures in place: what can be changed, how it is taken back, the text to save. */
import type { ParameterFacts, ParameterGroup } from '../worker/parameters-message.js';
import type { Edit, FaultEntry, Issue } from '../worker/message.js';
import { forgiven, noted, withEdit } from './changes.js';
import type { Change } from './changes.js';
import type { Source } from './state.js';
import type { Store } from './store.js';

/** The figures of a text that can be changed. */
export interface ParameterBook {
  /** Text they are of; undefined before any was asked for. */
  readonly text: string | undefined;
  readonly groups: readonly ParameterGroup[];
}

export const NO_BOOK: ParameterBook = { text: undefined, groups: [] };

/** The verbs, on the page's one store. */
export class EditWork {
  readonly #store: Store;
  #asked: string | undefined;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Has the figures of the source on show come in `state.parameters`; cheap to call again. */
  want(): void {
    const { source, parameters } = this.#store.state;
    if (source === undefined || parameters.text === source.text || this.#asked === source.text)
      return;
    this.#asked = source.text;
    void this.#fetch(source);
  }

  async #fetch(source: Source): Promise<void> {
    try {
      const told = await this.#store.question({ kind: 'parameters', ...source });
      if (told.kind === 'parameters' && this.#store.state.source?.text === source.text)
        this.#store.set({ parameters: { text: source.text, groups: told.groups } });
    } catch {
      // The run fails for the same reason, and says so.
    } finally {
      this.#asked = undefined;
    }
  }

  /** Another value, as a file would have it. Steps of one drag have the same gesture. */
  put(facts: ParameterFacts, value: string, gesture = ''): void {
    const { edits } = this.#store.state;
    this.#edit(withEdit(edits, facts.path, value), facts.title, gesture);
  }

  /** Back to what the file says. */
  reset({ path, title }: ParameterFacts): void {
    this.#store.set({ changes: forgiven(this.#store.state.changes, path) });
    this.#edit(withEdit(this.#store.state.edits, path, undefined), `${title} as in the file`, '');
  }

  /** Lets go of what was typed in vain. */
  forgive({ path }: ParameterFacts): void {
    this.#store.set({ changes: forgiven(this.#store.state.changes, path) });
  }

  /** Everything back to what the file says; can itself be taken back. */
  resetAll(): void {
    this.#edit([], 'all figures as in the file', '');
  }

  #edit(after: readonly Edit[], what: string, gesture: string): void {
    const { edits: before, changes } = this.#store.state;
    if (after === before) return;
    const change: Change = { kind: 'edits', what, gesture, before, after };
    this.#store.set({ changes: noted(changes, change) });
    this.#store.again({ edits: after });
  }

  /** Takes the last change back. */
  undo(): void {
    const { past, future, refused } = this.#store.state.changes;
    const last = past.at(-1);
    if (last === undefined) return;
    this.#store.set({ changes: { past: past.slice(0, -1), future: [last, ...future], refused } });
    this.#restore(last, last.before);
    this.#store.set({ said: `Taken back: ${last.what}.` });
  }

  /** Makes it again. */
  redo(): void {
    const { past, future, refused } = this.#store.state.changes;
    const [next, ...rest] = future;
    if (next === undefined) return;
    this.#store.set({ changes: { past: [...past, next], future: rest, refused } });
    this.#restore(next, next.after);
    this.#store.set({ said: `Made again: ${next.what}.` });
  }

  #restore(change: Change, to: readonly (Edit | FaultEntry)[]): void {
    if (change.kind === 'edits') this.#store.again({ edits: to as readonly Edit[] });
    else this.#store.again({ card: change.card, faults: to as readonly FaultEntry[] });
  }

  /** The text of the source with the changes in force, comments and all. */
  async text(): Promise<{ readonly text?: string; readonly issues: readonly Issue[] }> {
    const { source, edits } = this.#store.state;
    if (source === undefined) return { issues: [] };
    const told = await this.#store.question({ kind: 'text', ...source, edits });
    return told.kind === 'text' ? told : { issues: [] };
  }

  /** The changes that are in a file now. */
  saved(edits: readonly Edit[], name: string): void {
    this.#store.set({ saved: edits, said: `Saved as ${name}.` });
  }
}
