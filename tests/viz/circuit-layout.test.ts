/** How the circuit is laid out: everything there, nothing on anything else, the same picture each time. */
import { describe, expect, it } from 'vitest';
import { catalogues, simulate } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import { layOut } from '../../packages/viz/src/drawing/circuit/layout.js';
import type { Layout } from '../../packages/viz/src/drawing/circuit/layout.js';
import { drawingOf, turnsOf } from '../../packages/viz/src/drawing/symbol/index.js';
import { circuitLayout } from '../../packages/viz/src/model/circuit.js';
import type { PartFacts } from '../../packages/viz/src/worker/circuit-message.js';
import type { Picture } from '../../packages/viz/src/worker/message.js';
import { oneLeg } from '../support/one-leg.js';
import {
  alongOthers,
  boxes,
  DEMOS,
  meet,
  shown,
  stretchesOf,
  throughOthers,
} from './circuit-sheet.js';

describe.each(DEMOS.map((s): [string, Scenario] => [s.file, s]))('%s', (_, scenario) => {
  const run = simulate(scenario);
  const made = shown(run);
  const layout = circuitLayout(made);
  const [, second] = Object.keys(scenario.cards);

  it('draws every device that oil or gas goes to, and no other', () => {
    const piped = Object.entries(scenario.components)
      .filter(([, c]) => Object.keys(c.ports).length > 0)
      .map(([name]) => name);
    expect(layout.parts.map((p) => p.body.part.name).sort()).toEqual(piped.sort());
  });

  it('is the same whatever the card', () => {
    const other = shown(simulate(scenario, { card: second }));
    expect(circuitLayout(other)).toEqual(layout);
  });

  it('lays symbols and words clear of each other', () => {
    const all = boxes(layout);
    const wrong = all.flatMap((a, i) =>
      all.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`${a.of} on ${b.of}`] : [])),
    );
    expect(wrong).toEqual([]);
  });

  it('leads lines at right angles, past every symbol and word, and never along another', () => {
    const slant = stretchesOf(layout).filter(({ box: [l, t, r, b] }) => l !== r && t !== b);
    expect(slant).toEqual([]);
    expect(throughOthers(layout)).toEqual([]);
    expect(alongOthers(layout)).toEqual([]);
  });

  it('joins all that shares a node, and nothing else', () => {
    const key = ([x, y]: readonly number[]): string => `${x},${y}`;
    const found = new Map<string, Set<string>>();
    for (const node of new Set(layout.pieces.map((p) => p.node))) {
      const own = layout.pieces.filter((p) => p.node === node).map((p) => p.points.map(key));
      const [first = []] = own;
      const reached = new Set(first);
      let left = own.slice(1);
      for (let before = -1; before !== left.length;) {
        before = left.length;
        left = left.filter((points) => {
          // Pieces meet at their ends.
          const joined = [points[0], points[points.length - 1]].some((p) => reached.has(p));
          if (joined) points.forEach((p) => reached.add(p));
          return !joined;
        });
      }
      expect(left, node).toEqual([]);
      found.set(node, reached);
    }
    for (const { body, x, y } of layout.parts)
      for (const port of body.ports) {
        const others = layout.parts.some(
          (p) => p.body !== body && p.body.ports.some((q) => q.node === port.node),
        );
        if (others)
          expect(found.get(port.node)?.has(key([port.at[0] + x, port.at[1] + y])), port.node).toBe(
            true,
          );
      }
  });

  it('puts the left unit left, the right one right, and what serves all below', () => {
    const middle = (side: string): number => {
      const names = Object.values(scenario.units)
        .filter((u) => u.side === side || (side === 'middle' && !/left|right/.test(u.side)))
        .flatMap((u) => u.actuators);
      const at = layout.parts.filter((p) => names.includes(p.body.part.name)).map((p) => p.x);
      return at.reduce((s, x) => s + x, 0) / at.length;
    };
    expect(middle('left')).toBeLessThan(middle('middle'));
    expect(middle('middle')).toBeLessThan(middle('right'));
    const jacks = layout.parts.filter((p) => run.role(p.body.part.name) === 'actuator');
    const pumps = layout.parts.filter((p) => run.role(p.body.part.name) === 'supply');
    const lowest = Math.max(...jacks.map((p) => p.y));
    for (const pump of pumps) expect(pump.y).toBeGreaterThan(lowest);
  });
});

describe('a place in the scenario', () => {
  const [first] = DEMOS;
  it('fixes where a part is drawn', () => {
    const name = Object.keys(first.components)[0];
    const components = {
      ...first.components,
      [name]: { ...first.components[name], place: [-30, 12] as const },
    };
    const layout = circuitLayout(shown(simulate({ ...first, components })));
    const put = layout.parts.find((p) => p.body.part.name === name);
    expect([put?.x, put?.y]).toEqual([-30, -12]);
  });
});

describe('symbols', () => {
  it('there is one of its own for every kind that oil or gas goes to', () => {
    const plain = drawingOf('other', '', []);
    for (const { kind, symbol, ports } of Object.values(catalogues.components)) {
      if (Object.keys(ports).length === 0) continue;
      const drawing = drawingOf(symbol.name, kind, []);
      expect(drawing, kind).not.toBe(plain);
      expect(drawing.shapes.length, kind).toBeGreaterThan(1);
      expect(turnsOf(symbol.name)).toContain(0);
    }
  });

  it('tell the neutrals of selectors, the rest of solenoid valves and cushions apart', () => {
    const paths = (name: Parameters<typeof drawingOf>[0], traits: readonly string[]): string =>
      drawingOf(name, '', traits)
        .shapes.map((s) => s.d)
        .join(' ');
    const neutrals = ['closed', 'open', 'lines-to-return'].map((c) => paths('selector', [c]));
    expect(new Set(neutrals).size).toBe(3);
    expect(paths('solenoid-valve', ['open'])).not.toBe(paths('solenoid-valve', ['closed']));
    expect(paths('cylinder', ['head'])).not.toBe(paths('cylinder', []));
  });
});

it('the layout does not depend on the order in which parts are looked at again', () => {
  const made = shown(simulate(DEMOS[0]));
  const { parts } = circuitLayout(made);
  const again = layOut(
    parts.map((p) => p.body.part).sort((a, b) => order(made, a.name) - order(made, b.name)),
    made.units.map(({ name, side }) => ({ name, side })),
  );
  const places = (l: Layout): string[] =>
    l.parts.map((p) => `${p.body.part.name} ${p.x} ${p.y} ${p.body.turn}`).sort();
  expect(places(again)).toEqual(places(circuitLayout(made)));
});

const order = (made: Picture, name: string): number =>
  made.circuit.parts.findIndex((p) => p.name === name);

describe('circuits that nobody has drawn before', () => {
  const kinds = Object.values(catalogues.components).filter((k) => Object.keys(k.ports).length > 0);

  /** Some devices of any kind, joined at random. */
  function madeUp(seed: number): Picture {
    const random = seeded(seed);
    const pick = (n: number): number => Math.floor(random() * n);
    const parts = Array.from({ length: 14 }, (_, i): PartFacts => {
      const kind = kinds[pick(kinds.length)];
      return {
        name: `${i % 3 === 0 ? 'left' : 'any'}-part-${i}`,
        kind: kind.kind,
        title: kind.title,
        role: kind.role,
        symbol: kind.symbol.name,
        size: kind.symbol.size,
        traits: [],
        unit: i % 3 === 0 ? 'left' : i % 3 === 1 && i > 6 ? 'right' : '',
        parameters: [],
        ports: Object.entries(kind.ports)
          .filter(([name, p]) => p.optional !== true && name !== 'outside')
          .map(([name, p]) => ({
            name,
            title: p.title,
            node: `node-${pick(9)}`,
            at: kind.symbol.ports[name],
            into: [],
            outOf: [],
            chambers: [],
          }))
          .filter((p, j, all) => all.findIndex((o) => o.node === p.node) === j),
      };
    });
    const nodes = Array.from({ length: 9 }, (_, i) => ({
      name: `node-${i}`,
      tank: i === 0,
      gas: i === 1,
    }));
    const units = ['left', 'right'].map((name) => ({ name, side: name }));
    return { circuit: { ambient: 1e5, parts, nodes }, units } as unknown as Picture;
  }

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('are drawn without anything on anything else (%i)', (seed) => {
    const layout = circuitLayout(madeUp(seed));
    const all = boxes(layout);
    const wrong = all.flatMap((a, i) =>
      all.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`${a.of} on ${b.of}`] : [])),
    );
    expect(wrong).toEqual([]);
    expect(throughOthers(layout)).toEqual([]);
    expect(alongOthers(layout)).toEqual([]);
  });
});

describe('an aircraft of another shape', () => {
  it('has its circuit: one leg, one unit', () => {
    const made = shown(simulate(oneLeg()));
    const layout = circuitLayout(made);
    expect(layout.parts.length).toBe(made.circuit.parts.length);
    expect(throughOthers(layout)).toEqual([]);
  });

  it('without oil has none', () => {
    const made = shown(simulate(DEMOS[0]));
    const layout = circuitLayout({ ...made, circuit: { ...made.circuit, parts: [], nodes: [] } });
    expect(layout.parts).toEqual([]);
    expect(layout.extent.every(Number.isFinite)).toBe(true);
  });
});

/** Numbers 0..1 that are the same each time (mulberry32). */
function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
