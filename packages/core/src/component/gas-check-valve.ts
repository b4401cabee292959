/**
 * Gas check valve: a check valve (shared/check) between gas ports, with a soft seat that holds gas.
 * It keeps the gas of one bottle from the other, and oil out of the gas lines.
 */
import type { DeviceDefinition } from '../define/index.js';
import { checkFindings, checkFlow, checkParameters } from './shared/check.js';
import { leakage } from './shared/parameters.js';

export const gasCheckValve: DeviceDefinition = {
  kind: 'gas-check-valve',
  title: 'Gas check valve',
  summary: 'Lets gas through from inlet to outlet only.',
  source: 'quasi-static poppet; flow by ISO 6358',
  role: 'other',
  parameters: checkParameters(
    0.004,
    leakage('leak when shut', 1e-9, 0, 'a soft seat is gas tight'),
  ),
  ports: {
    inlet: { title: 'inlet', volume: 2e-6, dry: true },
    outlet: { title: 'outlet', volume: 2e-6, dry: true },
  },
  flows: { through: checkFlow },
  check: checkFindings,
  prepare: () => new Float64Array(0),
  symbol: { name: 'gas-check', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
