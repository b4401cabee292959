import type { DeviceDefinition } from './device.js';
import type { Parameters } from './parameter.js';

/** The definition of one device: the kind's, with what its own parameters decide. */
export function tailored(definition: DeviceDefinition, parameters: Parameters): DeviceDefinition {
  const own = definition.tailor?.(parameters);
  return own === undefined ? definition : { ...definition, ...own };
}
