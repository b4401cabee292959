import { html, nothing, svg } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { eventAt, isStart, reached } from '../model/history.js';
import { plain, seconds } from '../model/sentence.js';
import { RATES } from '../model/state.js';
import type { State } from '../model/state.js';
import type { LogEntry } from '../worker/message.js';
import { define, View } from './base.js';
import type { Works } from './index.js';
import './link-button.js';
import type { LinkButton } from './link-button.js';
import { shared } from './shared.styles.js';
import { transportStyles } from './transport.styles.js';

/** The clock: play and pause, steps to events and flags, the scrubber and the rate. */
export class Transport extends View {
  static override properties: PropertyDeclarations = {
    ...View.properties,
    works: { attribute: false },
    embedded: { type: Boolean },
  };
  static override styles = [shared, transportStyles];

  declare works: Works;
  /** In another page, whose address is not ours to make links of. */
  declare embedded: boolean;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'time',
    'playing',
    'rate',
    'loop',
    'selection',
  ];

  protected override render(): TemplateResult {
    const { picture, time, playing, rate } = this.state;
    const none = picture === undefined;
    const end = none ? 0 : reached(picture);
    const button = (label: string, key: string, icon: string, act: () => void): TemplateResult =>
      html`<button aria-label=${label} title="${label} (${key})" ?disabled=${none} @click=${act}>
        <svg viewBox="-11 -9 22 18" aria-hidden="true"><path d=${icon}></path></svg>
      </button>`;
    return html`
      <div class="buttons" role="group" aria-label="Play and step">
        ${button('Former flag', 'Shift F', ICONS.flagBack, () => this.store.stepFlag(-1))}
        ${button('Former event', '←', ICONS.back, () => this.store.stepEvent(-1))}
        <button
          class="play"
          aria-label=${playing ? 'Pause' : 'Play'}
          title="${playing ? 'Pause' : 'Play'} (space)"
          ?disabled=${none}
          @click=${() => this.store.toggle()}
        >
          <svg viewBox="-11 -9 22 18" aria-hidden="true">
            <path d=${playing ? ICONS.pause : ICONS.play}></path>
          </svg>
        </button>
        ${button('Next event', '→', ICONS.next, () => this.store.stepEvent(1))}
        ${button('Next flag', 'F', ICONS.flagNext, () => this.store.stepFlag(1))}
      </div>
      <div class="clock">
        <span data-clock>${time.toFixed(3)}</span> s <small>of ${end.toFixed(1)} s</small>
      </div>
      <div class="scrub">
        <input
          type="range"
          min="0"
          max=${end}
          step=${picture?.tick ?? 0.005}
          .value=${String(time)}
          ?disabled=${none}
          aria-label="Time"
          aria-valuetext="${time.toFixed(2)} seconds"
          @input=${this.#scrub}
        />
        ${this.#band(end)}
        <p class="last">${this.#last()}</p>
      </div>
      ${this.#loopButtons(none)}
      <label class="rate"
        ><span>Speed</span>
        <select aria-label="Speed" @change=${this.#rate}>
          ${RATES.map((r) => html`<option value=${r} ?selected=${r === rate}>${r}×</option>`)}
        </select>
      </label>
      ${this.embedded ? nothing : html`<ww-link-button .work=${this.works.link}></ww-link-button>`}
    `;
  }

  #loopButtons(none: boolean): TemplateResult {
    const on = this.state.loop?.on === true;
    return html`<div class="loop" role="group" aria-label="Loop">
      <button
        title="The loop starts here (A)"
        aria-label="Loop starts here"
        ?disabled=${none}
        @click=${() => this.works.loop.start()}
      >
        A
      </button>
      <button
        aria-label="Loop"
        aria-pressed=${on}
        title="Play from A to B, over and over; without them, what the chart shows (R)"
        ?disabled=${none}
        @click=${() => this.works.loop.toggle()}
      >
        <svg viewBox="-11 -9 22 18" aria-hidden="true"><path d=${ICONS.loop}></path></svg>
      </button>
      <button
        title="The loop ends here (B)"
        aria-label="Loop ends here"
        ?disabled=${none}
        @click=${() => this.works.loop.end()}
      >
        B
      </button>
    </div>`;
  }

  /** The loop under the slider: filled while it is on. */
  #band(end: number): TemplateResult | typeof nothing {
    const { loop } = this.state;
    if (loop === undefined || end <= 0) return nothing;
    const at = (t: number): string => `${((100 * t) / end).toFixed(3)}%`;
    return html`<svg
      class="band ${loop.on ? 'on' : ''}"
      role="img"
      aria-label="Loop from ${seconds(loop.from)} to ${seconds(loop.to)}${loop.on ? '' : ', off'}"
    >
      ${svg`<rect x=${at(loop.from)} width=${at(loop.to - loop.from)} y="1" height="5"></rect>`}
    </svg>`;
  }

  copyLink(): void {
    this.renderRoot.querySelector<LinkButton>('ww-link-button')?.copy();
  }

  /** The last thing a part did; phases only follow from such. */
  #latest(): LogEntry | undefined {
    const { picture, time } = this.state;
    if (picture === undefined) return undefined;
    let i = eventAt(picture.log, time);
    while (picture.log[i]?.kind === 'phase') i -= 1;
    return picture.log[i];
  }

  #last(): TemplateResult {
    const { picture, time, selection } = this.state;
    const chosen = selection.kind === 'event' ? picture?.log[selection.index] : undefined;
    const entry =
      chosen !== undefined && Math.abs(chosen.t - time) < 1e-9 ? chosen : this.#latest();
    if (entry === undefined || isStart(entry)) return html`No event yet`;
    return html`<span>${entry.t.toFixed(2)} s: <b>${plain(entry.device)} ${entry.to}</b></span
      ><span class="cause">, because ${entry.cause}</span>`;
  }

  #scrub = (e: Event): void => {
    this.store.scrub(Number((e.target as HTMLInputElement).value));
  };

  #rate = (e: Event): void => this.store.setRate(Number((e.target as HTMLSelectElement).value));
}

const ICONS = {
  loop: 'M-6,-5H4V-9L10,-3.5L4,2V-2H-6V0H-9V-2A3,3 0 0 1 -6,-5ZM6,5H-4V9L-10,3.5L-4,-2V2H6V0H9V2A3,3 0 0 1 6,5Z',
  play: 'M-6,-8L9,0L-6,8Z',
  pause: 'M-7,-8h5v16h-5ZM2,-8h5v16h-5Z',
  next: 'M-8,-7L3,0L-8,7ZM5,-7h3v14h-3Z',
  back: 'M8,-7L-3,0L8,7ZM-5,-7h-3v14h3Z',
  flagNext: 'M-10,-6L-3,0L-10,6ZM0,-8h2v16h-2ZM2,-8h8l-2.5,3.5l2.5,3.5h-8Z',
  flagBack: 'M10,-6L3,0L10,6ZM-10,-8h2v16h-2ZM-8,-8h8l-2.5,3.5l2.5,3.5h-8Z',
};

define('ww-transport', Transport);
