/** The page's side of the worker: the latest request wins, and a run can be stopped. */
import type { Reply, RunRequest } from './message.js';

export type Listener = (reply: Reply) => void;

export class Engine {
  #worker: Worker | undefined;
  #busy = false;
  #next: RunRequest | undefined;
  #id = 0;
  readonly #listener: Listener;

  constructor(listener: Listener) {
    this.#listener = listener;
  }

  /** Asks for a run; one asked for while another is computed waits, and only the last one waiting is kept. */
  run(request: Omit<RunRequest, 'id'>): void {
    this.#id += 1;
    this.#next = { ...request, id: this.#id };
    this.#send();
  }

  /** Gives up the run being computed; the next request starts a fresh worker. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#busy = false;
    this.#next = undefined;
  }

  #send(): void {
    if (this.#busy || this.#next === undefined) return;
    this.#worker ??= this.#start();
    this.#busy = true;
    this.#worker.postMessage(this.#next);
    this.#next = undefined;
  }

  #start(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell',
    });
    const settle = (reply: Reply): void => {
      this.#busy = false;
      if (this.#next === undefined) this.#listener(reply);
      this.#send();
    };
    worker.onmessage = (e: MessageEvent<Reply>) => settle(e.data);
    worker.onerror = (e) => {
      // A worker that failed to load or broke is not used again.
      this.#worker?.terminate();
      this.#worker = undefined;
      settle({
        id: this.#id,
        kind: 'failure',
        message: e.message || 'the simulation could not be started',
      });
    };
    return worker;
  }
}
