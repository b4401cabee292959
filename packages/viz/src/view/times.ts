import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { heldOf } from '../model/held.js';
import { orderOf, sentenceOfOrder } from '../model/order.js';
import { count, withUnit } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture, Timing } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Times up and down, the left beside the right, with what is left to the limit. */
export class Times extends View {
  static override styles = [
    shared,
    css`
      .wide {
        overflow-x: auto;
        position: relative;
      }
      table {
        width: 100%;
        border-collapse: collapse;
        font-size: 0.86rem;
      }
      th,
      td {
        padding: 0.16rem 0.3rem;
        text-align: right;
        white-space: nowrap;
      }
      th:first-child {
        text-align: left;
        font-weight: 400;
      }
      thead th {
        font-weight: 700;
      }
      thead button {
        min-height: 26px;
        margin-left: 0.4rem;
      }
      thead th.unit {
        text-transform: capitalize;
      }
      tr.former {
        color: var(--ink-soft);
      }
      p {
        padding: 0.2rem 0.5rem 0;
        font-size: 0.8rem;
      }
      tr.total th,
      tr.total td {
        font-weight: 700;
        border-bottom: 1px solid var(--rule);
      }
      th:last-child,
      td:last-child {
        padding-right: 0.6rem;
      }
      thead th:last-child,
      td.spread {
        color: var(--ink-soft);
        font-weight: 400;
      }
      .over {
        color: var(--caution);
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'former', 'held', 'system'];

  protected override render(): TemplateResult {
    const { picture } = this.state;
    if (picture === undefined || picture.timings.length === 0)
      return html`<p class="soft">No timed movement in this run.</p>`;
    const units = picture.units;
    const both = ['left', 'right'].every((s) => units.some((u) => u.side === s));
    return html`<div class="wide" tabindex="0" role="region" aria-label="Times from the selector">
      <table>
        <caption class="aside">
          Times from the selector's move, in seconds
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="soft">Seconds</span> ${this.#hold(picture)}</th>
            ${units.map((u) => html`<th scope="col" class="unit">${u.name}</th>`)}${both ? html`<th scope="col">L–R</th>` : nothing}
          </tr>
        </thead>
        <tbody>
          ${(['up', 'down'] as const).map((way) => this.#rows(picture, way, both))}
        </tbody>
      </table>
      ${this.#beside(picture)}
    </div>`;
  }

  #hold(picture: Picture): TemplateResult {
    const { held } = this.state;
    const hold = (): void =>
      this.store.set(
        held === undefined
          ? { held: heldOf(picture), said: 'Held: later runs are set beside this one.' }
          : { held: undefined, said: 'Let go: runs are set beside the one before them.' },
      );
    return html`<button
      aria-pressed=${held === undefined ? 'false' : 'true'}
      ?disabled=${held === undefined && !picture.judged}
      title=${held === undefined ? 'Set later runs beside this one' : 'Let go of the run that is held'}
      @click=${hold}
    >
      Hold
    </button>`;
  }

  /** What the run is set beside. */
  #beside(picture: Picture): TemplateResult | typeof nothing {
    const { held, former, system } = this.state;
    if (held === undefined)
      return former === undefined ? nothing : html`<p class="soft">Before: ${former.title}</p>`;
    const least =
      held.least === undefined
        ? nothing
        : html`, least clearance ${withUnit(held.least, 'length', picture, system)}`;
    return html`<p class="soft">
      Held: ${held.title} (${held.flags === 0 ? 'no flags' : count(held.flags, 'flag')}${least}).
      ${sentenceOfOrder(orderOf(picture), held.order)}
    </p>`;
  }

  #rows(picture: Picture, way: 'up' | 'down', both: boolean): TemplateResult | typeof nothing {
    const now = picture.timings.filter((t) => t.direction === way);
    if (now.length === 0) return nothing;
    const { held, former } = this.state;
    const before = (held ?? former)?.timings.filter((t) => t.direction === way) ?? [];
    const limit = picture.limits[way === 'up' ? 'timeUp' : 'timeDown'];
    const spreadLimit = picture.limits.spread;
    const row = (
      label: string,
      value: (t: Timing) => number,
      kind: '' | 'total' | 'former',
    ): TemplateResult => {
      const found = kind === 'former' ? before : now;
      const of = (unit: string): Timing | undefined => found.find((t) => t.unit === unit);
      const total = kind === 'total';
      const left = of(picture.units.find((u) => u.side === 'left')?.name ?? '');
      const right = of(picture.units.find((u) => u.side === 'right')?.name ?? '');
      const spread =
        left === undefined || right === undefined ? NaN : Math.abs(value(left) - value(right));
      return html`<tr class=${kind}>
        <th scope="row">${label}</th>
        ${picture.units.map((u) => {
          const t = of(u.name);
          return this.#cell(t === undefined ? undefined : value(t), total ? limit : undefined);
        })}
        ${both ? html`<td class="spread">${Number.isFinite(spread) ? this.#judged(spread, total ? spreadLimit : undefined) : '–'}</td>` : nothing}
      </tr>`;
    };
    const word = way === 'up' ? 'Up' : 'Down';
    return html`
      ${row(`${word}: leg moves`, (t) => t.moving - t.start, '')}
      ${row(`${word}: leg locked`, (t) => t.locked - t.start, '')}
      ${row(limit === undefined ? `${word}: total` : `${word}: total, ≤ ${limit.toFixed(1)}`, (t) => t.total, 'total')}
      ${before.length === 0 ? nothing : row(`${word}: total ${held === undefined ? 'before' : 'held'}`, (t) => t.total, 'former')}
    `;
  }

  #cell(value: number | undefined, limit: number | undefined): TemplateResult {
    return html`<td>${value === undefined ? 'none' : this.#judged(value, limit)}</td>`;
  }

  #judged(value: number, limit: number | undefined): unknown {
    if (!Number.isFinite(value)) return html`<span title="Not reached in this run">never</span>`;
    // Four figures are enough on a slow swing, and fit.
    const shown = value.toFixed(value < 100 ? 2 : 1);
    if (limit === undefined || value <= limit) return shown;
    return html`<span class="over"
      >${sign('caution')}${shown}<span class="aside"> over the limit</span></span
    >`;
  }
}

define('ww-times', Times);
