import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { PROJECTIONS, VIEWS } from '../drawing/projection.js';
import type { Projection, ViewName } from '../drawing/projection.js';
import { flagOn } from '../model/history.js';
import { layOut } from '../model/sheet.js';
import type { State } from '../model/state.js';
import type { Flag, Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { bayBody, bayMovers } from './bay-body.js';
import { bayFoot } from './bay-foot.js';
import type { Mover, Scene } from './bay-scene.js';
import { bayTable } from './bay-table.js';
import { bayTools } from './bay-tools.js';
import type { Facing } from './bay-tools.js';
import { bayPartsStyles } from './bay-parts.styles.js';
import { bayStyles } from './bay.styles.js';
import { shared } from './shared.styles.js';
import { textScale } from './scale.js';

/** Least width of the view for three drawings, for three in a room, for two, px at the usual size of letters. */
const THREE = 720;
const THREE_LARGE = 1150;
const TWO = 480;

/** Worked by fingers. */
const COARSE = matchMedia('(pointer: coarse)');

/** One drawing: what it shows, and what moves in it. */
interface Drawn {
  /** As long as these are the same, what stands still in it is. */
  readonly still: readonly unknown[];
  readonly scene: Scene;
  /** Undefined until the drawing stands on the page. */
  movers: readonly Mover[] | undefined;
}

/**
 * The bay: legs, wheels and doors where the run says they are, from the front, the side and above,
 * with locks, plungers, lengths and clearances, flagged parts, and the state of each unit in words.
 */
export class Bay extends View {
  static override properties = {
    ...View.properties,
    front: { state: true },
    plan: { state: true },
    alone: { state: true },
    last: { state: true },
  };
  static override styles = [shared, bayStyles, bayPartsStyles];

  /** Which way the front view looks, and the plan. */
  declare front: 'ahead' | 'behind';
  declare plan: 'above' | 'below';
  /** The view that has all the room, if one has. */
  declare alone: ViewName | undefined;
  /** The view that was asked for where there is no room for all. */
  declare last: ViewName | undefined;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'time',
    'selection',
    'system',
    'large',
  ];

  readonly #sizes = new Map<Element, readonly [number, number]>();
  readonly #drawn = new Map<ViewName, Drawn>();
  #width = 0;
  readonly #observer = new ResizeObserver((entries) => {
    const scale = textScale();
    for (const { target, contentRect } of entries) {
      const size = [contentRect.width / scale, contentRect.height / scale] as const;
      if (target === this) this.#width = size[0];
      else this.#sizes.set(target, size);
    }
    this.requestUpdate();
  });

  constructor() {
    super();
    this.front = 'ahead';
    this.plan = 'above';
    this.alone = undefined;
    this.last = undefined;
    this.addEventListener('keydown', (e) => {
      const key = this.renderRoot.querySelector('details[open]');
      if (e.key !== 'Escape' || (this.alone === undefined && key === null)) return;
      if (key === null) this.alone = undefined;
      else key.removeAttribute('open');
      e.stopPropagation();
    });
  }

  protected override firstUpdated(): void {
    this.#observer.observe(this);
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    const figures = [...this.renderRoot.querySelectorAll('figure')];
    for (const known of this.#sizes.keys()) {
      if (figures.includes(known as HTMLElement)) continue;
      this.#observer.unobserve(known);
      this.#sizes.delete(known);
    }
    for (const figure of figures) this.#observer.observe(figure);
    this.#move();
  }

  /** Everything that moves, to the play head. */
  #move(): void {
    const { picture, time } = this.state;
    if (picture === undefined) return;
    const mark = (device: string): string => {
      const flag = this.#flagOn(picture, device);
      return flag === undefined ? '' : `flagged-${flag.severity}`;
    };
    for (const [view, drawn] of this.#drawn) {
      const root = this.renderRoot.querySelector(`svg[data-view=${view}]`);
      if (root === null) this.#drawn.delete(view);
      else {
        drawn.movers ??= bayMovers(root, drawn.scene);
        for (const mover of drawn.movers) mover({ time, mark });
      }
    }
  }

  protected override render(): TemplateResult {
    const { picture, system, time } = this.state;
    const shown = this.#shown();
    return html`
      <div
        class="drawings ${shown.join(' ')} of-${shown.length}"
        role="group"
        aria-label="Bay, drawn at the play head"
      >
        ${VIEWS.map((view) => this.#figure(picture, view, shown))}
      </div>
      ${
        picture === undefined
          ? nothing
          : [
              this.state.large
                ? nothing
                : bayFoot({ picture, time, system, seek: (t) => this.store.scrub(t) }),
              bayTable({
                ...this.state,
                picture,
                hidden: this.state.large || this.alone !== undefined,
                flagOn: (device) => this.#flagOn(picture, device),
              }),
            ]
      }
    `;
  }

  #shown(): readonly ViewName[] {
    if (this.alone !== undefined) return [this.alone];
    if (this.#width >= (this.state.large ? THREE_LARGE : THREE)) return VIEWS;
    if (this.#width < TWO) return [this.last ?? 'front'];
    return ['front', this.last === 'plan' ? 'plan' : 'side'];
  }

  #ontoOf(view: ViewName): Projection {
    return PROJECTIONS[view === 'front' ? this.front : view === 'plan' ? this.plan : 'side'];
  }

  #figure(picture: Picture | undefined, view: ViewName, shown: readonly ViewName[]): unknown {
    const onto = this.#ontoOf(view);
    const drawn = picture === undefined ? undefined : this.#scene(picture, onto);
    const label = `${onto.title}; the table below says the same in words`;
    return html`<figure class=${view} ?hidden=${!shown.includes(view)}>
      <figcaption>
        <span>${onto.title}</span>
        ${bayTools({
          view,
          shown,
          alone: this.alone,
          facing: onto.name,
          choose: this.#choose,
          turn: this.#turn,
          enlarge: (one) => (this.alone = one),
        })}
      </figcaption>
      ${
        drawn === undefined
          ? nothing
          : html`<svg
              role="img"
              aria-label=${label}
              viewBox=${drawn.scene.sheet.viewBox}
              data-view=${view}
            >
              ${guard([...drawn.still], () => bayBody(drawn.scene))}
            </svg>`
      }
    </figure>`;
  }

  /** The drawing as it stands; with other movers for another run, or a new one where parts, size or units have changed. */
  #scene(picture: Picture, onto: Projection): Drawn | undefined {
    const { system, large } = this.state;
    const figure = this.renderRoot.querySelector(`figure.${onto.view}`);
    const [width, height] = (figure && this.#sizes.get(figure)) ?? [0, 0];
    const { outlines, bay, units, display } = picture;
    const size = [width, height, COARSE.matches];
    // The words of the phases, where there are any, are the run's.
    const words = large ? picture.log : undefined;
    const still = [outlines, bay, units, display, onto, system, large, words, ...size];
    const before = this.#drawn.get(onto.view);
    const stands = before !== undefined && still.every((part, i) => part === before.still[i]);
    if (stands && before.scene.picture === picture) return before;
    const sheet = stands
      ? before.scene.sheet
      : layOut(picture, onto, width, height, { worded: large, coarse: COARSE.matches });
    if (sheet === undefined) return undefined;
    const drawn = { still, scene: { picture, onto, sheet, system, large }, movers: undefined };
    this.#drawn.set(onto.view, drawn);
    return drawn;
  }

  /** The view that is asked for takes the place of the last one, or all the room if one has it. */
  #choose = (view: ViewName): void => {
    if (this.alone === undefined) this.last = view;
    else this.alone = view;
    // The button goes with its figure: the focus moves to the one that came.
    void this.updateComplete.then(() => {
      const buttons = this.renderRoot.querySelectorAll<HTMLElement>(`.${view} button`);
      buttons[buttons.length - 1]?.focus();
    });
  };

  #turn = (to: Facing): void => {
    if (to === 'ahead' || to === 'behind') this.front = to;
    else this.plan = to;
  };

  #flagOn(picture: Picture, device: string): Flag | undefined {
    const { time, selection } = this.state;
    return flagOn(picture, device, time, selection.kind === 'flag' ? selection.index : -1);
  }
}

define('ww-bay', Bay);
