import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import { tailored } from '../../packages/core/src/define/index.js';
import type { DeviceDefinition } from '../../packages/core/src/define/index.js';
import { declared, FakeFrame, partials, portKnob } from '../support/fake-frame.js';
import type { Knob } from '../support/fake-frame.js';
import {
  cornerParameters,
  randomParameters,
  seeded,
  SURROUNDINGS,
} from '../support/sample-parameters.js';

/** Step of the central difference per kind of knob: far below what matters, far above rounding. */
const STEP = { port: 0.02, state: 1e-7, link: 1e-8, rate: 1e-7 } as const;
/** A frame of the device at random but physical values, in a random mode. */
function randomFrame(device: DeviceDefinition, random: () => number): FakeFrame {
  const all = Object.values(SURROUNDINGS);
  const surroundings = all[Math.floor(random() * all.length)];
  const frame = new FakeFrame(device, randomParameters(device, random), surroundings);
  scramble(device, frame, random);
  return frame;
}

function scramble(device: DeviceDefinition, frame: FakeFrame, random: () => number): void {
  frame.mode = Math.floor(random() * Math.max(1, Object.keys(device.modes ?? {}).length));
  // Drops from 10 Pa to 30 MPa, as often small as large.
  const base = 10 ** (3 + 4 * random());
  const p = frame.pressures;
  const close = (i: number): boolean => p.subarray(0, i).some((q) => Math.abs(q - p[i]) < 10);
  for (let i = 0; i < p.length; i++)
    do p[i] = base + 10 ** (1 + 6.5 * random());
    while (close(i));
  frame.contents.forEach((_, i) => (frame.contents[i] = 10 ** (-7 + 5 * random())));
  frame.states.forEach((_, i) => (frame.states[i] = 2 * random() - 1));
  frame.travels.forEach(
    (_, i) => (frame.travels[i] = 10 ** (-4 + 4 * random()) * (random() < 0.3 ? -1 : 1)),
  );
  frame.rates.forEach((_, i) => (frame.rates[i] = 0.2 * random() - 0.1));
  Object.values(device.inputs ?? {}).forEach((input, i) => {
    frame.inputs[i] = input.choices ? Math.floor(random() * input.choices.length) : 500 * random();
  });
}

function slope(
  device: DeviceDefinition,
  frame: FakeFrame,
  of: string,
  knob: Knob,
): [number, number] {
  const at = frame.get(knob);
  // The ports that it depends on; others may stand near without a meaning.
  const flow = device.flows?.[of.replace('flow ', '')];
  const ports = names(device.ports);
  const near = flow === undefined ? ports : [flow.from, flow.to, ...(flow.also ?? [])];
  const gap = Math.min(
    ...ports
      .flatMap((name, i) => (near.includes(name) ? Math.abs(frame.pressures[i] - at) : []))
      .filter((distance) => distance > 0),
  );
  // Ports: wider where the drop is wide, or the rounding of the flow would show.
  const h = knob.kind === 'port' && gap < 1e9 ? Math.max(STEP.port, 1e-7 * gap) : STEP[knob.kind];
  frame.set(knob, at + h);
  const up = declared(device, frame)[of];
  const high = frame.get(knob);
  frame.set(knob, at - h);
  const down = declared(device, frame)[of];
  const width = high - frame.get(knob);
  frame.set(knob, at);
  const rounding = (4e-16 * (Math.abs(up) + Math.abs(down))) / width;
  return [(up - down) / width, rounding];
}

const names = (record: object | undefined): string[] => Object.keys(record ?? {});

/** Every device; where its parameters decide what it is, as a sample of them makes it. */
const devices = Object.values(components).map((d) =>
  d.tailor === undefined ? d : tailored(d, randomParameters(d, seeded(3))),
);

describe.each(devices)('$kind', (device) => {
  it('is listed under its own kind, with title, summary and source', () => {
    expect(components[device.kind].kind).toBe(device.kind);
    for (const text of [device.title, device.summary, device.source])
      expect(text.length).toBeGreaterThan(3);
  });

  it('gives every parameter a unit, a range and a reason', () => {
    for (const [name, p] of Object.entries(device.parameters)) {
      expect(p.title, name).not.toBe('');
      expect(p.why.length, name).toBeGreaterThan(3);
      if (p.type === undefined || p.type === 'number') {
        expect(p.quantity, name).toBeTruthy();
        expect(p.range[0], name).toBeLessThan(p.range[1]);
        if (p.default !== undefined) {
          expect(p.default, name).toBeGreaterThanOrEqual(p.range[0]);
          expect(p.default, name).toBeLessThanOrEqual(p.range[1]);
        }
      }
    }
  });

  it('names only what it declares', () => {
    const known = [
      ...names(device.ports),
      ...names(device.links),
      ...names(device.links).map((name) => `${name}.rate`),
      ...names(device.states),
    ];
    for (const flow of Object.values(device.flows ?? {})) {
      expect(names(device.ports)).toContain(flow.from);
      expect(names(device.ports)).toContain(flow.to);
      for (const also of flow.also ?? []) expect(known).toContain(also);
    }
    for (const force of Object.values(device.forces ?? {})) {
      expect(names(device.links)).toContain(force.link);
      for (const also of force.also ?? []) expect(known).toContain(also);
    }
    for (const chamber of device.chambers ?? []) {
      expect(names(device.ports)).toContain(chamber.port);
      expect(names(device.links)).toContain(chamber.link);
    }
    const readable = [...names(device.ports), ...names(device.links), ...names(device.inputs)];
    for (const mode of Object.values(device.modes ?? {})) {
      for (const guard of [...(mode.guards ?? []), ...(mode.timers ?? [])]) {
        expect(names(device.modes)).toContain(guard.to);
        expect(guard.cause).not.toBe('');
      }
      for (const guard of mode.guards ?? [])
        for (const name of guard.reads ?? []) expect(readable).toContain(name);
      if (mode.bounds) expect(names(device.links)).toContain(mode.bounds.link);
    }
  });

  it('can reach each of its modes from the first', () => {
    const modes = device.modes ?? {};
    const reached = new Set(names(modes).slice(0, 1));
    for (const name of reached)
      for (const { to } of [...(modes[name].guards ?? []), ...(modes[name].timers ?? [])])
        reached.add(to);
    expect([...reached].sort()).toEqual(names(modes).sort());
  });

  it('draws every port, on the edge of its symbol', () => {
    expect(names(device.symbol.ports).sort()).toEqual(names(device.ports).sort());
    const [width, height] = device.symbol.size;
    for (const [x, y] of Object.values(device.symbol.ports)) {
      expect(Math.abs(x)).toBeLessThanOrEqual(width / 2);
      expect(Math.abs(y)).toBeLessThanOrEqual(height / 2);
    }
  });

  it('has the partial derivatives that central differences give', () => {
    const random = seeded(7);
    for (let round = 0; round < 400; round++) {
      const frame = randomFrame(device, random);
      for (const { of, name, knob, value } of partials(device, frame)) {
        const [numeric, rounding] = slope(device, frame, of, knob);
        const allowed = 2e-5 * Math.max(Math.abs(value), Math.abs(numeric)) + 4 * rounding;
        expect(
          Math.abs(value - numeric),
          `${of} against ${name}, ${value} and ${numeric}`,
        ).toBeLessThanOrEqual(allowed);
      }
    }
  });

  it('depends on nothing that it does not declare', () => {
    const random = seeded(11);
    const knobs = (['port', 'state', 'link', 'rate'] as const).flatMap((kind) =>
      names(kind === 'port' ? device.ports : kind === 'state' ? device.states : device.links).map(
        (name, index) => ({ name: `${kind} ${name}`, kind, index }),
      ),
    );
    for (let round = 0; round < 40; round++) {
      const frame = randomFrame(device, random);
      const before = declared(device, frame);
      const allowed = new Set(
        partials(device, frame).map(({ of, knob }) => `${of} on ${knob.kind} ${knob.index}`),
      );
      for (const { name, ...knob } of knobs) {
        const at = frame.get(knob);
        frame.set(knob, at * 1.7 + 0.01);
        const after = declared(device, frame);
        frame.set(knob, at);
        const moved = Object.keys(before).filter((of) => before[of] !== after[of]);
        for (const of of moved)
          expect(allowed, name).toContain(`${of} on ${knob.kind} ${knob.index}`);
      }
    }
  });

  it('stays finite with each parameter at the ends of its range', () => {
    const random = seeded(13);
    for (const surroundings of Object.values(SURROUNDINGS))
      for (const p of cornerParameters(device, random)) {
        const frame = new FakeFrame(device, p, surroundings);
        for (let round = 0; round < 3; round++) {
          scramble(device, frame, random);
          if (round === 0) frame.pressures.fill(surroundings.ambient);
          if (round === 1) frame.pressures[0] = 0;
          const bad = [
            ...Object.entries(declared(device, frame)),
            ...partials(device, frame).map(
              ({ of, name, value }) => [`${of} by ${name}`, value] as const,
            ),
          ].filter(([, value]) => !Number.isFinite(value));
          expect(bad).toEqual([]);
          for (const port of Object.values(device.ports)) {
            const volume = typeof port.volume === 'function' ? port.volume(p) : port.volume;
            expect(volume).toBeGreaterThanOrEqual(0);
            expect(port.compliance?.(p, surroundings) ?? 0).toBeGreaterThanOrEqual(0);
          }
        }
      }
  });

  it('dissipates: oil runs from high to low pressure, and not at all between equal pressures', () => {
    const random = seeded(17);
    for (let round = 0; round < 200; round++) {
      const frame = randomFrame(device, random);
      declared(device, frame);
      Object.values(device.flows ?? {}).forEach((flow, i) => {
        if (flow.source || flow.inertial) return;
        const drop = frame.get(portKnob(device, flow.from)) - frame.get(portKnob(device, flow.to));
        expect(frame.flows[i].q * drop).toBeGreaterThanOrEqual(0);
      });
      frame.pressures.fill(5e6);
      declared(device, frame);
      Object.values(device.flows ?? {}).forEach((flow, i) => {
        if (flow.source) return;
        if (flow.inertial) {
          // Its flow runs on of itself, and slows down.
          const own = names(device.states).indexOf(flow.also![0]);
          expect(frame.flows[i].q * frame.stateRates[own].value).toBeLessThanOrEqual(0);
        } else expect(frame.flows[i].q).toBeCloseTo(0, 20);
      });
      for (const force of frame.forces) {
        expect(force.damping).toBeGreaterThanOrEqual(0);
        expect(force.friction).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('fires no guard of a mode just entered through another, at the same values', () => {
    const random = seeded(19);
    const modes = Object.values(device.modes ?? {});
    for (let round = 0; round < 300; round++) {
      const frame = randomFrame(device, random);
      // From any mode, transitions at frozen values must come to rest.
      let hops = 0;
      for (; hops < 6; hops++) {
        const guard = modes[frame.mode]?.guards?.find((g) => g.when(frame) > 0);
        if (guard === undefined) break;
        frame.mode = names(device.modes).indexOf(guard.to);
        modes[frame.mode].enter?.(frame, frame.states);
      }
      expect(hops).toBeLessThan(6);
    }
  });
});
