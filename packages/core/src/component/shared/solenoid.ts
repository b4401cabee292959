/**
 * What solenoid-operated valves share: coils that are on or off, the times in which armature and
 * spool or poppet travel (the coil's own build-up of current is within the rise time), and a
 * supply that may be too weak to pull.
 */
import type { InputDefinition, NumberParameter, Parameters } from '../../define/index.js';
import { number } from './parameters.js';

/** Longest step while something shifts, share of the time it takes: a land opens within a small part of it. */
const SHIFT_STEP = 0.05;

export const coilInput = (title: string): InputDefinition => ({
  title,
  choices: ['off', 'on'],
  initial: 0,
});

function time(title: string, usual: number, why: string): NumberParameter {
  return { title, quantity: 'time', range: [0.002, 3], default: usual, why };
}

export const solenoidParameters = {
  riseTime: time(
    'time from coil on to fully shifted',
    0.05,
    'some hundredths of a second for small direct-acting valves, a few tenths for oil-damped ones; common practice, no source',
  ),
  fallTime: time(
    'time from coil off to back at rest',
    0.04,
    'the return spring has less to move against than the coil; common practice, no source',
  ),
  supply: {
    title: 'voltage at the coil as a share of nominal',
    quantity: 'ratio',
    range: [0, 1.3],
    default: 1,
    why: 'nominal volts; 0 is a dead coil or a broken wire',
  },
  pullIn: {
    title: 'least share of nominal voltage that pulls without pressure',
    quantity: 'ratio',
    range: [0.1, 0.95],
    default: 0.65,
    why: 'coils are made to pull, hot, at two thirds to four fifths of nominal; common practice, no source',
  },
} as const satisfies Readonly<Record<string, NumberParameter>>;

/**
 * Pull left for anything but the return spring, as a share of what is left at nominal voltage; below
 * 0 it does not pull at all. Force of a magnet with a given gap goes with the square of the current
 * (any text on magnetic circuits; from memory), hence of the voltage.
 */
export function spareForce(p: Parameters): number {
  const least = number(p, 'pullIn') ** 2;
  return (number(p, 'supply') ** 2 - least) / (1 - least);
}

/** Longest step of a shift that takes `time` seconds. */
export const shiftStep = (time: number): number => SHIFT_STEP * time;
