/** Puts network, machine and solver together and plays a card; what is kept of it is the recorder's affair. */
import type {
  Card,
  Catalogues,
  FaultEntry,
  LogEntry,
  Outcome,
  Run,
  Scenario,
} from '../define/index.js';
import { Network } from '../network/index.js';
import { patchScenario } from '../scenario/index.js';
import {
  integrate,
  rodas3,
  rodas4,
  type Recorder,
  type SolverOptions,
  type SolverResult,
} from '../solver/index.js';
import { channelsOf, type ReadableChannel } from './channel.js';
import { Machine } from './machine.js';
import type { PlayedParts } from './played.js';

/** What is played, and how exactly. */
export interface PlayOptions {
  /** Name of the test card; the first one of the scenario when absent. */
  readonly card?: string;
  /** Faults beside the card's own. */
  readonly faults?: readonly FaultEntry[];
  /** Gas at nodes at the start beside the card's own, m3 at ambient pressure; Infinity for no oil at all. */
  readonly gas?: Card['gas'];
  /**
   * `draft`: quick look. `normal` (default): every event within 1 ms of the converged time.
   * `fine`: fourth order, for reference.
   */
  readonly tolerance?: Run['tolerance'];
  /** Told the share done, 0..1, now and then. */
  readonly onProgress?: (share: number) => void;
  /** Stops the run; what was computed is kept. */
  readonly signal?: { readonly aborted: boolean };
  /** Told every event as it is logged; true ends the run there, as if the card ended. */
  readonly until?: (entry: LogEntry) => boolean;
  /** Most step attempts; default 2 million. */
  readonly maxSteps?: number;
  /** Relative tolerance in place of the named one, for convergence studies. */
  readonly relativeTolerance?: number;
}

/**
 * Names of the tolerances: method, tolerance relative to the states' scales, and the width to
 * which an event's time is bracketed, s.
 */
const TOLERANCES = {
  draft: { method: rodas3, tolerance: 0.08, eventWidth: 5e-5 },
  normal: { method: rodas3, tolerance: 0.02, eventWidth: 1e-6 },
  fine: { method: rodas4, tolerance: 1e-4, eventWidth: 1e-9 },
} as const;

/** What a recorder may be made from. */
export interface Stage {
  readonly scenario: Scenario;
  readonly network: Network;
  readonly machine: Machine;
  readonly channels: readonly ReadableChannel[];
}

/**
 * Never throws for a scenario that `readScenario` accepted.
 *
 * @throws RangeError when `card` names no card.
 */
export function play<R extends Recorder>(
  catalogues: Catalogues,
  scenario: Scenario,
  options: PlayOptions,
  recorderOf: (stage: Stage) => R,
): PlayedParts & { readonly recorder: R } {
  const cardName = options.card ?? Object.keys(scenario.cards)[0];
  if (!Object.hasOwn(scenario.cards, cardName)) {
    const known = Object.keys(scenario.cards).join(', ');
    throw new RangeError(`unknown card: ${cardName}; the scenario has ${known}`);
  }
  const tolerance = options.tolerance ?? 'normal';
  const patched = patchScenario(
    scenario,
    scenario.cards[cardName],
    options.faults ?? [],
    catalogues,
  );
  const card = { ...patched.card, gas: { ...patched.card.gas, ...options.gas } };
  const network = new Network(patched.scenario, catalogues, card);
  const machine = new Machine(network, patched.scenario, card, options.until);
  const channels = channelsOf(network);
  const recorder = recorderOf({ scenario: patched.scenario, network, machine, channels });
  const y = network.initial(card.start);
  const { duration } = card;
  const { onProgress, signal } = options;
  const solver: SolverOptions = {
    ...TOLERANCES[tolerance],
    ...(options.relativeTolerance === undefined ? {} : { tolerance: options.relativeTolerance }),
    maxSteps: options.maxSteps ?? 2_000_000,
    cancelled:
      onProgress === undefined && signal === undefined
        ? undefined
        : () => {
            onProgress?.(network.workspace.t / duration);
            return signal?.aborted === true;
          },
  };
  const result = integrate(machine, 0, duration, y, solver, recorder);
  const { statistics } = result;
  return {
    scenario: patched.scenario,
    card,
    cardName,
    catalogues,
    network,
    channels,
    machine,
    recorder,
    outcome: outcomeOf(result, machine),
    tolerance,
    statistics: { states: network.size, transitions: machine.transitions, ...statistics },
  };
}

/** Sentences for how the solver ended. */
function outcomeOf(result: SolverResult, machine: Machine): Outcome {
  const where = result.state < 0 ? [] : [machine.nameOf(result.state)];
  const time = result.t;
  const at = `at ${time.toFixed(3)} s`;
  const diverged = (where: readonly string[]): Outcome => ({
    kind: 'diverged',
    time,
    where,
    why: `A value near ${where[0] ?? 'an unknown state'} became infinite or no number ${at}.`,
    hint: 'Look for a device with an extreme figure there.',
  });
  switch (result.end) {
    case 'done': {
      const waiting = machine.waiting;
      if (waiting === undefined)
        return { kind: 'done', time, where: [], why: 'The card was played to its end.', hint: '' };
      const event =
        waiting.after === undefined
          ? ''
          : ` for ${waiting.after.device} to be '${waiting.after.to}'`;
      return {
        kind: 'done',
        time,
        where: [waiting.device],
        why: `The card's time ran out while the operator was waiting${event}; '${waiting.device} ${waiting.text}' was not done.`,
        hint: 'Look why that event did not come, or give the card more time.',
      };
    }
    case 'cancelled':
      return {
        kind: 'stopped',
        time,
        where: [],
        why: `Stopped from outside ${at}.`,
        hint: 'Start it again to have the rest.',
      };
    case 'failed': {
      const devices = machine.failure?.where ?? [];
      if (machine.failure?.kind === 'diverged') return diverged(devices);
      return {
        kind: 'chatter',
        time,
        where: devices,
        why: `${devices.join(', ')} switch for ever ${at}: each transition undoes another.`,
        hint: 'Give what they switch on a gap (crack and reseat, engage and release), or a time where wires go round in a circle.',
      };
    }
    case 'diverged':
      return diverged(where);
    case 'stuck':
      return {
        kind: 'stuck',
        time,
        where,
        why: `The step for ${where[0] ?? 'an unknown state'} fell below what numbers can resolve ${at}.`,
        hint: 'Look for a very small volume or a very stiff part there.',
      };
    case 'exhausted':
      return {
        kind: 'exhausted',
        time,
        where,
        why: `The step budget was used up ${at}; ${where[0] ?? 'no state'} was the hardest.`,
        hint: 'Shorten the card, or use the draft tolerance.',
      };
  }
}
