/** Valves and lines lose no oil and no energy that they do not account for. */
import { expect, it } from 'vitest';
import { door, DOWN, gear, last, secondJack, shift, told, UP } from '../support/one-jack.js';

it('oil and energy are kept through hose, hole, regulator, pressure valve, plunger spring and kick-out', () => {
  const run = gear('open-centre-selector', {
    selector: { kickOut: 5e6 },
    steps: [shift(0.5, UP), shift(6, DOWN)],
    duration: 14,
    up: 'leg-up',
    down: 'leg-down',
    // The account is a quadrature over the record; at `normal` a record may be out where all rests.
    tolerance: 'fine',
    coordinates: { door },
    extra: {
      hose: {
        is: 'hose',
        ports: { inlet: 'up', outlet: 'leg-up' },
        parameters: { length: 1, softening: 5, flap: 0.5, hole: 3e-4 },
      },
      regulator: {
        is: 'flow-regulator',
        ports: { inlet: 'down', outlet: 'leg-down' },
        parameters: { flow: 3e-4, freeBack: true },
      },
      sequence: {
        is: 'pressure-sequence-valve',
        ports: { inlet: 'leg-up', outlet: 'gate' },
        parameters: { crack: 2e6, full: 2.4e6 },
      },
      plunger: {
        is: 'sequence-valve',
        ports: { inlet: 'gate', outlet: 'door-up' },
        links: { plunger: { to: 'leg', travel: { x: [0, 1], y: [0, 0.1] } } },
        parameters: { trip: 0.095, plungerForce: 300 },
      },
      'door-jack': secondJack({
        head: 'door-up',
        headChamber: 'door-up',
        rod: 'leg-down',
        rodChamber: 'leg-down',
      }),
      priority: {
        is: 'priority-valve',
        ports: { inlet: 'leg-up', priority: 'spare', secondary: 'second' },
        parameters: { crack: 1e6, full: 2e6 },
      },
      weep: {
        is: 'orifice',
        ports: { inlet: 'second', outlet: 'tank' },
        parameters: { bore: 4e-4 },
      },
      lowering: {
        is: 'manual-lowering-valve',
        ports: { up: 'leg-up', down: 'leg-down', return: 'tank' },
        parameters: { ajar: 0.01 },
      },
    },
  });
  expect(told(run, 'selector')).toContain('returning');
  expect(told(run, 'sequence')).toContain('open');
  expect(last(run, 'leg.angle')).toBeLessThan(0.01);
  const { oil, energy } = run.account();
  // The bound that the conservation laws hold generated networks to.
  expect(Math.abs(oil.end / oil.start - 1)).toBeLessThan(1e-9);
  expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * energy.supplied);
});
