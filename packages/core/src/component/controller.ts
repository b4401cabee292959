/**
 * Controller: relays or logic that open valves in order, as a small state table in the scenario
 * says. It hears a lever and switches, drives valves, and holds every interlock ("not before"),
 * time and time-out ("after 8 s") as rows of that table (shared/state-table). It decides in no
 * time; the delays are those of the switches it hears and the valves it drives.
 */
import type { DeviceDefinition, InputDefinition, Parameters, StateTable } from '../define/index.js';
import { LEVER } from './shared/selector.js';
import { tableFindings, tableInputs, tableModes, tableSignals } from './shared/state-table.js';

const lever: InputDefinition = {
  title: 'gear lever',
  choices: LEVER,
  initial: (p: Parameters) => LEVER.findIndex((word) => word === p.lever),
};

export const controller: DeviceDefinition = {
  kind: 'controller',
  title: 'Controller',
  summary:
    'Drives valves by wire in the order its state table gives, from a lever and switches, with interlocks and time-outs.',
  source: 'common practice, no source: sequence relay logic written as a state table',
  role: 'control',
  parameters: {
    lever: {
      type: 'choice',
      title: 'lever at the start',
      choices: LEVER,
      default: 'down',
      why: 'down: as the aircraft stands on its jacks',
    },
    table: {
      type: 'state-table',
      title: 'state table',
      why: 'no default: what each state drives and what leads out of it belong to the aircraft',
    },
  },
  ports: {},
  inputs: { lever },
  // Without a table it does nothing.
  modes: { idle: { title: 'idle' } },
  tailor: (p) => {
    const table = p.table as StateTable;
    const inputs = { lever, ...tableInputs(table) };
    return {
      inputs,
      modes: tableModes(table, Object.keys(inputs)),
      signals: tableSignals(table),
    };
  },
  check: (p) =>
    tableFindings(p.table as StateTable).map((message) => ({ parameter: 'table', message })),
  prepare: () => new Float64Array(0),
  symbol: { name: 'controller', size: [8, 6], ports: {} },
};
