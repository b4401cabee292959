/** The form of one step of a lesson being written. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { LessonDesk } from '../model/lesson-desk.js';
import { wordsOf } from '../model/lesson-export.js';
import {
  momentHere,
  momentWords,
  partsOf,
  pickedHere,
  sceneHere,
  sceneWords,
} from '../model/lesson-draft.js';
import { plain } from '../model/sentence.js';
import type { EventPattern, LessonStep, Measure, PreparedStep } from '../worker/lesson-message.js';
import type { Picture } from '../worker/message.js';

export interface StepParts {
  readonly desk: LessonDesk;
  readonly step: LessonStep;
  readonly index: number;
  /** As the runs make it; undefined while they are asked. */
  readonly prepared: PreparedStep | undefined;
  readonly picture: Picture | undefined;
}

type Step<K extends LessonStep['kind']> = Extract<LessonStep, { kind: K }>;

export function stepForm(parts: StepParts): TemplateResult {
  const { step, prepared } = parts;
  return html`<div class="form">
    ${area(step.kind === 'tell' ? 'Words' : 'Question; empty for the usual one', step.text, (text) => put(parts, { ...step, text }))}
    ${runRow(parts)} ${momentRow(parts)} ${ofKind(parts)}
    ${step.kind === 'tell' ? nothing : area('Words after the answer', step.why, (why) => put(parts, { ...step, why }))}
    ${
      prepared === undefined || prepared.right.length === 0
        ? nothing
        : html`<p class="truth">By the run: <b>${wordsOf(prepared, prepared.right)}</b></p>`
    }
  </div>`;
}

const put = ({ desk, index }: StepParts, step: LessonStep): void => desk.setStep(index, step);

function area(title: string, value: string, change: (text: string) => void): TemplateResult {
  return html`<label class="field"
    >${title}
    <textarea
      rows="2"
      maxlength="2000"
      .value=${value}
      @change=${(e: Event) => change((e.target as HTMLTextAreaElement).value)}
    ></textarea>
  </label>`;
}

function runRow(parts: StepParts): TemplateResult {
  const { desk, step, picture } = parts;
  const use = (): void => {
    const { here } = desk;
    if (here === undefined) return;
    const scene = sceneHere(here);
    if (step.kind === 'find')
      put(parts, { ...step, card: scene.card, faults: here.picture.faults });
    else put(parts, { ...without(step), ...scene });
  };
  return html`<div class="row">
    <span>${step.kind === 'compare' ? 'Run A' : 'Run'}: ${sceneWords(step, picture)}</span>
    <button ?disabled=${desk.obstacle !== ''} @click=${use}>Use the run on show</button>
  </div>`;
}

/** A step with no faults of its own. */
function without(step: Exclude<LessonStep, Step<'find'>>): Exclude<LessonStep, Step<'find'>> {
  const { faults, ...rest } = step;
  return faults === undefined ? step : rest;
}

function momentRow(parts: StepParts): TemplateResult | typeof nothing {
  const { desk, step } = parts;
  if (step.kind === 'find' || step.kind === 'compare') return nothing;
  const picked = desk.here === undefined ? undefined : pickedHere(desk.here);
  const use = (): void => {
    if (desk.here !== undefined) put(parts, { ...step, moment: momentHere(desk.here) });
  };
  return html`<div class="row">
    <span>Stops ${momentWords(step.moment)}</span>
    <button @click=${use}>
      ${picked === undefined ? 'Stop at the play head' : 'Stop at the event picked out'}
    </button>
  </div>`;
}

function ofKind(parts: StepParts): TemplateResult | typeof nothing {
  const { step } = parts;
  switch (step.kind) {
    case 'predict':
      return names(parts, 'Ask about', step.of, (of) => put(parts, { ...step, of }));
    case 'arrange':
      return events(parts, step);
    case 'find':
      return html`<label class="field short"
          >Checks allowed
          <input
            type="number"
            min="1"
            max="12"
            .value=${String(step.budget)}
            @change=${(e: Event) => put(parts, { ...step, budget: Math.round(Number((e.target as HTMLInputElement).value)) })}
          />
        </label>
        ${names(parts, 'May be checked', step.of, (of) => put(parts, { ...step, of }))}
        ${step.faults.length === 1 ? nothing : html`<p class="no">Set exactly one fault under Faults, then use the run on show.</p>`}`;
    case 'compare':
      return compareRows(parts, step);
    default:
      return nothing;
  }
}

function chip(text: string, remove: () => void): TemplateResult {
  return html`<li>
    <span>${text}</span><button aria-label="Take out: ${text}" @click=${remove}>×</button>
  </li>`;
}

/** Parts by name; none means all. */
function names(
  { picture }: StepParts,
  title: string,
  list: readonly string[],
  change: (names: readonly string[]) => void,
): TemplateResult {
  const units = picture?.units.map((u) => u.name) ?? [];
  const known = picture === undefined ? [] : [...units, ...partsOf(picture)];
  const add = (e: Event): void => {
    const select = e.target as HTMLSelectElement;
    if (select.value !== '') change([...list, select.value]);
    select.value = '';
  };
  return html`<div class="row">
    <span>${title}: ${list.length === 0 ? 'everything' : ''}</span>
    <ul class="chips">
      ${list.map((name) => chip(plain(name), () => change(list.filter((n) => n !== name))))}
    </ul>
    <select aria-label="${title}: add" @change=${add}>
      <option value="">only …</option>
      ${known.filter((name) => !list.includes(name)).map((name) => html`<option value=${name}>${plain(name)}</option>`)}
    </select>
  </div>`;
}

function events(parts: StepParts, step: Step<'arrange'>): TemplateResult {
  const { desk } = parts;
  const picked = desk.here === undefined ? undefined : pickedHere(desk.here);
  const add = (more: readonly EventPattern[]): void => {
    const fresh = more.filter(
      (e) => !step.events.some((o) => o.device === e.device && o.to === e.to),
    );
    put(parts, { ...step, events: [...step.events, ...fresh] });
  };
  return html`<div class="row">
    <span>Events:</span>
    <ul class="chips">
      ${step.events.map((e) => chip(`${plain(e.device)}: ${e.to}`, () => put(parts, { ...step, events: step.events.filter((o) => o !== e) })))}
    </ul>
    <button
      ?disabled=${picked === undefined}
      @click=${() => picked !== undefined && add([{ device: picked.device, to: picked.to }])}
    >
      Add the event picked out
    </button>
    <button @click=${() => add(desk.next)}>Add the next ones</button>
  </div>`;
}

/** A measure as a word of the list, and back. */
const wordOf = (m: Measure): string => ('rule' in m ? `rule ${m.rule}` : `${m.time} ${m.unit}`);

function compareRows(parts: StepParts, step: Step<'compare'>): TemplateResult {
  const { desk, picture } = parts;
  const units = picture?.units.map((u) => u.name) ?? [];
  const rules = new Map((picture?.flags ?? []).map((f) => [f.rule, f.title]));
  if ('rule' in step.measure && !rules.has(step.measure.rule))
    rules.set(step.measure.rule, plain(step.measure.rule));
  const measures: (readonly [Measure, string])[] = [
    ...(['up', 'down'] as const).flatMap((time) =>
      ['', ...units].map((unit): readonly [Measure, string] => [
        { time, unit },
        `time ${time}, ${unit === '' ? 'the last of all' : plain(unit)}`,
      ]),
    ),
    ...[...rules].map(([rule, title]): readonly [Measure, string] => [
      { rule },
      `in hand: ${title}`,
    ]),
  ];
  const now = wordOf(step.measure);
  const choose = (e: Event): void => {
    const { value } = e.target as HTMLSelectElement;
    const found = measures.find(([m]) => wordOf(m) === value);
    if (found !== undefined) put(parts, { ...step, measure: found[0] });
  };
  return html`<div class="row">
      <span>Run B: ${sceneWords(step.with, picture)}</span>
      <button
        ?disabled=${desk.obstacle !== ''}
        @click=${() => desk.here !== undefined && put(parts, { ...step, with: sceneHere(desk.here) })}
      >
        Use the run on show as B
      </button>
    </div>
    <label class="field short"
      >Which has more of
      <select @change=${choose}>
        ${measures.map(([m, title]) => html`<option value=${wordOf(m)} .selected=${wordOf(m) === now}>${title}</option>`)}
      </select>
    </label>`;
}
