import type { CoordinateData, MechanismDefinition } from '../define/device.js';
import type {
  ParameterDefinition,
  ParameterDefinitions,
  Parameters,
  ParameterValue,
} from '../define/parameter.js';
import type { DraftPart } from './draft.js';
import type { WrittenShape } from './field-parameter.js';
import { shown, type IssueList } from './issue-list.js';
import { kebab } from './names.js';
import { sampleShape } from './shape.js';

type Path = readonly (string | number)[];
type Range = readonly [number, number];

interface Checked {
  readonly parameters: ParameterDefinitions;
  readonly check?: (
    p: Parameters,
  ) => readonly { readonly parameter: string; readonly message: string }[];
}

/** Read values to parameters: defaults filled, expressions sampled. Undefined when a curve is wrong. */
export function fillParameters(
  definitions: ParameterDefinitions,
  written: Record<string, unknown>,
  range: Range | undefined,
  path: Path,
  issues: IssueList,
): Parameters | undefined {
  const values: Record<string, ParameterValue> = {};
  let good = true;
  for (const [name, definition] of Object.entries(definitions)) {
    const key = kebab(name);
    const value = settle(definition, written[key], range, [...path, key], issues);
    if (value === undefined) good = false;
    else values[name] = value;
  }
  return good ? values : undefined;
}

/** One value as read by its field, or the default; curves are sampled here. */
export function settle(
  definition: ParameterDefinition,
  written: unknown,
  range: Range | undefined,
  path: Path,
  issues: IssueList,
): ParameterValue | undefined {
  if (written === undefined) return definition.default;
  if (definition.type !== 'shape') return written as ParameterValue;
  const sampled = sampleShape(
    written as WrittenShape,
    definition.variable,
    range,
    definition.range,
  );
  if ('shape' in sampled) return sampled.shape;
  issues.add([...path, ...sampled.at], sampled.finding);
  return undefined;
}

/** Tells what is wrong between parameters; true when nothing is. */
export function checkBetween(
  definition: Checked,
  parameters: Parameters,
  raw: unknown,
  path: Path,
  issues: IssueList,
): boolean {
  const wrong = definition.check?.(parameters) ?? [];
  for (const { parameter, message } of wrong) {
    const key = kebab(parameter);
    const found =
      typeof raw === 'object' && raw !== null ? (raw as Record<string, unknown>)[key] : undefined;
    issues.add([...path, key], { message, found: found === undefined ? '' : shown(found) });
  }
  return wrong.length === 0;
}

/** A mechanism's parameters and ends of travel (rad), as far as they can be known. */
export interface ReadMechanism {
  readonly parameters?: Parameters;
  readonly range?: Range;
}

/** What was read without an issue, by the figures as written. */
const known = new WeakMap<object, ReadMechanism>();

export function readMechanism(
  part: DraftPart<MechanismDefinition>,
  path: Path,
  issues: IssueList,
): ReadMechanism {
  const before = part.parameters && known.get(part.parameters);
  if (before !== undefined) return before;
  const count = issues.length;
  const read = readAnew(part, path, issues);
  if (part.parameters !== undefined && issues.length === count) known.set(part.parameters, read);
  return read;
}

function readAnew(
  part: DraftPart<MechanismDefinition>,
  path: Path,
  issues: IssueList,
): ReadMechanism {
  const { definition, parameters: written } = part;
  if (definition === undefined || written === undefined) return {};
  // Curves may be expressions over the travel, and the travel is only known from the other figures.
  const shapes = Object.values(definition.parameters).some(
    (p) => p.type === 'shape' && p.of === 'angle',
  );
  const range = shapes ? provisionalRange(definition, written) : undefined;
  const parameters = fillParameters(definition.parameters, written, range, path, issues);
  if (parameters === undefined || !checkBetween(definition, parameters, part.raw, path, issues))
    return {};
  const ends = endsOf(definition, parameters);
  if (ends !== undefined) return { parameters, range: ends };
  issues.add(path, {
    message: 'this mechanism has no travel',
    allowed: 'a high end above the low end',
  });
  return { parameters };
}

function provisionalRange(
  definition: MechanismDefinition,
  written: Record<string, unknown>,
): Range | undefined {
  const values: Record<string, ParameterValue> = {};
  for (const [name, p] of Object.entries(definition.parameters)) {
    const value = written[kebab(name)] ?? p.default;
    if (p.type === 'shape')
      values[name] = {
        x: [-10, 10],
        y: [
          Math.max(p.range[0], Math.min(p.range[1], 1)),
          Math.max(p.range[0], Math.min(p.range[1], 1)),
        ],
      };
    else if (value !== undefined) values[name] = value as ParameterValue;
  }
  return endsOf(definition, values);
}

function endsOf(definition: MechanismDefinition, parameters: Parameters): Range | undefined {
  let data: CoordinateData;
  try {
    data = definition.coordinate(parameters);
  } catch {
    return undefined;
  }
  const { low, high } = data;
  return Number.isFinite(low) && Number.isFinite(high) && high > low ? [low, high] : undefined;
}
