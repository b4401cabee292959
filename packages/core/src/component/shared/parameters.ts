/**
 * Parameters that several devices have, and what they make of them.
 */
import type { NumberParameter, Parameters, PassageLaw, Surroundings } from '../../define/index.js';
import { orificeConstant, transitionDrop } from '../../medium/index.js';

/** Dynamic viscosity of the oil for which leak coefficients are given, Pa s (14 mm2/s at 860 kg/m3). */
export const LEAK_VISCOSITY = 0.012;

export const dischargeCoefficient: NumberParameter = {
  title: 'discharge coefficient',
  quantity: 'ratio',
  range: [0.3, 1],
  default: 0.611,
  why: 'free-streamline jet from a sharp slot, pi/(pi+2) (Kirchhoff, von Mises); rounded edges reach 0.8 and more',
};

export const transitionReynolds: NumberParameter = {
  title: 'transition Reynolds number',
  quantity: 'ratio',
  range: [5, 3000],
  default: 100,
  why: 'textbooks give about 10 for sharp round edges to some 1000 for long passages; from memory',
};

/** A leak coefficient, laminar. `most` is the end of the range, m3/(s Pa). */
export function leakage(title: string, most: number, usual: number, why: string): NumberParameter {
  return {
    title,
    quantity: 'leakage',
    range: [0, most],
    default: usual,
    why: `${why}; holds for oil of 12 mPa s and scales with 1/viscosity`,
  };
}

/** A bore with its usual size. */
export function bore(title: string, usual: number | undefined, why: string): NumberParameter {
  return { title, quantity: 'length', range: [1e-4, 0.05], default: usual, why };
}

/** A number among the parameters (the reader has checked that it is one). */
export function number(p: Parameters, name: string): number {
  return p[name] as number;
}

/** Area of a circle, m2. */
export function circle(diameter: number): number {
  return 0.25 * Math.PI * diameter * diameter;
}

/** Leak conductance in this oil, m3/(s Pa), from the coefficient at {@link LEAK_VISCOSITY}. */
export function leakIn(s: Surroundings, coefficient: number): number {
  return (coefficient * LEAK_VISCOSITY) / (s.viscosity * s.density);
}

/** Orifice constant of a round bore with this device's discharge coefficient. */
export function constantOf(p: Parameters, s: Surroundings, diameter: number): number {
  return orificeConstant(number(p, 'dischargeCoefficient'), circle(diameter), s.density);
}

/**
 * Least transition drop of any passage, Pa (1.5 psi). A square root through zero is steepest just
 * where nothing flows, and a linearly implicit step across it lands as far on the other side
 * (Newton's method on a root has a cycle of two); below this drop flow counts as laminar, which
 * no gear feels.
 */
export const SMOOTHING_DROP = 10_000;

/** Transition drop of a round bore with this device's coefficients, Pa. */
export function transitionOf(p: Parameters, s: Surroundings, diameter: number): number {
  return Math.max(
    SMOOTHING_DROP,
    transitionDrop(
      number(p, 'dischargeCoefficient'),
      diameter,
      s.density,
      s.viscosity,
      number(p, 'transitionReynolds'),
    ),
  );
}

/** Law of a round bore that is always open. */
export function boreLaw(p: Parameters, s: Surroundings, diameter: number): PassageLaw {
  return {
    constant: constantOf(p, s, diameter),
    transition: transitionOf(p, s, diameter),
    open: 1,
    leak: 0,
  };
}

/**
 * A check valve of a round bore that opens between two drops (Pa), for a law; `stuck` names the
 * share of it that stays shut, if any.
 */
export function checkOf(
  p: Parameters,
  s: Surroundings,
  diameter: number,
  sense: 1 | -1,
  stuck?: string,
): NonNullable<PassageLaw['check']> {
  return {
    constant: constantOf(p, s, diameter) * (stuck === undefined ? 1 : 1 - number(p, stuck)),
    transition: transitionOf(p, s, diameter),
    crack: number(p, 'crack'),
    full: number(p, 'full'),
    sense,
  };
}

/** A finding, worded by the device, where `upper` is not above `lower`; for a definition's `check`. */
export function mustExceed(
  p: Parameters,
  upper: string,
  lower: string,
  message: string,
): readonly { readonly parameter: string; readonly message: string }[] {
  return number(p, upper) > number(p, lower) ? [] : [{ parameter: upper, message }];
}
