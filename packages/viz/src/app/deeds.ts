/** What the keys of the page do. */
import { reached } from '../model/history.js';
import type { Store } from '../model/store.js';
import type { CardBar } from '../view/card-bar.js';
import { views } from '../view/index.js';
import type { Works } from '../view/index.js';
import { saveAs } from '../view/save.js';
import type { Transport } from '../view/transport.js';
import { benchOf } from './area.js';
import type { Help } from './help.js';
import type { Deeds } from './keyboard.js';

/** What of the shell the keys need. */
export interface Shell {
  readonly store: Store;
  readonly works: Works;
  readonly find: <E extends Element>(selector: string) => E | null;
  /** Brings a panel to the top. */
  readonly panel: (name: string) => void;
  readonly theme: () => void;
}

export function deedsOf({ store, works, find, panel, theme }: Shell): Deeds {
  return {
    bench: (key) => benchOf(store)?.key?.(works, key) === true,
    toggle: () => store.toggle(),
    event: (by) => store.stepEvent(by),
    tick: (by) => store.stepTick(by),
    flag: (by) => store.stepFlag(by),
    rate: (by) => store.changeRate(by),
    zoom: (factor) => store.zoom(factor),
    whole: () => store.showAll(),
    ends: (end) => {
      const { picture } = store.state;
      store.scrub(end && picture !== undefined ? reached(picture) : 0);
    },
    open: () => find<CardBar>('ww-card-bar')?.choose(),
    panel: (index) => {
      store.setLarge(false);
      const view = views.filter((v) => v.area === 'panel')[index];
      if (view === undefined) return;
      panel(view.name);
      find('.panel')?.scrollIntoView({ block: 'nearest' });
    },
    loop: (what) => {
      if (what === 'a') works.loop.start();
      else if (what === 'b') works.loop.end();
      else works.loop.toggle();
    },
    hold: () => works.between.hold(),
    letGo: () => works.between.clear(),
    link: () => find<Transport>('ww-transport')?.copyLink(),
    units: () => store.setSystem(store.state.system === 'us' ? 'metric' : 'us'),
    large: () => store.setLarge(!store.state.large),
    theme,
    help: () => find<Help>('ww-help')?.open(),
    undo: () => works.edit.undo(),
    redo: () => works.edit.redo(),
    save: () => void saveAs(store, works.edit),
  };
}
