/** What the grading of faults shares. */
import type { Parameters } from '../define/index.js';

/** Leak coefficient that passes one US gallon a minute at 1000 psi, m3/(s Pa): 6.309e-5 / 6.895e6. */
export const GALLON_AT_1000_PSI = 9.15e-12;

/** A number among the parameters (the reader has checked that it is one). */
export function number(p: Parameters, name: string): number {
  return p[name] as number;
}

/** Sum, held at `most` (by default the largest leak coefficient a device takes) unless it was above already. */
export function add(healthy: number, more: number, most = 1e-9): number {
  return Math.max(healthy, Math.min(most, healthy + more));
}

/**
 * Share of a port's area that is shut when `severity` of its bore is: ports are so much wider than what they
 * feed that half of one does nothing.
 */
export const acrossBore = (severity: number): number => 1 - (1 - severity) ** 2;

/** Pressure against which a jam is measured, Pa: about twice the working pressure of small gear. */
const JAM_PRESSURE = 20e6;

/**
 * Friction of a bore that is jammed over `width` m at a share of the stroke; at severity 1 as much
 * as 20 MPa on the piston can push.
 */
export function jam(
  p: Parameters,
  severity: number,
  share: number,
  width: number,
): { readonly galling: number; readonly galledAt: number; readonly galledWidth: number } {
  const galling = number(p, 'galling');
  const area = (Math.PI / 4) * number(p, 'bore') ** 2;
  const fresh = severity > 0 && galling === 0;
  return {
    galling: add(galling, severity * JAM_PRESSURE * area, 1e5),
    galledAt: fresh ? share * number(p, 'stroke') : number(p, 'galledAt'),
    galledWidth: fresh ? width : number(p, 'galledWidth'),
  };
}

/** Friction of a part that binds at one angle; where nothing bound before, no later than 0.6 of the travel. */
export function bind(
  p: Parameters,
  severity: number,
  moment: number,
  most: number,
): { readonly bumpMoment: number; readonly bumpAngle: number } {
  const before = number(p, 'bumpMoment');
  const fresh = severity > 0 && before === 0;
  return {
    bumpMoment: add(before, severity * moment, most),
    bumpAngle: fresh
      ? Math.min(number(p, 'bumpAngle'), 0.6 * number(p, 'travel'))
      : number(p, 'bumpAngle'),
  };
}

/** Settings of a relief valve raised by a factor, both alike, as far as its ranges go. */
export function raised(
  p: Parameters,
  factor: number,
): { readonly crack: number; readonly full: number } {
  const [crack, full] = [number(p, 'crack'), number(p, 'full')];
  const by = Math.min(factor, Math.max(1, Math.min(4e7 / crack, 5e7 / full)));
  return { crack: crack * by, full: full * by };
}
