/** A question of a lesson as a form: to choose from, to put in order, checks to be made. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { LessonWork } from '../model/lesson.js';
import type { Answer } from '../model/lesson-state.js';
import { inPlace } from '../model/lesson-state.js';
import { count } from '../model/sentence.js';
import type { LessonChoice, PreparedStep } from '../worker/lesson-message.js';
import { toldLines } from './lesson-told.js';
import { sign } from './sign.js';

export interface QuestionParts {
  readonly step: PreparedStep;
  readonly answer: Answer;
  readonly work: LessonWork;
  /** The choice that is ticked. */
  readonly picked: string;
  readonly pick: (id: string) => void;
  /** Ids in the order they stand. */
  readonly order: readonly string[];
  readonly move: (id: string, to: number) => void;
  /** In front of a room: to be read, not to be filled in. */
  readonly room: boolean;
}

export function question(parts: QuestionParts): TemplateResult {
  const { step, room } = parts;
  if (room) return roomQuestion(parts);
  return html`<form @submit=${(e: Event) => submit(e, parts)}>
    ${step.kind === 'find' ? checks(parts) : nothing}
    ${step.kind === 'arrange' ? arrangeList(parts) : radios(parts)} ${wrong(parts)}
    ${buttons(parts)}
  </form>`;
}

function submit(e: Event, { step, work, picked, order }: QuestionParts): void {
  e.preventDefault();
  if (step.kind === 'arrange') work.answer(order);
  else if (picked !== '') work.answer([picked]);
}

function buttons({ step, answer, work, picked }: QuestionParts): TemplateResult | typeof nothing {
  if (answer.settled) return nothing;
  const ready = step.kind === 'arrange' || picked !== '';
  return html`<div class="row">
    <button class="main" type="submit" ?disabled=${!ready}>
      ${step.kind === 'arrange' ? 'That is the order' : 'That is my answer'}
    </button>
    <button type="button" @click=${() => work.reveal()}>Show the answer</button>
  </div>`;
}

const chosen = (step: PreparedStep, id: string | undefined): LessonChoice | undefined =>
  step.choices.find((c) => c.id === id);

/** What was wrong about the last answer. */
function wrong({ step, answer }: QuestionParts): TemplateResult | typeof nothing {
  if (answer.settled || answer.tries === 0) return nothing;
  if (step.kind === 'arrange')
    return html`<p class="verdict no">
      ${sign('fail')} <b>Not so.</b> ${inPlace(step, answer.given)} of ${step.right.length} stand in
      their place.
    </p>`;
  const choice = chosen(step, answer.given[0]);
  // A wrong suspect's tale would spend a check that was not paid for.
  return html`<p class="verdict no">
    ${sign('fail')} <b>Not so.</b> ${step.kind === 'find' ? nothing : choice?.told} Try again.
  </p>`;
}

function radios({ step, answer, picked, pick }: QuestionParts): TemplateResult {
  return html`<fieldset>
    <legend class="aside">${step.question}</legend>
    ${step.choices.map((c) => {
      const right = answer.settled && step.right.includes(c.id);
      const mine = answer.settled && answer.given.includes(c.id);
      return html`<label class="choice ${right ? 'right' : mine ? 'missed' : ''}">
        <input
          type="radio"
          name="choice"
          value=${c.id}
          .checked=${answer.settled ? mine : picked === c.id}
          ?disabled=${answer.settled}
          @change=${() => pick(c.id)}
        />
        <span
          >${c.text}${right ? html` <b class="tag">${sign('note')} right</b>` : nothing}${answer.settled && c.told !== '' ? html`<small>${c.told}</small>` : nothing}</span
        >
      </label>`;
    })}
  </fieldset>`;
}

function arrangeList({ step, answer, order, move }: QuestionParts): TemplateResult {
  const ids = answer.settled ? step.right : order;
  return html`<ol class="arrange" aria-label="Order, first to last">
    ${ids.map((id, i) => {
      const choice = chosen(step, id);
      const text = choice?.text ?? id;
      if (answer.settled)
        return html`<li class="right">
          <span>${text}<small>${choice?.told}</small></span>
        </li>`;
      return html`<li
        draggable="true"
        data-id=${id}
        @dragstart=${(e: DragEvent) => e.dataTransfer?.setData('text/plain', id)}
        @dragover=${(e: DragEvent) => e.preventDefault()}
        @drop=${(e: DragEvent) => {
          e.preventDefault();
          e.stopPropagation();
          const dragged = e.dataTransfer?.getData('text/plain') ?? '';
          if (ids.includes(dragged)) move(dragged, i);
        }}
      >
        <span>${text}</span>
        <button
          type="button"
          data-to="earlier"
          aria-label="Earlier: ${text}"
          ?disabled=${i === 0}
          @click=${() => move(id, i - 1)}
        >
          ↑
        </button>
        <button
          type="button"
          data-to="later"
          aria-label="Later: ${text}"
          ?disabled=${i === ids.length - 1}
          @click=${() => move(id, i + 1)}
        >
          ↓
        </button>
      </li>`;
    })}
  </ol>`;
}

function checks({ step, answer, work }: QuestionParts): TemplateResult {
  const left = step.budget - answer.checks.length;
  const made = answer.checks.flatMap((id) => step.checks.filter((c) => c.id === id));
  return html`<section class="checks" aria-label="Checks">
    <h3>
      ${answer.settled ? 'Checks made' : `Checks: ${count(left, 'left', 'left')} of ${step.budget}`}
    </h3>
    ${made.map((c) => html`<div class="reading"><b>${c.text}</b>${toldLines(c.reading, work.store.state)}</div>`)}
    ${
      answer.settled || left === 0
        ? nothing
        : html`<div class="offers">
            ${step.checks.filter((c) => !answer.checks.includes(c.id)).map((c) => html`<button type="button" data-check=${c.id} @click=${() => work.check(c.id)}>${c.text}</button>`)}
          </div>`
    }
  </section>`;
}

/** Letters to call out. */
const LETTERS = 'ABCDEFGHIJ';

function roomQuestion({ step, answer, work }: QuestionParts): TemplateResult {
  const shown = answer.settled;
  const list = step.kind === 'arrange' && shown ? step.right : step.choices.map((c) => c.id);
  return html`<ol class="room" aria-label="Choices">
      ${list.map((id, i) => {
        const choice = chosen(step, id);
        const right = shown && step.kind !== 'arrange' && step.right.includes(id);
        const letter = step.kind === 'arrange' && shown ? String(i + 1) : LETTERS[i];
        return html`<li class=${right ? 'right' : ''}>
          <b>${letter}</b>
          <span
            >${choice?.text}${right ? html` <b class="tag">${sign('note')} right</b>` : nothing}</span
          >
        </li>`;
      })}
    </ol>
    ${
      shown
        ? nothing
        : html`<div class="row">
            <button class="main" @click=${() => work.reveal()}>Show the answer (Page Down)</button>
          </div>`
    }`;
}
