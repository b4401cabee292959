import type { Catalogues, Scenario } from '../../define/index.js';
import { chargeAt, PLACARD_TEMPERATURE } from '../../medium/index.js';
import { bottleOf } from './card.js';
import type { ChargeTable } from './shapes.js';

/** -40 to +50 degC by tens, K. */
export const TABLE_TEMPERATURES: readonly number[] = Array.from(
  { length: 10 },
  (_, i) => 233.15 + 10 * i,
);

/**
 * For a card on the bottle's door: the pressure to see on the gauge at each temperature for the
 * charge that its placard asks for (or, without one, that it has).
 *
 * @throws RangeError when the scenario has no bottle.
 */
export function chargeTable(
  catalogues: Catalogues,
  scenario: Scenario,
  temperatures: readonly number[] = TABLE_TEMPERATURES,
): ChargeTable {
  const bottle = bottleOf(scenario, catalogues);
  const p = scenario.components[bottle].parameters;
  const table = p.tableCharge as number;
  const charge = table > 0 ? table : (p.charge as number);
  const chargeTemperature = table > 0 ? PLACARD_TEMPERATURE : (p.chargeTemperature as number);
  const gas = catalogues.gases[p.gas as string];
  const { ambient } = scenario;
  return {
    bottle,
    gas: gas.title,
    volume: p.volume as number,
    charge,
    chargeTemperature,
    rows: temperatures.map((temperature) => ({
      temperature,
      pressure: chargeAt(gas, charge + ambient, chargeTemperature, temperature) - ambient,
    })),
  };
}
