/** Schema of `driven:` under a mechanism. */
import * as z from 'zod/mini';
import {
  choiceField,
  complain,
  field,
  nameField,
  quantityField,
  switchField,
  textField,
} from './field.js';
import { readTable } from './field-parameter.js';
import { strict } from './strict.js';

const maybe = z.optional;
const TURN = 2 * Math.PI;

const bar = (about: string) => quantityField('length', [1e-3, 20], about);

const linkage = strict({
  ground: bar('between the fixed pivots of crank and rocker'),
  crank: bar('bar that turns with the driver'),
  coupler: bar('bar between the moving ends'),
  rocker: bar('bar that turns this mechanism'),
  'crank-at-low': quantityField(
    'angle',
    [-TURN, TURN],
    "the crank's angle from the line of the pivots at the low end of the driver",
  ),
  crossed: maybe(switchField('the coupler crosses the line of the pivots; default no')),
  sense: choiceField(
    ['opening', 'closing'],
    "whether this mechanism rises or falls as the rocker turns the crank's way",
  ),
});
export type WrittenLinkage = z.infer<typeof linkage>;

const angleTable = field(
  (value, context) =>
    readTable(
      value,
      'angle',
      'angle',
      undefined,
      (path, input, wrong) => void complain(context, input, wrong, path),
    ) ?? z.NEVER,
  {
    type: 'array',
    description: "its angle against the driver's: [[0 deg, 0 deg], [95 deg, 80 deg]]",
  },
);

export const driven = strict({
  by: nameField('the mechanism that moves it'),
  table: maybe(angleTable),
  expression: maybe(
    textField("its angle in rad as an expression in angle, the driver's (rad)", 400),
  ),
  ratio: maybe(quantityField('ratio', [-20, 20], 'its turn for each turn of the driver')),
  linkage: maybe(linkage),
  'at-low': maybe(
    quantityField(
      'angle',
      [-TURN, TURN],
      'with ratio or linkage: its angle at the low end of the driver; its own low end when absent (high end where it falls)',
    ),
  ),
});
export type WrittenDriven = z.infer<typeof driven>;
