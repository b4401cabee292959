/** Reads, simulates and pictures: one request in, one reply out. */
import { readScenario, simulate } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import type { Reply, RunRequest } from './message.js';
import { arraysOf, picture } from './picture.js';

export interface Answer {
  readonly reply: Reply;
  readonly transfer: Transferable[];
}

export function answer(request: RunRequest): Answer {
  const { id, file } = request;
  try {
    const { scenario, issues } = readScenario(request.text, { file });
    if (scenario === undefined)
      return { reply: { id, kind: 'issues', file, issues }, transfer: [] };
    const names = Object.keys(scenario.cards);
    const name =
      request.card !== undefined && names.includes(request.card) ? request.card : names[0];
    if (name === undefined) {
      const none = {
        file,
        line: 0,
        column: 0,
        path: 'cards',
        message: 'there is no test card to run',
        found: '',
        allowed: 'at least one card',
        hint: '',
      };
      return { reply: { id, kind: 'issues', file, issues: [none] }, transfer: [] };
    }
    const asked = withFaults(scenario, name, request);
    const started = performance.now();
    const run = simulate(asked, { card: name });
    const made = picture(scenario, run, performance.now() - started);
    return { reply: { id, kind: 'picture', picture: made }, transfer: arraysOf(made) };
  } catch (error) {
    return {
      reply: {
        id,
        kind: 'failure',
        message: error instanceof Error ? error.message : String(error),
      },
      transfer: [],
    };
  }
}

/** The faults asked for replace the card's own, so that a user can also take one away. */
function withFaults(scenario: Scenario, name: string, request: RunRequest): Scenario {
  const card = scenario.cards[name];
  if (request.faults === undefined || card === undefined) return scenario;
  return { ...scenario, cards: { ...scenario.cards, [name]: { ...card, faults: request.faults } } };
}
