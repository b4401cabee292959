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
  type SolverOptions,
  type SolverResult,
} from '../solver/index.js';
import { channelsOf } from './channel.js';
import { Machine } from './machine.js';
import { Record } from './record.js';
import { SimulatedRun } from './run.js';

/** How a run is made. */
export interface SimulateOptions {
  /** Name of the test card; the first one of the scenario when absent. */
  readonly card?: string;
  /** Faults beside the card's own. */
  readonly faults?: readonly FaultEntry[];
  /** Gas at nodes at the start beside the card's own, m3 at ambient pressure; Infinity for no oil at all. */
  readonly gas?: Card['gas'];
  /** Length of a tick, s, 1e-4 to 1; default 5 ms. The result does not depend on it. */
  readonly tick?: number;
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
  /** Channels that are read at every step's end as it is made: `look` then need not go over the run again. */
  readonly watch?: (channel: string) => boolean;
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

/**
 * Plays a test card of a scenario. Never throws for a scenario that `readScenario` accepted:
 * a run that cannot go on says so in its outcome and keeps what it has computed.
 *
 * @throws RangeError when `card` names no card, or `tick` is outside its range.
 */
export function simulateWith(
  catalogues: Catalogues,
  scenario: Scenario,
  options: SimulateOptions = {},
): SimulatedRun {
  const cardName = options.card ?? Object.keys(scenario.cards)[0];
  if (!Object.hasOwn(scenario.cards, cardName)) {
    const known = Object.keys(scenario.cards).join(', ');
    throw new RangeError(`unknown card: ${cardName}; the scenario has ${known}`);
  }
  const tick = options.tick ?? 5e-3;
  if (!(tick >= 1e-4 && tick <= 1)) throw new RangeError(`tick outside 0.0001 to 1 s: ${tick}`);
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
  const watched = channels
    .filter((c) => c.state === undefined && options.watch?.(c.info.name) === true)
    .map(({ info, read }) => ({ name: info.name, read }));
  const record = new Record(network.size, machine.epochs, watched);
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
  const result = integrate(machine, 0, duration, y, solver, record);
  const { statistics } = result;
  return new SimulatedRun({
    scenario: patched.scenario,
    card,
    cardName,
    catalogues,
    network,
    channels,
    machine,
    record,
    outcome: outcomeOf(result, machine),
    tick,
    tolerance,
    statistics: { states: network.size, transitions: machine.transitions, ...statistics },
  });
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
