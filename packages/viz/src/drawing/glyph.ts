/** Small signs that are told apart by shape, not by colour alone. Paths in a 16 x 16 box around 0,0. */

export type Sign = 'fail' | 'caution' | 'note' | 'engaged' | 'open' | 'turn' | 'enlarge';

export const SIGN: Readonly<Record<Sign, string>> = {
  // An octagon with a bar, a triangle with a mark, a ring with a tick.
  fail: 'M-3.1,-7.5H3.1L7.5,-3.1V3.1L3.1,7.5H-3.1L-7.5,3.1V-3.1ZM-4,-1.3V1.3H4V-1.3Z',
  caution: 'M0,-7.5L8,7H-8ZM-1.1,-2.5L-0.7,2.6H0.7L1.1,-2.5ZM-1,3.6V5.4H1V3.6Z',
  note: 'M0,-7.5A7.5,7.5 0 1 1 0,7.5A7.5,7.5 0 1 1 0,-7.5ZM0,-6A6,6 0 1 0 0,6A6,6 0 1 0 0,-6ZM-3.6,0L-2.6,-1L-1,0.7L2.6,-3L3.6,-2L-1,2.8Z',
  // A shut padlock, solid; an open one, hollow, its shackle swung out.
  engaged:
    'M-6.5,-0.5H-4.6V-3A4.6,4.6 0 0 1 4.6,-3V-0.5H6.5V7.5H-6.5ZM-2.4,-0.5H2.4V-3A2.4,2.4 0 0 0 -2.4,-3Z',
  // Two arrows, there and back; the four corners of a sheet.
  turn: 'M-7.5,-5H2.5V-8L8,-3.8L2.5,0.4V-2.6H-7.5ZM7.5,2.6H-2.5V-0.4L-8,3.8L-2.5,8V5H7.5Z',
  enlarge:
    'M-7.5,-7.5H-1.5V-5.3H-5.3V-1.5H-7.5ZM1.5,-7.5H7.5V-1.5H5.3V-5.3H1.5ZM7.5,1.5V7.5H1.5V5.3H5.3V1.5ZM-7.5,1.5H-5.3V5.3H-1.5V7.5H-7.5Z',
  open: 'M-7.5,-0.5H2.4V-3A4.4,4.4 0 0 1 8,-5V-2.6H6.2V-3.4A1.6,1.6 0 0 0 4.5,-3V-0.5H4.5V7.5H-7.5ZM-5.6,1.4V5.6H2.6V1.4Z',
};

/** Arrow heads for motion: towards the high end, towards the low end. */
export const RISING = 'M0,-4L4,3H-4Z';
export const FALLING = 'M0,4L4,-3H-4Z';
