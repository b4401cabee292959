/** Makes a link of what is on show, and brings back what a link holds. */
import { readLink, writeLink, PLAIN } from './link.js';
import type { Link } from './link.js';
import { BrokenLink } from './fields.js';
import { loopWithin } from './loop.js';
import { markOf, selectionOf } from './marks.js';
import { plain } from './sentence.js';
import type { Source, State } from './state.js';
import type { Store } from './store.js';
import { withChosen } from './traces.js';

/** Letters a link may have: browsers take more, other programs do not pass it on; from memory, no source. */
export const LONGEST = 32_000;
/** From here on some mail and chat programs cut it; from memory, no source. */
export const LONG = 2000;

/** Which views are on top is the shell's affair. */
export interface Shell {
  shown(): readonly string[];
  show(names: readonly string[]): void;
  /** Whether there is such a bench. */
  hasBench(name: string): boolean;
}

/** Times are kept to a microsecond: rounding then stays out of sight. */
const micro = (t: number): number => Math.round(t * 1e6) / 1e6;

const nameOf = (demo: Source): string => demo.file.split('/')[0] ?? demo.file;

export class LinkWork {
  readonly #store: Store;
  readonly #demos: readonly Source[];
  readonly #shell: Shell;
  /** What is still to be set when the run has come, and the request it waits for. */
  #waiting: { readonly link: Link; readonly asked: State['asked'] } | undefined;
  /** Before the link was opened: goes back when it comes to nothing. */
  #edits: State['edits'] = [];

  constructor(store: Store, demos: readonly Source[], shell: Shell) {
    this.#store = store;
    this.#demos = demos;
    this.#shell = shell;
    store.watch((changed) => {
      if (this.#waiting === undefined) return;
      const { asked, picture, failure, issues } = store.state;
      // With its flags: one of them may be what is picked out.
      if (changed.has('picture') && picture?.judged === true) this.#arrived(this.#waiting.link);
      else if (changed.has('failure') && failure !== '') this.#refused();
      else if (changed.has('issues') && issues.length > 0) this.#refused();
      // Something else was asked for meanwhile: that is what the user wants.
      else if (asked !== undefined && asked !== this.#waiting.asked) this.#waiting = undefined;
    });
  }

  // Making

  /** What comes behind the `#`; undefined while there is nothing on show. */
  async make(): Promise<string | undefined> {
    const link = this.#now();
    return link === undefined ? undefined : writeLink(link);
  }

  #now(): Link | undefined {
    const { state } = this.#store;
    const { picture, source, selection, loop, span } = state;
    if (picture === undefined || source === undefined) return undefined;
    const demo = this.#demos.find((d) => d.file === source.file && d.text === source.text);
    const own = picture.cards.find((c) => c.name === picture.card)?.faults ?? [];
    const asInCard = JSON.stringify(own) === JSON.stringify(picture.faults);
    const whole = span[0] <= 0 && span[1] >= picture.duration;
    return {
      ...PLAIN,
      from: demo === undefined ? source : { demo: nameOf(demo) },
      card: picture.card,
      faults: asInCard ? undefined : picture.faults,
      edits: state.edits,
      condition: picture.blowDown?.run?.condition,
      stood: picture.stood,
      measured: state.measured,
      time: micro(state.time),
      rate: state.rate,
      span: whole ? undefined : [micro(span[0]), micro(span[1])],
      loop: loop && { from: micro(loop.from), to: micro(loop.to), on: loop.on },
      picked:
        selection.kind === 'none'
          ? undefined
          : selection.kind === 'part'
            ? selection
            : markOf(picture, selection, state.time),
      marks: state.marks,
      system: state.system,
      bench: state.bench,
      traces: state.traces.chosen[picture.file]?.map((c) => c.name),
      shown: this.#shell.shown(),
      large: state.large,
    };
  }

  // Opening

  /** Opens what a link holds; with a sentence, what the page opens on when it is broken. */
  async open(hash: string): Promise<void> {
    try {
      this.#open(await readLink(hash));
    } catch (error) {
      if (!(error instanceof BrokenLink)) throw error;
      this.#fail(`The link is broken: ${error.message}.`);
    }
  }

  #open(link: Link): void {
    const source = this.#sourceOf(link);
    if (link.bench !== '' && !this.#shell.hasBench(link.bench))
      throw new BrokenLink(`this page has no bench ${link.bench}`);
    const { card, faults, condition, stood, edits } = link;
    this.#edits = this.#store.state.edits;
    this.#waiting = undefined;
    this.#store.reopen(source, {
      edits,
      ...(card !== '' && { card }),
      ...(faults && { faults }),
      ...(condition && { condition }),
      ...(stood && { stood }),
    });
    this.#waiting = { link, asked: this.#store.state.asked };
  }

  #sourceOf({ from }: Link): Source {
    if (!('demo' in from)) return this.#given(from);
    const demo = this.#demos.find((d) => nameOf(d) === from.demo);
    if (demo === undefined) throw new BrokenLink(`no aircraft here is called ${from.demo}`);
    return demo;
  }

  /** Listed with the user's files; does not take the place of another one of its name. */
  #given(from: Source): Source {
    const { files } = this.#store.state;
    const taken = (file: string): boolean =>
      files.some((f) => f.file === file && f.text !== from.text) ||
      this.#demos.some((d) => d.file === file);
    const file = taken(from.file) ? `${from.file} (link)` : from.file;
    const source = { file, text: from.text };
    this.#store.set({ files: [...files.filter((f) => f.file !== file), source] });
    return source;
  }

  /** The run is there: the rest follows. */
  #arrived(link: Link): void {
    this.#waiting = undefined;
    const { picture } = this.#store.state;
    if (picture === undefined) return;
    const [a, b] = link.span ?? [0, picture.duration];
    const fits = a < b && b <= picture.duration;
    this.#store.set({
      rate: link.rate,
      loop: link.loop && loopWithin(link.loop, picture),
      marks: link.marks,
      bench: link.bench,
      large: link.large,
      playing: false,
      ...(link.system && { system: link.system }),
      // Readings of the one who opens it are not thrown away for a link without any.
      ...(link.measured.length > 0 && { measured: link.measured }),
    });
    if (link.traces !== undefined)
      this.#store.set({ traces: withChosen(this.#store.state, link.traces) });
    if (link.picked?.kind === 'part') this.#store.select(link.picked);
    else if (link.picked !== undefined) this.#pick(selectionOf(picture, link.picked));
    // What was picked out is met exactly.
    if (Math.abs(this.#store.state.time - link.time) > 1e-6) this.#store.seek(link.time);
    this.#store.set({ span: fits ? [a, b] : [0, picture.duration] });
    this.#shell.show(link.shown);
    if (link.card !== '' && link.card !== picture.card)
      this.#store.set({
        failure: `The link is broken: ${picture.title} has no card ${plain(link.card)}; the first one is shown.`,
      });
  }

  #pick(selection: State['selection']): void {
    if (selection.kind === 'event') this.#store.selectEvent(selection.index);
    if (selection.kind === 'flag') this.#store.selectFlag(selection.index);
  }

  /** The scenario did not read or the run could not be made; why is on show already. */
  #refused(): void {
    this.#waiting = undefined;
    const { picture, failure, issues, issuesFile } = this.#store.state;
    this.#store.set({ edits: this.#edits });
    if (picture === undefined) {
      this.#fail(
        `The link is broken: ${failure === '' ? `what it holds of ${issuesFile} does not read (${issues.length}).` : failure}`,
      );
    }
  }

  #fail(failure: string): void {
    const [first] = this.#demos;
    const { picture, asked } = this.#store.state;
    if (picture === undefined && asked === undefined && first !== undefined) {
      this.#store.open(first);
    }
    this.#store.set({ failure, said: failure });
  }
}
