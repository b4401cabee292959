import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import {
  compare,
  dueOf,
  expectedOf,
  gaugeOf,
  GEAR,
  limitOf,
  withGauge,
  withRemark,
  withTime,
} from '../model/observed.js';
import { signed } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { timedEvents, wordOf } from '../model/tap-keys.js';
import type { TestCardWork } from '../model/test-card.js';
import type { ObservedSwing, Remark, TimedEvent } from '../worker/sheet-message.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { gaugeFields } from './gauge-fields.js';
import './number-field.js';
import type { NumberEntered } from './number-field.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';
import { swingEntryStyles } from './swing-entry.styles.js';
import './swing-more.js';

/** As core has them: the page's main thread does not load core. */
const REMARKS: readonly Remark[] = [
  'did not move',
  'stopped short',
  'moved by jerks',
  'drifts when neutral',
  'doors came open again',
  'slower than the other side',
  'faster than the other side',
];
/** One row of the sheet in full: times against those expected, gauge, remarks. All of it can be written by hand. */
export class SwingEntry extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, swingEntryStyles];

  declare work: TestCardWork;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard', 'system'];

  protected override render(): TemplateResult {
    const { picture, testCard } = this.state;
    const swing = testCard.draft?.sheet.swings[testCard.picked];
    if (picture === undefined || swing === undefined) return html``;
    return html`
      <div class="wide" tabindex="0" role="region" aria-label="Times of the swing">
        ${this.#times(swing, picture)}
      </div>
      ${this.#gauges(swing)}
      <fieldset class="remarks">
        <legend>Remarks</legend>
        ${picture.units.map((u) => this.#remarks(swing, u.name))}
      </fieldset>
      <label class="note"
        >Note
        <input
          type="text"
          maxlength="1000"
          .value=${swing.note}
          @change=${(e: Event) => {
            const note = (e.target as HTMLInputElement).value;
            this.#change((s) => ({ ...s, note }));
          }}
        />
      </label>
      <ww-swing-more .store=${this.store} .work=${this.work}></ww-swing-more>
    `;
  }

  #change(change: (swing: ObservedSwing) => ObservedSwing): void {
    this.work.changeRow(this.state.testCard.picked, change);
  }

  #times(swing: ObservedSwing, picture: Picture): TemplateResult {
    const expected = dueOf(this.state.testCard.expectation, swing);
    const rows = timedEvents(
      picture,
      expectedOf(this.state.testCard.expectation, swing.direction),
      swing,
    );
    return html`<table>
      <thead>
        <tr>
          <th scope="col">Event</th>
          <th scope="col">Due, s</th>
          <th scope="col">Seen, s</th>
          <th scope="col" class="words">Difference</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(({ unit, event }) => this.#time(swing, unit, event, expected?.times[unit]?.[event]))}
      </tbody>
    </table>`;
  }

  #time(
    swing: ObservedSwing,
    unit: string,
    event: TimedEvent,
    due: number | undefined,
  ): TemplateResult {
    const made = swing.times[unit]?.[event];
    const name = wordOf({ unit, event });
    const error = made?.error ?? this.state.testCard.draft?.sheet.readingError ?? 0;
    const limit =
      unit === GEAR ? limitOf(this.state.testCard.expectation, swing.direction) : undefined;
    const over = made !== undefined && limit !== undefined && made.at > limit;
    const c = made === undefined || due === undefined ? undefined : compare(made, due);
    return html`<tr class=${unit === GEAR ? 'total' : ''}>
      <th scope="row">${name}</th>
      <td>${due === undefined ? '–' : due.toFixed(2)}</td>
      <td class="field">
        <ww-number-field
          .store=${this.store}
          .label=${`${name}, s`}
          .kind=${'time' as const}
          .value=${made?.at}
          @number=${(e: NumberEntered) => {
            const at = e.value;
            this.#change((s) =>
              withTime(s, unit, event, at === undefined ? undefined : { at, error }),
            );
          }}
        ></ww-number-field>
      </td>
      <td class="words">
        ${c === undefined ? nothing : html`<span class=${c.is === 'as expected' ? 'note' : 'caution'}>${sign(c.is === 'as expected' ? 'note' : 'caution')} ${signed(c.seconds)}&nbsp;s, ${c.is}</span>`}
        ${over ? html`<span class="fail">${sign('fail')} over the limit of ${limit.toFixed(1)}&nbsp;s</span>` : nothing}
      </td>
    </tr>`;
  }

  #gauges(swing: ObservedSwing): TemplateResult {
    const node = gaugeOf(swing, this.state.testCard.expectation);
    return gaugeFields(this.store, node, swing.gauges[node], (moment, value) =>
      this.#change((s) => withGauge(s, node, moment, value)),
    );
  }

  #remarks(swing: ObservedSwing, unit: string): TemplateResult {
    const { side, doors = [] } = this.state.picture?.units.find((u) => u.name === unit) ?? {};
    const fits = REMARKS.filter((r) => {
      if (r.startsWith('doors')) return doors.length > 0;
      return side === 'left' || side === 'right' || !r.endsWith('other side');
    });
    return html`<div role="group" aria-label=${`Remarks on ${unit}`}>
      <b>${unit}</b>
      ${fits.map(
        (remark) =>
          html`<label
            ><input
              type="checkbox"
              .checked=${live(swing.remarks[unit]?.includes(remark) === true)}
              @change=${(e: Event) => {
                const { checked } = e.target as HTMLInputElement;
                this.#change((s) => withRemark(s, unit, remark, checked));
              }}
            />
            ${remark}</label
          >`,
      )}
    </div>`;
  }
}

define('ww-swing-entry', SwingEntry);
