import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { cellUnder } from '../drawing/heat-map.js';
import { cellAt, nearest } from '../model/blow-down.js';
import type { BlowDownWork, Fineness, Telling } from '../model/blow-down.js';
import type { State } from '../model/state.js';
import type { BlowDownFacts, MapPicture } from '../worker/blow-down-message.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { gridOf, heatMap, MAP_EDGE, mapKey } from './blow-down-map.js';
import type { MapView } from './blow-down-map.js';
import './blow-down-plot.js';
import { blowDownTools, noRun } from './blow-down-tools.js';
import { cellSentence } from './blow-down-words.js';
import { blowDownStyles } from './blow-down.styles.js';
import { blowDownTable } from './blow-down-table.js';
import { Measured } from './measured.js';
import { shared } from './shared.styles.js';

/**
 * The blow-down bench: which charge brings the legs down and locked, at which temperature, as a
 * map; a cell of it is played in the bay; below, the moments of the run on show.
 */
export class BlowDown extends View {
  static override properties = {
    ...View.properties,
    work: { attribute: false },
    telling: { state: true },
    unit: { state: true },
    cursor: { state: true },
    tabular: { state: true },
  };
  static override styles = [shared, blowDownStyles];

  declare work: BlowDownWork;
  declare telling: Telling;
  /** Of whom: place in the map's units; -1 for the worst of all. */
  declare unit: number;
  /** The cell the keys stand on. */
  declare cursor: readonly [number, number] | undefined;
  declare tabular: boolean;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'system',
    'blowDown',
    'asked',
    'large',
  ];

  readonly #size = new Measured(this, '.map');

  constructor() {
    super();
    this.telling = 'time';
    this.unit = -1;
    this.cursor = undefined;
    this.tabular = false;
  }

  protected override render(): TemplateResult {
    const { picture, blowDown } = this.state;
    const facts = picture?.blowDown;
    if (picture === undefined) return html``;
    if (facts?.run === undefined) return noRun(picture, facts, this.store);
    const { map } = blowDown;
    return html`
      ${blowDownTools({
        picture,
        facts,
        state: this.state,
        work: this.work,
        telling: this.telling,
        unit: this.unit,
        tabular: this.tabular,
        tell: (telling) => (this.telling = telling),
        pick: (unit) => (this.unit = unit),
        tabulate: () => (this.tabular = !this.tabular),
        refine: this.#refine,
      })}
      ${
        map === undefined
          ? html`<p class="empty">
              ${blowDown.busy ? 'The first cells are being computed…' : blowDown.failure === '' ? 'No map yet.' : `No map: ${blowDown.failure}.`}
            </p>`
          : this.tabular
            ? html`<div class="table" tabindex="0" role="region" aria-label="Map as a table">
                ${guard([map, this.telling, this.unit, this.state.system], () => blowDownTable(map, this.telling, this.unit, picture, this.state.system))}
              </div>`
            : this.#map(picture, facts, map)
      }
      <ww-moment-plot .store=${this.store}></ww-moment-plot>
    `;
  }

  #map(picture: Picture, facts: BlowDownFacts, map: MapPicture): TemplateResult {
    const { system, blowDown } = this.state;
    const [i, j] = this.#cursorIn(map, facts);
    const view: MapView = {
      picture,
      facts,
      map,
      least: blowDown.least,
      telling: this.telling,
      unit: this.unit,
      system,
      width: this.#size.width,
      height: this.#size.height,
      cursor: [i, j],
    };
    return html`<div
        class="map"
        role="application"
        aria-roledescription="heat map"
        aria-label="Map of the blow-down: charge to the right, temperature upwards. Arrow keys go from cell to cell, Enter plays one in the bay."
        aria-describedby="cell"
        tabindex="0"
        @keydown=${this.#key}
        @focus=${() => this.#say(map, picture)}
        @click=${this.#click}
        @pointermove=${this.#hover}
      >
        ${this.#size.width < 40 ? nothing : heatMap(view)}
      </div>
      <p id="cell" class="cell">
        ${cellSentence(cellAt(map, i, j, this.unit), this.telling, map.units[this.unit] ?? '', picture, system)}
      </p>
      ${mapKey()}`;
  }

  #cursorIn(map: MapPicture, facts: BlowDownFacts): readonly [number, number] {
    const wide = map.charge.length;
    const high = map.temperature.length;
    const at = this.cursor ?? nearest(map, facts.run?.condition ?? facts.own) ?? [0, 0];
    return [Math.min(at[0], wide - 1), Math.min(at[1], high - 1)];
  }

  #refine = (fineness: Fineness): void => {
    this.cursor = undefined;
    this.work.setFineness(fineness);
  };

  #key = (e: KeyboardEvent): void => {
    const { picture, blowDown } = this.state;
    const { map } = blowDown;
    const facts = picture?.blowDown;
    if (map === undefined || picture === undefined || facts === undefined) return;
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const [i, j] = this.#cursorIn(map, facts);
    if (e.key === 'Enter') {
      e.preventDefault();
      this.work.play(i, j);
      return;
    }
    const far = e.shiftKey ? 5 : 1;
    const by = {
      ArrowLeft: [-far, 0],
      ArrowRight: [far, 0],
      ArrowUp: [0, far],
      ArrowDown: [0, -far],
      Home: [-Infinity, 0],
      End: [Infinity, 0],
      PageUp: [0, Infinity],
      PageDown: [0, -Infinity],
    }[e.key];
    if (by === undefined) return;
    e.preventDefault();
    const hold = (v: number, n: number): number => Math.min(Math.max(v, 0), n - 1);
    this.cursor = [
      hold(i + (by[0] ?? 0), map.charge.length),
      hold(j + (by[1] ?? 0), map.temperature.length),
    ];
    this.#say(map, picture);
  };

  #say(map: MapPicture, picture: Picture): void {
    const facts = picture.blowDown;
    if (facts === undefined) return;
    const [i, j] = this.#cursorIn(map, facts);
    const cell = cellAt(map, i, j, this.unit);
    this.store.set({
      said: cellSentence(
        cell,
        this.telling,
        map.units[this.unit] ?? '',
        picture,
        this.state.system,
      ),
    });
  }

  #under(e: MouseEvent): readonly [number, number] | undefined {
    const { picture, blowDown } = this.state;
    if (picture === undefined || blowDown.map === undefined) return undefined;
    const box = (e.currentTarget as Element).getBoundingClientRect();
    const x = (e.clientX - box.left) / this.#size.scale - MAP_EDGE.left;
    const y = (e.clientY - box.top) / this.#size.scale - MAP_EDGE.top;
    const g = gridOf(blowDown.map, picture, this.state.system, this.#size.width, this.#size.height);
    const inside = x >= 0 && y >= 0 && x <= (g.toX.range()[1] ?? 0) && y <= (g.toY.range()[0] ?? 0);
    return inside ? cellUnder(g, x, y) : undefined;
  }

  #hover = (e: PointerEvent): void => {
    const at = e.pointerType === 'mouse' ? this.#under(e) : undefined;
    if (at !== undefined && (at[0] !== this.cursor?.[0] || at[1] !== this.cursor[1]))
      this.cursor = at;
  };

  #click = (e: MouseEvent): void => {
    const at = this.#under(e);
    if (at === undefined) return;
    this.cursor = at;
    this.work.play(...at);
  };
}

define('ww-blow-down', BlowDown);
