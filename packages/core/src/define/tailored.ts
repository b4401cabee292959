import { kept } from './kept.js';
import type { DeviceDefinition } from './device.js';
import type { Parameters } from './parameter.js';

/** The definition of one device: the kind's, with what its own parameters decide. */
export const tailored = (definition: DeviceDefinition, parameters: Parameters): DeviceDefinition =>
  definition.tailor === undefined ? definition : own(parameters, definition);

const own = kept((parameters: Parameters, definition: DeviceDefinition): DeviceDefinition => ({
  ...definition,
  ...definition.tailor?.(parameters),
}));
