/**
 * The two pieces of mathjs that are used here: its units and its expression grammar.
 *
 * They are put together from mathjs's own factories with plain numbers for arithmetic, because
 * the ready-made dependency lists pull in matrices, big numbers and complex numbers (86 KB
 * compressed in the page against 26 KB). The parser is given node classes that only hold what was read,
 * so nothing that is parsed can ever be evaluated by mathjs.
 */
import { createParse, createUnitClass } from 'mathjs';

declare module 'mathjs' {
  export function createUnitClass(dependencies: Record<string, unknown>): UnitType;
  export function createParse(dependencies: Record<string, unknown>): (text: string) => Node;
}

/** What is used of a mathjs unit. */
export interface ParsedUnit {
  /** Exponents of mass, length, time, current, temperature, light, amount, angle, bit. */
  readonly dimensions: readonly number[];
  toSI(): { readonly value: number };
}

interface UnitType {
  parse(text: string): ParsedUnit;
  createUnit(units: Record<string, unknown>): void;
}

/** A piece of an expression as it was read: its kind and mathjs's constructor arguments. */
export interface Node {
  readonly type: string;
  readonly parts: readonly unknown[];
}

/** mathjs writes 5/9 (degF) as a fraction; this is all it asks of one here. */
class Fraction {
  readonly isFraction = true;
  readonly n: number;
  readonly d: number;
  constructor(n: number, d: number) {
    this.n = n;
    this.d = d;
  }
  valueOf(): number {
    return this.n / this.d;
  }
}

/** Units and parser share the setting "plain numbers". */
const config = Object.assign(() => ({ number: 'number' }), { number: 'number' });

/** The unit class of mathjs on plain numbers. */
export const Unit: UnitType = createUnitClass({
  config,
  addScalar: (a: number, b: number) => a + b,
  subtractScalar: (a: number, b: number) => a - b,
  multiplyScalar: (a: number, b: number) => a * b,
  divideScalar: (a: number, b: number) => a / b,
  pow: Math.pow,
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  equal: (a: number, b: number) => a === b,
  isNumeric: (x: unknown) => typeof x === 'number',
  format: String,
  number: (x: Fraction) => x.valueOf(),
  Complex: class {},
  BigNumber: class {},
  Fraction,
});

const NODES = [
  ...['AccessorNode', 'ArrayNode', 'AssignmentNode', 'BlockNode', 'ConditionalNode'],
  ...['ConstantNode', 'FunctionAssignmentNode', 'FunctionNode', 'IndexNode', 'ObjectNode'],
  ...['OperatorNode', 'ParenthesisNode', 'RangeNode', 'RelationalNode', 'SymbolNode'],
] as const;

function nodeClass(type: string): unknown {
  class Plain implements Node {
    readonly type = type;
    readonly parts: readonly unknown[];
    constructor(...parts: unknown[]) {
      this.parts = parts;
      // The parser asks its nodes what they are by these marks.
      Object.assign(this, { [`is${type}`]: true, name: parts[0], args: parts[2], op: parts[0] });
    }
  }
  Object.assign(Plain.prototype, { isNode: true });
  return Plain;
}

/** Only text is ever given to the parser: nothing need choose among its signatures or convert. */
const typed = Object.assign((_: string, signatures: { string: unknown }) => signatures.string, {
  addConversion: () => undefined,
});

/** Text of an expression to its tree; throws on a syntax error. */
export const parseTree: (text: string) => Node = createParse({
  typed,
  numeric: (text: string) => Number(text),
  config,
  ...Object.fromEntries(NODES.map((type) => [type, nodeClass(type)])),
});
