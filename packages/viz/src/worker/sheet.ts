/** The worker's part in the test card: the sound run, and sheets to text and back. */
import {
  catalogues,
  expectedSwings,
  readObservations,
  simulate,
  underConditions,
  writeObservations,
} from '@wheelwell/core';
import type { ObservationConditions, Scenario } from '@wheelwell/core';
import type { Expectation, SheetJob, SheetReply } from './sheet-message.js';
import { scenarioIn } from './reading.js';
import { whyOf } from './why.js';

export function answerSheet(job: SheetJob): SheetReply {
  try {
    if (job.kind === 'expect')
      return {
        kind: 'expected',
        expectation: expect(scenarioIn(job.scenario), job.card, job.stood),
      };
    if (job.kind === 'write') {
      const text = writeObservations(job.sheet, { units: job.units });
      return { kind: 'written', text, contradictions: readObservations(text).contradictions };
    }
    const scenario = job.scenario === undefined ? undefined : scenarioIn(job.scenario);
    const { file } = job;
    return {
      kind: 'sheet',
      ...readObservations(job.text, { file, ...(scenario && { scenario }) }),
    };
  } catch (error) {
    return { kind: 'broken', message: whyOf(error) };
  }
}

/** The same test with its faults taken away, under the conditions of the sheet. */
function expect(scenario: Scenario, name: string, stood: ObservationConditions): Expectation {
  const own = scenario.cards[name];
  if (own === undefined) throw new Error(`there is no card ${name}`);
  const sound = { ...scenario, cards: { ...scenario.cards, [name]: { ...own, faults: [] } } };
  const standing = underConditions(sound, name, stood);
  const run = simulate(standing, { card: name });
  const card = standing.cards[name] ?? own;
  const { timeUp, timeDown, timeBlowDown, spread } = scenario.limits;
  return {
    title: scenario.title,
    card: name,
    cardTitle: card.title,
    // A selection that moves nothing is no swing to time.
    swings: expectedSwings(run).filter((s) => Object.keys(s.times).length > 0),
    conditions: {
      ...stood,
      fluid: standing.fluid.kind,
      temperature: card.temperature ?? scenario.fluid.temperature,
    },
    stood: Object.keys(stood).length > 0,
    fluids: Object.entries(catalogues.fluids).map(([name, oil]) => [name, oil.title] as const),
    limits: {
      ...(timeUp !== undefined && { up: timeUp }),
      ...(timeDown !== undefined && { down: timeDown }),
      ...(timeBlowDown !== undefined && { blowDown: timeBlowDown }),
      ...(spread !== undefined && { spread }),
    },
  };
}
