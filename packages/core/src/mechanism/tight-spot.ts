/** A tight spot of a pivot or hinge: friction that rises over some degrees of the travel. */
import type { ParameterDefinitions, Parameters, Shape } from '../define/index.js';
import { hump, num, sample } from './statics.js';

const DEG = Math.PI / 180;

/** Its parameters, up to a moment of `most` N m; `where` is what it is a spot of. */
export const tightSpot = (most: number, where: string): ParameterDefinitions => ({
  bumpMoment: {
    title: 'Tight spot, friction moment there',
    quantity: 'moment',
    range: [0, most],
    default: 0,
    why: `None in a free ${where}; a dry or bent one, or a part that rubs, binds at one angle.`,
  },
  bumpAngle: {
    title: 'Tight spot at',
    quantity: 'angle',
    range: [0, 170 * DEG],
    default: 45 * DEG,
    why: 'Half way; where the rub marks are.',
  },
  bumpWidth: {
    title: 'Tight spot ends from its middle at',
    quantity: 'angle',
    range: [3 * DEG, 60 * DEG],
    default: 6 * DEG,
    why: 'Some degrees to either side. Common practice, no source.',
  },
});

/** Friction moment against angle, N m: even, or with the tight spot on it; from 0 to `high`, rad. */
export function rubbing(p: Parameters, high: number): number | Shape {
  const even = num(p, 'friction');
  const bump = num(p, 'bumpMoment');
  if (bump === 0) return even;
  return sample(0, high, (a) => even + bump * hump(a, num(p, 'bumpAngle'), num(p, 'bumpWidth')));
}
