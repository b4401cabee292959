import { css, html, nothing } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import {
  agrees,
  deeds,
  placed,
  sentenceOfMeasured,
  timeable,
  USUAL_ERROR,
} from '../model/measured.js';
import type { MeasuredTime, MeasuredWork } from '../model/measured.js';
import { lanes, GEAR } from '../model/lanes.js';
import { margin, plain, seconds } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { formStyles } from './form.styles.js';
import { shared } from './shared.styles.js';

/** Times read off a watch: taken down, compared with the run, crossed out. */
export class MeasuredForm extends View {
  static override properties: PropertyDeclarations = {
    ...View.properties,
    work: { attribute: false },
    since: { state: true },
    on: { state: true },
    wrong: { state: true },
    opened: { state: true },
  };
  static override styles = [
    shared,
    formStyles,
    css`
      ul {
        list-style: none;
        margin: 0.7rem 0 0;
        padding: 0;
        border-top: 1px solid var(--rule);
        max-height: 14rem;
        overflow: auto;
      }
      li {
        display: flex;
        gap: 0.6rem;
        align-items: center;
        padding: 0.25rem 0;
        border-bottom: 1px solid var(--rule);
        font-size: 0.9rem;
      }
      li span {
        flex: 1;
      }
    `,
  ];

  declare work: MeasuredWork;
  /** The deed and the part chosen in the form; the first there is until the user chooses. */
  declare since: string | undefined;
  declare on: string | undefined;
  declare wrong: string;
  declare opened: boolean;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'measured', 'system'];

  constructor() {
    super();
    this.since = undefined;
    this.on = undefined;
    this.wrong = '';
    this.opened = false;
  }

  open(): void {
    this.opened = true;
    this.wrong = '';
    // With its content, so that the focus goes to the right place.
    void this.updateComplete.then(() => this.#dialog?.showModal());
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  protected override render(): TemplateResult {
    const { picture, measured } = this.state;
    if (picture === undefined || !this.opened) return html``;
    return html`<dialog aria-labelledby="title" @close=${() => (this.opened = false)}>
      <h2 id="title">Times measured by hand</h2>
      <p class="soft">
        Read off a watch on the aircraft; the chart shows them as rings over the run, with whiskers
        for the reading error.
      </p>
      ${this.#form(picture)}
      ${
        measured.length === 0
          ? nothing
          : html`<ul tabindex="0" aria-label="Taken down">
              ${measured.map((m) => this.#item(picture, m))}
            </ul>`
      }
      <div class="end">
        ${measured.length < 2 ? nothing : html`<button @click=${() => this.work.clear()}>Cross out all</button>`}
        <button @click=${() => this.#dialog?.close()}>Close</button>
      </div>
    </dialog>`;
  }

  #form(picture: Picture): TemplateResult {
    const all = deeds(picture);
    // Most often the lever is what the watch is started at.
    const lever = picture.devices.find((d) => d.lever)?.name ?? '';
    const first = all.find((d) => d.name.startsWith(`${lever} `)) ?? all[0];
    const since =
      [...all.map((d) => d.name), ''].find((s) => s === this.since) ?? first?.name ?? '';
    const events = timeable(picture, since);
    const names = lanes(picture)
      .map((l) => l.name)
      .filter((n) => events.some((e) => e.device === n));
    const unit = picture.units.find((u) => names.includes(u.name))?.name;
    const on = names.find((n) => n === this.on) ?? unit ?? names[0] ?? '';
    const seen = events.filter((e) => e.device === on);
    const last = seen.at(-1)?.to;
    const option = (value: string, word: string, chosen: boolean): TemplateResult =>
      html`<option value=${value} .selected=${chosen}>${word}</option>`;
    return html`<form @submit=${this.#put} novalidate>
      <label
        >Watch started at
        <select
          name="since"
          @change=${(e: Event) => (this.since = (e.target as HTMLSelectElement).value)}
        >
          ${all.map((d) => option(d.name, plain(d.name), d.name === since))}
          ${option('', 'start of the run', since === '')}
        </select></label
      >
      <label
        >Stopped at
        <select
          name="on"
          @change=${(e: Event) => (this.on = (e.target as HTMLSelectElement).value)}
        >
          ${names.map((n) => option(n, n === GEAR ? 'whole gear' : plain(n), n === on))}
        </select></label
      >
      <label
        >being
        <select name="event">
          ${seen.map((e) => option(e.to, e.to, e.to === last))}
        </select></label
      >
      <label>Read, s <input name="time" inputmode="decimal" autocomplete="off" autofocus /></label>
      <label
        >Error ±, s <input name="error" inputmode="decimal" autocomplete="off" value=${USUAL_ERROR}
      /></label>
      <button class="main">Take down</button>
      <p role="alert" class="fail">${this.wrong}</p>
    </form>`;
  }

  #item(picture: Picture, m: MeasuredTime): TemplateResult {
    const p = placed(picture, m);
    const how =
      p?.entry === undefined
        ? 'nothing of it in this run'
        : `run ${seconds(m.time - p.difference)}, measured ${margin(p.difference, 'time', picture, this.state.system)}: ${agrees(p) ? 'within' : 'outside'} the error`;
    return html`<li>
      <span>${sentenceOfMeasured(m)}<br /><span class="soft">${how}</span></span>
      <button aria-label="Cross out ${sentenceOfMeasured(m)}" @click=${() => this.work.remove(m)}>
        Cross out
      </button>
    </li>`;
  }

  #put = (e: SubmitEvent): void => {
    e.preventDefault();
    const form = e.target as HTMLFormElement;
    const data = new FormData(form);
    const word = (name: string): string => {
      const value = data.get(name);
      return typeof value === 'string' ? value : '';
    };
    // A comma for the point, as much of the world writes it; empty is not nought.
    const number = (name: string): number => {
      const text = word(name).trim().replace(',', '.');
      return text === '' ? NaN : Number(text);
    };
    this.wrong = this.work.put({
      on: word('on'),
      event: word('event'),
      since: word('since'),
      time: number('time'),
      error: number('error'),
    });
    const time = form.elements.namedItem('time');
    if (!(time instanceof HTMLInputElement)) return;
    if (this.wrong === '') time.value = '';
    time.focus();
  };
}

define('ww-measured-form', MeasuredForm);
