/**
 * What a part of a device costs when the device does not have it: with a last flow path or force
 * left out where its figures are none, a sound device has no channel, no place in the equations
 * and no number that the part could touch.
 */
import type { DeviceDefinition } from '../../define/index.js';

/** What `tailor` returns: the device's parts without the one that is not there, or nothing to change. */
export function without(
  rest: Partial<Pick<DeviceDefinition, 'flows' | 'forces'>>,
  absent: boolean,
): ReturnType<NonNullable<DeviceDefinition['tailor']>> {
  return absent ? rest : {};
}
