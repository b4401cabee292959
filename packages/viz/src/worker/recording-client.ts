/** The page's side of the worker for recordings: hired at the first one, kept for the next. */
import type { RecordingJob, RecordingReply } from './recording-message.js';

export class RecordingReader {
  #worker: Worker | undefined;
  #hear: (reply: RecordingReply) => void = () => undefined;
  /** Jobs not yet answered. */
  #open = new Set<number>();

  listen(hear: (reply: RecordingReply) => void): void {
    this.#hear = hear;
  }

  post(job: RecordingJob): void {
    this.#open.add(job.id);
    (this.#worker ??= this.#hire()).postMessage(job);
  }

  #hire(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell recording',
    });
    worker.onmessage = (e: MessageEvent<RecordingReply>) => {
      this.#open.delete(e.data.id);
      this.#hear(e.data);
    };
    worker.onerror = (e) => {
      worker.terminate();
      this.#worker = undefined;
      const message = e.message || 'it could not be started';
      const open = [...this.#open];
      this.#open.clear();
      for (const id of open) this.#hear({ kind: 'broken', id, message });
    };
    return worker;
  }
}
