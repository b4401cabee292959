import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
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
        padding: 0.16rem 0.4rem;
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
      thead th.unit {
        text-transform: capitalize;
      }
      tr.total th,
      tr.total td {
        font-weight: 700;
        border-bottom: 1px solid var(--rule);
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

  protected readonly watches: readonly (keyof State)[] = ['picture'];

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
            <th scope="col"><span class="soft">Seconds</span></th>
            ${units.map((u) => html`<th scope="col" class="unit">${u.name}</th>`)}${both ? html`<th scope="col">L–R</th>` : nothing}
          </tr>
        </thead>
        <tbody>
          ${(['up', 'down'] as const).map((way) => this.#rows(picture, way, both))}
        </tbody>
      </table>
    </div>`;
  }

  #rows(picture: Picture, way: 'up' | 'down', both: boolean): TemplateResult | typeof nothing {
    const found = picture.timings.filter((t) => t.direction === way);
    if (found.length === 0) return nothing;
    const of = (unit: string): Timing | undefined => found.find((t) => t.unit === unit);
    const limit = picture.limits[way === 'up' ? 'timeUp' : 'timeDown'];
    const spreadLimit = picture.limits.spread;
    const row = (label: unknown, value: (t: Timing) => number, total: boolean): TemplateResult => {
      const left = of(picture.units.find((u) => u.side === 'left')?.name ?? '');
      const right = of(picture.units.find((u) => u.side === 'right')?.name ?? '');
      const spread =
        left === undefined || right === undefined ? NaN : Math.abs(value(left) - value(right));
      return html`<tr class=${total ? 'total' : ''}>
        <th scope="row">${label}</th>
        ${picture.units.map((u) => {
          const t = of(u.name);
          return this.#cell(t === undefined ? undefined : value(t), total ? limit : undefined);
        })}
        ${both ? html`<td class="spread">${this.#judged(spread, total ? spreadLimit : undefined)}</td>` : nothing}
      </tr>`;
    };
    const word = way === 'up' ? 'Up' : 'Down';
    return html`
      ${row(`${word}: leg moves`, (t) => t.moving - t.start, false)}
      ${row(`${word}: leg locked`, (t) => t.locked - t.start, false)}
      ${row(limit === undefined ? `${word}: total` : `${word}: total (≤ ${limit.toFixed(1)})`, (t) => t.total, true)}
    `;
  }

  #cell(value: number | undefined, limit: number | undefined): TemplateResult {
    return html`<td>${value === undefined ? 'none' : this.#judged(value, limit)}</td>`;
  }

  #judged(value: number, limit: number | undefined): unknown {
    if (!Number.isFinite(value)) return html`<span title="Not reached">not reached</span>`;
    if (limit === undefined || value <= limit) return value.toFixed(2);
    return html`<span class="over"
      >${sign('caution')} ${value.toFixed(2)}<span class="aside"> over the limit</span></span
    >`;
  }
}

define('ww-times', Times);
