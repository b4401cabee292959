/**
 * Gas bottle of an emergency system: a vessel charged once, whose gas cools as it expands and is
 * warmed by its wall (network/gas.ts), and its outlet. The pressure is the real gas's
 * (medium/gas.ts). The charge is read at a temperature and holds for that mass of gas at any other.
 *
 * Carbon dioxide that turns liquid in the cold shows its vapour pressure; a charge that is liquid
 * when it is read is refused. Latent heat is not counted.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { gases, PLACARD_TEMPERATURE, vesselCharge } from '../medium/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  number,
  transitionReynolds,
} from './shared/parameters.js';

const AMBIENT = 0;
const FULL = 1;
const STORE = 0;

/** Gas left, share of what was charged. */
const left = (d: GuardFrame): number => d.gas(STORE) / d.k[FULL];

export const gasBottle: DeviceDefinition = {
  kind: 'gas-bottle',
  title: 'Gas bottle',
  summary: 'Stores the gas that blows the gear down when oil fails.',
  source:
    'first law for a vessel of constant volume (thermodynamics textbooks); one-shot nitrogen bottles: NAVEDTRA 14315 chapter 13 (from memory)',
  role: 'gas-supply',
  parameters: {
    gas: {
      type: 'choice',
      title: 'gas',
      choices: Object.keys(gases),
      default: 'nitrogen',
      why: 'dry nitrogen is the usual charge; never oxygen',
    },
    volume: {
      title: 'inside volume',
      quantity: 'volume',
      range: [5e-5, 0.05],
      why: 'no default: stamped on the bottle',
    },
    charge: {
      title: 'charge as read on its gauge',
      quantity: 'gauge-pressure',
      range: [0, 35e6],
      why: 'no default: read before the test, with the temperature',
    },
    chargeTemperature: {
      title: 'temperature at which it was read',
      quantity: 'temperature',
      range: [203.15, 353.15],
      default: PLACARD_TEMPERATURE,
      why: '70 degF, at which placards are written; common practice, no source',
    },
    tableCharge: {
      title: 'charge that the placard asks for at 70 degF',
      quantity: 'gauge-pressure',
      range: [0, 35e6],
      default: 0,
      why: 'none: then the charge is not judged',
    },
    exchange: {
      title: 'time constant of heat exchange with its wall',
      quantity: 'time',
      range: [1e-3, 1e9],
      default: 30,
      why: 'a litre of dense gas stirred by its own discharge takes some tens of seconds; common practice, no source',
    },
    bore: bore('bore of its outlet', 0.004, 'wider than its valve; common practice, no source'),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    store: {
      title: 'inside',
      volume: 0,
      dry: true,
      optional: true,
      vessel: (p, s) => ({
        gas: p.gas as string,
        volume: number(p, 'volume'),
        pressure: number(p, 'charge') + s.ambient,
        temperature: number(p, 'chargeTemperature'),
        exchange: number(p, 'exchange'),
      }),
    },
    outlet: { title: 'outlet', volume: 2e-6, dry: true },
  },
  flows: {
    discharge: {
      from: 'store',
      to: 'outlet',
      title: 'discharge',
      law: (p, s) => boreLaw(p, s, number(p, 'bore')),
    },
  },
  check: (p) => {
    const gas = gases[p.gas as string];
    const t = number(p, 'chargeTemperature');
    // Sea level stands for the ambient here.
    if (gas.saturation === undefined || t >= gas.criticalTemperature) return [];
    if (number(p, 'charge') + 101_325 < gas.saturation.pressure(t)) return [];
    return [
      {
        parameter: 'charge',
        message: `is more than the vapour pressure of ${gas.title.toLowerCase()} at that temperature: it would be partly liquid, which is weighed and not read on a gauge`,
      },
    ];
  },
  readings: {
    gauge: {
      title: 'pressure on its gauge',
      quantity: 'gauge-pressure',
      value: (d) => d.pressure(STORE) - d.k[AMBIENT],
    },
    warmth: {
      title: 'temperature of its gas',
      quantity: 'temperature',
      value: (d) => d.gasTemperature(STORE),
    },
    left: { title: 'gas left, share of the charge', quantity: 'ratio', value: left },
  },
  prepare: (p, s) =>
    Float64Array.of(
      s.ambient,
      vesselCharge(
        gases[p.gas as string],
        number(p, 'volume'),
        number(p, 'charge') + s.ambient,
        number(p, 'chargeTemperature'),
      ),
    ),
  symbol: { name: 'gas-bottle', size: [4, 8], ports: { store: [0, 2], outlet: [0, -4] } },
};
