import type { CheckDefinition } from '../define/index.js';

export const lineCracked: CheckDefinition = {
  kind: 'line-cracked',
  title: 'Crack the line, or open the dump valve',
  how: 'Where it hangs: crack the fitting at the jack, or open the dump valve for a moment. Does it go on, or drop?',
  minutes: 8,
  tools: 'spanner, catch rag',
  caution:
    'Only where the approved data allow it, at the lowest pressure, with a catch rag; the part drops at once. Never feel for a leak by hand.',
  source: 'NTSB field reports of trapped pressure; common practice, no source',
  shows: [
    'trapped-pressure',
    'hose-liner-flap',
    'dump-valve-not-venting',
    'pack-spool-off-stop',
    'thermal-expansion',
    'thermal-relief-set-high',
    'restrictor-blocked',
    'shuttle-stuck-emergency',
    'return-back-pressure',
  ],
  sure: 0.9,
};
