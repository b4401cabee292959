/** The worker's entry: core off the main thread. */
import { answer } from './answer.js';
import type { MapJob } from './blow-down-message.js';
import { work } from './map.js';
import type { RunRequest } from './message.js';

// The DOM and worker type libraries cannot both be loaded; this is all that is used of it.
const scope = self as unknown as {
  onmessage: ((e: MessageEvent<RunRequest | MapJob>) => void) | null;
  postMessage(message: unknown, transfer: Transferable[]): void;
};

scope.onmessage = (e) => {
  if ('kind' in e.data) {
    void work(e.data, (reply) => scope.postMessage(reply, []));
    return;
  }
  const { id } = e.data;
  const { reply, transfer } = answer(e.data, (share) =>
    scope.postMessage({ id, kind: 'progress', share }, []),
  );
  scope.postMessage(reply, transfer);
};
