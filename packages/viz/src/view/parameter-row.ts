/** One figure that can be changed: its field, unit and range; a slider and its reason while it is at hand. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { asTyped, displayOf, figureText, numberIn, reachOf } from '../model/figure-text.js';
import type { Figure } from '../model/figure-text.js';
import { written } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { ParameterFacts } from '../worker/parameters-message.js';
import type { Display, Issue, Picture } from '../worker/message.js';

export interface RowParts {
  readonly facts: ParameterFacts;
  readonly picture: Picture;
  readonly state: State;
  /** Being typed and not applied yet. */
  readonly draft: string | undefined;
  /** At hand: its slider and its reason are shown. */
  readonly open: boolean;
  /** What the card on show sets it to, in its place. */
  readonly ruled: ParameterFacts | undefined;
  readonly deeds: RowDeeds;
}

export interface RowDeeds {
  readonly draft: (facts: ParameterFacts, text: string) => void;
  readonly apply: (facts: ParameterFacts, display: Display) => void;
  readonly put: (facts: ParameterFacts, value: string) => void;
  readonly slide: (facts: ParameterFacts, value: string) => void;
  readonly settle: () => void;
  readonly reset: (facts: ParameterFacts) => void;
  readonly key: (e: KeyboardEvent, facts: ParameterFacts, display: Display) => void;
  readonly at: (path: string) => void;
}

/** Steps of a slider. */
const STEPS = 200;
/** Digits of the ends of a range. */
const RANGE = 3;
/** Digits of what a slider gives. */
const ROUND = 4;

export function parameterRow(parts: RowParts): TemplateResult {
  const { facts, picture, state, open, ruled, deeds } = parts;
  const display = displayOf(facts, picture, state.system);
  const edit = state.edits.find((e) => e.path === facts.path);
  const refused = state.changes.refused.find((r) => r.edit.path === facts.path);
  const id = facts.path.replaceAll('.', '_');
  const was = figureText(facts.value, display);
  return html`<div
    class="row ${edit === undefined ? '' : 'changed'} ${refused === undefined ? '' : 'wrong'}"
    data-path=${facts.path}
    @focusin=${() => deeds.at(facts.path)}
  >
    <label for=${id}>${facts.title}</label>
    ${field(parts, id, display)}
    ${
      edit === undefined && refused === undefined
        ? nothing
        : html`<button
            class="reset"
            title="As in the file: ${was}"
            @click=${() => deeds.reset(facts)}
          >
            Reset<span class="aside">: ${facts.title}, to ${was} as in the file</span>
          </button>`
    }
    <p class="about" id="${id}-about">
      ${edit === undefined ? nothing : html`<b>Changed, was ${was}.</b> `}${rangeText(facts, display)}${
        ruled === undefined
          ? nothing
          : html` <b
              >This card sets it to ${figureText(ruled.value, display)}: the figure here does not
              count in this test.</b
            >`
      }
    </p>
    ${refused === undefined ? nothing : explained(id, refused.issues, refused.edit.value)}
    ${open ? more(parts, display) : nothing}
  </div>`;
}

/** What is in force: the change as the run has it, or what the file says. */
export function inForce({ facts, picture, state }: Pick<RowParts, 'facts' | 'picture' | 'state'>): {
  readonly value: Figure | undefined;
  /** As typed, while the run with it has not come. */
  readonly typed: string | undefined;
} {
  const edit = state.edits.find((e) => e.path === facts.path);
  if (edit === undefined) return { value: facts.value, typed: undefined };
  const shown = picture.edits.some((e) => e.path === edit.path && e.value === edit.value);
  const value = picture.figures[facts.path];
  return shown && value !== undefined
    ? { value, typed: undefined }
    : { value: undefined, typed: edit.value };
}

/** What stands in the field. */
function textIn(parts: RowParts, display: Display): string {
  const { facts, state, draft } = parts;
  const refused = state.changes.refused.find((r) => r.edit.path === facts.path);
  const { value, typed } = inForce(parts);
  const text = draft ?? refused?.edit.value ?? typed;
  const unit = ` ${display.unit}`;
  if (text !== undefined)
    return draft === undefined && display.unit !== '' && text.endsWith(unit)
      ? text.slice(0, -unit.length)
      : text;
  return typeof value === 'number' ? numberIn(value, display) : String(value ?? '');
}

function field(parts: RowParts, id: string, display: Display): TemplateResult {
  const { facts, state, deeds } = parts;
  const refused = state.changes.refused.some((r) => r.edit.path === facts.path);
  const { value, typed } = inForce(parts);
  if (facts.kind === 'choice')
    return html`<select
      id=${id}
      aria-describedby="${id}-about"
      @change=${(e: Event) => deeds.put(facts, (e.target as HTMLSelectElement).value)}
    >
      ${facts.choices?.map((c) => html`<option value=${c} .selected=${live(c === String(typed ?? value))}>${c}</option>`)}
    </select>`;
  if (facts.kind === 'switch') {
    const on = typed === undefined ? value === true : typed === 'yes';
    return html`<span class="switch"
      ><input
        type="checkbox"
        id=${id}
        aria-describedby="${id}-about"
        .checked=${live(on)}
        @change=${(e: Event) => deeds.put(facts, (e.target as HTMLInputElement).checked ? 'yes' : 'no')}
      />${on ? 'yes' : 'no'}</span
    >`;
  }
  const common = {
    input: (e: Event) => deeds.draft(facts, (e.target as HTMLInputElement).value),
    change: () => deeds.apply(facts, display),
    key: (e: KeyboardEvent) => deeds.key(e, facts, display),
  };
  const told = `${id}-about${refused ? ` ${id}-wrong` : ''}`;
  if (facts.kind === 'text')
    return html`<textarea
      id=${id}
      rows="3"
      spellcheck="false"
      aria-describedby=${told}
      aria-invalid=${refused}
      .value=${live(textIn(parts, display))}
      @input=${common.input}
      @change=${common.change}
      @keydown=${common.key}
    ></textarea>`;
  return html`<span class="field"
    ><input
      id=${id}
      inputmode="decimal"
      autocomplete="off"
      spellcheck="false"
      aria-describedby=${told}
      aria-invalid=${refused}
      .value=${live(textIn(parts, display))}
      @input=${common.input}
      @change=${common.change}
      @keydown=${common.key}
    /><span class="unit">${written(display.unit)}</span></span
  >`;
}

function rangeText({ range, usual, kind }: ParameterFacts, display: Display): string {
  const out: string[] = [];
  if (range !== undefined) {
    const [low, high] = range.map((v) => numberIn(v, display, RANGE).replace('-', '\u2212'));
    const unit = display.unit === '' ? '' : `\u00a0${written(display.unit)}`;
    out.push(`${low} to ${high}${unit}`);
  }
  if (kind === 'text') out.push('As in a file; Enter applies it');
  if (usual !== undefined) out.push(`usual ${figureText(usual, display)}`);
  return out.join('; ');
}

function explained(id: string, issues: readonly Issue[], typed: string): TemplateResult {
  return html`<div class="why-not" id="${id}-wrong" role="alert">
    <p><b>Not applied: ${typed === '' ? 'nothing was written' : typed}.</b></p>
    ${issues.map(
      (i) =>
        html`<p>
          ${i.message}.${i.allowed === '' ? nothing : html` Allowed: ${i.allowed}.`}${
            i.hint === '' ? nothing : html` ${i.hint}.`
          }
        </p>`,
    )}
    <p class="soft">The run on show is the one before.</p>
  </div>`;
}

/** Slider and reason. */
function more(parts: RowParts, display: Display): TemplateResult {
  const { facts } = parts;
  const { value } = inForce(parts);
  const reach = reachOf(facts);
  return html`${reach === undefined ? nothing : slider(parts, display, reach, value)}
    <p class="why">${facts.why === '' ? '' : `Why: ${facts.why}.`} <code>${facts.path}</code></p>`;
}

function slider(
  { facts, deeds }: RowParts,
  display: Display,
  [low, high]: readonly [number, number],
  value: Figure | undefined,
): TemplateResult {
  const now = typeof value === 'number' ? value : low;
  const at = Math.round(((now - low) / (high - low)) * STEPS);
  const slide = (e: Event): void => {
    const share = Number((e.target as HTMLInputElement).value) / STEPS;
    const shown = (low + share * (high - low)) * display.factor + display.shift;
    // A round figure, but never one beyond the end.
    const round = Number(shown.toPrecision(ROUND));
    const si = (round - display.shift) / display.factor;
    deeds.slide(facts, asTyped(Math.min(high, Math.max(low, si)), display));
  };
  return html`<input
    type="range"
    aria-label="${facts.title}, slider"
    min="0"
    max=${STEPS}
    .value=${live(String(Math.min(STEPS, Math.max(0, at))))}
    aria-valuetext=${figureText(now, display)}
    @input=${slide}
    @change=${deeds.settle}
  />`;
}
