import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { KeepWork, Offer } from '../model/kept.js';
import { count } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Offers work that was left behind by a reload, a crash or another file; tells when nothing can be kept. */
export class Recovery extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [
    shared,
    css`
      section {
        position: fixed;
        z-index: 8;
        left: 0.7rem;
        bottom: 5.4rem;
        width: min(34rem, calc(100vw - 1.4rem));
        max-height: 50vh;
        overflow: auto;
        padding: 0.5rem 0.8rem;
        background: var(--sheet);
        border: 2px solid var(--accent);
        border-radius: var(--round);
        box-shadow: 0 4px 16px rgb(0 0 0 / 25%);
      }
      .top,
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.6rem;
        align-items: center;
        justify-content: space-between;
      }
      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        padding: 0.35rem 0;
        border-top: 1px solid var(--rule);
        font-size: 0.92rem;
      }
      li > span:first-child {
        flex: 1 1 14rem;
      }
      .caution {
        padding: 0.3rem 0;
      }
      @media (pointer: coarse) {
        button {
          min-height: 44px;
        }
      }
    `,
  ];

  declare work: KeepWork;

  protected readonly watches: readonly (keyof State)[] = ['kept'];

  protected override render(): TemplateResult | typeof nothing {
    const { offers, trouble } = this.state.kept;
    if (offers.length === 0 && trouble === '') return nothing;
    return html`<section aria-label="Kept work">
      <div class="top">
        <h2>${offers.length === 0 ? 'Kept work' : 'Work that was left'}</h2>
        <button @click=${() => this.work.later()}>
          ${offers.length === 0 ? 'Dismiss' : 'Later'}
        </button>
      </div>
      ${trouble === '' ? nothing : html`<p class="caution" role="alert">${sign('caution')} ${trouble}</p>`}
      <ul>
        ${offers.map((o) => this.#offer(o))}
      </ul>
    </section>`;
  }

  #offer(offer: Offer): TemplateResult {
    const { kept, title } = offer;
    const what = [
      kept.edits.length === 0 ? '' : count(kept.edits.length, 'changed figure'),
      kept.faults.length === 0 ? '' : count(kept.faults.length, 'fault'),
      kept.measured.length === 0 ? '' : count(kept.measured.length, 'measured time'),
    ].filter(Boolean);
    return html`<li>
      <span
        >Work from <b>${timeOf(kept.when)}</b> on
        <b>${title}</b>${what.length === 0 ? '' : `: ${what.join(', ')}`}</span
      >
      <span
        ><button @click=${() => this.work.restore(offer)}>
          Restore<span class="aside">: ${title}</span>
        </button>
        <button @click=${() => this.work.discard(offer)}>
          Discard<span class="aside">: ${title}</span>
        </button></span
      >
    </li>`;
  }
}

/** Today's by the hour, older ones by their day. */
function timeOf(when: number): string {
  const at = new Date(when);
  const today = at.toDateString() === new Date().toDateString();
  return today
    ? at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
    : at.toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
}

define('ww-recovery', Recovery);
