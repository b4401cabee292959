/** A problem in a file, as an item of a list: where, what, what is allowed there. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Issue } from '../worker/message.js';

export function issueItem(i: Issue): TemplateResult {
  return html`<li>
    <b>${i.line > 0 ? `Line ${i.line}, column ${i.column}` : 'In the file'}</b
    >${i.path === '' ? nothing : html` <code>${i.path}</code>`}:
    ${i.message}${i.found === '' ? nothing : html`, found <code>${i.found}</code>`}.
    ${i.allowed === '' ? nothing : html`<br /><span class="soft">Allowed: ${i.allowed}.</span>`}
    ${i.hint === '' ? nothing : html`<br /><span>Hint: ${i.hint}</span>`}
  </li>`;
}
