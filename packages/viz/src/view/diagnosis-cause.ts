import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { pickedOf } from '../model/diagnosis-state.js';
import type { DiagnosisWork } from '../model/diagnosis.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { ComparisonLine, MemberLine } from '../worker/diagnosis-message.js';
import { define, View } from './base.js';
import { titleOf } from './diagnosis-ranking.js';
import { causeStyles } from './diagnosis-cause.styles.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Entries shown; a sheet may have thousands. */
const MOST = 60;

/** The cause looked at: what it foretells beside what was seen, how it is confirmed and put right. */
export class DiagnosisCause extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, causeStyles];

  declare work: DiagnosisWork;

  protected readonly watches: readonly (keyof State)[] = ['diagnosis', 'system', 'picture'];

  protected override render(): TemplateResult {
    const { diagnosis, system } = this.state;
    const cause = pickedOf(diagnosis, system);
    if (cause === undefined)
      return html`<p class="soft">
        The cause that is looked at is told here, as soon as there is one.
      </p>`;
    const off = cause.comparisons.filter((c) => !c.fits).length;
    return html`
      <h2>${titleOf(cause)}</h2>
      <p>
        ${cause.percent}${cause.severityText === '' ? '' : `; fitted severity ${cause.severityText}`}
      </p>
      ${this.#show(cause)}
      <h3>Foretold beside seen</h3>
      <p class="soft">
        ${off === 0 ? 'Everything fits within reading errors.' : `${off} of ${cause.comparisons.length} do not fit.`}
      </p>
      ${noteOf(cause)} ${comparisonTable(cause.comparisons.slice(0, MOST))}
      ${cause.comparisons.length > MOST ? html`<p class="soft">and more that are not shown</p>` : nothing}
      ${remedies(cause)}
    `;
  }

  #show(cause: MemberLine): TemplateResult {
    const { faults = [], stood } = this.state.picture ?? {};
    const named = (all: readonly { readonly fault: string; readonly on: string }[]): string =>
      all.map((f) => `${f.fault} ${f.on}`).join();
    if (named(faults) !== named(cause.causes))
      return html`<button data-show @click=${() => this.work.show(cause)}>
        Show the swing with this cause
      </button>`;
    // The fit may have been refined since.
    const now = faults.every((f, i) => f.severity === cause.severities[i]?.at);
    return html`<p data-on-show>
        ${sign('note')} The run on show has this
        cause${now ? '' : ', as severe as it was thought to be before'}; what was measured lies over
        its chart.
        ${stood === undefined ? '' : 'It is under the conditions of the sheet, in place of the card’s own.'}
      </p>
      ${now ? nothing : html`<button data-show @click=${() => this.work.show(cause)}>Show it as it fits now</button>`}
      ${stood === undefined ? nothing : html`<button data-usual @click=${() => this.work.showUsual()}>Under the card’s own conditions</button>`}`;
  }
}

export const noteOf = ({ note }: MemberLine): TemplateResult | typeof nothing =>
  note === '' ? nothing : html`<p class="soft">${note}</p>`;

export function comparisonTable(lines: readonly ComparisonLine[]): TemplateResult {
  return html`<table class="beside">
    <thead>
      <tr>
        <th scope="col">Swing</th>
        <th scope="col">What</th>
        <th scope="col">Seen</th>
        <th scope="col">Foretold</th>
        <th scope="col">Fits</th>
      </tr>
    </thead>
    <tbody>
      ${lines.map(
        (c) =>
          html`<tr class=${c.fits ? '' : 'off'}>
            <td>${c.swing}</td>
            <th scope="row">${plain(c.what)}</th>
            <td>${c.seen}</td>
            <td>${c.foretold}</td>
            <td>${c.fits ? 'yes' : html`${sign('caution')} no`}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

export function remedies({ remedies: all }: MemberLine): TemplateResult[] {
  return all.map(
    (r) =>
      html`<section class="block" aria-label="${r.title}, ${plain(r.on)}">
        <h3>${r.title}, ${plain(r.on)}</h3>
        <p class="caution">${sign('caution')} ${r.caution}</p>
        <p><b>To confirm:</b> ${r.confirm}</p>
        <p><b>To put right:</b> ${r.remedy}</p>
      </section>`,
  );
}

define('ww-diagnosis-cause', DiagnosisCause);
