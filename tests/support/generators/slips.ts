/** Slips of the pen in a scenario document: each makes a file that must be refused. */
import type { Document } from './system.js';

type Part = Record<string, unknown>;
type Random = () => number;

const any = (random: Random, parts: Readonly<Record<string, Part>>): Part => {
  const all = Object.values(parts);
  return all[Math.floor(random() * all.length)];
};
const ofAircraft = ({ components, mechanisms }: Document): Record<string, Part> => ({
  ...components,
  ...mechanisms,
});

/** What each does to a document. All have a mechanism, so all have a part to do it to. */
export const slips = {
  'a kind that is not': (d, r) => void (any(r, ofAircraft(d)).is = 'flux-valve'),
  'a parameter that is not': (d, r) => void (any(r, ofAircraft(d)).fluxx = '3 mm'),
  'a unit of another quantity': (d, r) => void (any(r, d.mechanisms).travel = '90 kg'),
  'a figure without its unit': (d, r) => void (any(r, d.mechanisms).travel = 1.5),
  'a figure out of its range': (d, r) => void (any(r, d.mechanisms).travel = '900 deg'),
  'a parameter left out': (d, r) => void delete any(r, d.mechanisms).mass,
  'a driver that is not': (d, r) => void (any(r, d.mechanisms).driven = { by: 'm9', ratio: 1 }),
  'a driver of itself': (d) => void (d.mechanisms.m0.driven = { by: 'm0', ratio: 1 }),
  'a port that is not': (d, r) => {
    d.components.extra = { is: 'orifice', ports: { inlet: 'a', outlet: 'b', third: 'a' } };
    any(r, d.components).note = 'something beside it';
  },
  'a port forgotten': (d) => void (d.components.extra = { is: 'orifice', ports: { inlet: 'a' } }),
  'a node misspelt': (d) =>
    void (d.components.extra = { is: 'orifice', ports: { inlet: 'tnak', outlet: 'blanked' } }),
  'a cushion joined': (d) =>
    void (d.components.extra = { is: 'accumulator', ports: { oil: 'blanked', cushion: 'tank' } }),
  'a link on nobody': (d) =>
    void (d.components.extra = { is: 'uplock', links: { leg: { to: 'm9' } }, at: '1 rad' }),
  'a wire from nobody': (d) =>
    void (d.components.extra = {
      is: 'solenoid-valve',
      ports: { inlet: 'blanked', outlet: 'blanked' },
      signals: { coil: 'nobody.open' },
    }),
  'a fault on nobody': (d) =>
    void d.cards.card.faults.push({ fault: 'rod-seal-leak', on: 'nobody', severity: 1 }),
  'a fault too bad': (d) =>
    void d.cards.card.faults.push({ fault: 'free-air', on: 'fluid', severity: 2 }),
  'a control that is not': (d) =>
    void d.cards.card.steps.push({ at: '1 s', device: 'm0', input: 'lever', value: 'up' }),
} satisfies Record<string, (document: Document, random: Random) => void>;

export type Slip = keyof typeof slips;
