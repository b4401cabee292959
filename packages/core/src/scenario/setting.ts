/** Paths into a scenario that a card may set: `components.pump.speed`, `fluid.free-air`. */
import type { ParameterDefinition, ParameterValue } from '../define/parameter.js';
import type { Scenario } from '../define/scenario.js';
import type { Catalogues } from '../define/catalogue.js';
import { differenceField } from './field.js';
import { parameterField } from './field-parameter.js';
import { lookUp } from './look-up.js';
import { kebab } from './names.js';

/** Where a setting goes: section, name and key as the scenario calls them. */
export interface SettingPath {
  readonly section: 'components' | 'mechanisms' | 'nodes' | 'fluid';
  readonly name: string;
  readonly key: string;
}

/** What a card may set besides the parameters of devices and mechanisms. */
export const THICKNESS = [0.05, 20] as const;
export const WARMED_BY = [-80, 80] as const;
/** Equivalent airspeed, m/s. */
export const AIRSPEED = [0, 200] as const;

const FLUID_SETTINGS: Readonly<Record<string, ParameterDefinition>> = {
  freeAir: { title: 'free air', why: '', quantity: 'ratio', range: [0, 0.2] },
  thickness: {
    title: 'viscosity as a share of the data',
    why: '',
    quantity: 'ratio',
    range: THICKNESS,
  },
  warmedBy: {
    title: 'warmed since it was shut in',
    why: '',
    quantity: 'temperature',
    range: WARMED_BY,
  },
};
const NODE: Readonly<Record<string, ParameterDefinition>> = {
  volume: { title: 'extra oil volume', why: '', quantity: 'volume', range: [0, 1] },
  air: { title: 'trapped air', why: '', quantity: 'volume', range: [0, 0.1] },
};

/** The field of a setting: as its definition says, but for what is a difference. */
export function settingField(
  section: SettingPath['section'],
  key: string,
  definition: ParameterDefinition,
) {
  return section === 'fluid' && key === 'warmedBy'
    ? differenceField(WARMED_BY, definition.title)
    : parameterField(definition);
}

export const SETTING_ALLOWED =
  'components.<name>.<parameter>, mechanisms.<name>.<parameter>, nodes.<name>.volume, nodes.<name>.air, fluid.kind, fluid.free-air, fluid.thickness, fluid.warmed-by';

/** Splits a path as written; undefined when it is no such path. */
export function splitSetting(text: string): SettingPath | undefined {
  const parts = text.split('.');
  if (parts.length === 2 && parts[0] === 'fluid')
    return { section: 'fluid', name: '', key: parts[1] };
  if (parts.length !== 3) return undefined;
  const [section, name, key] = parts;
  return section === 'components' || section === 'mechanisms' || section === 'nodes'
    ? { section, name, key }
    : undefined;
}

/** The settings below a place, by their names in the definitions. */
export function settingsOf(
  section: SettingPath['section'],
  kind: string | undefined,
  catalogues: Catalogues,
): Readonly<Record<string, ParameterDefinition>> {
  switch (section) {
    case 'components':
      return lookUp(catalogues.components, kind)?.parameters ?? {};
    case 'mechanisms':
      return lookUp(catalogues.mechanisms, kind)?.parameters ?? {};
    case 'nodes':
      return NODE;
    case 'fluid':
      return {
        kind: {
          type: 'choice',
          title: 'which oil',
          why: '',
          choices: Object.keys(catalogues.fluids),
        },
        ...FLUID_SETTINGS,
      };
  }
}

/** A scenario with one value changed; the rest is shared with the given one. */
export function applySetting(
  scenario: Scenario,
  path: SettingPath,
  value: ParameterValue,
): Scenario {
  const { section, name, key } = path;
  if (section === 'fluid') return { ...scenario, fluid: { ...scenario.fluid, [key]: value } };
  const entries = scenario[section] as Readonly<Record<string, unknown>>;
  if (!Object.hasOwn(entries, name))
    throw new RangeError(`${section}.${name} does not exist in this scenario`);
  if (section === 'nodes')
    return {
      ...scenario,
      nodes: { ...scenario.nodes, [name]: { ...scenario.nodes[name], [key]: value } },
    };
  const entry = scenario[section][name];
  if (!Object.hasOwn(entry.parameters, key))
    throw new RangeError(`${section}.${name} has no parameter ${kebab(key)}`);
  return {
    ...scenario,
    [section]: {
      ...scenario[section],
      [name]: { ...entry, parameters: { ...entry.parameters, [key]: value } },
    },
  };
}
