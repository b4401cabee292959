import { css } from 'lit';

export const orderChartStyles = css`
  .tools select {
    min-height: 28px;
    padding: 0 0.2rem;
  }
  .keys {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 0.9rem;
    padding: 0.5rem 0.6rem;
    font-size: 0.78rem;
    color: var(--ink-soft);
  }
  .key {
    display: inline-flex;
    gap: 0.3rem;
    align-items: center;
  }
  .key svg {
    width: 22px;
    height: 12px;
  }
  .scroll {
    min-height: 120px;
  }
  .body {
    cursor: crosshair;
  }
  .head {
    position: absolute;
    inset: 0;
    pointer-events: none;
  }
  text {
    fill: var(--ink);
    font-size: 12px;
  }
  .axis text {
    fill: var(--ink-soft);
    font-size: 11px;
    font-variant-numeric: tabular-nums;
  }
  .axis .now {
    fill: var(--on-accent);
    font-weight: 600;
  }
  .axis .now-box {
    fill: var(--accent);
  }
  .grid {
    stroke: var(--rule);
    stroke-width: 1;
  }
  .heading-row {
    fill: var(--sunk);
  }
  .heading {
    font-weight: 700;
  }
  .name {
    fill: var(--ink-soft);
  }
  .name.chosen {
    fill: var(--ink);
    font-weight: 700;
  }
  .rest {
    fill: var(--rule);
  }
  .rest.phase {
    fill: none;
  }
  .rising {
    fill: var(--rising-soft);
    stroke: var(--rising);
  }
  .falling {
    fill: var(--falling-soft);
    stroke: var(--falling);
  }
  .working {
    fill: var(--working-soft);
    stroke: var(--working);
  }
  .held {
    fill: url(#hatch);
    stroke: var(--working);
  }
  .rising,
  .falling,
  .working,
  .held {
    stroke-width: 1;
  }
  .hatch {
    stroke: var(--working);
    stroke-width: 1;
  }
  .word {
    stroke: var(--sheet);
    stroke-width: 0;
    paint-order: stroke;
    font-size: 10.5px;
    pointer-events: none;
  }
  .word.held {
    stroke-width: 4px;
    fill: var(--ink);
  }
  .beyond {
    fill: url(#hatch);
    stroke: var(--fail);
    stroke-width: 1.5;
  }
  .way {
    fill: var(--ink);
    pointer-events: none;
  }
  .event {
    fill: var(--ink);
    stroke: var(--sheet);
    stroke-width: 1;
    paint-order: stroke;
    cursor: pointer;
  }
  .event.chain {
    fill: var(--accent);
    stroke: var(--accent);
  }
  .event.chosen {
    fill: var(--focus);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .arrow {
    fill: none;
    stroke: var(--accent);
    stroke-width: 1.8;
  }
  .arrow.effect {
    stroke-dasharray: 5 3;
  }
  .arrow-head {
    fill: var(--accent);
  }
  .pin {
    cursor: pointer;
  }
  .pin .band {
    fill: currentColor;
    opacity: 0.16;
  }
  .pin .stem {
    stroke: currentColor;
    stroke-width: 1.5;
  }
  .pin .back {
    fill: var(--sheet);
    stroke: currentColor;
    stroke-width: 1;
  }
  .pin text {
    fill: currentColor;
    font-size: 11px;
    font-weight: 600;
  }
  .pin.chosen .back {
    stroke-width: 2.5;
  }
  .sign-at {
    fill: currentColor;
    fill-rule: evenodd;
  }
  .between {
    display: flex;
    gap: 0.4rem;
    align-items: center;
    padding: 0.25rem 0.6rem;
    font-size: 0.84rem;
    border-bottom: 1px solid var(--rule);
    background: var(--sunk);
  }
  .between button {
    font-size: 0.78rem;
  }
  @media (pointer: fine) {
    .between button {
      min-height: 26px;
    }
  }
  .loop {
    fill: none;
    stroke: var(--accent);
    stroke-dasharray: 4 3;
  }
  .loop.on {
    fill: var(--accent-soft);
    stroke-dasharray: none;
  }
  .loop-end {
    stroke: var(--accent);
    stroke-dasharray: 2 4;
  }
  .loop-end.on {
    stroke-dasharray: 6 3;
  }
  .dimension .rule,
  .extension {
    fill: none;
    stroke: var(--focus);
    stroke-width: 1.3;
  }
  .dimension.live .rule {
    stroke-dasharray: 5 3;
  }
  .dimension .tip {
    fill: var(--focus);
  }
  .dimension .paper {
    fill: var(--sheet);
  }
  .axis .dimension text {
    fill: var(--ink);
    font-weight: 700;
  }
  .measured {
    cursor: pointer;
  }
  .measured circle {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .measured.fits circle {
    fill: var(--ink);
  }
  .measured .whisker {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .measured .gap {
    fill: none;
    stroke: var(--ink);
    stroke-dasharray: 1.5 2.5;
  }
  .measured .paper {
    fill: var(--sheet);
  }
  .measured text {
    font-size: 10.5px;
    font-weight: 600;
    stroke: var(--sheet);
    stroke-width: 3px;
    paint-order: stroke;
  }
  .play-head {
    stroke: var(--accent);
    stroke-width: 2;
  }
  @media (forced-colors: active) {
    .rest {
      fill: GrayText;
    }
  }
`;
