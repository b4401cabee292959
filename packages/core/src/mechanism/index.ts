/** Mechanisms by kind: a new one is one file and one line here. */
import type { MechanismDefinition } from '../define/index.js';
import { door } from './door.js';
import { leg } from './leg.js';
import { linkedMember } from './linked-member.js';

export const mechanisms: Readonly<Record<string, MechanismDefinition>> = {
  leg,
  door,
  'linked-member': linkedMember,
};
export { rampLoad, rampMargin, rampOf, type Ramp, type RampLoad, type RampMargin } from './ramp.js';
