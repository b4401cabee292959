/** The time between two marks in words, and what can be done with it. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Between } from '../model/between.js';
import { seconds } from '../model/sentence.js';
import type { Works } from './index.js';

export function betweenBar(read: Between, works: Works): TemplateResult {
  const { from, to, live } = read;
  return html`<div class="between">
    <output aria-label="Time between two marks"
      ><b>${seconds(to.t - from.t, 3)}</b> from ${from.words} at ${seconds(from.t)} to ${to.words}
      at
      ${seconds(to.t)}${live ? html`<span class="soft">: go to the other mark, then hold it</span>` : nothing}</output
    >
    <span class="spread"></span>
    <button
      ?disabled=${from.t === to.t}
      @click=${() => works.loop.over(from.t, to.t)}
      title="Play from the one mark to the other, over and over"
    >
      Loop it
    </button>
    <button @click=${() => works.between.clear()} title="Let the marks go (Esc)">Let go</button>
  </div>`;
}
