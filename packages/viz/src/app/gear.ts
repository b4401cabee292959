import { html, LitElement, nothing } from 'lit';
import type { PropertyDeclarations, PropertyValues, TemplateResult } from 'lit';
import type { State } from '../model/state.js';
import { Store } from '../model/store.js';
import { define } from '../view/base.js';
import '../view/busy.js';
import '../view/cautions.js';
import { views } from '../view/index.js';
import type { ViewEntry } from '../view/index.js';
import '../view/issue-list.js';
import { shared } from '../view/shared.styles.js';
import '../view/transport.js';
import { Engine } from '../worker/client.js';
import type { FaultEntry, Picture, System } from '../worker/message.js';
import { runClock } from './clock.js';
import { gearStyles } from './gear.styles.js';
import { summaryOf } from './gear-events.js';
import type { GearEvents, GearRun } from './gear-events.js';
import { worksOf } from './works.js';
import { whyOf } from '../worker/why.js';

/** Views that stand on their own; benches and their panels belong to the whole page. */
const OFFERED = views.filter((v) => v.area !== 'bench' && v.on === undefined);

/** Tabs, benches and links are the whole page's. */
const NO_SHELL = { shown: () => [], show: () => undefined, hasBench: () => false };

/**
 * `<ww-gear>`: a landing gear in any page. Reads a scenario, plays one of its cards and shows it in
 * one or more views that share a clock. docs/embedding.md lists attributes, properties and events.
 */
export class Gear extends LitElement {
  static override properties: PropertyDeclarations = {
    src: {},
    card: {},
    view: {},
    theme: { reflect: true },
    clock: { type: Boolean },
    units: { noAccessor: true },
    time: { type: Number, noAccessor: true },
    rate: { type: Number, noAccessor: true },
    playing: { type: Boolean, noAccessor: true },
  };
  static override styles = [shared, ...gearStyles];

  /** Address of a scenario file. */
  declare src: string;
  /** Name of the test card to play; the first when empty or unknown. */
  declare card: string;
  /** Names of views, separated by spaces, from top to bottom. */
  declare view: string;
  /** `light`, `dark`, or empty for the system's. */
  declare theme: string;
  /** Shows the controls of the clock. */
  declare clock: boolean;

  readonly #engines: Engine[] = [];
  readonly #store = new Store((listener) => {
    const engine = new Engine(listener);
    this.#engines.push(engine);
    return engine;
  });
  readonly #works = worksOf(this.#store, [], NO_SHELL);
  /** Asked for before there was a run to do it with. */
  #wanted: { time?: number; playing?: boolean; faults?: readonly FaultEntry[] } = {};
  #fetching = new AbortController();

  constructor() {
    super();
    this.src = '';
    this.card = '';
    this.view = 'bay';
    this.theme = '';
    this.clock = false;
    runClock(this.#store);
    this.#store.watch((changed) => this.#told(changed));
  }

  // Properties that are the store's own.

  /** What was last simulated; undefined until then. */
  get run(): GearRun | undefined {
    const { picture } = this.#store.state;
    return picture && summaryOf(picture);
  }

  /** Play head, s. */
  get time(): number {
    return this.#store.state.time;
  }
  set time(time: number) {
    if (this.#store.state.picture === undefined) this.#wanted.time = time;
    else this.#store.scrub(time);
  }

  get playing(): boolean {
    return this.#store.state.playing;
  }
  set playing(playing: boolean) {
    if (this.#store.state.picture === undefined) this.#wanted.playing = playing;
    else if (playing) this.#store.play();
    else this.#store.pause();
  }

  /** Simulated seconds per second: 0.1, 0.25, 0.5, 1, 2 or 4. */
  get rate(): number {
    return this.#store.state.rate;
  }
  set rate(rate: number) {
    this.#store.setRate(rate);
  }

  get units(): System {
    return this.#store.state.system;
  }
  set units(units: System) {
    this.#store.setSystem(units === 'metric' ? 'metric' : 'us');
  }

  /** Faults in place of the card's own. */
  get faults(): readonly FaultEntry[] {
    return this.#store.state.faults;
  }
  set faults(faults: readonly FaultEntry[]) {
    if (this.#store.state.picture === undefined) this.#wanted.faults = faults;
    else this.#store.setFaults(faults);
  }

  /** Reads a scenario from its text; `file` is what it is called in messages. */
  open(text: string, file = 'scenario.yaml'): void {
    this.#fetching.abort();
    this.#store.open({ file, text }, this.card);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#fetching.abort();
    this.#store.pause();
    // An element that is only moved keeps its run.
    queueMicrotask(() => {
      if (!this.isConnected) for (const engine of this.#engines) engine.close();
    });
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('src') && this.src !== '') void this.#fetch();
    else if (changed.has('card') && this.#store.state.source !== undefined)
      this.#store.chooseCard(this.card);
  }

  protected override render(): TemplateResult {
    const store = this.#store;
    const { said } = store.state;
    const shown = this.view.split(/\s+/).flatMap((name) => OFFERED.filter((v) => v.name === name));
    return html`
      <ww-cautions .store=${store}></ww-cautions>
      <ww-issue-list .store=${store} role="alert"></ww-issue-list>
      <ww-busy .store=${store}></ww-busy>
      ${shown.map((v) => this.#area(v))}
      ${this.clock ? html`<section class="clock" aria-label="Clock"><ww-transport embedded .store=${store} .works=${this.#works}></ww-transport></section>` : nothing}
      <div class="aside" role="status" aria-live="polite">${said}</div>
    `;
  }

  #area(v: ViewEntry): TemplateResult {
    return html`<section class="area ${v.area}" aria-label=${v.title}>
      ${v.show(this.#store, this.#works)}
    </section>`;
  }

  async #fetch(): Promise<void> {
    this.#fetching.abort();
    this.#fetching = new AbortController();
    const { signal } = this.#fetching;
    const { src } = this;
    try {
      const answer = await fetch(new URL(src, document.baseURI), { signal });
      if (!answer.ok) throw new Error(`the server answers ${answer.status}`);
      const text = await answer.text();
      if (!signal.aborted)
        this.#store.open({ file: src.split('/').at(-1) ?? src, text }, this.card);
    } catch (error) {
      if (signal.aborted) return;
      const why = whyOf(error);
      const failure = `${src} could not be loaded: ${why}.`;
      this.#store.set({ failure, said: failure });
    }
  }

  #told(changed: ReadonlySet<keyof State>): void {
    const { picture, time, playing, issues, issuesFile, failure, said } = this.#store.state;
    if (changed.has('said') && said !== '') this.requestUpdate();
    if (changed.has('picture') && picture?.judged === true) {
      this.#tell('ww-run', summaryOf(picture));
      this.#catchUp(picture);
    }
    if (changed.has('time') || changed.has('playing')) this.#tell('ww-time', { time, playing });
    if (changed.has('issues') && issues.length > 0)
      this.#tell('ww-issues', { file: issuesFile, issues });
    if (changed.has('failure') && failure !== '') this.#tell('ww-failure', { message: failure });
  }

  /** Does what was asked for before the run was there. */
  #catchUp(picture: Picture): void {
    const { time, playing, faults } = this.#wanted;
    if (picture !== this.#store.state.picture) return;
    this.#wanted = {};
    if (time !== undefined) this.#store.seek(time);
    if (faults !== undefined) this.#store.setFaults(faults);
    if (playing === true) this.#store.play();
  }

  #tell<K extends keyof GearEvents>(kind: K, detail: GearEvents[K]): void {
    this.dispatchEvent(new CustomEvent(kind, { detail, bubbles: true }));
  }
}

define('ww-gear', Gear);
