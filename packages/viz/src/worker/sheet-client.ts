/** The page's side of the worker that reads and writes observation sheets, one job after the other. */
import type { SheetJob, SheetReply } from './sheet-message.js';

/** A job before it has its number. */
export type SheetQuestion = SheetJob extends infer J
  ? J extends SheetJob
    ? Omit<J, 'id'>
    : never
  : never;

/** It costs memory, and a test card is filled in for minutes: let go after this long, ms. */
const IDLE = 60_000;

export class Clerk {
  #worker: Worker | undefined;
  #id = 0;
  #waiting = new Map<number, (reply: SheetReply) => void>();
  #timer = 0;

  ask(question: SheetQuestion): Promise<SheetReply> {
    const id = ++this.#id;
    clearTimeout(this.#timer);
    this.#worker ??= this.#hire();
    this.#worker.postMessage({ ...question, id });
    return new Promise((resolve) => this.#waiting.set(id, resolve));
  }

  #hire(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell sheet',
    });
    worker.onmessage = (e: MessageEvent<SheetReply>) => {
      this.#waiting.get(e.data.id)?.(e.data);
      this.#waiting.delete(e.data.id);
      if (this.#waiting.size === 0) this.#timer = window.setTimeout(() => this.#dismiss(), IDLE);
    };
    worker.onerror = (e) => {
      const message = e.message || 'the simulation could not be started';
      for (const [id, resolve] of this.#waiting) resolve({ id, kind: 'broken', message });
      this.#waiting.clear();
      this.#dismiss();
    };
    return worker;
  }

  #dismiss(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}
