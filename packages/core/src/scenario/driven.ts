/** Mechanisms that follow another through a linkage, a chain or a table: the angle they have at each of its angles. */
import type { DrivenEntry } from '../define/scenario.js';
import type { Shape } from '../define/parameter.js';
import { kept } from '../define/kept.js';
import { sampleExpression } from '../quantity/index.js';
import { driverOf, type Draft } from './draft.js';
import { wordList, type Finding, type IssueList } from './issue-list.js';
import { LINKAGE_SAMPLES, turnRocker } from './linkage.js';
import type { ReadMechanism } from './parameters.js';
import type { WrittenDriven, WrittenLinkage } from './schema-driven.js';
import { covering, degrees, type Range, type Sampled } from './shape.js';
import { tellDriven, unknownName } from './world.js';

const WAYS = ['table', 'expression', 'ratio', 'linkage'] as const;
/** Members of a chain of drivers; no aircraft has as many. */
const LONGEST_CHAIN = 20;
/** Rounding of figures as people write them, rad. */
const SLACK = 1e-5;

/** What drives each driven mechanism, with its angle over the driver's whole travel, as far as it can be known. */
export function readDriven(
  draft: Draft,
  mechanisms: ReadonlyMap<string, ReadMechanism>,
  issues: IssueList,
): Map<string, DrivenEntry> {
  const entries = new Map<string, DrivenEntry>();
  for (const [name, { raw, frame }] of draft.mechanisms) {
    const path = ['mechanisms', name, 'driven'];
    const by = driverOf(draft, name);
    if (by === undefined) continue;
    if (!draft.mechanisms.has(by)) {
      unknownName(issues, [...path, 'by'], 'mechanism', by, draft.mechanisms.keys());
      continue;
    }
    const chain = chainFrom(draft, name);
    const circle = chain[chain.length - 1] === name;
    if (circle || chain.length > LONGEST_CHAIN) {
      issues.add([...path, 'by'], {
        message: circle
          ? `in the end this mechanism drives itself: ${chain.join(' by ')}`
          : 'too many mechanisms drive one another before this one',
        found: by,
        allowed: `a chain of up to ${LONGEST_CHAIN} that begins with a mechanism of its own motion`,
      });
      continue;
    }
    if (raw.initial !== undefined) tellDriven(draft, issues, name, ['mechanisms', name, 'initial']);
    const range = mechanisms.get(by)?.range;
    const own = mechanisms.get(name)?.range;
    const written = frame?.driven;
    if (written === undefined || range === undefined || own === undefined) continue;
    const sampled = sampleAngle(written, range, own);
    if ('shape' in sampled) entries.set(name, { by, angle: sampled.shape });
    else issues.add([...path, ...sampled.at], sampled.finding);
  }
  return entries;
}

/** From a mechanism back to what drives it, as far as there is any use in going. */
function chainFrom(draft: Draft, name: string): readonly string[] {
  const chain = [name];
  let by = driverOf(draft, name);
  while (by !== undefined && chain.length <= LONGEST_CHAIN) {
    chain.push(by);
    // A circle further on has its own issues.
    if (chain.indexOf(by) < chain.length - 1) break;
    by = driverOf(draft, by);
  }
  return chain;
}

/** True where a mechanism's angle always rises, or always falls, as the one that has its own motion rises. */
export function turnsOneWay(entries: ReadonlyMap<string, DrivenEntry>, name: string): boolean {
  for (let entry = entries.get(name); entry !== undefined; entry = entries.get(entry.by)) {
    const { y } = entry.angle;
    const sense = Math.sign(y[1] - y[0]);
    if (sense === 0 || y.some((angle, i) => i > 0 && Math.sign(angle - y[i - 1]) !== sense))
      return false;
  }
  return true;
}

const sampleAngle = kept((written: WrittenDriven, range: Range, own: Range): Sampled => {
  const given = WAYS.filter((way) => written[way] !== undefined);
  if (given.length !== 1) {
    const message =
      given.length === 0
        ? 'how this mechanism follows its driver is missing'
        : 'how this mechanism follows its driver is given more than once';
    return { at: [], finding: { message, allowed: `one of ${wordList(WAYS)}` } };
  }
  const [way] = given;
  if (written['at-low'] !== undefined && way !== 'ratio' && way !== 'linkage') {
    return {
      at: ['at-low'],
      finding: {
        message: `the ${way} says already where it is at the low end of its driver`,
        found: degrees(written['at-low']),
        allowed: 'at-low beside ratio or linkage only',
      },
    };
  }
  const sampled = follow(written, way, range, own);
  return 'shape' in sampled ? within(sampled.shape, way, own) : sampled;
});

function follow(
  written: WrittenDriven,
  way: (typeof WAYS)[number],
  [low, high]: Range,
  own: Range,
): Sampled {
  const { table, expression = '', ratio = 0, linkage } = written;
  if (table !== undefined) return covering(table, [low, high]);
  if (linkage !== undefined) {
    const turned = sampleLinkage(linkage, [low, high]);
    return 'shape' in turned ? { shape: placed(turned.shape, written['at-low'], own) } : turned;
  }
  if (way === 'ratio') {
    if (ratio === 0)
      return wrong(['ratio'], { message: 'with this ratio it never moves', found: '0' });
    const turn = { x: [low, high], y: [0, ratio * (high - low)] };
    return { shape: placed(turn, written['at-low'], own) };
  }
  const sampled = sampleExpression(expression, 'angle', [low, high], LINKAGE_SAMPLES);
  if (!('problem' in sampled)) return sampled;
  const { problem: message, allowed, hint } = sampled;
  return wrong(['expression'], { message, found: expression, allowed, hint });
}

function sampleLinkage(written: WrittenLinkage, [low, high]: Range): Sampled {
  const { ground, crank, coupler, rocker, crossed = false, sense } = written;
  const bars = { ground, crank, coupler, rocker, crossed, crankAtLow: written['crank-at-low'] };
  const turned = turnRocker(bars, low, high);
  if ('stuckAt' in turned) {
    return wrong(['linkage'], {
      message: `the bars of this linkage cannot close with the driver at ${degrees(turned.stuckAt)}`,
      allowed: `bars that close over the whole travel of the driver, ${degrees(low)} to ${degrees(high)}`,
      hint: 'lengthen the coupler, shorten the crank, or look at crank-at-low',
    });
  }
  if (sense === 'opening') return turned;
  return { shape: { x: turned.shape.x, y: turned.shape.y.map((turn) => -turn) } };
}

/** Turns counted from the driver's low end, set on the mechanism's own scale. */
function placed({ x, y }: Shape, atLow: number | undefined, [low, high]: Range): Shape {
  const start = atLow ?? (y[y.length - 1] < 0 ? high : low);
  return { x, y: y.map((turn) => start + turn) };
}

/** The angles, held to the mechanism's own travel. */
function within({ x, y }: Shape, way: (typeof WAYS)[number], [low, high]: Range): Sampled {
  const off = y.findIndex((angle) => angle < low - SLACK || angle > high + SLACK);
  if (off === -1)
    return { shape: { x, y: y.map((angle) => Math.min(high, Math.max(low, angle))) } };
  return wrong(way === 'table' ? [way, off, 1] : [way], {
    message: `with its driver at ${degrees(x[off])} this mechanism would be outside its own travel`,
    found: degrees(y[off]),
    allowed: `${degrees(low)} to ${degrees(high)}`,
    hint:
      way === 'table' || way === 'expression'
        ? ''
        : `look at ${way === 'ratio' ? 'ratio' : 'the bars, sense'} and at-low`,
  });
}

function wrong(at: readonly (string | number)[], finding: Finding): Sampled {
  return { at, finding };
}
