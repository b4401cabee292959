/**
 * What US Army course AL0926 (figures 2-3 to 2-6, 2-14 and its summary) says of selectors, check
 * valves and sequence valves, each statement made a run or a bench figure. Our words, its
 * statements.
 */
import { describe, expect, it } from 'vitest';
import type { Parameters } from '../../packages/core/src/define/index.js';
import {
  at,
  door,
  FLOW,
  gauge,
  gear,
  last,
  PSI,
  secondJack,
  shift,
  told,
  UP,
  when,
} from '../support/one-jack.js';
import { valveFlows } from '../support/valve-flows.js';

describe('selector valves (AL0926 figures 2-3 to 2-6)', () => {
  it('open centre: OFF, the output of the pump returns with little resistance and builds no pressure', () => {
    const run = gear('open-centre-selector', { selector: { kickOut: 5e6 }, duration: 2 });
    expect(last(run, 'selector.through') / FLOW).toBeCloseTo(1, 2);
    expect(gauge(run, 'pressure', 1.9)).toBeLessThan(100 * PSI);
  });

  it('closed centre: OFF, the pressure passage is blocked and the system stays at operating pressure', () => {
    const run = gear('selector-valve', { duration: 2, limit: 6e6 });
    expect(gauge(run, 'pressure', 1.9) / 6e6).toBeGreaterThan(0.95);
  });

  it('ON, both do the same', () => {
    const time = (kind: string): number => {
      const selector: Parameters = kind === 'selector-valve' ? {} : { kickOut: 5e6 };
      return when(gear(kind, { selector, steps: [shift(0.5, UP)] }), 'leg', 'at high');
    };
    expect(time('open-centre-selector')).toBeCloseTo(time('selector-valve'), 1);
  });
});

describe('orifice check valve and check valve (AL0926 summary)', () => {
  it('full flow one way and restricted flow the other; a plain check valve none', () => {
    const one = { bore: 0.001, freeBore: 0.005 };
    const free = valveFlows('one-way-restrictor', one, [1e6, 0]).through;
    const held = -valveFlows('one-way-restrictor', one, [0, 1e6]).through;
    expect(free / valveFlows('orifice', { bore: 0.005 }, [1e6, 0]).through).toBeGreaterThan(1);
    expect(held / valveFlows('orifice', { bore: 0.001 }, [1e6, 0]).through).toBeCloseTo(1, 9);
    expect(-valveFlows('check-valve', {}, [0, 1e6]).through).toBeLessThan(1e-8);
  });

  it('its check stuck shut restricts both ways, and a check valve held open passes back', () => {
    const stuck = { bore: 0.001, freeBore: 0.005, stuckShut: 1 };
    const there = valveFlows('one-way-restrictor', stuck, [1e6, 0]).through;
    expect(there).toBeCloseTo(-valveFlows('one-way-restrictor', stuck, [0, 1e6]).through, 12);
    const open = { bore: 0.006, stick: 1 };
    const back = -valveFlows('check-valve', open, [0, 1e6]).through;
    expect(back / valveFlows('check-valve', open, [1e6, 0]).through).toBeCloseTo(1, 9);
    expect(valveFlows('check-valve', { bore: 0.006, stuckShut: 1 }, [1e6, 0]).through).toBeLessThan(
      1e-8,
    );
  });
});

describe('mechanically actuated sequence valve (AL0926 figure 2-14)', () => {
  it('opens by position and not by pressure, and is a check valve the other way', () => {
    const rig = { trip: 0.1, lap: 0.001, stroke: 0.004 };
    expect(valveFlows('sequence-valve', rig, [20e6, 0]).through).toBeLessThan(1e-7);
    // Acts as a check in the other direction: FAA-H-8083-31, landing gear chapter, through study cards.
    expect(valveFlows('sequence-valve', rig, [0, 1e6]).back).toBeGreaterThan(1e-4);
  });

  it('a second unit behind it stays still until the first pushes the plunger', () => {
    const run = gear('selector-valve', {
      steps: [shift(0.5, UP)],
      duration: 8,
      coordinates: { door },
      extra: {
        valve: {
          is: 'sequence-valve',
          ports: { inlet: 'up', outlet: 'door-up' },
          links: { plunger: { to: 'leg', travel: { x: [0, 1], y: [0, 0.1] } } },
          parameters: { trip: 0.095 },
        },
        'door-jack': secondJack({
          head: 'door-up',
          headChamber: 'door-up',
          rod: 'down',
          rodChamber: 'down',
        }),
      },
    });
    const opens = when(run, 'valve', 'opening');
    expect(at(run, 'door.angle', opens)).toBeLessThan(1e-3);
    expect(at(run, 'leg.angle', opens)).toBeGreaterThan(0.95);
    expect(told(run, 'valve')[0]).toBe('opening');
    expect(when(run, 'door', 'at high')).toBeGreaterThan(opens);
  });
});
