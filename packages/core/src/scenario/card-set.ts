/** What a card sets for its run: parameters of devices and mechanisms, nodes, the oil. */
import type { Parameters, ParameterValue } from '../define/parameter.js';
import type { Card, ComponentEntry } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { check } from './check.js';
import { isMap } from './draft.js';
import { shown, wordList } from './issue-list.js';
import { lookUp } from './look-up.js';
import { camel, kebab } from './names.js';
import { settle } from './parameters.js';
import type { Plain } from './parse.js';
import { SETTING_ALLOWED, settingField, settingsOf, splitSetting } from './setting.js';
import { shortStroke } from './stroke.js';
import { tellDriven, type World } from './world.js';

type Path = readonly (string | number)[];

/** What could be built, for checks between parameters. */
export type Built = Readonly<
  Record<string, { readonly parameters: Parameters; readonly links?: ComponentEntry['links'] }>
>;

export function readSettings(
  world: World,
  raw: Plain | undefined,
  path: Path,
  components: Built,
  mechanisms: Built,
): Card['set'] {
  const set: Record<string, ParameterValue> = {};
  if (!isMap(raw)) return set;
  const touched = new Map<
    string,
    {
      section: 'components' | 'mechanisms';
      name: string;
      key: string;
      parameters: Record<string, ParameterValue>;
    }
  >();
  for (const [text, written] of Object.entries(raw)) {
    const inner = [...path, text];
    const found = findSetting(world, text, inner);
    if (found === undefined) continue;
    const { section, name, key, definition, range } = found;
    const value = check(settingField(section, key, definition), written, inner, world.issues);
    const settled =
      value === undefined ? undefined : settle(definition, value, range, inner, world.issues);
    if (settled === undefined) continue;
    set[[section, ...(name === '' ? [] : [name]), key].join('.')] = settled;
    const healthy =
      section === 'components'
        ? components[name]
        : section === 'mechanisms'
          ? mechanisms[name]
          : undefined;
    if (healthy === undefined || (section !== 'components' && section !== 'mechanisms')) continue;
    const id = `${section}.${name}`;
    const change = touched.get(id) ?? {
      section,
      name,
      key: text,
      parameters: { ...healthy.parameters },
    };
    change.parameters[key] = settled;
    touched.set(id, change);
  }
  for (const { section, name, key, parameters } of touched.values()) {
    const definition = world.draft[section].get(name)?.definition;
    if (definition === undefined) continue;
    const wrong = [...(definition.check?.(parameters) ?? [])];
    const short =
      'ports' in definition
        ? shortStroke(definition, parameters, components[name]?.links ?? {})
        : undefined;
    if (short !== undefined)
      wrong.push({
        parameter: 'stroke',
        message: `the stroke is too short for the travel of ${short.to}`,
      });
    for (const { parameter, message } of wrong) {
      const own = `${section}.${name}.${kebab(parameter)}`;
      world.issues.add([...path, own in raw ? own : key], {
        message: `set here, ${message}`,
        found: shown(raw[own in raw ? own : key]),
      });
    }
  }
  return set;
}

function findSetting(world: World, text: string, path: Path) {
  const split = splitSetting(text);
  if (split === undefined) {
    world.issues.addKey(path, {
      message: 'this is not something a card can set',
      found: text,
      allowed: SETTING_ALLOWED,
    });
    return undefined;
  }
  const { section, name, key } = split;
  const { draft, catalogues, issues } = world;
  let kind: string | undefined;
  if (section !== 'fluid') {
    const parts = draft[section];
    if (!parts.has(name)) {
      issues.addKey(path, {
        message: `there is nothing of this name under ${section}`,
        found: name,
        allowed: wordList([...parts.keys()]),
        hint: didYouMean(name, parts.keys()),
      });
      return undefined;
    }
    if (section !== 'nodes') {
      kind = draft[section].get(name)?.definition?.kind;
      if (kind === undefined) return undefined;
    }
  }
  const settings = settingsOf(section, kind, catalogues);
  const definition = lookUp(settings, camel(key));
  if (definition === undefined) {
    const known = Object.keys(settings).map(kebab);
    issues.addKey(path, {
      message: `"${key.slice(0, 60)}" cannot be set here`,
      found: text,
      allowed: wordList(known, 40),
      hint: didYouMean(key, known),
    });
    return undefined;
  }
  if (definition.type === 'state-table') {
    issues.addKey(path, {
      message: 'a card cannot set a state table',
      found: text,
      hint: 'write a second file for another table',
    });
    return undefined;
  }
  if (section === 'mechanisms' && camel(key) === 'initial' && tellDriven(draft, issues, name, path))
    return undefined;
  return { section, name, key: camel(key), definition, range: world.mechanisms.get(name)?.range };
}
