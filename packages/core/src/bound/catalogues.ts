/** The catalogues that come with core. */
import { components } from '../component/index.js';
import type { Catalogues } from '../define/index.js';
import { faults } from '../fault/index.js';
import { mechanisms } from '../mechanism/index.js';
import { fluids, gases } from '../medium/index.js';
import { rules } from '../monitor/index.js';

/** Everything a scenario may name: devices, mechanisms, oils, faults, rules. */
export const catalogues: Catalogues = { components, mechanisms, fluids, gases, faults, rules };
