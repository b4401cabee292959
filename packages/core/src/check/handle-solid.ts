import type { CheckDefinition } from '../define/index.js';

export const handleSolid: CheckDefinition = {
  kind: 'handle-solid',
  title: 'Work the hand pump: is it solid',
  how: 'Main pump off: does the handle stand as against a wall, or come to that before the gear is home?',
  minutes: 3,
  tools: 'nothing',
  caution:
    'Legs and doors move with lethal force: jacks, area clear, stop word agreed. The main pump off first: its pressure holds the handle, too.',
  source: 'common practice, no source',
  shows: [
    'hand-pump-outlet-check-backward',
    'check-valve-backward',
    'hose-liner-flap',
    'line-pinched',
    'actuator-check-left-out',
    'bore-galled',
    'seal-fragment-jam',
    'shuttle-stuck-emergency',
    'trapped-pressure',
    'pack-spool-off-stop',
    'lines-transposed',
    'actuator-reversed',
  ],
  anywhere: true,
  needs: 'hand-supply',
  sure: 0.85,
};
