/** One action of the operator on a card. */
import type { DeviceDefinition, InputDefinition } from '../define/device.js';
import type { CardStep } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { check } from './check.js';
import { isMap } from './draft.js';
import { readNumber } from './field.js';
import { shown, wordList } from './issue-list.js';
import { lookUp } from './look-up.js';
import { findName, kebab } from './names.js';
import type { Plain } from './parse.js';
import { schemasOf } from './schema.js';
import { checkWord, unknown, type World } from './world.js';

type Path = readonly (string | number)[];

export function readStep(world: World, raw: Plain, path: Path): CardStep | undefined {
  const { issues, draft } = world;
  const step = check(schemasOf(world.catalogues).step, raw, path, issues);
  if (!isMap(raw)) return undefined;
  if (raw.at === undefined && raw.after === undefined)
    issues.add(path, {
      message: 'this step does not say when',
      allowed: 'at: a time, or after: an event',
    });
  const after = isMap(raw.after) ? raw.after : undefined;
  if (typeof after?.device === 'string' && typeof after.to === 'string') {
    checkWord(world, [...path, 'after'], after.device, after.to, 'to');
  }
  if (typeof raw.device !== 'string') return undefined;
  const part = draft.components.get(raw.device);
  const definition = part?.definition;
  if (part === undefined || !workable(part)) {
    tellUnworkable(world, raw.device, definition?.kind, [...path, 'device']);
    return undefined;
  }
  if (definition === undefined) return undefined;
  const inputs = definition.inputs ?? {};
  const names = Object.keys(inputs).map(kebab);
  // A device with a single control needs no saying which.
  const written = raw.input === undefined && names.length === 1 ? names[0] : shown(raw.input);
  const name = findName(inputs, written);
  if (name === undefined) {
    issues.add([...path, 'input'], {
      message:
        raw.input === undefined
          ? 'which control is missing'
          : `a ${definition.kind} has no such control`,
      found: raw.input === undefined ? '' : shown(raw.input),
      allowed: wordList(names),
      hint: didYouMean(written, names),
    });
    return undefined;
  }
  const wire = lookUp(world.signals.get(raw.device) ?? {}, name);
  if (wire !== undefined && wire.device !== '') {
    issues.add([...path, raw.input === undefined ? 'device' : 'input'], {
      message: `a wire from ${wire.device} sets this already`,
      found: written,
      hint: `take out this step, or ${written} under signals of ${raw.device}`,
    });
  }
  const value = readInput(world, inputs[name], raw.value, [...path, 'value']);
  if (step === undefined || value === undefined) return undefined;
  const { at = 0, device } = step;
  return {
    at,
    ...(step.after !== undefined && { after: step.after }),
    device,
    input: name,
    value,
    text: shown(raw.value),
  };
}

/** Has a control, or may have: its kind is not known. */
function workable({ definition }: { readonly definition?: DeviceDefinition }): boolean {
  return definition === undefined || Object.keys(definition.inputs ?? {}).length > 0;
}

function tellUnworkable(world: World, name: string, kind: string | undefined, path: Path): void {
  const worked = [...world.draft.components].filter(([, part]) => workable(part)).map(([n]) => n);
  if (kind === undefined) unknown(world, path, 'device that an operator can work', name, worked);
  else
    world.issues.add(path, {
      message: `a ${kind} has nothing for the operator to work`,
      found: name,
      allowed: wordList(worked),
    });
}

function readInput(
  world: World,
  input: InputDefinition,
  raw: Plain | undefined,
  path: Path,
): number | undefined {
  if (raw === undefined || raw === null || typeof raw === 'object') return undefined;
  if (input.choices !== undefined) {
    const index = input.choices.indexOf(String(raw));
    if (index !== -1) return index;
    world.issues.add(path, {
      message: 'this word is not one of those allowed',
      found: shown(raw),
      allowed: wordList(input.choices),
      hint: didYouMean(String(raw), input.choices),
    });
    return undefined;
  }
  const read = readNumber(raw, input.quantity ?? 'ratio');
  if (!('problem' in read)) return read.value;
  world.issues.add(path, {
    message: read.problem,
    found: shown(raw),
    allowed: read.allowed,
    hint: read.hint,
  });
  return undefined;
}
