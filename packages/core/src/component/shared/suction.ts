/**
 * How a supply fails as its suction side runs dry: full flow while the inlet is fed, falling
 * smoothly to none as the inlet's pressure nears a vacuum or its oil is used up.
 * The limits are common practice, no source.
 *
 * A leaking suction joint lets a pump draw air. The simplest model that is honest: of every turn a
 * share s, measured at ambient pressure, is air; it expands at the inlet's pressure p (Boyle), so
 * of the volume swept the share (1 - s) p / ((1 - s) p + s ambient) is oil. The flow lost grows
 * with suction vacuum and is there without one too, since the vacuum of a suction line that is
 * not drawn is not in p. Left out: the unevenness of single bubbles, quicker than any gear
 * feels, and what the air does further on (the fluid's own free air stands for that).
 *
 * A collapsed suction hose or a blocked strainer lets through only what the inlet's pressure can push:
 * laminar, through a flat slit or a mesh, so in proportion to that pressure (against a vacuum in the
 * pump) and to 1/viscosity. The lesser of that flow and the one wanted is taken, rounded off:
 * q = w (1 + (w / most)^4)^(-1/4).
 */
import type { Frame, NumberParameter, Parameters, Surroundings } from '../../define/index.js';
import { number } from './parameters.js';
import { rise, riseSlope } from './smooth.js';

/** Absolute inlet pressure above which the supply fills fully, Pa. */
const FED = 30_000;
/** Oil left at the inlet below which it draws air, m3; every supply's inlet holds more than this when full. */
export const DRY = 2e-6;

/** Volume of oil in a supply's own inlet passage, m3. */
export const INLET_VOLUME = 6e-6;

/** The air a pump draws. */
export const AIR_PARAMETER: NumberParameter = {
  title: 'share of each turn that is air, drawn in at a suction joint, at ambient pressure',
  quantity: 'ratio',
  range: [0, 0.95],
  default: 0,
  why: 'a tight suction side',
};

/** A suction hose that collapses, a strainer that clogs. */
export const BLOCKED_PARAMETER: NumberParameter = {
  title: 'share of the suction hose or strainer that is shut',
  quantity: 'ratio',
  range: [0, 0.99],
  default: 0,
  why: 'a sound hose and a clean strainer; at a half, 1 bar absolute can just push the rated flow in oil of the rating, at nine tenths a ninth of it; common practice, no source',
};

/** The pressure the blocked share is told at, Pa absolute. */
const ONE_BAR = 1e5;

/** Absolute inlet pressure per flow that a blocked suction takes, Pa s/m3, for a pump of a rated flow (m3/s) and viscosity (m2/s); 0 for an open one. */
export function blockedConstant(
  p: Parameters,
  s: Surroundings,
  ratedFlow: number,
  viscosity: number,
): number {
  const blocked = number(p, 'suctionBlocked');
  return ((blocked / (1 - blocked)) * ONE_BAR * s.viscosity) / (ratedFlow * viscosity);
}

/** Share of the flow `wanted` (m3/s) that comes through a blocked suction, with the constant of {@link blockedConstant} at `at`. */
export function passes(d: Frame, inlet: number, at: number, wanted: number): number {
  const r4 = (wanted * d.k[at]) ** 4 / Math.max(1, d.pressure(inlet)) ** 4;
  return r4 === 0 ? 1 : (1 + r4) ** -0.25;
}

/** Slope of {@link passes} against the inlet's pressure, 1/Pa. */
export function passesSlope(d: Frame, inlet: number, at: number, wanted: number): number {
  const p = Math.max(1, d.pressure(inlet));
  const r4 = (wanted * d.k[at]) ** 4 / p ** 4;
  return r4 === 0 ? 0 : (r4 * (1 + r4) ** -1.25) / p;
}

/** Pressure at which half of the volume swept is air, Pa; 0 without air. */
export function airConstant(p: Parameters, s: Surroundings): number {
  const share = number(p, 'suctionAir');
  return (share / (1 - share)) * s.ambient;
}

/** Share of full flow that the inlet can feed, 0..1. */
export function fed(d: Frame, inlet: number): number {
  return rise(d.pressure(inlet) / FED) * rise(d.content(inlet) / DRY);
}

/** Slope of {@link fed} against the inlet's pressure, 1/Pa. */
export function fedSlope(d: Frame, inlet: number): number {
  return (riseSlope(d.pressure(inlet) / FED) / FED) * rise(d.content(inlet) / DRY);
}

/** Share of the volume swept that is oil and not air, with the constant of {@link airConstant} at `at`. */
export function solid(d: Frame, inlet: number, at: number): number {
  const half = d.k[at];
  if (half === 0) return 1;
  const p = d.pressure(inlet);
  return p / (p + half);
}

/** Slope of {@link solid} against the inlet's pressure, 1/Pa. */
export function solidSlope(d: Frame, inlet: number, at: number): number {
  const half = d.k[at];
  const sum = d.pressure(inlet) + half;
  return half === 0 ? 0 : half / (sum * sum);
}
