/**
 * Bytes of heap per step of the loop: two runs with the same events and so the same log, one with
 * many more steps; what they differ by, per step tried. The young generation is made
 * so large that nothing is collected meanwhile. Recorded steps lie in typed arrays outside the heap.
 */
export default ({ fresh }) => {
  const [{ few, many }] = fresh('fresh/allocation.mjs', {
    processes: 1,
    flags: ['--min-semi-space-size=256', '--max-semi-space-size=256'],
  });
  const bytes = many.bytes - few.bytes;
  return [
    { name: 'normal', tries: few.tries, transitions: few.transitions, 'heap, kB': few.bytes / 1e3 },
    {
      name: 'a hundredth of the tolerance',
      tries: many.tries,
      transitions: many.transitions,
      'heap, kB': many.bytes / 1e3,
      'bytes per try more': bytes / (many.tries - few.tries),
      // Less than one number on the heap (16 bytes) per step: the loop itself allocates nothing.
      target: { 'bytes per try more': 16 },
    },
  ];
};
