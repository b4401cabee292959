/** The page's store on the demo, without a page: the worker's answers come at once. */
import { Store } from '../../packages/viz/src/model/store.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { Picture } from '../../packages/viz/src/worker/message.js';
import { TEXT } from './demo.js';

export function emptyStore(): Store {
  return new Store((listener) => ({
    run: (request) => listener(answer({ id: 1, ...request }).reply),
    ask: () => undefined,
    stop: () => undefined,
  }));
}

export function openStore(): Store {
  const store = emptyStore();
  store.open({ file: 'hedgelark.yaml', text: TEXT });
  return store;
}

export function pictureOf(store: Store): Picture {
  const { picture } = store.state;
  if (picture === undefined) throw new Error('no run on show');
  return picture;
}
