/**
 * The views by where they stand. A further view is one file and one entry here: several in one
 * area share it as tabs. Those of the benches bring their code later.
 */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { BetweenWork } from '../model/between.js';
import type { BlowDownWork } from '../model/blow-down.js';
import type { DiagnosisWork } from '../model/diagnosis.js';
import type { EditWork } from '../model/edits.js';
import { isStart } from '../model/history.js';
import type { LessonDesk } from '../model/lesson-desk.js';
import type { LessonWork } from '../model/lesson.js';
import type { LinkWork } from '../model/link-work.js';
import type { LoopWork } from '../model/loop.js';
import type { MeasuredWork } from '../model/measured.js';
import type { State } from '../model/state.js';
import type { TracesWork } from '../model/traces.js';
import type { Store } from '../model/store.js';
import type { TestCardWork } from '../model/test-card.js';
import './bay.js';
import './circuit.js';
import './event-list.js';
import './fault-drawer.js';
import './flag-list.js';
import './order-chart.js';
import './parameters.js';
import './times.js';
import './traces.js';

/**
 * stage: drawings of the aircraft; chart: against time; fact: always beside them; panel: lists and forms;
 * bench: a whole workplace beside the stage, one at a time, in place of chart and fact.
 */
export type Area = 'stage' | 'chart' | 'fact' | 'panel' | 'bench';

/** What the benches work with, beside the store. */
export interface Works {
  readonly blowDown: BlowDownWork;
  readonly edit: EditWork;
  readonly lesson: LessonWork;
  readonly desk: LessonDesk;
  readonly traces: TracesWork;
  readonly testCard: TestCardWork;
  readonly diagnosis: DiagnosisWork;
  readonly measured: MeasuredWork;
  readonly between: BetweenWork;
  readonly loop: LoopWork;
  readonly link: LinkWork;
}

export interface ViewEntry {
  readonly name: string;
  readonly title: string;
  readonly area: Area;
  readonly show: (store: Store, works: Works) => TemplateResult;
  /** Brings its code, where the first view does without: it is asked for before `show`. */
  readonly load?: () => Promise<unknown>;
  /** A panel that is offered on this bench only. */
  readonly on?: string;
  /** Whether a bench has anything to do; always when absent. */
  readonly fits?: (state: State) => boolean;
  /** A drawing that has the chart's room as well, unless it is told otherwise. */
  readonly tall?: boolean;
  /** A bench that has the charts among the drawings, and on top. */
  readonly charts?: true;
  /** A bench that has the page to itself and the stage; the panel would tell too much, or nothing. */
  readonly alone?: (state: State) => boolean;
  /** What it does with a key of its own; false when the key is none. */
  readonly key?: (works: Works, key: string) => boolean;
  /** Those keys as the list of keys tells them. */
  readonly keys?: readonly (readonly [shown: string, what: string])[];
  /** A figure beside the title, e.g. how many flags. */
  readonly badge?: (state: State) => string;
}

export const views: readonly ViewEntry[] = [
  {
    name: 'bay',
    title: 'Bay',
    area: 'stage',
    show: (store) => html`<ww-bay .store=${store}></ww-bay>`,
  },
  {
    name: 'circuit',
    title: 'Circuit',
    area: 'stage',
    tall: true,
    show: (store) => html`<ww-circuit .store=${store}></ww-circuit>`,
  },
  {
    name: 'order',
    title: 'Order of events',
    area: 'chart',
    show: (store, works) => html`<ww-order-chart .store=${store} .works=${works}></ww-order-chart>`,
  },
  {
    name: 'traces',
    title: 'Traces',
    area: 'chart',
    show: (store, works) => html`<ww-traces .store=${store} .work=${works.traces}></ww-traces>`,
  },
  {
    name: 'times',
    title: 'Times',
    area: 'fact',
    show: (store) => html`<ww-times .store=${store}></ww-times>`,
  },
  {
    name: 'blow-down',
    title: 'Blow-down',
    area: 'bench',
    load: () => import('./blow-down.js'),
    show: (store, works) =>
      html`<ww-blow-down .store=${store} .work=${works.blowDown}></ww-blow-down>`,
    fits: (state) => state.picture?.blowDown !== undefined,
  },
  {
    name: 'lesson',
    title: 'Lesson',
    area: 'bench',
    load: () => import('./lesson.js'),
    show: (store, works) =>
      html`<ww-lesson .store=${store} .work=${works.lesson} .desk=${works.desk}></ww-lesson>`,
    alone: (state) => state.lesson.draft === undefined,
  },
  {
    name: 'test-card',
    title: 'Test card',
    area: 'bench',
    load: () => import('./test-card.js'),
    show: (store, works) =>
      html`<ww-test-card .store=${store} .work=${works.testCard}></ww-test-card>`,
    key: (works, key) => works.testCard.key(key),
    keys: [
      ['Space', 'start, stop the watch'],
      ['1 to 9', 'while it runs: tap an event, as on its button'],
      ['Backspace', 'take the last tap back'],
    ],
  },
  {
    name: 'diagnosis',
    title: 'Diagnosis',
    area: 'bench',
    load: () => import('./diagnosis.js'),
    show: (store, works) =>
      html`<ww-diagnosis .store=${store} .work=${works.diagnosis}></ww-diagnosis>`,
    charts: true,
  },
  {
    name: 'flags',
    title: 'Flags',
    area: 'panel',
    show: (store) => html`<ww-flag-list .store=${store}></ww-flag-list>`,
    badge: (state) =>
      String(state.picture?.flags.filter((f) => f.severity !== 'note').length ?? ''),
  },
  {
    name: 'events',
    title: 'Events',
    area: 'panel',
    show: (store) => html`<ww-event-list .store=${store}></ww-event-list>`,
    badge: (state) => String(state.picture?.log.filter((e) => !isStart(e)).length ?? ''),
  },
  {
    name: 'faults',
    title: 'Faults',
    area: 'panel',
    show: (store) => html`<ww-fault-drawer .store=${store}></ww-fault-drawer>`,
    badge: (state) => String(state.faults.length),
  },
  {
    name: 'parameters',
    title: 'Parameters',
    area: 'panel',
    show: (store, works) =>
      html`<ww-parameters .store=${store} .work=${works.edit}></ww-parameters>`,
    badge: (state) => (state.edits.length === 0 ? '' : String(state.edits.length)),
  },
  {
    name: 'bottle',
    title: 'Bottle',
    area: 'panel',
    on: 'blow-down',
    load: () => import('./blow-down-card.js'),
    show: (store) => html`<ww-blow-down-card .store=${store}></ww-blow-down-card>`,
  },
  {
    name: 'card-sheet',
    title: 'Card',
    area: 'panel',
    on: 'test-card',
    load: () => import('./card-sheet.js'),
    show: (store) => html`<ww-card-sheet .store=${store}></ww-card-sheet>`,
  },
  {
    name: 'cause',
    title: 'Cause',
    area: 'panel',
    on: 'diagnosis',
    load: () => import('./diagnosis-cause.js'),
    show: (store, works) =>
      html`<ww-diagnosis-cause .store=${store} .work=${works.diagnosis}></ww-diagnosis-cause>`,
  },
  {
    name: 'report',
    title: 'Report',
    area: 'panel',
    on: 'diagnosis',
    load: () => import('./diagnosis-report.js'),
    show: (store) => html`<ww-diagnosis-report .store=${store}></ww-diagnosis-report>`,
  },
];
