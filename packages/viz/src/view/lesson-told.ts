/** Lines made from a run: what happened, why, with which margin; each goes to its time in the run. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { margin, seconds, withUnit } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { LessonLine } from '../worker/lesson-message.js';

function figureOf(line: LessonLine, { picture, system }: State): string {
  if (line.value === undefined || line.quantity === undefined || picture === undefined) return '';
  if (line.sort === 'margin') return margin(line.value, line.quantity, picture, system);
  if (line.quantity === 'time') return seconds(line.value, line.value < 0.1 ? 3 : 2);
  return withUnit(line.value, line.quantity, picture, system);
}

/** `seek` is absent where the run may not be gone through. */
export function toldLines(
  lines: readonly LessonLine[],
  state: State,
  seek?: (time: number) => void,
): TemplateResult {
  return html`<ul class="told">
    ${lines.map((line) => {
      const figure = figureOf(line, state);
      const { t } = line;
      const bad = line.sort === 'margin' && (line.value ?? 0) < 0;
      return html`<li class="${line.sort} ${bad ? 'bad' : ''}">
        ${
          t === undefined || line.sort === 'margin'
            ? nothing
            : seek === undefined
              ? html`<b class="number">${seconds(t)}</b> `
              : html`<button
                  class="time number"
                  title="Go there in the run"
                  @click=${() => seek(t)}
                >
                  ${seconds(t)}
                </button> `
        }<span
          >${line.sort === 'cause' ? '← ' : ''}${line.text}${figure === '' ? nothing : html`: <b class="number">${figure}</b>`}</span
        >
      </li>`;
    })}
  </ul>`;
}
