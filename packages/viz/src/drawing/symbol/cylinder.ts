/** What pressure moves: jacks with their pistons where they are, and the releases of locks. */
import { body, circle, line, rect, solid, spring, thin, way } from './shape.js';
import type { Drawing, Shape } from './shape.js';

/** Free way of the piston inside the barrel, modules. */
export const STROKE = 7.4;
const BARREL = body(rect(-5, -1.6, 10, 3.2));
const AT = -4.3;

/** Retracted at 0, extended at 1. A cushion is the plug that narrows the way out near an end. */
function piston(cushions: readonly string[]): readonly Shape[] {
  const by = [STROKE, 0] as const;
  return [
    body(rect(AT + 0.6, -0.35, 9.1, 0.7), by),
    ...(cushions.includes('head') ? [body(rect(AT - 0.6, -0.6, 0.6, 1.2), by)] : []),
    ...(cushions.includes('rod') ? [body(rect(AT + 0.7, -0.7, 0.6, 1.4), by)] : []),
    solid(rect(AT, -1.6, 0.7, 3.2), by),
    body(circle(AT + 9.9, 0, 0.5), by),
  ];
}

export function cylinder(traits: readonly string[]): Drawing {
  return {
    box: [-5.2, traits.includes('lock') ? -2.5 : -1.8, 13.7, 2],
    shapes: [
      BARREL,
      ...piston(traits),
      line('M-4,1.6V2M4,1.6V2'),
      ...(traits.includes('lock') ? [thin('M4.4,-1.6l0.5,-0.7h-1ZM-4.6,-1.6l0.5,-0.7h-1Z')] : []),
    ],
  };
}

export const singleActing: Drawing = {
  box: [-5.2, -1.8, 13.7, 2],
  shapes: [BARREL, thin(spring(1.5, 5, 0)), ...piston([]), line('M-4,1.6V2')],
};

/** The hook of a lock and the little jack that draws it back: up when engaged. */
export const lock: Drawing = {
  box: [-2, -2, 2, 2],
  shapes: [
    body(rect(-0.9, 0.2, 1.8, 1.4)),
    line('M0,1.6V2'),
    solid(rect(-0.9, 0.9, 1.8, 0.4), [0, -0.5]),
    line(way([0, 0.9], [0, -0.6]), [0, -0.5]),
    line('M0,-0.6q1.5,0.1 1.3,-0.8', [0, -0.5]),
    // The roller it holds: solid while it does.
    { ...thin(circle(0.5, -1.45, 0.4)), when: 0 },
    { ...solid(circle(0.5, -1.45, 0.45)), when: 1 },
  ],
};

/** The knee of a folding brace: straight when engaged, broken when not; a jack to either side. */
export const brace: Drawing = {
  box: [-3, -2, 3, 2],
  shapes: [
    body(rect(-2.8, 0.4, 1.6, 1.2)),
    body(rect(1.2, 0.4, 1.6, 1.2)),
    line('M-2,1.6V2M2,1.6V2'),
    thin('M-2,0.4V-0.4M2,0.4V-0.4'),
    { ...line('M-2.6,-0.6H2.6'), when: 1 },
    { ...line('M-2.6,-0.6L0,-1.7L2.6,-0.6'), when: 0 },
    body(circle(0, -1.5, 0.4), [0, 0.9]),
  ],
};
