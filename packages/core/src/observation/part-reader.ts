import type * as z from 'zod/mini';
import type { Scenario } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { check } from '../scenario/check.js';
import { isMap } from '../scenario/draft.js';
import { shown, wordList, type IssueList } from '../scenario/issue-list.js';
import { LONGEST_NAME, NAME, NAME_ALLOWED } from '../scenario/names.js';
import type { Plain } from '../scenario/parse.js';
import { WHOLE_GEAR } from './sheet.js';

export type Path = readonly (string | number)[];

type Values<T extends z.core.$ZodShape> = { [K in keyof T]?: z.output<T[K]> };

/** Reads maps field by field, so that a wrong one does not take the others with it, and knows the scenario's names. */
export class PartReader {
  private units: readonly string[] | undefined;
  private nodes: readonly string[] | undefined;
  private devices: readonly string[] | undefined;
  private parts: readonly string[] | undefined;

  constructor(
    protected readonly issues: IssueList,
    private readonly scenario: Scenario | undefined,
  ) {}

  /** Whether the sheet belongs to the scenario; names are looked for only if it does. */
  protected hold(aircraft: string | undefined): void {
    const { scenario } = this;
    if (scenario === undefined) return;
    const same = (a: string, b: string): boolean =>
      a.trim().toLowerCase() === b.trim().toLowerCase();
    if (aircraft !== undefined && !same(aircraft, scenario.title)) {
      this.issues.add(['aircraft'], {
        message: 'this sheet is for another aircraft',
        found: aircraft,
        allowed: scenario.title,
        hint: 'open the scenario it was filled in for',
      });
      return;
    }
    this.units = [...Object.keys(scenario.units), WHOLE_GEAR];
    const ports = Object.values(scenario.components).flatMap((c) => Object.values(c.ports));
    this.nodes = [...new Set(ports)];
    this.devices = Object.keys(scenario.components);
    const own = [...this.devices, ...Object.keys(scenario.mechanisms)];
    this.parts = [...new Set([...own, ...this.units, 'fluid'])];
  }

  /** The fields of a map, each by itself: one that is wrong does not take the others with it. */
  protected values<T extends z.core.$ZodShape>(
    shape: T,
    raw: Plain,
    path: Path,
    more: readonly string[] = [],
  ): Values<T> {
    const found: Record<string, unknown> = {};
    for (const [key, value] of this.entries(raw, path)) {
      if (Object.hasOwn(shape, key)) {
        const read = check(shape[key] as z.ZodMiniType, value, [...path, key], this.issues);
        if (read !== undefined) found[key] = read;
      } else if (!more.includes(key)) {
        const known = [...Object.keys(shape), ...more];
        this.issues.addKey([...path, key], {
          message: `"${key.slice(0, 60)}" is not known here`,
          allowed: wordList(known, 40),
          hint: didYouMean(key, known),
        });
      }
    }
    return found as Values<T>;
  }

  /** A map of units or nodes; what is empty is left out. */
  protected named<T>(
    raw: Plain | undefined,
    path: Path,
    what: 'unit' | 'node' | 'device',
    read: (raw: Plain, path: Path) => T | undefined,
  ): Record<string, T> {
    const found: Record<string, T> = {};
    for (const [name, value] of this.entries(raw, path)) {
      const at = [...path, name];
      if (name.length > LONGEST_NAME || !NAME.test(name)) {
        this.issues.addKey(at, {
          message: 'this is not a name',
          found: name,
          allowed: NAME_ALLOWED,
        });
        continue;
      }
      if (what === 'unit') this.unit(name, at, true);
      else if (what === 'node') this.known(name, at, true, 'point of the system', this.nodes);
      else this.known(name, at, true, 'device', this.devices);
      const values = read(value, at);
      if (values !== undefined) found[name] = values;
    }
    return found;
  }

  protected unit(name: string, path: Path, key: boolean): void {
    this.known(name, path, key, 'unit', this.units);
  }

  /** Of a look: anything that there is. */
  protected part(name: string, path: Path): void {
    this.known(name, path, false, 'part', this.parts);
  }

  /** A name that the scenario does not have is told and kept. */
  protected known(
    name: string,
    path: Path,
    key: boolean,
    what: string,
    names: readonly string[] | undefined,
  ): void {
    if (names === undefined || names.includes(name)) return;
    const finding = {
      message: `this aircraft has no ${what} of this name`,
      found: name,
      allowed: wordList(names),
      hint: didYouMean(name, names),
    };
    if (key) this.issues.addKey(path, finding);
    else this.issues.add(path, finding);
  }

  /** What is written; a key without a value is what is missing. */
  protected entries(raw: Plain | undefined, path: Path): (readonly [string, Plain])[] {
    if (raw === undefined || raw === null) return [];
    if (isMap(raw)) return Object.entries(raw).filter(([, value]) => value !== null);
    this.issues.add(path, {
      message: 'lines of `key: value` belong here',
      found: shown(raw),
    });
    return [];
  }
}

/** Undefined for an empty map: nothing was noted. */
export function filled<T extends object>(values: T): T | undefined {
  return Object.keys(values).length > 0 ? values : undefined;
}
