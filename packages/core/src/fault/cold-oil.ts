import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

/** -40 degC, K. */
const COLDEST = 233.15;

export const coldOil: FaultDefinition = {
  kind: 'cold-oil',
  title: 'Cold oil',
  group: 'fluid and environment',
  meaning: 'The oil is colder than the test supposes, and thicker.',
  shows:
    'Moving pressure is up on everything, both ways; times stay until a relief valve or the supply’s limit is reached, then everything is slow. Leaks get smaller, emergency extension slower.',
  confirm: 'Warm the hangar or cycle until warm, and repeat: it cures.',
  remedy: 'Nothing to put right; note the temperature of the oil beside every time.',
  caution:
    'Cold seals leak and cold grease holds locks open: a slow leg may stop short of its lock. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'viscosity against temperature: ASTM D341 through typical points (from memory); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Every winter morning.',
  befalls: ['fluid'],
  worst: 'oil at -40 degC',
  slows: 'both',
  change: (p, severity) => {
    const temperature = number(p, 'temperature');
    return { temperature: temperature - severity * Math.max(0, temperature - COLDEST) };
  },
};
