/** The page's side of the worker: the latest request wins, and a run can be stopped. */
import type { Reply, RunRequest } from './message.js';

export type Listener = (reply: Reply) => void;

/**
 * A run nobody waits for any more may finish within this time, ms: about what a fresh worker
 * takes to load. A longer one is given up.
 */
const PATIENCE = 150;

export class Engine {
  #worker: Worker | undefined;
  #busy = false;
  #next: RunRequest | undefined;
  #id = 0;
  #impatience = 0;
  readonly #listener: Listener;

  constructor(listener: Listener) {
    this.#listener = listener;
  }

  /** Asks for a run. It takes the place of the one being computed, and of any that waits. */
  run(request: Omit<RunRequest, 'id'>): void {
    this.#id += 1;
    this.#next = { ...request, id: this.#id };
    if (!this.#busy) this.#send();
    else if (this.#impatience === 0)
      this.#impatience = window.setTimeout(() => {
        this.#giveUp();
        this.#send();
      }, PATIENCE);
  }

  /** Gives up the run being computed; the next request starts a fresh worker. */
  stop(): void {
    this.#giveUp();
    this.#next = undefined;
  }

  #giveUp(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#settle();
  }

  #settle(): void {
    this.#busy = false;
    clearTimeout(this.#impatience);
    this.#impatience = 0;
  }

  #send(): void {
    if (this.#next === undefined) return;
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
    const received = (reply: Reply): void => {
      if (reply.kind !== 'progress') this.#settle();
      if (this.#next === undefined) this.#listener(reply);
      else if (!this.#busy) this.#send();
    };
    worker.onmessage = (e: MessageEvent<Reply>) => received(e.data);
    worker.onerror = (e) => {
      // A worker that failed to load or broke is not used again.
      this.#giveUp();
      received({
        id: this.#id,
        kind: 'failure',
        message: e.message || 'the simulation could not be started',
      });
    };
    return worker;
  }
}
