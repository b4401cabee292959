/** Reads, simulates and pictures: one request in, one reply out. */
import { blowDownUnder, readScenario, simulate } from '@wheelwell/core';
import type { Issue, Reading, Scenario } from '@wheelwell/core';
import type { Reply, RunRequest } from './message.js';
import { remember } from './series.js';
import { arraysOf, picture } from './picture.js';

export interface Answer {
  readonly reply: Reply;
  readonly transfer: Transferable[];
}

/** Simulating takes about this share of the whole; judging the run and drawing it up the rest. */
const SIMULATING = 0.6;
/** Time between two words about progress, ms. */
const PAUSE = 100;

/** Another card or another severity of the same text need not read it again. */
let last: { readonly file: string; readonly text: string; readonly reading: Reading } | undefined;

function read(file: string, text: string): Reading {
  if (last?.file !== file || last.text !== text)
    last = { file, text, reading: readScenario(text, { file }) };
  return last.reading;
}

/** `tell` is called now and then with the share done, 0..1. */
export function answer(request: RunRequest, tell?: (share: number) => void): Answer {
  const { id, file } = request;
  const refused = (issues: readonly Issue[]): Answer => ({
    reply: { id, kind: 'issues', file, issues },
    transfer: [],
  });
  try {
    const { scenario, issues } = read(file, request.text);
    if (scenario === undefined) return refused(issues);
    const names = Object.keys(scenario.cards);
    const name =
      request.card !== undefined && names.includes(request.card) ? request.card : names[0];
    if (name === undefined) return refused([noCard(file)]);
    const { condition } = request;
    const faulty = withFaults(scenario, name, request);
    const asked = condition === undefined ? faulty : blowDownUnder(faulty, name, condition);
    const started = performance.now();
    const onProgress = tell === undefined ? undefined : throttled(tell, started);
    const run = simulate(asked, {
      card: name,
      ...(onProgress === undefined ? {} : { onProgress }),
    });
    remember(id, run);
    const made = picture(id, scenario, run, performance.now() - started, condition);
    return { reply: { id, kind: 'picture', picture: made }, transfer: arraysOf(made) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
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
