/** Below the drawings of the bay: what is nearest to what, and the key to the signs. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { SIGN } from '../drawing/glyph.js';
import { leastOf, nearestAt } from '../model/nearest.js';
import { plain, seconds, withUnit } from '../model/sentence.js';
import type { ClearanceFacts } from '../worker/bay-message.js';
import type { Picture, System } from '../worker/message.js';
import { sign } from './sign.js';

export interface BayFoot {
  readonly picture: Picture;
  readonly time: number;
  readonly system: System;
  readonly seek: (time: number) => void;
}

export function bayFoot(o: BayFoot): TemplateResult {
  const { picture, system } = o;
  const least = leastOf(picture);
  return html`<div class="foot">
    <p>${now(o)}</p>
    ${
      least === undefined
        ? nothing
        : html`<button
            @click=${() => o.seek(least.least.t)}
            title="Go there: ${parts(picture, least)}"
          >
            ${least.least.gap.distance < least.asked ? sign('fail') : nothing} Least
            ${withUnit(least.least.gap.distance, 'length', picture, system)} at
            ${seconds(least.least.t)}
          </button>`
    }
    <details>
      <summary>Key</summary>
      ${key(picture)}
    </details>
  </div>`;
}

function now({ picture, time, system }: BayFoot): unknown {
  const found = nearestAt(picture, time);
  if (found === undefined)
    return picture.approaches.clearances.length === 0 ? '' : 'All well clear';
  const short = found.gap.distance < found.of.asked;
  return html`<span class=${short ? 'fail' : ''}
      >${short ? sign('fail') : nothing}
      <b>${withUnit(found.gap.distance, 'length', picture, system)}</b></span
    >
    ${parts(picture, found.of)}`;
}

/** What comes near what, in words. */
function parts(picture: Picture, c: ClearanceFacts): string {
  const [one, other] = c.between;
  const leg = picture.outlines.find((o) => o.mechanism === one)?.shape === 'leg';
  return `${plain(one)}${leg ? ' tyre' : ''} to ${plain(other)}`;
}

function key(picture: Picture): TemplateResult {
  const { bay, approaches, units } = picture;
  const has = (which: 'uplock' | 'downlock'): boolean => units.some((u) => u[which] !== '');
  const entry = (drawing: unknown, words: string, box = '-9 -9 18 18'): TemplateResult =>
    html`<li>
      <svg viewBox=${box} width="22" height="22" aria-hidden="true">${drawing}</svg>${words}
    </li>`;
  const stem = (in_: number, state: string): unknown =>
    svg`<g class="plunger"><path class="stem" d="M1,0H${-9 + in_}M${-9 + in_},-4V4"></path><path class="body ${state}" d="M1,-5.5H9V5.5H1Z"></path></g>`;
  return html`<ul>
    ${entry(svg`<path class="sign-at engaged" d=${SIGN.engaged}></path>`, 'holds')}
    ${entry(svg`<path class="sign-at open" d=${SIGN.open}></path>`, 'lets go')}
    ${has('downlock') ? entry(svg`<text x="0" y="5" text-anchor="middle" font-size="14">D</text>`, 'downlock') : nothing}
    ${has('uplock') ? entry(svg`<text x="0" y="5" text-anchor="middle" font-size="14">U</text>`, 'uplock') : nothing}
    ${bay.catches.length > 0 ? entry(svg`<text x="0" y="5" text-anchor="middle" font-size="14">H</text>`, 'door hook') : nothing}
    ${
      bay.plungers.length > 0
        ? [
            entry(stem(0, 'free'), 'sequence valve, plunger free'),
            entry(stem(4, 'pushed'), 'plunger touched, still shut'),
            entry(stem(7, 'open'), 'tripped, open'),
          ]
        : nothing
    }
    ${approaches.clearances.length > 0 || !picture.judged ? [entry(svg`<path class="line" d="M-7,0H7M-7,-5V5M7,-5V5"></path>`, 'clearance now, strut length'), entry(svg`<path class="line least" d="M-7,0H7M-7,-5V5M7,-5V5"></path>`, 'clearance least, and when')] : nothing}
    ${bay.drives.some((d) => d.device !== '') ? entry(svg`<path class="drive chain" d="M-9,0H9"></path>`, 'chain') : nothing}
    ${bay.drives.some((d) => d.device === '') ? entry(svg`<path class="drive linkage" d="M-9,0H9"></path>`, 'moved through a linkage') : nothing}
    ${bay.ramps.length > 0 ? entry(svg`<path class="ramp" d="M-8,5L8,-1V6H-8Z"></path>`, 'ramp in the bay, solid with the tyre on it') : nothing}
  </ul>`;
}
