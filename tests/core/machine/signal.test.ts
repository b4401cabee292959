import { describe, expect, it } from 'vitest';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import type { DeviceDefinition } from '../../../packages/core/src/define/index.js';
import { coordinate, device, flat, rig, step } from '../../support/rig.js';

/** Makes at 0.5 rad. */
const watcher: DeviceDefinition = device('watcher', {
  links: { leg: { title: 'leg', shape: 'plain' } },
  modes: {
    apart: {
      title: 'apart',
      guards: [{ to: 'made', when: (d) => d.travel(0) - 0.5, cause: 'there', reads: ['leg'] }],
    },
    made: { title: 'made' },
  },
  signals: { made: { title: 'made', value: (d) => d.mode } },
});

/** Lights up for as long as it hears 1. */
const lamp: DeviceDefinition = device('lamp', {
  inputs: { wire: { title: 'wire', choices: ['off', 'on'], initial: 0 } },
  modes: {
    dark: {
      title: 'dark',
      guards: [{ to: 'lit', when: (d) => d.input(0) - 0.5, cause: 'told to', reads: ['wire'] }],
    },
    lit: {
      title: 'lit',
      guards: [{ to: 'dark', when: (d) => 0.5 - d.input(0), cause: 'told to', reads: ['wire'] }],
    },
  },
  signals: { lit: { title: 'lit', value: (d) => d.mode } },
});

describe('a wire', () => {
  const options = {
    parts: {
      // Declared against the direction of the wires: order must not matter.
      second: { is: lamp, signals: { wire: { device: 'first', signal: 'lit' } } },
      first: { is: lamp, signals: { wire: { device: 'eye', signal: 'made' } } },
      eye: { is: watcher, links: { leg: { to: 'leg' } } },
    },
    coordinates: { leg: coordinate({ moment: flat(1), high: 1 }) },
    duration: 3,
  } as const;

  it('carries a change on at the same instant, and the log says who told whom', () => {
    const { scenario, with: catalogues } = rig(options);
    const { log } = simulateWith(catalogues, scenario, { tolerance: 'fine' });
    const at = (name: string, to: string) => log.find((e) => e.device === name && e.to === to)!;
    // 0.5 rad at 1 rad/s2 takes 1 s.
    expect(at('eye', 'made').t).toBeCloseTo(1, 6);
    for (const name of ['first', 'second']) expect(at(name, 'lit').t).toBe(at('eye', 'made').t);
    expect(log[at('second', 'lit').by].device).toBe('first');
    expect(log[at('first', 'lit').by].device).toBe('eye');
  });

  it('is carried at the start too, before anything is logged', () => {
    const { scenario, with: catalogues } = rig({
      ...options,
      coordinates: { leg: coordinate({ moment: flat(0), initial: 0.8 }) },
    });
    const { log } = simulateWith(catalogues, scenario);
    const first = log.filter((e) => e.kind === 'mode');
    expect(first.map((e) => `${e.device} ${e.to}`)).toEqual([
      'second lit',
      'first lit',
      'eye made',
    ]);
    expect(first.every((e) => e.from === '')).toBe(true);
  });

  it('carries what the operator sets on a device that passes it on', () => {
    const handle = device('handle', {
      inputs: { lever: { title: 'lever', choices: ['down', 'up'], initial: 0 } },
      signals: { up: { title: 'up', value: (d) => d.input(0) } },
    });
    const { scenario, with: catalogues } = rig({
      parts: {
        handle: { is: handle },
        first: { is: lamp, signals: { wire: { device: 'handle', signal: 'up' } } },
      },
      steps: [step(0.25, 'handle', 'lever', 1), step(0.75, 'handle', 'lever', 0)],
      duration: 1,
    });
    const { log } = simulateWith(catalogues, scenario);
    expect(log.filter((e) => e.device === 'first').map((e) => [e.t, e.to])).toEqual([
      [0, 'dark'],
      [0.25, 'lit'],
      [0.75, 'dark'],
    ]);
  });
});
