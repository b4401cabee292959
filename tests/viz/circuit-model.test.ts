/** The circuit without a page: what is drawn where, and what the run says of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { catalogues, readScenario, simulate } from '@wheelwell/core';
import type { Run, Scenario } from '@wheelwell/core';
import { heat } from '../../packages/viz/src/drawing/heat.js';
import { colourAt, pressureScale, widthAt } from '../../packages/viz/src/drawing/pressure-scale.js';
import { layOut } from '../../packages/viz/src/drawing/circuit/layout.js';
import type { Layout } from '../../packages/viz/src/drawing/circuit/layout.js';
import { drawingOf, turnsOf } from '../../packages/viz/src/drawing/symbol/index.js';
import { circuitLayout } from '../../packages/viz/src/model/circuit.js';
import {
  channelsNeeded,
  flowsAlong,
  gaugeAt,
  standing,
} from '../../packages/viz/src/model/circuit-now.js';
import type { PartFacts } from '../../packages/viz/src/worker/circuit-message.js';
import type { Picture, Trace } from '../../packages/viz/src/worker/message.js';
import { picture } from '../../packages/viz/src/worker/picture.js';
import { oneLeg } from '../support/one-leg.js';

const ROOT = fileURLToPath(new URL('../../scenarios', import.meta.url));
const DEMOS = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.yaml'))
  .map((path) => scenarioOf(readFileSync(join(ROOT, path), 'utf8'), path));

function scenarioOf(text: string, file = 'test.yaml'): Scenario {
  const { scenario, issues } = readScenario(text, { file });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
}

function shown(run: Run): Picture {
  return picture(0, run.scenario, run, 0);
}

function tracesOf(run: Run, made: Picture): Map<string, Trace> {
  const names = channelsNeeded(made);
  return new Map(
    [...run.look(names)].map(([name, { t, v }]) => [
      name,
      { run: 0, fine: false, t: Float32Array.from(t), v: Float32Array.from(v) },
    ]),
  );
}

type Box = readonly [number, number, number, number];

const moved = ([l, t, r, b]: Box, x: number, y: number): Box => [l + x, t + y, r + x, b + y];
const meet = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Symbols and words of a layout as boxes, with whose they are. */
function boxes({ parts, headings }: Layout): { of: string; box: Box }[] {
  return [
    ...parts.flatMap(({ body, x, y }) => [
      { of: body.part.name, box: moved(body.box, x, y) },
      { of: `${body.part.name}: name`, box: moved(body.label.box, x, y) },
    ]),
    ...headings.map(({ text, at: [x, y] }) => ({
      of: `heading ${text}`,
      box: [x, y - 1, x + text.length, y + 1] as Box,
    })),
  ];
}

/** Straight stretches of line. */
function stretchesOf({ pieces }: Layout): { node: string; box: Box; level: boolean }[] {
  return pieces.flatMap(({ node, points }) =>
    points.slice(1).map((b, i) => {
      const a = points[i];
      return {
        node,
        level: a[1] === b[1],
        box: [
          Math.min(a[0], b[0]),
          Math.min(a[1], b[1]),
          Math.max(a[0], b[0]),
          Math.max(a[1], b[1]),
        ] as Box,
      };
    }),
  );
}

/** Lines that lead through a symbol or a word, but for the lead to a port of its own. */
function throughOthers(layout: Layout): string[] {
  const all = boxes(layout);
  const ports = new Set(
    layout.parts.flatMap(({ body, x, y }) =>
      body.ports.map((p) => `${body.part.name} ${p.node} ${p.at[0] + x} ${p.at[1] + y}`),
    ),
  );
  return stretchesOf(layout).flatMap(({ node, box: [l, t, r, b] }) =>
    all
      .filter((each) => meet([l - 0.05, t - 0.05, r + 0.05, b + 0.05], each.box))
      .filter(
        ({ of }) => !ports.has(`${of} ${node} ${l} ${t}`) && !ports.has(`${of} ${node} ${r} ${b}`),
      )
      .map(({ of }) => `${node} through ${of}`),
  );
}

/** Lines of one node that lie on those of another. */
function alongOthers(layout: Layout): string[] {
  const lines = stretchesOf(layout);
  return lines.flatMap((a, i) =>
    lines
      .slice(i + 1)
      .filter((b) => b.node !== a.node && b.level === a.level)
      .filter((b) => {
        const [k, j] = a.level ? [0, 1] : [1, 0];
        return a.box[j] === b.box[j] && a.box[k] < b.box[k + 2] && b.box[k] < a.box[k + 2];
      })
      .map((b) => `${a.node} along ${b.node}`),
  );
}

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

  it('tells every line its flow: what leaves one end arrives at the other', () => {
    const series = tracesOf(run, made);
    const time = 0.1 * run.duration;
    const flows = flowsAlong(made, series, layout.pieces, time);
    // A firm line between a device with one way and the next part: the same flow on both sides of it.
    const tubes = made.circuit.parts.filter((p) => p.kind === 'line' && p.ports.length === 2);
    let moving = 0;
    for (const tube of tubes) {
      const through = run.look([`${tube.name}.through`]).get(`${tube.name}.through`);
      const q = at(through?.t ?? [], through?.v ?? [], time);
      const inlet = layout.pieces.findIndex(
        (p) =>
          p.node === tube.ports[0].node && p.beyond.length === 1 && p.beyond[0].part === tube.name,
      );
      if (inlet < 0) continue;
      expect(flows[inlet]).toBeCloseTo(q, 5);
      if (Math.abs(q) > 1e-6) moving += 1;
    }
    expect(moving + tubes.length).toBeGreaterThan(0);
  });
});

function at(t: ArrayLike<number>, v: ArrayLike<number>, time: number): number {
  const i = Math.max(
    1,
    Array.from(t).findIndex((each) => each > time),
  );
  return v[i - 1] + ((v[i] - v[i - 1]) * (time - t[i - 1])) / (t[i] - t[i - 1]);
}

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

describe('the scale of pressure', () => {
  it('goes from dark and thin to light and wide, in equal steps of lightness', () => {
    const scale = pressureScale(2.0e7, 1.450377e-4);
    expect(scale.top).toBeGreaterThanOrEqual(2.0e7);
    expect(scale.share(-1e5)).toBe(0);
    expect(scale.share(scale.top)).toBe(1);
    expect(colourAt(scale.share(scale.top / 2))).toBe(heat(0.5));
    expect(widthAt(1)).toBeGreaterThan(2 * widthAt(0));
    expect(scale.ticks.at(-1)?.share).toBe(1);
  });
});

describe('what the run says', () => {
  const scenario = DEMOS.find((s) => s.file.includes('hedgelark'))!;
  const run = simulate(scenario);
  const made = shown(run);
  const series = tracesOf(run, made);

  it('gives a node its pressure above that outside', () => {
    const { t, v } = run.look(['pressure.pressure']).get('pressure.pressure')!;
    const i = Math.floor(t.length / 3);
    // Times and values are sent in single precision.
    expect(gaugeAt(made.circuit, series, 'pressure', t[i]) / (v[i] - scenario.ambient)).toBeCloseTo(
      1,
      2,
    );
  });

  it('puts a piston where its rod is, a spool where its valve has it, a plunger valve by its plunger', () => {
    const part = (name: string) => made.circuit.parts.find((p) => p.name === name)!;
    const jack = scenario.components['left-leg-jack'].parameters.stroke as number;
    const rod = run.look(['left-leg-jack.rod']).get('left-leg-jack.rod')!;
    for (const share of [0, 0.1, 0.15, 0.2, 0.5]) {
      const time = share * run.duration;
      const x = at(rod.t, rod.v, time);
      expect(standing(made, series, part('left-leg-jack'), time)).toBeCloseTo(
        Math.min(Math.max(x / jack, 0), 1),
        3,
      );
    }
    const first = run.log.find(
      (e) => e.device === 'selector' && e.kind === 'mode' && e.to === 'up',
    )!;
    expect(standing(made, series, part('selector'), 0)).toBe(
      run.look(['selector.spool']).get('selector.spool')!.v[0],
    );
    expect(standing(made, series, part('selector'), first.t + 0.05)).toBeCloseTo(1, 3);
    const valve = run.log.find((e) => e.device === 'left-door-close-valve' && e.to === 'open')!;
    expect(standing(made, series, part('left-door-close-valve'), 0)).toBe(0);
    expect(standing(made, series, part('left-door-close-valve'), valve.t + 0.05)).toBe(1);
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
