/** The circuits of the demos without a page, and what is looked for in any of them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readScenario } from '@wheelwell/core';
import type { Run, Scenario } from '@wheelwell/core';
import type { Layout } from '../../packages/viz/src/drawing/circuit/layout.js';
import { channelsNeeded } from '../../packages/viz/src/model/circuit-now.js';
import type { Picture, Trace } from '../../packages/viz/src/worker/message.js';
import { picture } from '../../packages/viz/src/worker/picture.js';

const ROOT = fileURLToPath(new URL('../../scenarios', import.meta.url));
export const DEMOS = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.yaml'))
  .map((path): [string, string] => [path, readFileSync(join(ROOT, path), 'utf8')])
  // Lessons and observation sheets lie beside the aircraft.
  .filter(([, text]) => /^wheelwell:/m.test(text))
  .map(([path, text]) => scenarioOf(text, path));

function scenarioOf(text: string, file: string): Scenario {
  const { scenario, issues } = readScenario(text, { file });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
}

export function shown(run: Run): Picture {
  return picture(0, run.scenario, run, 0, {}, false);
}

export function tracesOf(run: Run, made: Picture): Map<string, Trace> {
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
export const meet = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Symbols and words of a layout as boxes, with whose they are. */
export function boxes({ parts, headings }: Layout): { of: string; box: Box }[] {
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
export function stretchesOf({ pieces }: Layout): { node: string; box: Box; level: boolean }[] {
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
export function throughOthers(layout: Layout): string[] {
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
export function alongOthers(layout: Layout): string[] {
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

/** A series at a time, straight between its points. */
export function at(t: ArrayLike<number>, v: ArrayLike<number>, time: number): number {
  const i = Math.max(
    1,
    Array.from(t).findIndex((each) => each > time),
  );
  return v[i - 1] + ((v[i] - v[i - 1]) * (time - t[i - 1])) / (t[i] - t[i - 1]);
}
