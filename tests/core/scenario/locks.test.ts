import { expect, test } from 'vitest';
import { readScenario } from '../../../packages/core/src/index.js';

const text = (lock: string): string => `
wheelwell: 1
title: a lock
fluid: { kind: mineral-red }
components:
  tank: { is: reservoir, ports: { outlet: tank, return: tank } }
  hook: { ${lock}, links: { leg: { to: door } } }
mechanisms:
  door: { is: door, travel: 90 deg, mass: 5 kg, cog: 200 mm, inertia: 0.3 kg m^2, chord: 400 mm, span: 500 mm }
cards: { card: { title: card, duration: 1 s } }
`;

test.each([
  ['is: uplock, at: 0 deg', 'downlock'],
  ['is: downlock, at: 90 deg', 'uplock'],
])('a lock at the wrong end (%s) is refused: it would catch anywhere', (lock, instead) => {
  const { issues } = readScenario(text(lock));
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({ line: 7, path: 'components.hook.at' });
  expect(issues[0].hint).toContain(instead);
});

test.each(['is: uplock, at: 90 deg', 'is: downlock, at: 0 deg', 'is: downlock'])(
  'a lock at its own end (%s) is in order',
  (lock) => {
    expect(readScenario(text(lock)).issues).toEqual([]);
  },
);
