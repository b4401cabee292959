/** What faults that join ports anew share. */

type Ports = Readonly<Record<string, string>>;

/**
 * The lines of two ports swapped. A chamber that was one node with its port (an end without
 * cushion) stays so; a chamber of its own goes with the actuator.
 */
export function crossed(ports: Ports, one: string, other: string): Ports {
  const swapped: Record<string, string> = { ...ports };
  for (const [end, far] of [
    [one, other],
    [other, one],
  ]) {
    const chamber = `${end}Chamber`;
    if (ports[chamber] === ports[end]) swapped[chamber] = ports[far];
    swapped[end] = ports[far];
  }
  return swapped;
}

/** The chamber at one end of an actuator as a node of its own, so that something may lie in the way to it. */
export function ownChamber(ports: Ports, end: string): Ports {
  const { [`${end}Chamber`]: chamber, ...others } = ports;
  return chamber === undefined || chamber !== ports[end] ? ports : others;
}
