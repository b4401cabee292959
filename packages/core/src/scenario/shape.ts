/** Shapes: travel of links and curves of parameters, sampled while the file is read. */
import { kept } from '../define/kept.js';
import type { Shape } from '../define/parameter.js';
import { inUnit, sampleExpression } from '../quantity/index.js';
import type { WrittenShape } from './field-parameter.js';
import type { Finding } from './issue-list.js';
import type { Pivots, WrittenLink } from './schema-part.js';

/**
 * Samples of an expression or of two pivots over a mechanism's travel. With smooth interpolation
 * between them a 100 deg swing is good to far below a micrometre.
 */
export const SAMPLES = 65;
/** A jack shorter than this, m, is no jack. */
const SHORTEST_JACK = 1e-3;

export type Sampled =
  | { readonly shape: Shape }
  | { readonly at: readonly (string | number)[]; readonly finding: Finding };

export type Range = readonly [number, number];

/** Travel (m) against angle (rad) of a link, over the range of what it hangs on. */
export const sampleTravel = kept((link: WrittenLink, range: Range): Sampled => {
  const given = [link.pivots, link.table, link.expression].filter(
    (way) => way !== undefined,
  ).length;
  if (given !== 1) {
    const message =
      given === 0
        ? 'the travel of this link is missing'
        : 'the travel of this link is given more than once';
    return { at: [], finding: { message, allowed: 'one of pivots, table, expression' } };
  }
  if (link.pivots !== undefined) return samplePivots(link.pivots, range);
  if (link.table !== undefined) return covering(link.table, range);
  const text = link.expression ?? '';
  const sampled = sampleExpression(text, 'angle', range, SAMPLES);
  if ('problem' in sampled)
    return {
      at: ['expression'],
      finding: {
        message: sampled.problem,
        found: text,
        allowed: sampled.allowed,
        hint: sampled.hint,
      },
    };
  const below = sampled.shape.y.findIndex((y) => y < -1e-9 || y > 20);
  if (below === -1) return sampled;
  return {
    at: ['expression'],
    finding: {
      message: `the travel at ${degrees(sampled.shape.x[below])} is outside its range`,
      found: `${Number(sampled.shape.y[below].toPrecision(4))} m`,
      allowed: '0 m to 20 m: add a constant so that it is never negative',
    },
  };
});

/**
 * Travel of a jack between two pivots by the law of cosines, zero at its shortest (or at the closed
 * length given).
 */
function samplePivots(p: Pivots, [low, high]: Range): Sampled {
  const turn = p.sense === 'opening' ? 1 : -1;
  const last = p['at-low'] + turn * (high - low);
  // At 0 and 180 deg the jack points at the pivot: no arm, and past it the travel turns back.
  if (p['at-low'] <= 0 || p['at-low'] >= Math.PI || last <= 0 || last >= Math.PI) {
    return {
      at: ['pivots', 'at-low'],
      finding: {
        message: `the jack passes over its dead centre: the angle between its ends runs from ${degrees(p['at-low'])} to ${degrees(last)}`,
        found: degrees(p['at-low']),
        allowed: 'an angle that stays between 0 deg and 180 deg over the whole travel',
        hint: `the mechanism turns ${degrees(high - low)}; is the sense ${p.sense} right?`,
      },
    };
  }
  const x: number[] = [];
  const length: number[] = [];
  for (let i = 0; i < SAMPLES; i++) {
    const angle = i === SAMPLES - 1 ? high : low + ((high - low) * i) / (SAMPLES - 1);
    x.push(angle);
    const between = p['at-low'] + turn * (angle - low);
    length.push(
      Math.sqrt(
        Math.max(0, p.fixed ** 2 + p.moving ** 2 - 2 * p.fixed * p.moving * Math.cos(between)),
      ),
    );
  }
  const least = Math.min(...length);
  if (least < SHORTEST_JACK) {
    return {
      at: ['pivots'],
      finding: {
        message: 'the two ends of the jack meet',
        allowed: 'ends that stay apart over the whole travel',
      },
    };
  }
  const closed = p.shortest ?? least;
  if (closed > least + 1e-9) {
    return {
      at: ['pivots', 'shortest'],
      finding: {
        message: 'the closed length is more than the jack has room for',
        found: inUnit(closed, 'mm'),
        allowed: `up to ${inUnit(least, 'mm')}, its shortest in this travel`,
      },
    };
  }
  return { shape: { x, y: length.map((l) => Math.max(0, l - closed)) } };
}

/** A table as it is, if it covers the travel. */
export function covering(table: Shape, [low, high]: Range): Sampled {
  const slack = 1e-6;
  const first = table.x[0];
  const last = table.x[table.x.length - 1];
  if (first <= low + slack && last >= high - slack) return { shape: table };
  return {
    at: ['table'],
    finding: {
      message: 'the table does not cover the travel of the mechanism',
      found: `${degrees(first)} to ${degrees(last)}`,
      allowed: `at least ${degrees(low)} to ${degrees(high)}`,
    },
  };
}

/** A parameter's curve. `range` = where an expression is sampled when it does not say itself. */
export function sampleShape(
  written: WrittenShape,
  variable: string,
  range: Range | undefined,
  bounds: Range,
): Sampled {
  if ('table' in written) return { shape: written.table };
  const from = written.from ?? range?.[0];
  const to = written.to ?? range?.[1];
  if (from === undefined || to === undefined) {
    return {
      at: [],
      finding: {
        message: 'the range of this expression is missing',
        allowed: 'from: and to: beside expression:',
      },
    };
  }
  const sampled = sampleExpression(written.expression, variable, [from, to], SAMPLES);
  if ('problem' in sampled) {
    return {
      at: ['expression'],
      finding: {
        message: sampled.problem,
        found: written.expression,
        allowed: sampled.allowed,
        hint: sampled.hint,
      },
    };
  }
  const [low, high] = bounds;
  const off = sampled.shape.y.findIndex((y) => y < low || y > high);
  if (off === -1) return sampled;
  return {
    at: ['expression'],
    finding: {
      message: `the value at ${variable} = ${Number(sampled.shape.x[off].toPrecision(4))} is outside its range`,
      found: String(Number(sampled.shape.y[off].toPrecision(4))),
      allowed: `${low} to ${high} in SI units`,
    },
  };
}

export function degrees(angle: number): string {
  return `${Number(((angle * 180) / Math.PI).toFixed(1))} deg`;
}
