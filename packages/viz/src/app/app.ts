import { html, LitElement, nothing } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { demos } from '../model/demos.js';
import { KeepWork } from '../model/kept.js';
import { BENCH } from '../model/lesson.js';
import { Store } from '../model/store.js';
import { isRecordingName } from '../model/traces.js';
import { define } from '../view/base.js';
import '../view/busy.js';
import '../view/card-bar.js';
import '../view/cautions.js';
import { views } from '../view/index.js';
import type { Area, Works } from '../view/index.js';
import '../view/issue-list.js';
import '../view/recovery.js';
import '../view/told.js';
import { shared } from '../view/shared.styles.js';
import '../view/transport.js';
import { Engine } from '../worker/client.js';
import { appStyles } from './app.styles.js';
import { benchStyles } from './bench.styles.js';
import { areaOf, benchBar, benchOf } from './area.js';
import { runClock } from './clock.js';
import { deedsOf } from './deeds.js';
import { BrowserDrawer, newName } from './drawer.js';
import { listenDrops } from './drop.js';
import './help.js';
import type { Help } from './help.js';
import { MARK } from './mark.js';
import { listen } from './keyboard.js';
import { LateViews } from './late.js';
import { printPanel } from './print.js';
import { applyTheme, recall, remember, THEME_WORD, THEMES } from './settings.js';
import type { Theme } from './settings.js';
import { worksOf } from './works.js';

/** What the shell itself shows of the state. */
const SHOWN = [
  'said',
  'picture',
  'faults',
  'edits',
  'asked',
  'busy',
  'large',
  'bench',
  'lesson',
] as const;

/** The shell: places the views, passes them the store, listens to keys and dropped files. */
export class App extends LitElement {
  static override properties: PropertyDeclarations = {
    theme: { state: true },
    chosen: { state: true },
    dropping: { state: true },
    tall: { state: true },
    keys: { state: true },
  };
  static override styles = [shared, appStyles, benchStyles];

  declare theme: Theme;
  /** The view on top in each area that several share. */
  declare chosen: Partial<Record<Area, string>>;
  declare dropping: boolean;
  /** The drawing on the stage has the chart's room too. */
  declare tall: boolean;
  declare keys: boolean;

  readonly store = new Store((listener) => new Engine(listener));
  readonly works: Works = worksOf(this.store, demos, {
    shown: () => Object.values(this.chosen),
    show: (names) => this.#show(names),
    hasBench: (name) => views.some((v) => v.area === 'bench' && v.name === name),
  });
  readonly #late = new LateViews(() => this.requestUpdate());
  readonly #keep = new KeepWork(this.store, new BrowserDrawer(), demos, newName());
  /** Aborted when the element leaves the page. */
  #left = new AbortController();

  constructor() {
    super();
    this.theme = recall('theme', ['auto', 'light', 'dark']);
    this.keys = recall('keys', ['on', 'off']) === 'on';
    this.chosen = {};
    this.dropping = false;
    this.tall = false;
    applyTheme(this.theme);
    this.store.setSystem(recall('units', ['us', 'metric']));
    runClock(this.store);
    this.store.watch((changed) => {
      if (changed.has('system')) remember('units', this.store.state.system);
      if (SHOWN.some((key) => changed.has(key))) this.requestUpdate();
      if (changed.has('picture') && this.store.state.picture?.judged === true) this.#late.ahead();
      if (changed.has('large')) this.#enlarge();
      if (changed.has('selection')) this.#showSelection();
      if (changed.has('proposed') && this.store.state.proposed !== undefined)
        this.#choose('panel', 'faults');
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#left = new AbortController();
    const { signal } = this.#left;
    window.addEventListener('pagehide', () => this.#keep.flush(), { signal });
    void this.#keep.start();
    const deeds = deedsOf({
      store: this.store,
      works: this.works,
      find: (selector) => this.renderRoot.querySelector(selector),
      panel: (name) => this.#choose('panel', name),
      theme: this.#nextTheme,
    });
    listen(window, deeds, () => this.keys, signal);
    window.addEventListener('hashchange', this.#link, { signal });
    const over = (something: boolean): boolean => (this.dropping = something);
    listenDrops(window, over, (files) => this.#open(files), signal);
    const first = demos[0];
    if (location.hash.length > 1) this.#link();
    else if (first !== undefined && this.store.state.source === undefined) this.store.open(first);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#left.abort();
  }

  protected override render(): TemplateResult {
    const { asked, picture, said, busy, large } = this.store.state;
    const card = picture?.cards.find((c) => c.name === picture.card);
    const bench = benchOf(this.store);
    const alone = bench?.alone?.(this.store.state) === true;
    return html`
      <header>
        <h1 aria-label="Wheelwell">${MARK}<span>Wheelwell</span></h1>
        ${benchBar(this.store, this.#bench)}
        <ww-card-bar .store=${this.store} ?large=${large}></ww-card-bar>
        <button
          aria-pressed=${large}
          @click=${() => this.store.setLarge(!large)}
          title="Drawing, chart and reason only, large enough for a room (L)"
        >
          Large
        </button>
        <button class="minor" @click=${this.#nextTheme} title="Light, dark or as the system (T)">
          ${THEME_WORD[this.theme]}
        </button>
        <button class="minor" @click=${this.#help} title="Keys (?)">Keys</button>
        ${
          this.works.lesson.veiled && bench?.name !== BENCH
            ? html`<p class="veiled">
                Part of this run is shut until the lesson's question is answered.
                <button @click=${() => this.#bench(BENCH)}>Back to the lesson</button>
                <button @click=${() => this.works.lesson.leave()}>Leave the lesson</button>
              </p>`
            : nothing
        }
      </header>
      <ww-cautions .store=${this.store}></ww-cautions>
      <ww-issue-list .store=${this.store} role="alert"></ww-issue-list>
      <ww-busy .store=${this.store}></ww-busy>
      <main
        aria-busy=${busy}
        class="${bench === undefined ? 'swing' : 'on-bench'} ${alone ? 'alone' : ''} ${this.tall ? 'tall' : ''} ${asked === undefined ? '' : 'waits'}"
        @fill-stage=${() => (this.tall = !this.tall)}
        @print-panel=${this.#print}
        @show-panel=${(e: CustomEvent<string>) => this.#choose('panel', e.detail)}
      >
        <section class="area stage" aria-label="Drawings">${this.#area('stage')}</section>
        ${
          bench === undefined
            ? html`<section class="area chart" aria-label="Charts over time">
                ${this.#area('chart')}
              </section>`
            : html`<section class="area bench" aria-label=${bench.title}>
                <div class="content">${this.#late.show(bench, this.store, this.works)}</div>
              </section>`
        }
        ${large && bench === undefined ? html`<section class="area told" aria-label="What is picked out"><ww-told .store=${this.store}></ww-told></section>` : nothing}
        <div class="side" ?hidden=${alone}>
          ${views
            .filter((v) => v.area === 'fact' && bench === undefined)
            .map(
              (v) =>
                html`<section class="area fact" aria-label=${v.title}>
                  ${v.show(this.store, this.works)}
                  ${card === undefined || card.note === '' ? nothing : html`<p class="card-note">${card.note}</p>`}
                </section>`,
            )}
          <section class="area panel" aria-label="Lists and forms">${this.#area('panel')}</section>
        </div>
      </main>
      <section class="transport" aria-label="Clock">
        <ww-transport .store=${this.store} .works=${this.works}></ww-transport>
      </section>
      <ww-recovery .store=${this.store} .work=${this.#keep}></ww-recovery>
      <div class="aside" role="status" aria-live="polite">${said}</div>
      ${this.dropping ? html`<div class="drop">Drop a scenario or an observation sheet to open it, a recording (CSV) to lay it over</div>` : nothing}
      <ww-help .keys=${this.keys} @keys-change=${this.#switchKeys}></ww-help>
    `;
  }

  #area(area: Area): TemplateResult {
    const { store, works } = this;
    const late = this.#late;
    const choose = (name: string, focus: boolean): void => {
      this.#choose(area, name);
      if (!focus) return;
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector<HTMLElement>(`#tab-${name}`)?.focus(),
      );
    };
    return areaOf({ area, chosen: this.chosen[area], store, works, late, choose });
  }

  #choose(area: Area, name: string): void {
    if (area === 'stage') this.tall = views.find((v) => v.name === name)?.tall === true;
    this.chosen = { ...this.chosen, [area]: name };
  }

  /** Brings views to the top of the areas that they share with others. */
  #show(names: readonly string[]): void {
    const found = views.filter((v) => names.includes(v.name));
    this.chosen = Object.fromEntries(found.map((v) => [v.area, v.name]));
  }

  #bench = (name: string): void => {
    // Its own panel comes to the top.
    this.chosen = {};
    this.store.set({ bench: name });
  };

  /** The list that tells more about what was picked out comes to the top, unless a fault is being set. */
  #showSelection(): void {
    const { kind } = this.store.state.selection;
    if (kind === 'none' || kind === 'part' || this.chosen.panel === 'faults') return;
    this.#choose('panel', kind === 'flag' ? 'flags' : 'events');
  }

  #link = (): void => {
    if (location.hash.length > 1) void this.works.link.open(location.hash);
  };

  #print = (): void => printPanel(this);

  #enlarge(): void {
    const { large } = this.store.state;
    this.toggleAttribute('large', large);
    document.documentElement.toggleAttribute('data-large', large);
  }

  #nextTheme = (): void => {
    this.theme = THEMES[(THEMES.indexOf(this.theme) + 1) % THEMES.length] ?? 'auto';
    remember('theme', this.theme);
    applyTheme(this.theme);
  };

  #help = (): void => this.renderRoot.querySelector<Help>('ww-help')?.open();

  #switchKeys = (e: CustomEvent<boolean>): void => {
    this.keys = e.detail;
    remember('keys', e.detail ? 'on' : 'off');
  };

  /** Recordings are laid over the run, the rest are scenarios. */
  #open(files: readonly File[]): void {
    const recordings = files.filter((f) => isRecordingName(f.name));
    const scenarios = files.filter((f) => !isRecordingName(f.name));
    if (scenarios.length > 0) void this.store.openFiles(scenarios);
    if (recordings.length === 0) return;
    this.store.set({ bench: '' });
    this.#choose('chart', 'traces');
    void this.works.traces.open(recordings);
  }
}

define('ww-app', App);
