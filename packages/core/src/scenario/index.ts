export { holdWith, readWith, type Edited, type HeldScenario } from './held.js';
export { jsonSchemaOf } from './json-schema.js';
export { LIMITS } from './limit.js';
export { kebab } from './names.js';
export { OWN_PARAMETERS } from './own-parameters.js';
export {
  canBefall,
  changeOf,
  faultProblem,
  patchScenario,
  type PartChange,
  type Patched,
} from './patch.js';
export type { Reading } from './read.js';
export { partsOf } from './unit.js';
export { modeWords, motionWords } from './world.js';
export { writeScenario } from './write.js';
