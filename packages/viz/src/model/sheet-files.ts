/** Observation sheets as files: saved, opened, and what is done when another has not been saved yet. */
import type { Contradiction, ObservationSheet } from '../worker/sheet-message.js';
import type { GivenFile } from './file.js';
import type { Source } from './state.js';
import type { TestCardWork } from './test-card.js';

/** A sheet names its format at its start, in YAML or JSON. */
const SHEET = /^\s*[{]?\s*["']?wheelwell-observations["']?\s*:/m;
/** Ten thousand rows are a few megabytes; a far larger file is something else, bytes. */
const LARGEST = 16e6;

export const isSheet = (text: string): boolean => SHEET.test(text.slice(0, 4000));

export class SheetFiles {
  readonly #work: TestCardWork;

  constructor(work: TestCardWork) {
    this.#work = work;
  }

  /** The sheet as a file's text; undefined (and why in the state) when it could not be written. */
  async save(): Promise<string | undefined> {
    const { draft } = this.#work.store.state.testCard;
    if (draft === undefined) return undefined;
    const reply = await this.#work.maker.ask({
      kind: 'write',
      sheet: draft.sheet,
      units: this.#work.store.state.system,
    });
    if (reply.kind !== 'written') {
      this.#work.put({
        failure: reply.kind === 'broken' ? reply.message : 'it could not be written',
      });
      return undefined;
    }
    const now = this.#work.store.state.testCard.draft;
    if (now?.sheet === draft.sheet) this.#work.change({ ...now, saved: true });
    this.#work.put({ contradictions: reply.contradictions, failure: '' });
    return reply.text;
  }

  /** Takes a file that is an observation sheet; false when it is none. */
  take(source: Source): boolean {
    if (!isSheet(source.text)) return false;
    if (this.#work.store.state.bench !== 'diagnosis') this.#work.store.set({ bench: 'test-card' });
    void this.#read(source);
    return true;
  }

  async open(file: GivenFile): Promise<void> {
    if (file.size > LARGEST) {
      this.#work.put({ failure: `${file.name} was not read: a sheet has at most 16 megabytes` });
      return;
    }
    await this.#read({ file: file.name, text: await file.text() });
  }

  async #read({ file, text }: Source): Promise<void> {
    const scenario = this.#work.written();
    const reply = await this.#work.maker.ask({
      kind: 'read',
      file,
      text,
      ...(scenario && { scenario }),
    });
    if (reply.kind !== 'sheet') {
      this.#work.put({ failure: reply.kind === 'broken' ? reply.message : '' });
      return;
    }
    const { sheet, issues, contradictions } = reply;
    this.#work.put({ issues, opened: file, failure: '' });
    const said = sheet === undefined ? `${file} could not be read.` : `${file} is read.`;
    this.#work.store.set({ said });
    if (sheet === undefined) return;
    const { draft } = this.#work.store.state.testCard;
    if (draft === undefined || (draft.saved && draft.watch === undefined))
      this.#show(sheet, contradictions);
    else this.#work.put({ offered: { file, sheet } });
  }

  /** What is done with a sheet that was opened over one that has not been saved. */
  answerOffer(how: 'replace' | 'append' | 'leave'): void {
    const { offered, draft } = this.#work.store.state.testCard;
    this.#work.put({ offered: undefined });
    if (offered === undefined) return;
    if (how === 'replace') this.#show(offered.sheet, []);
    if (how === 'append' && draft !== undefined) {
      const { sheet } = draft;
      const swings = [...sheet.swings, ...offered.sheet.swings];
      const looks = [...(sheet.looks ?? []), ...(offered.sheet.looks ?? [])];
      this.#work.change({
        ...draft,
        sheet: { ...sheet, swings, ...(looks.length > 0 && { looks }) },
        saved: false,
      });
    }
  }

  #show(sheet: ObservationSheet, contradictions: readonly Contradiction[]): void {
    const watch = this.#work.store.state.testCard.draft?.watch;
    this.#work.put({ picked: sheet.swings.length - 1, contradictions });
    this.#work.change({ sheet, saved: true, ...(watch && { watch }) });
  }
}
