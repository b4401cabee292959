/** Devices with their parameters settled, so that what a parameter decides (a controller's table) is known to all that refer to them. */
import type { DeviceDefinition } from '../define/device.js';
import type { Parameters, StateTable } from '../define/parameter.js';
import { tailored } from '../define/tailored.js';
import type { Draft, DraftPart } from './draft.js';
import { didYouMean } from '../quantity/index.js';
import { wordList, type IssueList } from './issue-list.js';
import { kebab } from './names.js';
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
    const found =
      (part.parameters && known.get(part.parameters)) ?? settle(part, ['components', name], issues);
    if (found !== undefined) settled.set(name, found.parameters);
    if (part.definition?.tailor === undefined) components.set(name, part);
    else components.set(name, { ...part, definition: found?.definition });
  }
  return { components, parameters: settled };
}

interface Settled {
  readonly parameters: Parameters;
  readonly definition: DeviceDefinition;
}

/** What was settled without an issue, by the figures as written. */
const known = new WeakMap<object, Settled>();

function settle(
  { definition, parameters: written, raw }: DraftPart<DeviceDefinition>,
  path: readonly string[],
  issues: IssueList,
): Settled | undefined {
  if (definition === undefined || written === undefined) return undefined;
  const parameters = fillParameters(definition.parameters, written, undefined, path, issues);
  const sound =
    parameters !== undefined &&
    checkControls(definition, parameters, path, issues) &&
    checkBetween(definition, parameters, raw, path, issues);
  if (!sound) return undefined;
  const found = { parameters, definition: tailored(definition, parameters) };
  known.set(written, found);
  return found;
}

/** Terms of its state tables about a control must name one of its positions; true when all do. */
function checkControls(
  { kind, inputs = {}, parameters: definitions }: DeviceDefinition,
  parameters: Parameters,
  path: readonly string[],
  issues: IssueList,
): boolean {
  const before = issues.length;
  const positions = Object.entries(inputs).flatMap(([name, { choices = [] }]) =>
    choices.map((choice) => `${kebab(name)} ${choice}`),
  );
  for (const [name, { type }] of Object.entries(definitions)) {
    if (type !== 'state-table') continue;
    for (const { name: state, next } of (parameters[name] as StateTable).states) {
      next.forEach((row, i) =>
        row.if.forEach((term, j) => {
          const what = term.replace(/^not /, '');
          const control = what.includes(' ') || positions.some((p) => p.startsWith(`${what} `));
          if (!control || positions.includes(what)) return;
          issues.add([...path, kebab(name), state, 'next', i, 'if', j], {
            message: `a ${kind} has no control with this position`,
            found: term,
            allowed: wordList(positions, 40),
            hint: didYouMean(what, positions),
          });
        }),
      );
    }
  }
  return issues.length === before;
}
