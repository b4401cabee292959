/** What stands over the map: what it tells of whom, how fine, the run that is played, how far the map is. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { rangesOf, TELLINGS } from '../model/blow-down.js';
import type { BlowDownWork, Fineness, Telling } from '../model/blow-down.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Store } from '../model/store.js';
import type { BlowDownFacts } from '../worker/blow-down-message.js';
import type { Picture } from '../worker/message.js';
import { conditionText } from './blow-down-words.js';

const TELLING_WORD: Readonly<Record<Telling, string>> = {
  time: 'time to lock',
  margin: 'moment in hand',
  gas: 'gas left',
};

export interface BlowDownTools {
  readonly picture: Picture;
  readonly facts: BlowDownFacts;
  readonly state: State;
  readonly work: BlowDownWork;
  readonly telling: Telling;
  readonly unit: number;
  readonly tabular: boolean;
  readonly tell: (telling: Telling) => void;
  readonly pick: (unit: number) => void;
  readonly tabulate: () => void;
  readonly refine: (fineness: Fineness) => void;
}

const chosen = (e: Event): string => (e.target as HTMLSelectElement).value;

export function blowDownTools(o: BlowDownTools): TemplateResult {
  const { picture, facts, work, telling, unit } = o;
  const { blowDown: s, system } = o.state;
  const played = facts.run?.condition ?? facts.own;
  const moved = played.charge !== facts.own.charge || played.temperature !== facts.own.temperature;
  return html`<div class="tools">
      <label
        >Show
        <select
          data-choose="telling"
          @change=${(e: Event) => o.tell(TELLINGS.find((t) => t === chosen(e)) ?? 'time')}
        >
          ${TELLINGS.map((t) => html`<option value=${t} .selected=${t === telling}>${TELLING_WORD[t]}</option>`)}
        </select></label
      >
      <label
        >of
        <select
          data-choose="unit"
          ?disabled=${telling === 'gas'}
          @change=${(e: Event) => o.pick(Number(chosen(e)))}
        >
          <option value="-1" .selected=${unit < 0}>the worst leg</option>
          ${picture.units.map((u, i) => html`<option value=${i} .selected=${i === unit}>${plain(u.name)}</option>`)}
        </select></label
      >
      <label
        >Cells
        <select
          data-choose="fineness"
          @change=${(e: Event) => o.refine(chosen(e) === 'fine' ? 'fine' : 'plain')}
        >
          ${(['plain', 'fine'] as const).map((f) => html`<option value=${f} .selected=${s.fineness === f}>${cellsOf(facts, f)}</option>`)}
        </select></label
      >
      <button aria-pressed=${o.tabular} ?disabled=${s.map === undefined} @click=${o.tabulate}>
        As a table
      </button>
    </div>
    <div class="tools second">
      <p>
        Playing ${conditionText(played, picture, system)}${moved ? '' : ', as on the card'}<span
          class="soft"
          >; pick a cell to play it</span
        >
      </p>
      ${moved ? html`<button @click=${() => work.playOwn()}>As on the card</button>` : ''}
      <span class="spread"></span>
      ${
        s.busy
          ? html`<progress
                data-map-busy
                max="1"
                value=${s.share}
                aria-label="Share of the map that is known"
              ></progress
              ><output>${Math.floor(s.share * 100)} %</output
              ><button @click=${() => work.stop()}>Cancel</button>`
          : html`<button @click=${() => work.start()}>Compute the map</button>`
      }
    </div>`;
}

function cellsOf(facts: BlowDownFacts, fineness: Fineness): string {
  const { charge, temperature } = rangesOf(facts, fineness);
  return `${charge.length} × ${temperature.length}`;
}

/** In place of the map when the card on show has nothing to map. */
export function noRun(
  picture: Picture,
  facts: BlowDownFacts | undefined,
  store: Store,
): TemplateResult {
  if (facts === undefined)
    return html`<p class="empty">
      This aircraft has no gas bottle that a test card lets go: there is nothing to map.
    </p>`;
  const title = (name: string): string => picture.cards.find((c) => c.name === name)?.title ?? name;
  return html`<div class="empty">
    <p>The card on show does not pull the blow-down handle. These do:</p>
    <ul>
      ${facts.cards.map((name) => html`<li><button @click=${() => store.chooseCard(name)}>${title(name)}</button></li>`)}
    </ul>
  </div>`;
}
