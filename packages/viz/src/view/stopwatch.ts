import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { compare, comparisonWords, dueOf, expectedOf, GEAR, limitOf } from '../model/observed.js';
import { EVENT_WORD, tapKeys } from '../model/tap-keys.js';
import type { TapKey } from '../model/tap-keys.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { TestCardWork } from '../model/test-card.js';
import { nextWay } from '../model/test-card-state.js';
import { tapOf } from '../model/watch.js';
import type { Watch } from '../model/watch.js';
import type { ExpectedSwing, SwingDirection } from '../worker/sheet-message.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';
import { stopwatchStyles } from './stopwatch.styles.js';

const DIRECTION_WORD: Readonly<Record<SwingDirection, string>> = {
  up: 'Up',
  down: 'Down',
  'blow-down': 'Blow-down',
};
/** The reading is drawn anew this often, ms; the taps do not wait for it. */
const REDRAW = 100;

/** The watch with a button for every event of every unit, large enough for gloves; Space and number keys do the same. */
export class Stopwatch extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, stopwatchStyles];

  declare work: TestCardWork;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard'];
  #ticking = 0;
  #focused = false;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#tick(false);
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.#focused = !this.hasUpdated || this.shadowRoot?.activeElement != null;
  }

  protected override updated(): void {
    // The button that had the focus may have gone: Space goes on with the next one.
    if (this.#focused && this.shadowRoot?.activeElement == null)
      this.renderRoot.querySelector<HTMLElement>('.main')?.focus({ preventScroll: true });
    this.#tick(this.state.testCard.draft?.watch !== undefined);
  }

  protected override render(): TemplateResult {
    const { picture, testCard } = this.state;
    const watch = testCard.draft?.watch;
    if (picture === undefined) return html``;
    const direction = watch?.direction ?? nextWay(testCard);
    const { conditions = {} } = testCard.draft?.under ?? {};
    const expected = dueOf(testCard.expectation, { direction, conditions });
    return html`
      <div class="bar">
        <span class="ways" role="group" aria-label="Which way the gear goes">
          ${this.#ways(picture).map(
            (way) =>
              html`<button
                aria-pressed=${direction === way}
                ?disabled=${watch !== undefined && direction !== way}
                @click=${() => this.work.put({ way })}
              >
                ${DIRECTION_WORD[way]}
              </button>`,
          )}
        </span>
        <output role="timer" aria-label="Stopwatch" aria-live="off" data-watch
          >${this.#reading()}</output
        >
      </div>
      ${watch === undefined ? this.#ready(expected, direction) : this.#running(watch, expected, picture)}
    `;
  }

  #ways(picture: Picture): readonly SwingDirection[] {
    return picture.blowDown === undefined ? ['up', 'down'] : ['up', 'down', 'blow-down'];
  }

  #ready(expected: ExpectedSwing | undefined, direction: SwingDirection): TemplateResult {
    const total = expected?.times[GEAR]?.total;
    const limit = limitOf(this.state.testCard.expectation, direction);
    return html`<button
        class="main"
        data-start
        @click=${this.#begin}
        @pointerdown=${this.#begin}
        @keydown=${this.#begin}
      >
        ${direction === 'blow-down' ? 'Handle pulled' : 'Selector moved'} <kbd>Space</kbd>
      </button>
      <p class="soft">
        Tap it at the moment the
        ${direction === 'blow-down' ? 'handle is pulled' : 'selector moves'}, then each event as you
        see
        it.${total === undefined ? '' : ` A sound swing takes ${total.toFixed(1)} s`}${limit === undefined || total === undefined ? (total === undefined ? '' : '.') : `; the limit is ${limit.toFixed(1)} s.`}
      </p>`;
  }

  #running(watch: Watch, expected: ExpectedSwing | undefined, picture: Picture): TemplateResult {
    const usual = expectedOf(this.state.testCard.expectation, watch.direction);
    const keys = tapKeys(picture, usual);
    const units = picture.units.map((u) => u.name);
    return html`
      <div class="taps" data-units=${units.length}>
        ${units.map(
          (unit) =>
            html`<div role="group" aria-label=${unit}>
              <h2>${unit}</h2>
              ${keys.filter((k) => k.unit === unit).map((k) => this.#tap(k, watch, expected))}
            </div>`,
        )}
      </div>
      <button
        class="main"
        data-home
        @click=${this.#end}
        @pointerdown=${this.#end}
        @keydown=${this.#end}
      >
        All home: stop <kbd>Space</kbd>
      </button>
      <div class="after">
        <button ?disabled=${watch.taps.length === 0} @click=${() => this.work.undo()}>
          Undo last tap <kbd>⌫</kbd>
        </button>
        <button @click=${() => this.work.stop(false)}>Stop, not all home</button>
        <button @click=${() => this.work.discard()}>Throw away</button>
      </div>
    `;
  }

  #tap(
    { unit, event, key }: TapKey,
    watch: Watch,
    expected: ExpectedSwing | undefined,
  ): TemplateResult {
    const made = tapOf(watch, unit, event);
    const due = expected?.times[unit]?.[event];
    const error = this.state.testCard.draft?.sheet.readingError ?? 0;
    const c =
      made === undefined || due === undefined ? undefined : compare({ at: made.at, error }, due);
    return html`<button
      class="tap"
      data-tap="${unit} ${event}"
      aria-keyshortcuts=${key === '' ? nothing : key}
      ?data-made=${made !== undefined}
      @pointerdown=${(e: PointerEvent) => this.#down(e, unit, event)}
      @click=${() => this.work.tap(unit, event)}
    >
      <span
        ><span class="aside">${plain(unit)}</span> ${EVENT_WORD[event]}
        ${key === '' ? nothing : html`<kbd>${key}</kbd>`}</span
      >
      <small
        >${made === undefined ? (due === undefined ? '' : `due ${due.toFixed(1)} s`) : html`<b>${made.at.toFixed(2)} s</b> ${c === undefined ? nothing : html`<span class=${c.is === 'as expected' ? 'note' : 'caution'}>${sign(c.is === 'as expected' ? 'note' : 'caution')} ${comparisonWords(c)}</span>`}`}</small
      >
    </button>`;
  }

  #begin = (e: Event): void => {
    if (!meant(e)) return;
    this.work.start();
    // All the buttons in sight on a small screen.
    void this.updateComplete.then(() => this.scrollIntoView({ block: 'start' }));
  };

  #end = (e: Event): void => {
    if (meant(e)) this.work.stop(true);
  };

  /** The finger's touch is the event, not its lifting; the button does not take the focus from Space. */
  #down(e: PointerEvent, unit: string, event: TapKey['event']): void {
    if (meant(e)) this.work.tap(unit, event);
  }

  #reading(): string {
    const watch = this.state.testCard.draft?.watch;
    if (watch === undefined) return '0.0 s';
    return `${Math.max(this.work.clock() - watch.started, 0).toFixed(1)} s`;
  }

  #tick(run: boolean): void {
    if (!run) {
      clearInterval(this.#ticking);
      this.#ticking = 0;
    } else if (this.#ticking === 0) {
      this.#ticking = window.setInterval(() => this.requestUpdate(), REDRAW);
    }
  }
}

/** Going down of finger or key is the moment, not the click that follows when it is let go. */
function meant(e: Event): boolean {
  if (e instanceof PointerEvent && e.type === 'pointerdown') {
    if (e.button !== 0) return false;
    // The focus stays where Space is meant to go.
    e.preventDefault();
    return true;
  }
  if (!(e instanceof KeyboardEvent)) return true;
  if ((e.key !== ' ' && e.key !== 'Enter') || e.repeat) return false;
  e.preventDefault();
  return true;
}

define('ww-stopwatch', Stopwatch);
