/**
 * What a parameter of a device, mechanism, fault or rule looks like, as data.
 *
 * Ranges and defaults are in SI (Pa absolute, m, m2, m3, m3/s, rad, N, kg, K, s).
 * The scenario schema, the command-line lists, the generated docs, the forms of
 * the page and the contract tests all read this one declaration.
 */

/** Kinds of quantity. Each has exactly one SI unit inside (see {@link SI_UNIT}). */
export type Quantity =
  | 'ratio'
  | 'count'
  | 'length'
  | 'area'
  | 'volume'
  | 'time'
  | 'frequency'
  | 'speed'
  | 'angle'
  | 'angular-speed'
  | 'mass'
  | 'density'
  | 'inertia'
  | 'force'
  | 'stiffness'
  | 'moment'
  | 'angular-stiffness'
  | 'angular-damping'
  | 'pressure'
  | 'gauge-pressure'
  | 'flow'
  | 'leakage'
  | 'displacement'
  | 'free-gas'
  | 'free-gas-flow'
  | 'viscosity'
  | 'temperature'
  | 'power'
  | 'energy'
  | 'current'
  | 'voltage';

/** The SI unit of each quantity, as mathjs spells it; `''` is dimensionless. */
export const SI_UNIT: Readonly<Record<Quantity, string>> = {
  ratio: '',
  count: '',
  length: 'm',
  area: 'm^2',
  volume: 'm^3',
  time: 's',
  frequency: '1/s',
  speed: 'm/s',
  angle: 'rad',
  'angular-speed': 'rad/s',
  mass: 'kg',
  density: 'kg/m^3',
  inertia: 'kg m^2',
  force: 'N',
  stiffness: 'N/m',
  moment: 'N m',
  'angular-stiffness': 'N m/rad',
  'angular-damping': 'N m s/rad',
  pressure: 'Pa',
  'gauge-pressure': 'Pa',
  flow: 'm^3/s',
  leakage: 'm^3/(s Pa)',
  displacement: 'm^3/rad',
  'free-gas': 'm^3',
  'free-gas-flow': 'm^3/s',
  viscosity: 'm^2/s',
  temperature: 'K',
  power: 'W',
  energy: 'J',
  current: 'A',
  voltage: 'V',
};

interface ParameterBase {
  /** Name in the trade's words, for tables and forms. */
  readonly title: string;
  /** Why the default (or, without default, the range) is what it is; the source of the figure. */
  readonly why: string;
}

/** A number with a unit. `range` is inclusive and in SI; without `default` the parameter is required. */
export interface NumberParameter extends ParameterBase {
  readonly type?: 'number';
  readonly quantity: Quantity;
  readonly range: readonly [number, number];
  readonly default?: number;
}

/** One of a few words. */
export interface ChoiceParameter extends ParameterBase {
  readonly type: 'choice';
  readonly choices: readonly string[];
  readonly default?: string;
}

/** Yes or no. */
export interface SwitchParameter extends ParameterBase {
  readonly type: 'switch';
  readonly default: boolean;
}

/**
 * A function of one coordinate, written in the scenario as a table of points or as an
 * expression in the coordinate; sampled when the file is read.
 */
export interface ShapeParameter extends ParameterBase {
  readonly type: 'shape';
  /** The coordinate's quantity and its name inside expressions. */
  readonly of: Quantity;
  readonly variable: string;
  /** The quantity of the value; `range` bounds every sample, in SI. */
  readonly gives: Quantity;
  readonly range: readonly [number, number];
  readonly default?: Shape;
}

/** A small state table, written in the scenario (a controller's). */
export interface StateTableParameter extends ParameterBase {
  readonly type: 'state-table';
  readonly default?: undefined;
}

/** What a controller does in each of its states, in declared order; the first is the initial one. */
export interface StateTable {
  readonly states: readonly {
    readonly name: string;
    /** Signals that are on in this state; all others are off. */
    readonly drive: readonly string[];
    /** The first row whose terms all hold, after its time where it has one, is taken. */
    readonly next: readonly {
      /** `lever up`, a heard name, or either after `not `. */
      readonly if: readonly string[];
      /** Not before this long in the state, s. */
      readonly after?: number;
      readonly to: string;
    }[];
  }[];
}

/** A point in a drawing plane, metres. */
export interface PointParameter extends ParameterBase {
  readonly type: 'point';
  readonly range: readonly [number, number];
  readonly default?: readonly [number, number];
}

export type ParameterDefinition =
  | NumberParameter
  | ChoiceParameter
  | SwitchParameter
  | ShapeParameter
  | StateTableParameter
  | PointParameter;

/** A sampled function: `y[i]` at `x[i]`, `x` strictly rising, SI; at least two points. */
export interface Shape {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A parameter's value after reading: SI number, word, flag, shape, state table or point. */
export type ParameterValue =
  number | string | boolean | Shape | StateTable | readonly [number, number];

export type Parameters = Readonly<Record<string, ParameterValue>>;
export type ParameterDefinitions = Readonly<Record<string, ParameterDefinition>>;
