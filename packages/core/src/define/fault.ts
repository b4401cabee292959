import type { Parameters, ParameterValue } from './parameter.js';

/** What a fault is looked for under, in the order of the lists. */
export const FAULT_GROUPS = [
  'supply',
  'valves and lines',
  'actuators, locks, structure',
  'fluid and environment',
  'emergency system',
] as const;

export type FaultGroup = (typeof FAULT_GROUPS)[number];

/**
 * A fault: a named, graded change of the parameters of the devices it can befall. The physics
 * knows nothing of faults: at severity 0 `change` returns the healthy parameters unchanged.
 */
export interface FaultDefinition {
  /** Name in scenarios, kebab-case, equal to the file's name. */
  readonly kind: string;
  readonly title: string;
  readonly group: FaultGroup;
  /** What it physically is. */
  readonly meaning: string;
  /** How it shows in a swing. */
  readonly shows: string;
  /** How it is confirmed. */
  readonly confirm: string;
  /** How it is put right, in general words; the aircraft's approved data rules. */
  readonly remedy: string;
  readonly caution: string;
  readonly source: string;
  /** How often it is met. */
  readonly prior: 'common' | 'uncommon' | 'rare';
  readonly priorWhy: string;
  /**
   * Device or mechanism kinds it can befall; `fluid` is the oil, with the parameters
   * `temperature`, `freeAir`, `thickness` and `warmedBy`.
   */
  readonly befalls: readonly string[];
  /** What severity 1 means, in units: for tables. */
  readonly worst: string;
  /** Which times it makes longer as it grows; tests hold it to that. */
  readonly slows?: 'up' | 'down' | 'both';
  /** Changed parameters only, SI, for a severity in (0, 1]. */
  readonly change: (p: Parameters, severity: number) => Readonly<Record<string, ParameterValue>>;
  /** Ports as they are joined after it (lines swapped, a valve fitted backward), for any severity above 0. */
  readonly reconnect?: (
    ports: Readonly<Record<string, string>>,
  ) => Readonly<Record<string, string>>;
  /**
   * What else decides how bad it shows, so that severity alone does not foretell it: the temperature by itself,
   * beside what it does to the oil; or a hair, where a leg that falls on its lock makes it or bounces.
   */
  readonly hangsOn?: 'temperature' | 'bounce';
  /** What no stopwatch or gauge shows but an inspection does; then a run need not differ from healthy. */
  readonly silent?: boolean;
}
