/** Check valve of an oil line; the poppet is that of shared/check. */
import type { DeviceDefinition } from '../define/index.js';
import { checkFindings, checkFlow, checkParameters } from './shared/check.js';
import { leakage } from './shared/parameters.js';

export const checkValve: DeviceDefinition = {
  kind: 'check-valve',
  title: 'Check valve',
  summary: 'Lets oil through from inlet to outlet only.',
  source: 'quasi-static poppet and orifice: Merritt, Hydraulic Control Systems (from memory)',
  role: 'other',
  parameters: checkParameters(
    0.006,
    leakage(
      'leak when shut',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour at system pressure; common practice, no source',
    ),
  ),
  ports: {
    inlet: { title: 'inlet', volume: 2e-6 },
    outlet: { title: 'outlet', volume: 2e-6 },
  },
  flows: { through: checkFlow },
  check: checkFindings,
  prepare: () => new Float64Array(0),
  symbol: { name: 'check', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
