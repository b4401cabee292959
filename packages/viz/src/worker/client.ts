/** The page's side of the workers: the latest request wins, and a run can be stopped. */
import type { AfterRequest, Picture, Posted, Reply, RunRequest, SeriesRequest } from './message.js';
import type { Question, Told } from './parameters-message.js';
import { whole } from './sparing.js';

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
/** What follows upon a change as soon as this is a drag, ms: until it rests its steps are run quickly only. */
const DRAG = 150;
/** Between the numbers of two requests, which is that of a quick run: the exact one has the next. */
const STEP = 2;

interface Open {
  readonly question: Question;
  readonly resolve: (told: Told) => void;
  readonly reject: (error: Error) => void;
}

interface Seat {
  readonly worker: Worker;
  /** What it works on; undefined when idle. */
  job: RunRequest | undefined;
  /** The quick run is there, the exact one to be had next: it may be sent something more urgent. */
  refining: boolean;
  /** What came from it last: it holds that run, whose channels can be asked for. */
  last: Picture | undefined;
  /** Questions it has not answered yet, by number. */
  readonly open: Map<number, Open>;
}

export class Engine {
  #seats: Seat[] = [];
  #next: RunRequest | undefined;
  /** What was asked for last. */
  #latest: RunRequest | undefined;
  #id = 0;
  /** When it was asked for, ms, and whether so soon after what was asked before that it is a drag. */
  #asked = -Infinity;
  #hurried = false;
  #shown = 0;
  #number = 0;
  #timer = 0;
  #rest = 0;
  #ready = false;
  readonly #listener: Listener;

  constructor(listener: Listener) {
    this.#listener = listener;
  }

  /**
   * Asks for a run. What was asked for before is no longer waited for; of the same test it is still
   * shown when it comes, so that a figure that is being dragged is followed.
   */
  run(request: Omit<RunRequest, 'id'>): void {
    const now = performance.now();
    this.#hurried = now - this.#asked < DRAG;
    this.#asked = now;
    this.#id += STEP;
    this.#latest = { ...request, id: this.#id };
    this.#next = this.#latest;
    this.#send();
  }

  /** Asks more about a run; unanswered when no worker holds it any more. */
  ask(request: SeriesRequest | AfterRequest): void {
    this.#seats.find((s) => s.last?.run === request.run)?.worker.postMessage(request);
  }

  /** Asks about a text. */
  question(question: Question): Promise<Told> {
    return new Promise((resolve, reject) => {
      this.#put({ question, resolve, reject });
    });
  }

  /** Gives up what is being computed. */
  stop(): void {
    this.#next = undefined;
    this.#id += STEP;
    for (const seat of this.#seats.filter((s) => s.job !== undefined)) this.#dismiss(seat);
  }

  #put(open: Open): void {
    const seat =
      this.#seats.find((s) => s.job === undefined) ??
      this.#seats.find((s) => s.refining) ??
      this.#seats[0] ??
      this.#seat();
    this.#number += 1;
    seat.open.set(this.#number, open);
    seat.worker.postMessage({ ...open.question, number: this.#number });
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
    const idle = this.#seats.filter((s) => s.job === undefined);
    // The run on show stays where its channels can be asked for.
    const seat =
      idle.find((s) => s.last?.run !== this.#shown) ??
      idle[0] ??
      this.#seats.find((s) => s.refining) ??
      (this.#seats.length < MOST ? this.#seat() : undefined);
    if (seat === undefined) {
      this.#timer = window.setTimeout(() => {
        const oldest = this.#seats.reduce((a, b) =>
          (b.job?.id ?? Infinity) < (a.job?.id ?? Infinity) ? b : a,
        );
        this.#dismiss(oldest);
        this.#send();
      }, PATIENCE);
      return;
    }
    seat.job = this.#next;
    seat.refining = false;
    seat.worker.postMessage(this.#next);
    this.#next = undefined;
  }

  #dismiss(seat: Seat): void {
    seat.worker.terminate();
    this.#seats = this.#seats.filter((s) => s !== seat);
    for (const open of seat.open.values()) this.#put(open);
  }

  #received(seat: Seat, reply: Reply): void {
    if (reply.kind === 'series' || reply.kind === 'after') {
      if (reply.id === this.#shown) this.#listener(reply);
      return;
    }
    const latest = reply.id === this.#id;
    if (reply.kind === 'progress') {
      if (latest) this.#listener(reply);
      return;
    }
    const job = seat.job?.id === reply.id ? seat.job : undefined;
    const quick = reply.kind === 'picture' && !reply.picture.judged;
    if (job !== undefined && !(quick && latest)) seat.job = undefined;
    seat.refining = seat.job !== undefined && quick && latest;
    if (seat.refining) this.#refineLater(seat, reply.id);
    if (reply.kind === 'picture') {
      const { run } = reply.picture;
      const passing = quick && run > this.#shown && sameTest(job, this.#latest);
      if (latest || passing) {
        this.#shown = run;
        this.#listener(latest ? reply : { ...reply, interim: true });
      }
    } else if (latest) this.#listener(reply);
    if (this.#next !== undefined) this.#send();
    if (this.#ready) return;
    this.#ready = true;
    this.#rest = window.setTimeout(() => {
      if (this.#seats.length < MOST) this.#seat();
    }, REST);
  }

  /**
   * Has the exact run made, unless something more urgent comes in between: when the quick one has been drawn, and
   * a figure that is being dragged has come to rest.
   */
  #refineLater(seat: Seat, run: number): void {
    const refine = (): void => {
      if (seat.refining && seat.job?.id === run) seat.worker.postMessage({ kind: 'refine', run });
    };
    afterFrame(() => (this.#hurried ? setTimeout(refine, DRAG) : refine()));
  }

  #taken(seat: Seat, posted: Posted): Reply {
    if (posted.kind !== 'picture') return posted;
    const picture = (seat.last = whole(posted.picture, seat.last));
    return { ...posted, picture };
  }

  #told(seat: Seat, told: Told): void {
    seat.open.get(told.number)?.resolve(told);
    seat.open.delete(told.number);
  }

  #seat(): Seat {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell',
    });
    const seat: Seat = {
      worker,
      job: undefined,
      refining: false,
      last: undefined,
      open: new Map(),
    };
    worker.onmessage = ({ data }: MessageEvent<Posted | Told>) => {
      if ('number' in data) this.#told(seat, data);
      else this.#received(seat, this.#taken(seat, data));
    };
    worker.onerror = (e) => {
      // A worker that failed to load or broke is not used again.
      const message = e.message || 'the simulation could not be started';
      for (const { reject } of seat.open.values()) reject(new Error(message));
      seat.open.clear();
      this.#dismiss(seat);
      this.#received(seat, { id: seat.job?.id ?? 0, kind: 'failure', message });
    };
    this.#seats.push(seat);
    return seat;
  }
}

/** The longest a frame is waited for, ms: a page that is not looked at draws none. */
const FRAME = 100;

/**
 * Calls back when the frame that is due has been drawn: the browser needs both of two processors for it,
 * and shows it a third to a half sooner when the worker rests meanwhile.
 */
function afterFrame(then: () => void): void {
  let called = false;
  const once = (): void => {
    if (!called) then();
    called = true;
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, FRAME);
}

/** The same test of the same file: it differs in faults, figures or conditions only. */
function sameTest(a: RunRequest | undefined, b: RunRequest | undefined): boolean {
  return a?.file === b?.file && a?.text === b?.text && a?.card === b?.card;
}
