import type { Catalogues, FaultEntry, Scenario } from '../define/index.js';
import { didYouMean, parseQuantity } from '../quantity/index.js';
import { canBefall } from '../scenario/index.js';
import { BadInput } from './io.js';

/** A `(did you mean x?)` for a message, or nothing. */
function hint(written: string, known: readonly string[]): string {
  const near = didYouMean(written, known);
  return near === '' ? '' : ` (${near})`;
}

/** The card to play: the one named, else the scenario's first. */
export function chooseCard(scenario: Scenario, name: string | undefined): string {
  const known = Object.keys(scenario.cards);
  if (name === undefined) return known[0];
  if (known.includes(name)) return name;
  throw new BadInput(`no card ${name}, the scenario has ${known.join(', ')}${hint(name, known)}`);
}

/** Length of a tick, s, from `5 ms`. */
export function readTick(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const read = parseQuantity(text, 'time');
  if ('problem' in read) throw new BadInput(`--tick ${text}: ${read.problem}, e.g. '5 ms'`);
  if (!(read.value >= 1e-4 && read.value <= 1)) {
    throw new BadInput(`--tick ${text}: allowed 0.1 ms to 1 s`);
  }
  return read.value;
}

/** Faults written `name[@device]=severity`, severity 0 to 1 or in percent. */
export function readFaults(
  written: readonly string[],
  scenario: Scenario,
  catalogues: Catalogues,
): readonly FaultEntry[] {
  return written.map((text) => readFault(text, scenario, catalogues));
}

function readFault(text: string, scenario: Scenario, catalogues: Catalogues): FaultEntry {
  const match = /^([^@=\s]+)(?:@([^@=\s]+))?=\s*([0-9.eE+-]+)\s*(%?)$/.exec(text);
  if (match === null) {
    throw new BadInput(
      `--fault ${text}: write it name=severity or name@device=severity, severity 0 to 1`,
    );
  }
  const [, fault, device, number, percent] = match;
  const severity = Number(number) / (percent === '%' ? 100 : 1);
  if (!(severity >= 0 && severity <= 1)) {
    throw new BadInput(
      `--fault ${text}: severity ${number}${percent}, allowed 0 to 1 or 0 % to 100 %`,
    );
  }
  const names = Object.keys(catalogues.faults);
  if (!names.includes(fault)) {
    throw new BadInput(
      `--fault ${text}: no fault ${fault}${hint(fault, names)}; wheelwell list faults shows them all`,
    );
  }
  const parts = { ...scenario.mechanisms, ...scenario.components };
  const { befalls } = catalogues.faults[fault];
  const able = canBefall(scenario, catalogues.faults[fault]);
  if (able.length === 0) {
    throw new BadInput(
      `--fault ${text}: the scenario has nothing it can befall (${befalls.join(', ')})`,
    );
  }
  if (device === undefined) {
    if (able.length === 1) return { fault, on: able[0], severity };
    const choices = able.map((name) => `${fault}@${name}=${number}${percent}`).join(', ');
    throw new BadInput(`--fault ${text}: say which one, ${choices}`);
  }
  if (able.includes(device)) return { fault, on: device, severity };
  const what = Object.hasOwn(parts, device)
    ? `${fault} cannot befall ${device} (${parts[device].is})`
    : `no device ${device}`;
  throw new BadInput(`--fault ${text}: ${what}, allowed ${able.join(', ')}${hint(device, able)}`);
}
