import type { Shape } from '../define/parameter.js';
import { parseTree, type Node } from './mathematics.js';
import { nearestName } from './nearest-name.js';
import type { Problem } from './parse-quantity.js';

/** Bounds on what is evaluated: text length, nodes, nesting. */
const LONGEST = 300;
const MOST_NODES = 120;
const DEEPEST = 24;
const MOST_POINTS = 2001;

type Evaluate = (x: number) => number;

const CONSTANTS: Readonly<Record<string, number>> = { pi: Math.PI, e: Math.E };

interface PlainFunction {
  readonly arguments: readonly [number, number];
  readonly of: (...values: number[]) => number;
}

const one = (of: (x: number) => number): PlainFunction => ({ arguments: [1, 1], of });

const FUNCTIONS: Readonly<Record<string, PlainFunction>> = {
  sin: one(Math.sin),
  cos: one(Math.cos),
  tan: one(Math.tan),
  asin: one(Math.asin),
  acos: one(Math.acos),
  atan: one(Math.atan),
  atan2: { arguments: [2, 2], of: Math.atan2 },
  sinh: one(Math.sinh),
  cosh: one(Math.cosh),
  tanh: one(Math.tanh),
  sqrt: one(Math.sqrt),
  cbrt: one(Math.cbrt),
  exp: one(Math.exp),
  log: one(Math.log),
  abs: one(Math.abs),
  sign: one(Math.sign),
  floor: one(Math.floor),
  ceil: one(Math.ceil),
  round: one(Math.round),
  hypot: { arguments: [2, 4], of: Math.hypot },
  pow: { arguments: [2, 2], of: Math.pow },
  min: { arguments: [2, 8], of: Math.min },
  max: { arguments: [2, 8], of: Math.max },
};

/** What an expression may be made of, for messages. */
export const EXPRESSION_ALLOWED = `numbers, + - * / ^, brackets, pi, e and ${Object.keys(FUNCTIONS).join(' ')}`;

class Refused extends Error {
  readonly hint: string;
  constructor(problem: string, hint = '') {
    super(problem);
    this.hint = hint;
  }
}

/**
 * Compiles an expression in one variable, e.g. `0.21 * sin(angle)`, once. Only plain mathematics
 * passes ({@link EXPRESSION_ALLOWED}); the result is a chain of plain functions, mathjs takes no
 * part in evaluating it. Angles are in radians.
 */
export function compileExpression(
  text: string,
  variable: string,
): { evaluate: Evaluate } | Problem {
  const allowed = `${variable}, ${EXPRESSION_ALLOWED}`;
  if (text.length > LONGEST) {
    return {
      problem: `this expression is longer than ${LONGEST} characters`,
      allowed,
      hint: 'use a table',
    };
  }
  if (text.trim() === '') return { problem: 'the expression is empty', allowed, hint: '' };
  let tree: Node;
  try {
    tree = parseTree(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { problem: `this expression cannot be read: ${reason}`, allowed, hint: '' };
  }
  try {
    return { evaluate: build(tree, variable, { nodes: 0 }, 0) };
  } catch (error) {
    if (error instanceof Refused) return { problem: error.message, allowed, hint: error.hint };
    throw error;
  }
}

/**
 * Samples an expression at evenly spaced points.
 * @param range both ends, in the variable's SI unit, low end first
 * @param points number of samples, 2 to 2001
 */
export function sampleExpression(
  text: string,
  variable: string,
  range: readonly [number, number],
  points: number,
): { shape: Shape } | Problem {
  const compiled = compileExpression(text, variable);
  if ('problem' in compiled) return compiled;
  const [low, high] = range;
  const count = Math.min(MOST_POINTS, Math.max(2, Math.floor(points)));
  if (!(high > low) || !Number.isFinite(high - low)) {
    return {
      problem: 'the range to sample over is empty',
      allowed: 'a low end below the high end',
      hint: '',
    };
  }
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 0; i < count; i++) {
    const at = i === count - 1 ? high : low + ((high - low) * i) / (count - 1);
    const value = compiled.evaluate(at);
    if (!Number.isFinite(value)) {
      return {
        problem: `this expression has no finite value at ${variable} = ${Number(at.toPrecision(4))}`,
        allowed: `a finite value from ${Number(low.toPrecision(4))} to ${Number(high.toPrecision(4))}`,
        hint: variable === 'angle' ? 'angles are in radians' : '',
      };
    }
    x.push(at);
    y.push(value);
  }
  return { shape: { x, y } };
}

function build(node: Node, variable: string, spent: { nodes: number }, depth: number): Evaluate {
  if (++spent.nodes > MOST_NODES)
    throw new Refused('this expression has too many parts', 'use a table');
  if (depth > DEEPEST) throw new Refused('this expression is nested too deeply', 'use a table');
  const inner = (part: unknown): Evaluate => build(part as Node, variable, spent, depth + 1);
  switch (node.type) {
    case 'ConstantNode': {
      const value = node.parts[0];
      if (typeof value !== 'number' || !Number.isFinite(value))
        throw new Refused('only plain numbers may stand here');
      return () => value;
    }
    case 'SymbolNode':
      return symbol(String(node.parts[0]), variable);
    case 'ParenthesisNode':
      return inner(node.parts[0]);
    case 'OperatorNode':
      return operator(node, inner);
    case 'FunctionNode':
      return call(node, inner);
    default:
      throw new Refused(`${node.type.replace(/Node$/, '').toLowerCase()} is not plain mathematics`);
  }
}

function symbol(name: string, variable: string): Evaluate {
  if (name === variable) return (x) => x;
  if (Object.hasOwn(CONSTANTS, name)) {
    const value = CONSTANTS[name];
    return () => value;
  }
  const near = nearestName(name, [variable, ...Object.keys(CONSTANTS), ...Object.keys(FUNCTIONS)]);
  throw new Refused(
    `"${name.slice(0, 30)}" is not known in this expression`,
    near === undefined
      ? `the variable is ${variable}; units do not belong here`
      : `did you mean ${near}?`,
  );
}

function operator(node: Node, inner: (part: unknown) => Evaluate): Evaluate {
  const [sign, , operands, implicit] = node.parts as [
    string,
    string,
    unknown[],
    boolean | undefined,
  ];
  if (implicit === true)
    throw new Refused('something is missing between two parts', 'write * to multiply');
  const a = inner(operands[0]);
  if (operands.length === 1) {
    if (sign === '-') return (x) => -a(x);
    if (sign === '+') return a;
    throw new Refused(`the sign ${sign} is not plain mathematics`);
  }
  const b = inner(operands[1]);
  switch (sign) {
    case '+':
      return (x) => a(x) + b(x);
    case '-':
      return (x) => a(x) - b(x);
    case '*':
      return (x) => a(x) * b(x);
    case '/':
      return (x) => a(x) / b(x);
    case '^':
      return (x) => a(x) ** b(x);
    default:
      throw new Refused(`the sign ${sign} is not plain mathematics`);
  }
}

function call(node: Node, inner: (part: unknown) => Evaluate): Evaluate {
  const [head, given] = node.parts as [Node | string, unknown[]];
  const name =
    typeof head === 'string' ? head : head.type === 'SymbolNode' ? String(head.parts[0]) : '';
  if (!Object.hasOwn(FUNCTIONS, name)) {
    const near = nearestName(name, Object.keys(FUNCTIONS));
    throw new Refused(
      `"${name.slice(0, 30)}" is not a function known here`,
      near === undefined ? '' : `did you mean ${near}?`,
    );
  }
  const {
    arguments: [fewest, most],
    of,
  } = FUNCTIONS[name];
  if (given.length < fewest || given.length > most) {
    const wanted = fewest === most ? String(fewest) : `${fewest} to ${most}`;
    throw new Refused(`${name} takes ${wanted} value${most === 1 ? '' : 's'}, not ${given.length}`);
  }
  const values = given.map(inner);
  if (values.length === 1) {
    const [a] = values;
    return (x) => of(a(x));
  }
  return (x) => of(...values.map((value) => value(x)));
}
