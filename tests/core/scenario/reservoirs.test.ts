import { expect, test } from 'vitest';
import { readScenario, simulate } from '../../../packages/core/src/index.js';

const text = (second: string): string => `
wheelwell: 1
title: two tanks
fluid: { kind: mineral-red }
components:
  left-tank: { is: reservoir, ports: { outlet: suction } }
  right-tank: { is: reservoir, ports: { outlet: ${second} }, head: 1 m }
  stand: { is: ground-supply, ports: { inlet: suction, outlet: pressure }, flow: 1 gal/min, pressure: 1400 psi }
  bleed: { is: orifice, ports: { inlet: pressure, outlet: far }, bore: 0.5 mm }
nodes: { suction: {}, far: {}, pressure: {} }
cards: { card: { title: card, duration: 1 s } }
`;

test('two reservoirs on one node are refused at the second', () => {
  const { scenario, issues } = readScenario(text('suction'));
  expect(scenario).toBeUndefined();
  const found = issues.find((i) => i.message.includes('holds the pressure'))!;
  expect(found.path).toBe('components.right-tank.ports.outlet');
  expect(found.line).toBe(7);
  expect(found.hint).toContain('line');
});

test('each on its own node is in order', () => {
  const { scenario, issues } = readScenario(text('far'));
  expect(issues).toEqual([]);
  expect(simulate(scenario!, { card: 'card' }).outcome.kind).toBe('done');
});
