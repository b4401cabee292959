import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { count, seconds } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { listStyles } from './list.styles.js';
import { issueItem } from './issue-item.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** What stood in the way: problems of a file that could not be read, a run that ended early or failed. */
export class IssueList extends View {
  static override styles = [
    shared,
    listStyles,
    css`
      .box {
        border: 2px solid var(--fail);
        border-radius: var(--round);
        background: var(--sheet);
        margin: 0.5rem 0.7rem 0;
      }
      /* Over the page rather than in it: the run below keeps its place until this is dismissed. */
      .over {
        position: absolute;
        z-index: 6;
        left: 0;
        right: 0;
        box-shadow: 0 6px 24px rgb(0 0 0 / 30%);
      }
      :host {
        position: relative;
      }
      .box.caution {
        border-color: var(--caution);
        color: var(--ink);
      }
      .top {
        display: flex;
        gap: 0.6rem;
        align-items: center;
        padding: 0.4rem 0.7rem;
      }
      .top p {
        flex: 1;
      }
      ol {
        max-height: 40vh;
        overflow: auto;
        border-top: 1px solid var(--rule);
      }
      li {
        padding: 0.4rem 0.7rem;
        font-size: 0.9rem;
      }
      code {
        font-family: ui-monospace, Consolas, 'DejaVu Sans Mono', monospace;
        font-size: 0.86em;
        overflow-wrap: anywhere;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = [
    'issues',
    'issuesFile',
    'failure',
    'picture',
  ];

  protected override render(): TemplateResult {
    const { issues, issuesFile, failure, picture } = this.state;
    const kept = picture === undefined ? '' : ' The former run is kept.';
    // A card that was played out may still have waited in vain for an event.
    const outcome = picture?.outcome;
    const early =
      outcome !== undefined && (outcome.kind !== 'done' || outcome.where.length > 0)
        ? outcome
        : undefined;
    return html`
      ${
        issues.length === 0
          ? nothing
          : html`<section class="box over" aria-label="Problems in ${issuesFile}">
              <div class="top">
                ${sign('fail')}
                <p>
                  <b>${issuesFile}</b> could not be read: ${count(issues.length, 'problem')}.${kept}
                </p>
                <button @click=${this.#dismiss}>Dismiss</button>
              </div>
              <ol tabindex="0">
                ${issues.map(issueItem)}
              </ol>
            </section>`
      }
      ${
        failure === ''
          ? nothing
          : html`<section class="box over" aria-label="What went wrong">
              <div class="top">
                ${sign('fail')}
                <p>${failure}${kept}</p>
                <button @click=${this.#dismiss}>Dismiss</button>
              </div>
            </section>`
      }
      ${
        early === undefined
          ? nothing
          : html`<section class="box caution" aria-label="How the run ended">
              <div class="top">
                ${sign('caution')}
                <p>
                  ${early.kind === 'done' ? nothing : html`<b>The run ended early at ${seconds(early.time)}.</b> `}${early.why}
                  ${early.hint}${early.kind === 'done' ? '' : ' What was computed until then is shown.'}
                </p>
              </div>
            </section>`
      }
    `;
  }

  #dismiss = (): void => this.store.dismissIssues();
}

define('ww-issue-list', IssueList);
