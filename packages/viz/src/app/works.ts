/** What views work with beside the store they belong to. */
import { BetweenWork } from '../model/between.js';
import { BlowDownWork } from '../model/blow-down.js';
import { LinkWork } from '../model/link-work.js';
import type { Shell } from '../model/link-work.js';
import { LoopWork } from '../model/loop.js';
import { MeasuredWork } from '../model/measured.js';
import type { Source } from '../model/state.js';
import type { Store } from '../model/store.js';
import type { Works } from '../view/index.js';
import { Mapper } from '../worker/map-client.js';

export function worksOf(store: Store, demos: readonly Source[], shell: Shell): Works {
  return {
    blowDown: new BlowDownWork(store, new Mapper()),
    measured: new MeasuredWork(store),
    between: new BetweenWork(store),
    loop: new LoopWork(store),
    link: new LinkWork(store, demos, shell),
  };
}
