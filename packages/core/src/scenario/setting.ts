/** Paths into a scenario that a card may set: `components.pump.speed`, `fluid.free-air`. */
import type { ParameterDefinition, ParameterValue } from '../define/parameter.js';
import type { Scenario } from '../define/scenario.js';
import type { Catalogues } from '../define/catalogue.js';
import { differenceField } from './field.js';
import { parameterField } from './field-parameter.js';
import { lookUp } from './look-up.js';
import { kebab } from './names.js';
import { NODE, OIL } from './own-parameters.js';

/** Where a setting goes: section, name and key as the scenario calls them. */
export interface SettingPath {
  readonly section: 'components' | 'mechanisms' | 'nodes' | 'fluid';
  readonly name: string;
  readonly key: string;
}

const { freeAir, thickness, warmedBy } = OIL;
/** The temperature of the oil is a card's own condition, not a setting. */
const FLUID_SETTINGS: Readonly<Record<string, ParameterDefinition>> = {
  freeAir,
  thickness,
  warmedBy,
};

/** The field of a setting: as its definition says, but for what is a difference. */
export function settingField(
  section: SettingPath['section'],
  key: string,
  definition: ParameterDefinition,
) {
  return section === 'fluid' && key === 'warmedBy'
    ? differenceField(warmedBy.range, definition.title)
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
