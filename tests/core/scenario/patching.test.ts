import { expect, test } from 'vitest';
import {
  canBefall,
  faultProblem,
  patchScenario,
  readWith,
  writeScenario,
} from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

const scenario = readWith(madeUp, MADE_UP_TEXT, { file: 'made-up.yaml' }).scenario!;
const { healthy, cold } = scenario.cards;
const fault = (severity: number, on = 'left-jack') => ({ fault: 'narrow-bore', on, severity });

test('a card that changes nothing gives back the very same objects', () => {
  const patched = patchScenario(scenario, healthy, [], madeUp);
  expect(patched.scenario).toBe(scenario);
  expect(patched.card).toBe(healthy);
});

test('a fault of severity 0 gives back the very same objects', () => {
  const patched = patchScenario(scenario, healthy, [fault(0)], madeUp);
  expect(patched.scenario).toBe(scenario);
  expect(patched.card).toBe(healthy);
});

test('a card works in its temperature, settings and faults, and the given scenario stays as it was', () => {
  const before = structuredClone(scenario);
  const { scenario: patched } = patchScenario(scenario, cold, [], madeUp);
  expect(scenario).toEqual(before);
  expect(patched.fluid).toEqual({
    kind: 'red-oil',
    temperature: cold.temperature! + 5,
    freeAir: expect.closeTo(0.02, 12),
    thickness: 2 * 0.75,
    warmedBy: -10,
  });
  expect(patched.airspeed).toBeCloseTo((90 * 1852) / 3600, 9); // knot = 1852 m/h, exact
  expect(patched.components.selector.parameters.style).toBe('spool');
  expect(patched.components.pump.parameters.flow).toBe(cold.set['components.pump.flow']);
  expect(patched.mechanisms['left-leg'].parameters.mass).toBe(cold.set['mechanisms.left-leg.mass']);
  const bore = scenario.components['left-jack'].parameters.bore as number;
  expect(patched.components['left-jack'].parameters.bore).toBeCloseTo(bore * 0.7, 12);
  expect(patched.components['door-jack']).toBe(scenario.components['door-jack']);
});

test('further faults add to those of the card, one after the other', () => {
  const { scenario: patched, card } = patchScenario(scenario, cold, [fault(1), fault(0)], madeUp);
  const bore = scenario.components['left-jack'].parameters.bore as number;
  expect(patched.components['left-jack'].parameters.bore).toBeCloseTo(bore * 0.7 * 0.5, 12);
  expect(card.faults).toEqual([...cold.faults, fault(1)]);
});

test('a fault that cannot be applied is told with the nearest name', () => {
  expect(() =>
    patchScenario(scenario, healthy, [{ ...fault(1), fault: 'narow-bore' }], madeUp),
  ).toThrow(/narrow-bore/);
  expect(() => patchScenario(scenario, healthy, [fault(1, 'left-jak')], madeUp)).toThrow(
    /left-jack/,
  );
  expect(() => patchScenario(scenario, healthy, [fault(1, 'left-leg')], madeUp)).toThrow(
    /cannot befall/,
  );
  expect(() => patchScenario(scenario, healthy, [fault(1.5)], madeUp)).toThrow(/outside 0 to 1/);
  expect(() => patchScenario(scenario, healthy, [fault(NaN)], madeUp)).toThrow(/outside 0 to 1/);
  expect(faultProblem(scenario, fault(0.5), madeUp)).toBeUndefined();
  expect(canBefall(scenario, madeUp.faults['narrow-bore'])).toEqual([
    'selector',
    'left-jack',
    'door-jack',
  ]);
});

test('a fault of the oil changes the oil alone', () => {
  const entry = { fault: 'thin-oil', on: 'fluid', severity: 1 };
  const { scenario: patched, card } = patchScenario(scenario, healthy, [entry], madeUp);
  expect(patched.fluid).toEqual({
    ...scenario.fluid,
    thickness: scenario.fluid.thickness / 2,
    temperature: scenario.fluid.temperature + 10,
  });
  expect(patched.components).toBe(scenario.components);
  expect(card.faults).toEqual([entry]);
  expect(canBefall(scenario, madeUp.faults['thin-oil'])).toEqual(['fluid']);
  expect(patchScenario(scenario, healthy, [{ ...entry, severity: 0 }], madeUp).scenario).toBe(
    scenario,
  );
  expect(faultProblem(scenario, { ...entry, on: 'left-jack' }, madeUp)).toContain(
    'here it can befall fluid',
  );
  expect(faultProblem(scenario, { ...fault(1), on: 'fluid' }, madeUp)).toContain(
    'cannot befall the oil',
  );
});

test('a fault that joins the ports otherwise does so at any severity above none', () => {
  const entry = { fault: 'swapped-lines', on: 'selector', severity: 0.1 };
  const { ports, parameters } = scenario.components.selector;
  const patched = patchScenario(scenario, healthy, [entry], madeUp).scenario.components.selector;
  expect(patched.ports).toEqual({ ...ports, pressureIn: 'up', out: 'line' });
  expect(patched.parameters).toEqual(parameters);
  expect(patchScenario(scenario, healthy, [{ ...entry, severity: 0 }], madeUp).scenario).toBe(
    scenario,
  );
});

test('a scenario that is written and read again is the same', () => {
  const again = readWith(madeUp, writeScenario(scenario, madeUp), { file: 'made-up.yaml' });
  expect(again.issues).toEqual([]);
  expect(again.scenario).toEqual(scenario);
});

test('a capped port that a fault has joined to another is written as capped', () => {
  const { ports } = scenario.components.selector;
  const selector = {
    ...scenario.components.selector,
    ports: { ...ports, out: ports.drain, drain: ports.out },
  };
  const swapped = { ...scenario, components: { ...scenario.components, selector } };
  const again = readWith(madeUp, writeScenario(swapped, madeUp));
  expect(again.issues).toEqual([]);
  expect(again.scenario?.components.selector.ports).toEqual({
    ...ports,
    out: 'selector-out-blanked',
    drain: 'up',
  });
});
