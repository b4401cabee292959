/** Reads, simulates and pictures: one request in, one reply out. */
import { blowDownUnder, simulate, underConditions } from '@wheelwell/core';
import type { Issue, Scenario } from '@wheelwell/core';
import type { RefineRequest, Reply, RunRequest } from './message.js';
import { arraysOf, picture } from './picture.js';
import { readWritten } from './reading.js';
import { remember } from './series.js';
import { whyOf } from './why.js';

export interface Answer {
  readonly reply: Reply;
  readonly transfer: Transferable[];
}

/** Simulating takes about this share of the whole; judging the run and drawing it up the rest. */
const SIMULATING = 0.6;
/** The exact run's number is the one after its quick one's. */
const EXACT = 1;
/** Time between two words about progress, ms. */
const PAUSE = 100;

export interface AnswerOptions {
  /** Called now and then with the share done, 0..1. */
  readonly tell?: (share: number) => void;
  /** A rougher run that is not judged, in a third of the time: the exact one is asked for next. */
  readonly quick?: boolean;
  /** The quick run in whose place it comes. */
  readonly refines?: number;
}

/** Of which the exact run may be asked for. */
let quickly: RunRequest | undefined;

export function answer(
  request: RunRequest,
  { tell, quick = false, refines }: AnswerOptions = {},
): Answer {
  const { id, file } = request;
  quickly = quick ? request : undefined;
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
      tolerance: quick ? 'draft' : 'normal',
      ...(onProgress === undefined ? {} : { onProgress }),
    });
    const number = refines === undefined ? id : refines + EXACT;
    remember(number, run);
    const made = picture(number, scenario, run, performance.now() - started, request, !quick);
    return {
      reply: { id, kind: 'picture', picture: made, ...(refines !== undefined && { refines }) },
      transfer: arraysOf(made),
    };
  } catch (error) {
    const message = whyOf(error);
    return { reply: { id, kind: 'failure', message }, transfer: [] };
  }
}

/** The exact run whose quick one went ahead of it. */
export function refined({ run: id }: RefineRequest, { tell }: AnswerOptions = {}): Answer {
  if (quickly?.id === id) return answer(quickly, { ...(tell && { tell }), refines: id });
  return { reply: { id, kind: 'failure', message: 'the run to be judged is gone' }, transfer: [] };
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
