import { describe, expect, it } from 'vitest';
import { catalogues, GEAR } from '../../../packages/core/src/index.js';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { gearUnits } from '../../support/gear-units.js';

const scenario = gearUnits({ units: 2 });
const run = simulateWith(catalogues, scenario);
const { log } = run;

/** The chain of causes from an entry back to one without a known cause. */
function chain(index: number): number[] {
  const found = [index];
  for (let by = log[index].by; by >= 0; by = log[by].by) found.push(by);
  return found;
}

describe('the log of a swing', () => {
  it('is numbered, in time order, and says in words what happened', () => {
    log.forEach((e, i) => {
      expect(e.index).toBe(i);
      if (i > 0) expect(e.t).toBeGreaterThanOrEqual(log[i - 1].t);
      expect(e.cause).not.toBe('');
      expect(e.to).not.toBe('');
      expect(e.to).not.toBe(e.from);
    });
  });

  it('every cause is an earlier entry', () => {
    for (const e of log) {
      expect(e.by).toBeLessThan(e.index);
      expect(e.by).toBeGreaterThanOrEqual(-1);
      if (e.by >= 0) expect(log[e.by].t).toBeLessThanOrEqual(e.t);
    }
  });

  it('what a device leaves is what it entered last', () => {
    const state = new Map<string, string>();
    for (const e of log.filter((l) => l.kind !== 'operator')) {
      if (e.t > 0) expect(state.get(e.device)).toBe(e.from);
      state.set(e.device, e.to);
    }
  });

  it('every leg, lock and door event of the swing leads back to the lever or to a spool on its way', () => {
    const moved = log.filter((e) => e.t > 0 && (e.kind === 'motion' || e.device.endsWith('lock')));
    expect(moved.length).toBeGreaterThan(20);
    for (const e of moved) {
      const root = log[chain(e.index).at(-1)!];
      expect(root.device).toBe('selector');
    }
  });

  it('starts with every device that has modes, every mechanism, every unit and the gear, once each', () => {
    const first = log.filter((e) => e.cause === 'at the start');
    const names = first.map((e) => e.device);
    expect(new Set(names).size).toBe(names.length);
    const withModes = Object.entries(scenario.components).filter(
      ([, c]) => Object.keys(catalogues.components[c.is].modes ?? {}).length > 1,
    );
    expect([...names].sort()).toEqual(
      [
        ...withModes.map(([n]) => n),
        ...Object.keys(scenario.mechanisms),
        ...Object.keys(scenario.units),
        GEAR,
      ].sort(),
    );
    expect(first.every((e) => e.t === 0 && e.by === -1 && e.from === '')).toBe(true);
  });

  it('the operator’s entries stand at the card’s times exactly', () => {
    expect(log.filter((e) => e.kind === 'operator').map((e) => [e.t, e.device, e.to])).toEqual([
      [0.1, 'selector', 'up'],
      [20, 'selector', 'down'],
    ]);
  });

  it('a unit goes through its phases in order, up and down', () => {
    const order = [
      'down and locked',
      'unlocking',
      'travelling up',
      'up not locked',
      'up and locked',
      'doors closing',
      'up and closed',
    ];
    const back = [
      'up and closed',
      'doors opening',
      'up and locked',
      'unlocking',
      'travelling down',
      'down not locked',
      'down and locked',
    ];
    for (const unit of ['u0', 'u1']) {
      const phases = log.filter((e) => e.device === unit);
      const upwards = phases.filter((e) => e.t < 20).map((e) => e.to);
      const downwards = phases.filter((e) => e.t >= 20).map((e) => e.to);
      expect(upwards[0]).toBe('down and locked');
      expect(upwards.at(-1)).toBe('up and closed');
      expect(downwards.at(-1)).toBe('down and locked');
      // First entries of the phases come in this order; a rebounding door may go back and forth between.
      const firsts = (all: string[]): string[] => [...new Set(all)];
      const upOrder = firsts(upwards).filter((p) => order.includes(p));
      expect(upOrder).toEqual(order.filter((p) => upOrder.includes(p)));
      expect(upOrder).toContain('travelling up');
      const downOrder = firsts(downwards).filter((p) => p !== 'doors closing');
      expect(downOrder).toEqual(back.filter((p) => downOrder.includes(p)));
      expect(downOrder).toContain('travelling down');
    }
  });

  it('a phase changes at the instant of the entry that it names, which is its own unit’s', () => {
    const phases = log.filter((l) => l.kind === 'phase' && l.t > 0);
    expect(phases.length).toBeGreaterThan(20);
    for (const e of phases) {
      const cause = log[e.by];
      expect(cause.t).toBe(e.t);
      const unit = scenario.units[e.device];
      const own =
        e.device === GEAR
          ? Object.keys(scenario.units)
          : [unit.leg, ...unit.doors, unit.uplock, unit.downlock];
      expect(own).toContain(cause.device);
    }
  });

  it('an arrival at a stop carries its speed, and only that', () => {
    for (const e of log.filter((l) => l.kind === 'motion')) {
      expect(e.speed > 0).toBe(['reached the stop', 'rebounds from the stop'].includes(e.cause));
    }
    expect(log.filter((l) => l.kind !== 'motion').every((l) => l.speed === 0)).toBe(true);
  });
});
