/** The page's side of the workers: the latest request wins, and a run can be stopped. */
import type { AfterRequest, Reply, RunRequest, SeriesRequest } from './message.js';

export type Listener = (reply: Reply) => void;

/**
 * Two: a fresh worker needs far longer for its first run than a warm one, so a run nobody waits
 * for any more is left to end in one while the other serves the user.
 */
const MOST = 2;
/** How long a request waits when both are at work on what nobody waits for, ms. */
const PATIENCE = 400;
/** The second one is made ready when the page has come to rest, ms after its first run. */
const REST = 800;

interface Seat {
  readonly worker: Worker;
  /** Request it works on; 0 when idle. */
  job: number;
  /** The run it holds, whose channels can be asked for; 0 for none. */
  holds: number;
}

export class Engine {
  #seats: Seat[] = [];
  #next: RunRequest | undefined;
  #id = 0;
  #shown = 0;
  #timer = 0;
  #rest = 0;
  #ready = false;
  readonly #listener: Listener;

  constructor(listener: Listener) {
    this.#listener = listener;
  }

  /** Asks for a run. What was asked for before is no longer waited for. */
  run(request: Omit<RunRequest, 'id'>): void {
    this.#id += 1;
    this.#next = { ...request, id: this.#id };
    this.#send();
  }

  /** Asks more about a run; unanswered when no worker holds it any more. */
  ask(request: SeriesRequest | AfterRequest): void {
    this.#seats.find((s) => s.holds === request.run)?.worker.postMessage(request);
  }

  /** Gives up what is being computed. */
  stop(): void {
    this.#next = undefined;
    this.#id += 1;
    for (const seat of this.#seats.filter((s) => s.job > 0)) this.#dismiss(seat);
  }

  /** Lets go of everything; a later request begins anew. */
  close(): void {
    clearTimeout(this.#timer);
    clearTimeout(this.#rest);
    this.stop();
    for (const seat of this.#seats) this.#dismiss(seat);
  }

  #send(): void {
    clearTimeout(this.#timer);
    if (this.#next === undefined) return;
    const idle = this.#seats.filter((s) => s.job === 0);
    // The run on show stays where its channels can be asked for.
    const seat =
      idle.find((s) => s.holds !== this.#shown) ??
      idle[0] ??
      (this.#seats.length < MOST ? this.#seat() : undefined);
    if (seat === undefined) {
      this.#timer = window.setTimeout(() => {
        const oldest = this.#seats.reduce((a, b) => (b.job < a.job ? b : a));
        this.#dismiss(oldest);
        this.#send();
      }, PATIENCE);
      return;
    }
    seat.job = this.#next.id;
    seat.worker.postMessage(this.#next);
    this.#next = undefined;
  }

  #dismiss(seat: Seat): void {
    seat.worker.terminate();
    this.#seats = this.#seats.filter((s) => s !== seat);
  }

  #received(reply: Reply): void {
    if (reply.kind === 'series' || reply.kind === 'after') {
      if (reply.id === this.#shown) this.#listener(reply);
      return;
    }
    if (reply.id === this.#id) {
      if (reply.kind === 'picture') this.#shown = reply.id;
      this.#listener(reply);
    }
    if (reply.kind === 'progress') return;
    if (this.#next !== undefined) this.#send();
    if (this.#ready) return;
    this.#ready = true;
    this.#rest = window.setTimeout(() => {
      if (this.#seats.length < MOST) this.#seat();
    }, REST);
  }

  #seat(): Seat {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell',
    });
    const seat: Seat = { worker, job: 0, holds: 0 };
    worker.onmessage = (e: MessageEvent<Reply>) => {
      const { kind, id } = e.data;
      if (kind === 'picture' || kind === 'issues' || kind === 'failure') seat.job = 0;
      if (kind === 'picture') seat.holds = id;
      this.#received(e.data);
    };
    worker.onerror = (e) => {
      // A worker that failed to load or broke is not used again.
      this.#dismiss(seat);
      const message = e.message || 'the simulation could not be started';
      this.#received({ id: seat.job, kind: 'failure', message });
    };
    this.#seats.push(seat);
    return seat;
  }
}
