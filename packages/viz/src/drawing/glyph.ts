/** Small signs that are told apart by shape, not by colour alone. Paths in a 16 x 16 box around 0,0. */

export type Sign = 'fail' | 'caution' | 'note' | 'engaged' | 'open';

export const SIGN: Readonly<Record<Sign, string>> = {
  // An octagon with a bar, a triangle with a mark, a ring with a tick.
  fail: 'M-3.1,-7.5H3.1L7.5,-3.1V3.1L3.1,7.5H-3.1L-7.5,3.1V-3.1ZM-4,-1.3V1.3H4V-1.3Z',
  caution: 'M0,-7.5L8,7H-8ZM-1.1,-2.5L-0.7,2.6H0.7L1.1,-2.5ZM-1,3.6V5.4H1V3.6Z',
  note: 'M0,-7.5A7.5,7.5 0 1 1 0,7.5A7.5,7.5 0 1 1 0,-7.5ZM0,-6A6,6 0 1 0 0,6A6,6 0 1 0 0,-6ZM-3.6,0L-2.6,-1L-1,0.7L2.6,-3L3.6,-2L-1,2.8Z',
  // A shut padlock, solid; an open one, hollow, its shackle swung out.
  engaged:
    'M-6.5,-0.5H-4.6V-3A4.6,4.6 0 0 1 4.6,-3V-0.5H6.5V7.5H-6.5ZM-2.4,-0.5H2.4V-3A2.4,2.4 0 0 0 -2.4,-3Z',
  open: 'M-7.5,-0.5H2.4V-3A4.4,4.4 0 0 1 8,-5V-2.6H6.2V-3.4A1.6,1.6 0 0 0 4.5,-3V-0.5H4.5V7.5H-7.5ZM-5.6,1.4V5.6H2.6V1.4Z',
};

/** Arrow heads for motion: towards the high end, towards the low end. */
export const RISING = 'M0,-4L4,3H-4Z';
export const FALLING = 'M0,4L4,-3H-4Z';
