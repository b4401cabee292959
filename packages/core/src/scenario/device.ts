/** Devices with their parameters settled, so that what a parameter decides (a controller's table) is known to all that refer to them. */
import type { DeviceDefinition } from '../define/device.js';
import type { Parameters } from '../define/parameter.js';
import { tailored } from '../define/tailored.js';
import type { Draft, DraftPart } from './draft.js';
import type { IssueList } from './issue-list.js';
import { checkBetween, fillParameters } from './parameters.js';

export interface SettledDevices {
  /** With the definition each device has in this file; absent where its figures would decide it and are wrong. */
  readonly components: ReadonlyMap<string, DraftPart<DeviceDefinition>>;
  /** Of the devices whose figures are sound. */
  readonly parameters: ReadonlyMap<string, Parameters>;
}

export function settleDevices(draft: Draft, issues: IssueList): SettledDevices {
  const components = new Map<string, DraftPart<DeviceDefinition>>();
  const settled = new Map<string, Parameters>();
  for (const [name, part] of draft.components) {
    const { definition, parameters: written, raw } = part;
    const path = ['components', name];
    const parameters =
      definition === undefined || written === undefined
        ? undefined
        : fillParameters(definition.parameters, written, undefined, path, issues);
    const sound =
      definition !== undefined &&
      parameters !== undefined &&
      checkBetween(definition, parameters, raw, path, issues);
    if (sound) settled.set(name, parameters);
    if (definition?.tailor === undefined) components.set(name, part);
    else
      components.set(name, {
        ...part,
        definition: sound ? tailored(definition, parameters) : undefined,
      });
  }
  return { components, parameters: settled };
}
