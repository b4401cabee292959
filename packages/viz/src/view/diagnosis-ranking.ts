/** The causes with their bars, the likeliest first. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { keyOf, pickedOf } from '../model/diagnosis-state.js';
import type { DiagnosisState } from '../model/diagnosis-state.js';
import type { DiagnosisWork } from '../model/diagnosis.js';
import { plain } from '../model/sentence.js';
import type { MemberLine, RankedLine, Ranking } from '../worker/diagnosis-message.js';
import type { System } from '../worker/message.js';

/** `Dry or seized pivot bearing, left-leg` with parts as they are spoken of. */
export function titleOf({ title, causes }: Pick<MemberLine, 'title' | 'causes'>): string {
  return causes.reduce((text, { on }) => text.replaceAll(`, ${on}`, `, ${plain(on)}`), title);
}

/** The verdict with parts as they are spoken of. */
export function verdictOf({ verdict, ranking }: Ranking[System]): string {
  const causes = ranking.flatMap((line) => line.members.flatMap((m) => m.causes));
  return titleOf({ title: verdict, causes });
}

export function diagnosisRanking(
  work: DiagnosisWork,
  state: DiagnosisState,
  system: System,
): TemplateResult {
  const picked = pickedOf(state, system);
  const lines = state.ranking?.[system].ranking ?? [];
  return html`<ol class="ranking" aria-label="What explains it, the likeliest first">
    ${lines.map((line) => html`<li>${row(work, line, picked)}</li>`)}
  </ol>`;
}

function row(
  work: DiagnosisWork,
  line: RankedLine,
  picked: MemberLine | undefined,
): TemplateResult {
  const [first, ...others] = line.members;
  const told = html`${bar(line.probability)}
    <span class="percent">${line.percent}</span>
    <span class="what"
      ><b>${first === undefined ? line.title : titleOf(first)}</b>
      <span class="soft">${line.odds}</span></span
    >
    ${first === undefined || first.severityText === '' ? nothing : severity(first)}`;
  if (first === undefined) return html`<div class="cause">${told}</div>`;
  return html`<button
      class="cause"
      data-cause=${keyOf(first)}
      aria-pressed=${first === picked}
      @click=${() => work.pick(first)}
    >
      ${told}
    </button>
    ${
      others.length === 0
        ? nothing
        : html`<details ?open=${picked !== undefined && others.includes(picked)}>
            <summary>
              or ${others.length + line.more} more that these observations cannot tell from it
            </summary>
            <ul>
              ${others.map(
                (m) =>
                  html`<li>
                    <button
                      data-cause=${keyOf(m)}
                      aria-pressed=${m === picked}
                      @click=${() => work.pick(m)}
                    >
                      ${titleOf(m)} <span class="number">${m.percent}</span>
                    </button>
                  </li>`,
              )}
              ${line.more === 0 ? nothing : html`<li class="soft">and ${line.more} less likely ones</li>`}
            </ul>
          </details>`
    }`;
}

/** How likely, as a length; the figure stands beside it. */
function bar(share: number): TemplateResult {
  return html`<svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<rect class="all" width="100" height="10"></rect><rect width=${(100 * share).toFixed(1)} height="10"></rect>`}
  </svg>`;
}

/** The fitted severity of each cause from none to the worst, with its range. */
function severity({ severities, severityText }: MemberLine): TemplateResult {
  return html`<span class="fitted soft">${severities.map(range)}severity ${severityText}</span>`;
}

function range({ at, range: [low, high] }: MemberLine['severities'][number]): TemplateResult {
  return html`<svg class="range" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<path d="M0,5H100" class="axis"></path><path d="M${(100 * low).toFixed(1)},5H${(100 * high).toFixed(1)}"></path><rect x=${(100 * at - 1).toFixed(1)} width="2" height="10"></rect>`}
  </svg>`;
}
