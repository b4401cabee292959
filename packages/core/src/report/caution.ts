/** On top of every report, on paper as on the screen. */
export const CAUTIONS: readonly string[] = [
  'Simulation, not approved data. No time, pressure, limit or margin here may be used on an aircraft:',
  "the aircraft's own approved data, local rules and licensed people decide.",
  'Legs and doors move with lethal force. Before pressure: ground locks out and counted, area clear,',
  'one person in charge, a stop word agreed. Never feel for a leak by hand; never open a line under pressure.',
];
