import { bouncingBody } from './bouncing-body.js';
import { coupledMasses } from './coupled-masses.js';
import { decay } from './decay.js';
import { drainingVessel } from './draining-vessel.js';
import { oscillator } from './oscillator.js';
import type { ReferenceProblem } from './reference-problem.js';
import { robertson } from './robertson.js';
import { squeezedOil } from './squeezed-oil.js';
import { vanDerPol } from './van-der-pol.js';

/** Problems with known answers; every one is run by every method. */
export const referenceProblems: readonly ReferenceProblem[] = [
  decay,
  oscillator,
  coupledMasses,
  robertson,
  vanDerPol,
  bouncingBody,
  drainingVessel,
  squeezedOil,
];

export * from './equations.js';
export { oilBehindPiston } from './squeezed-oil.js';
export type * from './reference-problem.js';
