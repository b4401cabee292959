/** The page's side of the worker that makes lessons ready: the latest request wins. */
import type { LessonReply, LessonRequest } from './lesson-message.js';

export class Tutor {
  #worker: Worker | undefined;
  #id = 0;
  #busy = false;
  #next: LessonRequest | undefined;
  #hear: (reply: LessonReply) => void = () => undefined;

  ask(request: Omit<LessonRequest, 'id' | 'kind'>, hear: (reply: LessonReply) => void): void {
    this.#id += 1;
    this.#hear = hear;
    this.#next = { ...request, kind: 'lesson', id: this.#id };
    this.#send();
  }

  /** Lets the worker go; it costs memory while nobody is taught. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#busy = false;
    this.#next = undefined;
  }

  #send(): void {
    if (this.#busy || this.#next === undefined) return;
    this.#busy = true;
    this.#worker ??= this.#hire();
    this.#worker.postMessage(this.#next);
    this.#next = undefined;
  }

  #hire(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell lesson',
    });
    worker.onmessage = (e: MessageEvent<LessonReply>) => {
      if (worker !== this.#worker) return;
      if (e.data.kind !== 'steps') this.#busy = false;
      if (e.data.id === this.#id) this.#hear(e.data);
      this.#send();
    };
    worker.onerror = (e) => {
      this.stop();
      const message = e.message || 'the simulation could not be started';
      this.#hear({ id: this.#id, kind: 'broken', message });
    };
    return worker;
  }
}
