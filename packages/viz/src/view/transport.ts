import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { eventAt, isStart, reached } from '../model/history.js';
import { plain } from '../model/sentence.js';
import { RATES } from '../model/state.js';
import type { State } from '../model/state.js';
import type { LogEntry } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';

/** The clock: play and pause, steps to events and flags, the scrubber and the rate. */
export class Transport extends View {
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        grid-template-columns: auto auto 1fr auto;
        gap: 0.3rem 0.8rem;
        align-items: center;
        padding: 0.45rem 0.8rem;
      }
      .buttons {
        display: flex;
        gap: 0.3rem;
      }
      button {
        min-width: 44px;
        min-height: 40px;
        display: inline-flex;
        align-items: center;
        justify-content: center;
        padding: 0 0.5rem;
      }
      button svg {
        width: 22px;
        height: 18px;
        fill: currentColor;
      }
      .play {
        min-width: 64px;
        background: var(--accent);
        color: var(--on-accent);
        border-color: var(--accent);
      }
      .play:hover:not(:disabled) {
        background: var(--accent);
        filter: brightness(1.12);
      }
      .clock {
        font-size: 1.35rem;
        font-weight: 700;
        font-variant-numeric: tabular-nums;
        white-space: nowrap;
      }
      .clock small {
        font-size: 0.8rem;
        font-weight: 400;
        color: var(--ink-soft);
      }
      .scrub {
        min-width: 0;
      }
      input {
        width: 100%;
        margin: 0;
        height: 24px;
      }
      .last {
        font-size: 0.84rem;
        white-space: nowrap;
        overflow: hidden;
        text-overflow: ellipsis;
        color: var(--ink-soft);
      }
      .last b {
        color: var(--ink);
      }
      .rate {
        display: flex;
        flex-direction: column;
        font-size: 0.78rem;
        color: var(--ink-soft);
      }
      select {
        color: var(--ink);
        font-size: 0.95rem;
      }
      @media (max-width: 900px) {
        :host {
          grid-template-columns: auto 1fr auto;
        }
        .scrub {
          grid-column: 1 / -1;
          grid-row: 1;
        }
        .clock {
          text-align: center;
        }
      }
      @media (max-width: 560px) {
        :host {
          grid-template-columns: 1fr auto;
        }
        .buttons {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'playing', 'rate'];

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
        <p class="last">${this.#last()}</p>
      </div>
      <label class="rate"
        >Speed
        <select @change=${this.#rate}>
          ${RATES.map((r) => html`<option value=${r} ?selected=${r === rate}>${r}×</option>`)}
        </select>
      </label>
    `;
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
    return html`${entry.t.toFixed(2)} s: <b>${plain(entry.device)} ${entry.to}</b>, because
      ${entry.cause}`;
  }

  #scrub = (e: Event): void => {
    this.store.scrub(Number((e.target as HTMLInputElement).value));
  };

  #rate = (e: Event): void => this.store.setRate(Number((e.target as HTMLSelectElement).value));
}

const ICONS = {
  play: 'M-6,-8L9,0L-6,8Z',
  pause: 'M-7,-8h5v16h-5ZM2,-8h5v16h-5Z',
  next: 'M-8,-7L3,0L-8,7ZM5,-7h3v14h-3Z',
  back: 'M8,-7L-3,0L8,7ZM-5,-7h-3v14h3Z',
  flagNext: 'M-10,-6L-3,0L-10,6ZM0,-8h2v16h-2ZM2,-8h8l-2.5,3.5l2.5,3.5h-8Z',
  flagBack: 'M10,-6L3,0L10,6ZM-10,-8h2v16h-2ZM-8,-8h8l-2.5,3.5l2.5,3.5h-8Z',
};

define('ww-transport', Transport);
