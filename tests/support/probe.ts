import { Machine } from '../../packages/core/src/machine/machine.js';
import { Record } from '../../packages/core/src/machine/record.js';
import { Network } from '../../packages/core/src/network/index.js';
import { catalogues } from '../../packages/core/src/index.js';
import type { Catalogues, Scenario } from '../../packages/core/src/define/index.js';
import { integrate, rodas4 } from '../../packages/core/src/solver/index.js';

/** A run taken apart: the network stands wherever `at` has put it. */
export interface Probe {
  readonly network: Network;
  readonly machine: Machine;
  readonly record: Record;
  /** Restores modes, inputs and motion of recorded step `step` and returns the state at its share `s`. */
  at(step: number, s: number): { readonly t: number; readonly y: Float64Array };
}

/** Runs a scenario's first card on a network that stays open to the test. */
export function probe(
  scenario: Scenario,
  options: {
    readonly tolerance?: number;
    readonly with?: Catalogues;
    /** Changes the states before the run starts. */
    readonly start?: (network: Network, y: Float64Array) => void;
  } = {},
): Probe {
  const card = Object.values(scenario.cards)[0];
  const network = new Network(scenario, options.with ?? catalogues, card);
  const machine = new Machine(network, scenario, card);
  const record = new Record(network.size, machine.epochs);
  const y = network.initial(card.start);
  options.start?.(network, y);
  const solver = {
    method: rodas4,
    tolerance: options.tolerance ?? 1e-3,
    maxSteps: 200_000,
    eventWidth: 1e-9,
  };
  const result = integrate(machine, 0, card.duration, y, solver, record);
  if (result.end !== 'done') throw new Error(`run ended ${result.end} at ${result.t}`);
  return {
    network,
    machine,
    record,
    at(step, s) {
      machine.restore(machine.epochs[record.epochOf(step)]);
      const t = record.start(step) + s * (record.end(step) - record.start(step));
      const state = new Float64Array(network.size);
      record.at(step, t, state);
      return { t, y: state };
    },
  };
}
