import type { RuleDefinition } from '../define/index.js';
import { chargeAt, gases, PLACARD_TEMPERATURE } from '../medium/index.js';
import { limitValue } from './kind/index.js';
import { raise } from './reading/flag.js';
import { devicesOf } from './reading/line.js';

/** What a gauge may be out, as a share of the charge. */
const GAUGE = 0.03;

/** A bottle charged below its table. */
export const bottleCharge: RuleDefinition = {
  name: 'bottle-charge',
  title: 'Bottle charged by the table',
  summary:
    'Each bottle shows, at the temperature at which it was read, what its table asks for, less 3 % for ' +
    'the gauge. Margin: reading less that, Pa.',
  source:
    'Same gas in the same volume (medium/gas.ts); the table charge is the scenario’s; 3 % for the gauge: common practice, no source.',
  kind: 'limit',
  limits: [],
  judge: (e) =>
    devicesOf(e, 'gas-supply').flatMap((name) => {
      const { parameters: p } = e.scenario.components[name];
      const table = p.tableCharge as number;
      const gas = gases[p.gas as string] as (typeof gases)[string] | undefined;
      if (!(table > 0) || gas === undefined) return [];
      const { ambient } = e.scenario;
      const t = p.chargeTemperature as number;
      const wanted = chargeAt(gas, table + ambient, PLACARD_TEMPERATURE, t) - ambient;
      const read = p.charge as number;
      const found = limitValue(read, { low: wanted * (1 - GAUGE) }, 'gauge-pressure', 0);
      return [
        raise(bottleCharge, found, {
          devices: [name],
          severity: 'fail',
          bad: `${name} shows less than its table asks for at that temperature. Nothing tells in a normal swing.`,
          good: `${name} is charged by its table.`,
          suggestion:
            'Find the leak before it is charged again. Charge slowly with dry nitrogen, never oxygen, with eye protection; a bottle gets hot, so read it again when it has cooled.',
        }),
      ];
    }),
};
