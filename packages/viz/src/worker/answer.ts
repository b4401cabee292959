/** Reads, simulates and pictures: one request in, one reply out. */
import { blowDownUnder, simulate, underConditions } from '@wheelwell/core';
import type { Issue, Scenario } from '@wheelwell/core';
import type { JudgeRequest, Reply, RunRequest } from './message.js';
import { arraysInApproaches } from './bay.js';
import { judgedBy } from './judged.js';
import { arraysOf, judgement, picture } from './picture.js';
import { readWritten } from './reading.js';
import { remember, remembered } from './series.js';
import { whyOf } from './why.js';

export interface Answer {
  readonly reply: Reply;
  readonly transfer: Transferable[];
}

/** Simulating takes about this share of the whole; judging the run and drawing it up the rest. */
const SIMULATING = 0.6;
/** Time between two words about progress, ms. */
const PAUSE = 100;

export interface AnswerOptions {
  /** Called now and then with the share done, 0..1. */
  readonly tell?: (share: number) => void;
  /** The picture before the run is judged: judging takes as long as simulating. */
  readonly early?: boolean;
}

export function answer(request: RunRequest, { tell, early = false }: AnswerOptions = {}): Answer {
  const { id, file } = request;
  const refused = (issues: readonly Issue[]): Answer => ({
    reply: { id, kind: 'issues', file, issues },
    transfer: [],
  });
  try {
    const { scenario, issues } = readWritten(request);
    if (scenario === undefined) return refused(issues);
    const names = Object.keys(scenario.cards);
    const name =
      request.card !== undefined && names.includes(request.card) ? request.card : names[0];
    if (name === undefined) return refused([noCard(file)]);
    const { condition, stood } = request;
    const faulty = withFaults(scenario, name, request);
    const standing = stood === undefined ? faulty : underConditions(faulty, name, stood);
    const asked = condition === undefined ? standing : blowDownUnder(standing, name, condition);
    const started = performance.now();
    const onProgress = tell === undefined ? undefined : throttled(tell, started);
    const run = simulate(asked, {
      card: name,
      ...(onProgress === undefined ? {} : { onProgress }),
    });
    remember(id, run);
    const bare = picture(id, scenario, run, performance.now() - started, request);
    const made = early ? bare : judgedBy(bare, judgement(run));
    return { reply: { id, kind: 'picture', picture: made }, transfer: arraysOf(made) };
  } catch (error) {
    const message = whyOf(error);
    return { reply: { id, kind: 'failure', message }, transfer: [] };
  }
}

/** The judgement of a run whose picture went ahead of it. */
export function judged({ run: id }: JudgeRequest): Answer {
  try {
    const run = remembered(id);
    if (run === undefined) throw new Error('the run to be judged is gone');
    const found = judgement(run);
    return {
      reply: { id, kind: 'judged', judgement: found },
      transfer: arraysInApproaches(found).map((a) => a.buffer),
    };
  } catch (error) {
    const message = whyOf(error);
    return { reply: { id, kind: 'failure', message }, transfer: [] };
  }
}

function noCard(file: string): Issue {
  return {
    file,
    line: 0,
    column: 0,
    path: 'cards',
    message: 'there is no test card to run',
    found: '',
    allowed: 'at least one card',
    hint: '',
  };
}

function throttled(tell: (share: number) => void, started: number): (share: number) => void {
  let next = started + PAUSE;
  return (share) => {
    const now = performance.now();
    if (now < next) return;
    next = now + PAUSE;
    tell(share * SIMULATING);
  };
}

/** The faults asked for replace the card's own, so that a user can also take one away. */
function withFaults(scenario: Scenario, name: string, request: RunRequest): Scenario {
  const card = scenario.cards[name];
  if (request.faults === undefined || card === undefined) return scenario;
  return { ...scenario, cards: { ...scenario.cards, [name]: { ...card, faults: request.faults } } };
}
