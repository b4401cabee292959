/** Which devices a flag is about: those it names, and for a node of the circuit those that meet in it. */
import type { Flag, Picture } from '../worker/message.js';

/** Kept for as long as the circuit is the same, with the devices in it. */
const known = new WeakMap<Picture['circuit'], Map<string, readonly string[]>>();

/** What a flag names as devices, mechanisms or units: itself, or for a node the parts there, jacks first. */
export function bearersOf(picture: Picture, named: string): readonly string[] {
  const kept = known.get(picture.circuit) ?? new Map<string, readonly string[]>();
  known.set(picture.circuit, kept);
  const list = kept.get(named) ?? find(picture, named);
  kept.set(named, list);
  return list;
}

function find(picture: Picture, named: string): readonly string[] {
  const [owner = named] = named.split('.');
  if (picture.devices.some((d) => d.name === owner)) return [owner];
  const parts = picture.circuit.parts.filter((p) => p.ports.some((q) => q.node === named));
  if (parts.length === 0) return [named];
  // A jack is where the oil goes and where a gap opens: it tells more than the line that leads to it.
  const rank = (role: string): number => (role === 'actuator' ? 0 : 1);
  return [...parts].sort((a, b) => rank(a.role) - rank(b.role)).map((p) => p.name);
}

/** All devices a flag is about, the first named first. */
export function devicesOf(picture: Picture, flag: Flag): readonly string[] {
  return [...new Set(flag.devices.flatMap((d) => bearersOf(picture, d)))];
}
