/** What can hurt people. Common practice; the aircraft's approved data comes first. */
export interface Caution {
  /** A sentence that is enough on its own where room is short. */
  readonly head: string;
  readonly text: string;
}

/** On top of every report, on paper as on the screen; most general first. */
export const CAUTIONS: readonly Caution[] = [
  {
    head: 'Simulation, not approved data.',
    text: "No time, pressure, limit or margin here may be used on an aircraft: they come from a scenario file. The aircraft's own approved data, local rules and licensed people decide.",
  },
  {
    head: 'Legs and doors move with lethal force.',
    text: 'They close in a second or less, without warning, and do not stop for a hand. Keep hands, heads, tools and stands out of their arcs while there is pressure, or stored gas, in the system.',
  },
  {
    head: 'Before pressure: ground locks out and counted, area clear, one person in charge, a stop word agreed.',
    text: 'Locks go back in, and are counted again, before anyone goes under.',
  },
  {
    head: 'On jacks: proper pads, locks run down, tail steadied, area roped off.',
    text: 'Nobody under a wing that only a jack holds.',
  },
  {
    head: 'Never feel for a leak by hand.',
    text: 'A pinhole jet goes through skin and gloves. Injected oil is a surgical emergency even when the wound looks small: go to hospital at once and say what the oil is.',
  },
  {
    head: 'Never open a line under pressure.',
    text: 'Release the pressure and show that it is gone first. Moving one leg by hand with lines closed can unlock another.',
  },
];
