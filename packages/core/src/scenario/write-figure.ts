/** Figures as a scenario file has them: in SI units, with all their digits. */
import type {
  ParameterDefinition,
  ParameterDefinitions,
  Parameters,
  ParameterValue,
  Quantity,
  Shape,
  StateTable,
} from '../define/parameter.js';
import { SI_UNIT } from '../define/parameter.js';
import { kebab } from './names.js';

/** A figure in the SI unit of its quantity, with all its digits. */
export function si(value: number, quantity: Quantity): string | number {
  const unit = SI_UNIT[quantity];
  return unit === '' ? value : `${value} ${unit}`;
}

export function table(shape: Shape, of: Quantity, gives: Quantity): unknown[] {
  return shape.x.map((x, i) => [si(x, of), si(shape.y[i], gives)]);
}

export function figure(value: ParameterValue, definition: ParameterDefinition): unknown {
  switch (definition.type) {
    case 'choice':
    case 'switch':
      return value;
    case 'state-table':
      return stateTable(value as StateTable);
    case 'point':
      return (value as readonly number[]).map((n) => si(n, 'length'));
    case 'shape':
      return table(value as Shape, definition.of, definition.gives);
    default:
      return si(value as number, definition.quantity);
  }
}

function stateTable({ states }: StateTable): Record<string, unknown> {
  return Object.fromEntries(
    states.map(({ name, drive, next }) => [
      name,
      {
        drive,
        next: next.map(({ if: terms, after, to }) => ({
          if: terms,
          ...(after !== undefined && { after: si(after, 'time') }),
          to,
        })),
      },
    ]),
  );
}

export function figures(
  parameters: Parameters,
  definitions: ParameterDefinitions,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(definitions).flatMap(([name, d]) =>
      name in parameters ? [[kebab(name), figure(parameters[name], d)]] : [],
    ),
  );
}
