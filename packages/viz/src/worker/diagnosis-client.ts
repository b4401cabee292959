/** The page's side of a diagnosis: one worker that ranks and some that play for it, kept as long as they are asked. */
import type { Scenario } from '@wheelwell/core';
import type { DiagnosisJob, DiagnosisReply, DiagnosisRequest } from './diagnosis-message.js';
import type { Question, Told } from './parameters-message.js';
import type { WrittenScenario } from './sheet-message.js';

/** Players: one core is left to the page; the one who ranks mostly waits. */
const LEAST = 2;
const MOST = 4;
/** What was played is remembered in a worker, which costs memory: let go after this long without a question, ms. */
const IDLE = 600_000;

export type DiagnosisQuestion = Omit<DiagnosisRequest, 'id'>;
type Hear = (reply: DiagnosisReply) => void;

export class Diagnoser {
  /** The first ranks. */
  #workers: Worker[] = [];
  #id = 0;
  #hear: Hear = () => undefined;
  #timer = 0;
  /** The scenario asked about last. */
  #known: { readonly written: string; readonly read: Promise<Scenario | undefined> } | undefined;

  constructor(private readonly question: (question: Question) => Promise<Told>) {}

  /** Ranks; what was being ranked before is given up, what was played for it is remembered. */
  explain(question: DiagnosisQuestion, hear: Hear): void {
    this.#put('diagnose', question, hear);
  }

  /** Plays what a sheet like this may want. */
  ahead(question: DiagnosisQuestion, hear: Hear): void {
    this.#put('play-ahead', question, hear);
  }

  #put(kind: 'diagnose' | 'play-ahead', question: DiagnosisQuestion, hear: Hear): void {
    const id = ++this.#id;
    this.#hear = hear;
    this.#rest();
    if (this.#workers.length === 0) {
      const players = Math.max(LEAST, Math.min(MOST, navigator.hardwareConcurrency - 1));
      for (let i = 0; i <= players; i++) this.#workers.push(this.#hire());
    }
    void this.#readOf(question.scenario).then((read) => {
      if (id === this.#id) this.#post(kind, { ...question, id, ...(read && { read }) });
    });
  }

  #post(kind: 'diagnose' | 'play-ahead', request: DiagnosisRequest): void {
    const [ranker, ...players] = this.#workers;
    const channels = players.map((player) => {
      const { port1, port2 } = new MessageChannel();
      post(player, { kind: 'play-signatures', port: port2 }, [port2]);
      return port1;
    });
    if (ranker !== undefined) post(ranker, { kind, request, ports: channels }, channels);
  }

  /** As read by a worker that is warm; where none can tell, these read it for themselves. */
  #readOf(scenario: WrittenScenario): Promise<Scenario | undefined> {
    const written = JSON.stringify(scenario);
    if (this.#known?.written !== written) {
      const read = this.question({ kind: 'scenario', scenario }).then(
        (told) => (told.kind === 'scenario' ? told.scenario : undefined),
        () => undefined,
      );
      this.#known = { written, read };
    }
    return this.#known.read;
  }

  stop(): void {
    this.#id += 1;
    const [ranker] = this.#workers;
    if (ranker !== undefined) post(ranker, { kind: 'leave-diagnosis' }, []);
  }

  #rest(): void {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#dismiss(), IDLE);
  }

  #hire(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell diagnosis',
    });
    worker.onmessage = ({ data }: MessageEvent<DiagnosisReply>) => {
      if (data.id === this.#id) this.#told(data);
    };
    worker.onerror = (e) => {
      const message = e.message || 'the simulation could not be started';
      this.#told({ id: this.#id, kind: 'broken', message });
    };
    return worker;
  }

  #told(reply: DiagnosisReply): void {
    this.#rest();
    if (reply.kind === 'broken') this.#dismiss();
    this.#hear(reply);
  }

  #dismiss(): void {
    for (const worker of this.#workers) worker.terminate();
    this.#workers = [];
  }
}

function post(worker: Worker, job: DiagnosisJob, transfer: Transferable[]): void {
  worker.postMessage(job, transfer);
}
