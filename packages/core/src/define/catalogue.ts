import type { DeviceDefinition, MechanismDefinition } from './device.js';
import type { FaultDefinition } from './fault.js';
import type { RuleDefinition } from './rule.js';

/** An oil, as data; medium/oil.ts has the functions of temperature and pressure. */
export interface FluidDefinition {
  /** Name in scenarios. */
  readonly kind: string;
  readonly title: string;
  readonly summary: string;
  /** Published kinematic viscosities (m2/s) at temperatures (K), rising temperature, at least two. */
  readonly viscosity: readonly { readonly temperature: number; readonly viscosity: number }[];
  /** Density at `densityAt` (K) and ambient pressure, kg/m3. */
  readonly density: number;
  readonly densityAt: number;
  /** Volumetric expansion, 1/K. */
  readonly expansion: number;
  /** Bulk modulus in its handbook's reference state, Pa. */
  readonly bulkModulus: number;
  /** Vapour pressure, Pa absolute: the floor under every pressure. */
  readonly vapourPressure: number;
  /** Where the figures come from. */
  readonly source: string;
}

/** A gas, as data; medium/gas.ts has the functions of temperature and pressure. */
export interface GasDefinition {
  /** Name in scenarios. */
  readonly kind: string;
  readonly title: string;
  readonly summary: string;
  /** kg/mol */
  readonly molarMass: number;
  /** Ratio of specific heats of the ideal gas at room temperature. */
  readonly gamma: number;
  /** Critical temperature, K, critical pressure, Pa, and acentric factor, for the equation of state. */
  readonly criticalTemperature: number;
  readonly criticalPressure: number;
  readonly acentric: number;
  /**
   * Where it can be liquid in a bottle: vapour pressure, Pa, and density of its saturated vapour,
   * mol/m3, at a temperature, K, below the critical one.
   */
  readonly saturation?: {
    readonly pressure: (temperature: number) => number;
    readonly density: (temperature: number) => number;
  };
  /** Where the figures come from. */
  readonly source: string;
}

/** Everything that scenarios may name, by name. The real ones are the folders' indexes. */
export interface Catalogues {
  readonly components: Readonly<Record<string, DeviceDefinition>>;
  readonly mechanisms: Readonly<Record<string, MechanismDefinition>>;
  readonly fluids: Readonly<Record<string, FluidDefinition>>;
  readonly gases: Readonly<Record<string, GasDefinition>>;
  readonly faults: Readonly<Record<string, FaultDefinition>>;
  readonly rules: Readonly<Record<string, RuleDefinition>>;
}
