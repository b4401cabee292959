/** Channels in words, and in the units that gauges and rulers show. */
import type { ChannelInfo, Display, Picture, Quantity, System } from '../worker/message.js';
import { plain, written } from './sentence.js';

/** What a channel is called beside its panel's title: the part alone where the rest says nothing more. */
export function labelOf({ name, of }: ChannelInfo): string {
  const what = name.slice(of.length + 1);
  return ['pressure', 'angle', 'through', 'mechanism'].includes(what) ? plain(of) : plain(name);
}

/** What it is of its part; pressures are shown as gauges show them. */
export function titleOf({ title, quantity }: ChannelInfo): string {
  return quantity === 'pressure' ? 'pressure' : title;
}

/** The kind of panel it belongs in: what a gauge shows and pressures in the oil are one. */
export function panelOf(quantity: Quantity): Quantity {
  return quantity === 'pressure' ? 'gauge-pressure' : quantity;
}

/** From SI to what is shown; pressures as gauges show them. */
export function displayOf(quantity: Quantity, picture: Picture, system: System): Display {
  const table = picture.display[system];
  const shown = table[panelOf(quantity)] ?? { factor: 1, shift: 0, unit: '' };
  if (quantity !== 'pressure') return shown;
  return { ...shown, shift: shown.shift - picture.ambient * shown.factor };
}

const TITLES: Readonly<Partial<Record<Quantity, string>>> = {
  'gauge-pressure': 'Pressure',
  'free-gas': 'Free gas',
  'free-gas-flow': 'Flow of free gas',
  ratio: 'Share or position',
};

export function panelTitle(quantity: Quantity, unit: string): string {
  const kind = panelOf(quantity);
  const words = TITLES[kind] ?? kind.charAt(0).toUpperCase() + kind.slice(1).replace(/-/g, ' ');
  return unit === '' ? words : `${words}, ${written(unit)}`;
}

/** What is worth a first look: supply, legs, and the chambers of what moves the legs. */
export function usualChannels(picture: Picture): string[] {
  const { channels, units } = picture;
  const names = new Set(channels.map((c) => c.name));
  const supply = ['supply', 'pressure', 'pack-up', 'pump-out']
    .map((n) => `${n}.pressure`)
    .filter((n) => names.has(n))
    .slice(0, 1);
  const legs = units.map((u) => `${u.leg}.angle`).filter((n) => names.has(n));
  // Both sides of one leg's jack: a second leg doubles the lines and adds little.
  const first = units[0];
  const side = first === undefined ? '' : first.leg.replace(/-?leg$/, '');
  const ends = ['head', 'rod', 'up', 'down'].map((end) => `${side}-${end}.pressure`);
  const chambers = ends.filter((n) => side !== '' && names.has(n)).slice(0, 2);
  const found = [...supply, ...legs, ...chambers];
  return found.length > 0 ? found : channels.slice(0, 4).map((c) => c.name);
}
