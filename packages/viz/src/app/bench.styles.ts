/** The page with a bench on it; the page on paper. After the page's own styles. */
import { css } from 'lit';

export const benchStyles = css`
  /* A bench in place of chart and times: its own column, the drawing and the panel beside it. */
  main.on-bench {
    grid-template-columns: minmax(0, 1.08fr) minmax(0, 1fr);
    grid-template-rows: minmax(0, 1.1fr) minmax(0, 1fr);
    grid-template-areas: 'bench stage' 'bench side';
  }
  main.alone {
    grid-template-rows: minmax(0, 1fr);
    grid-template-areas: 'bench stage';
  }
  .bench {
    grid-area: bench;
  }
  .veiled {
    flex-basis: 100%;
    order: 2;
    padding: 0.3rem 0.8rem;
    background: var(--caution-soft);
  }
  .benches {
    display: inline-flex;
  }
  .benches button {
    padding: 0 0.5rem;
    border-radius: 0;
  }
  .benches button + button {
    margin-left: -1px;
  }
  .benches button:first-child {
    border-radius: var(--round) 0 0 var(--round);
  }
  .benches button:last-child {
    border-radius: 0 var(--round) var(--round) 0;
  }
  /* The row has no room for the word beside the aircraft and card. */
  @media (min-width: 1100px) and (max-width: 1499px) {
    h1 span {
      display: none;
    }
  }
  @media (max-width: 1499px) {
    header {
      gap: 0.4rem 0.5rem;
    }
    .benches button {
      padding: 0 0.36rem;
    }
    header > button {
      padding: 0 0.45rem;
    }
  }
  @media (max-width: 560px) {
    .benches button {
      padding: 0 0.26rem;
      font-size: 0.94rem;
    }
  }
  @media (max-width: 1099px) {
    main.on-bench {
      grid-template-columns: minmax(0, 1fr);
      /* As high as it is: a list that scrolls in a page that scrolls ends below the clock. */
      grid-template-rows: auto clamp(280px, 40dvh, 370px) auto;
      grid-template-areas: 'bench' 'stage' 'side';
    }
    main:not(.alone) .bench {
      min-height: clamp(540px, 50dvh, 760px);
    }
    .bench .content,
    .bench .content > * {
      flex: 1 0 auto;
    }
    /* What is asked under what is seen; as long as it needs to be. */
    main.alone {
      grid-template-rows: clamp(400px, 44dvh, 520px) auto;
      grid-template-areas: 'stage' 'bench';
    }
  }
  .bench .content {
    overflow: hidden auto;
    /* What is for the ear only stands where it is, and does not make the page longer. */
    position: relative;
  }
  :host([large]) main.on-bench {
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    grid-template-rows: minmax(0, 1fr);
    grid-template-areas: 'bench stage';
  }
  :host([large]) .bench,
  :host([large]) .bench .content {
    flex: 1;
    min-height: 0;
  }
  @media (max-width: 1400px) {
    :host([large]) main.on-bench {
      grid-template-columns: minmax(0, 1.35fr) minmax(0, 1fr);
    }
  }
  @media print {
    :host([printing]) {
      display: block;
      height: auto;
      overflow: visible;
    }
    :host([printing]) :is(main, .side, .panel, .content) {
      display: block;
      border: 0;
      padding: 0;
      max-height: none;
      overflow: visible;
    }
    :host([printing]) :is(header, ww-cautions, ww-issue-list, ww-busy, [role='tablist']),
    :host([printing]) :is(.stage, .chart, .bench, .fact, .transport) {
      display: none;
    }
  }
`;
