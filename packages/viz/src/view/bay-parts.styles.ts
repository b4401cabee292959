/** The parts of the bay's drawings. */
import { css } from 'lit';

export const bayPartsStyles = css`
  .slider,
  .cylinder {
    fill: none;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .slider {
    stroke: var(--metal-light);
  }
  .cylinder {
    stroke: var(--metal);
  }
  .pivot,
  .hinge {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 1.5;
    vector-effect: non-scaling-stroke;
  }
  .tyre {
    fill: var(--tyre);
    stroke: var(--tyre);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .tread,
  .rim,
  .hub {
    fill: none;
    stroke: var(--tyre-line);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .rim {
    fill: var(--metal-light);
    stroke: var(--metal);
  }
  .hub {
    fill: var(--metal);
    stroke: none;
  }
  .door {
    fill: var(--panel);
    fill-opacity: 0.6;
    stroke: var(--ink);
    stroke-width: 2.5;
    stroke-linejoin: round;
    vector-effect: non-scaling-stroke;
  }
  /* What stands behind: paler, without the cost of a see-through group. */
  .far .slider {
    stroke: color-mix(in srgb, var(--metal-light) 40%, var(--sheet));
  }
  .far .cylinder {
    stroke: color-mix(in srgb, var(--metal) 36%, var(--sheet));
  }
  .far :is(.tyre, .hub) {
    fill: color-mix(in srgb, var(--tyre) 32%, var(--sheet));
    stroke: none;
  }
  .far .rim {
    fill: color-mix(in srgb, var(--metal-light) 40%, var(--sheet));
    stroke: none;
  }
  .far :is(.tread) {
    stroke: none;
  }
  .far :is(.door, .pivot, .hinge) {
    fill: color-mix(in srgb, var(--panel) 25%, var(--sheet));
    stroke: color-mix(in srgb, var(--ink) 32%, var(--sheet));
  }
  .brace {
    fill: none;
    stroke: var(--metal);
    stroke-width: 28;
    stroke-linejoin: round;
    stroke-linecap: round;
  }
  .drive {
    fill: none;
    stroke: var(--ink-soft);
    stroke-width: 1.2;
    vector-effect: non-scaling-stroke;
  }
  .linkage {
    stroke-dasharray: 8 3 2 3;
  }
  .chain {
    stroke-width: 2.4;
    stroke-dasharray: 3 2;
  }
  .ramp {
    fill: var(--sunk);
    stroke: var(--rule-strong);
    stroke-width: 1.2;
    vector-effect: non-scaling-stroke;
  }
  .ramp.bears {
    fill: var(--caution);
    stroke: var(--ink);
  }
  .none {
    display: none;
  }
  .measure path {
    fill: none;
    vector-effect: non-scaling-stroke;
  }
  .measure .halo {
    stroke: var(--sheet);
    stroke-width: 4.5;
  }
  .line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  .measure text {
    font-weight: 400;
    text-transform: none;
    font-variant-numeric: tabular-nums;
  }
  .strut.far .line {
    stroke: var(--ink-soft);
  }
  .strut.far text,
  .least text {
    fill: var(--ink-soft);
  }
  .least .line,
  .line.least {
    stroke: var(--ink-soft);
    stroke-dasharray: 3 2;
  }
  .gap:not(.least) text {
    font-weight: 700;
  }
  .short .line {
    stroke: var(--fail);
    stroke-width: 2;
  }
  .measure .warning,
  .short text {
    fill: var(--fail);
    fill-rule: evenodd;
  }
  .ring {
    fill: var(--sheet);
    stroke-width: 3;
    vector-effect: non-scaling-stroke;
  }
  .stem {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .body {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .body.opening {
    fill: var(--rule-strong);
  }
  .body.open {
    fill: var(--ink);
  }
  .ghost {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 1;
    stroke-dasharray: 2 4;
    vector-effect: non-scaling-stroke;
  }
  .well {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
  .flagged-fail,
  .flagged-caution,
  .flagged-note {
    stroke-width: 4;
    stroke-dasharray: 9 4;
  }
  /* Too small for dashes. */
  :is(.pivot, .ring):is(.flagged-fail, .flagged-caution, .flagged-note) {
    stroke-width: 3;
    stroke-dasharray: none;
  }
  .flagged-fail {
    stroke: var(--fail);
  }
  .flagged-caution {
    stroke: var(--caution);
  }
  .flagged-note {
    stroke: var(--note);
  }
  /* A rim of paper keeps signs and letters clear of the lines behind them. */
  .sign-at {
    fill: currentColor;
    fill-rule: evenodd;
    stroke: var(--sheet);
    stroke-width: 2.4;
    paint-order: stroke;
  }
  .sign-at.engaged {
    color: var(--ink);
  }
  .sign-at.open {
    color: var(--ink-soft);
  }
  text {
    stroke: var(--sheet);
    paint-order: stroke;
    fill: var(--ink);
    font-weight: 600;
    text-transform: capitalize;
  }
  text.cut {
    fill: var(--ink-soft);
    font-weight: 400;
    text-transform: none;
  }
  .break {
    stroke: var(--rule-strong);
    stroke-width: 1.5;
    vector-effect: non-scaling-stroke;
  }
`;
