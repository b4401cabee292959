/** A sign beside a word in HTML. */
import { html, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { SIGN } from '../drawing/glyph.js';
import type { Sign } from '../drawing/glyph.js';

export function sign(name: Sign): TemplateResult {
  return html`<svg class="sign ${name}" viewBox="-8 -8 16 16" aria-hidden="true">
    <path d=${SIGN[name]}></path>
  </svg>`;
}

/** The same inside a drawing, `size` wide around a point. */
export function signAt(
  name: Sign,
  x: number,
  y: number,
  size: number,
  extra = '',
): SVGTemplateResult {
  return svg`<path class="sign-at ${name} ${extra}" d=${SIGN[name]} transform="translate(${x} ${y}) scale(${size / 16})"></path>`;
}
