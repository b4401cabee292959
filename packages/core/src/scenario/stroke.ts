/** Whether a jack is long enough for what it moves. */
import type { DeviceDefinition } from '../define/device.js';
import type { Parameters } from '../define/parameter.js';
import type { LinkEntry } from '../define/scenario.js';

/** People write strokes in whole millimetres or sixteenths of an inch, m. */
const SLACK = 5e-4;

export interface ShortStroke {
  /** Name of the link, as in the definition. */
  readonly link: string;
  readonly to: string;
  /** What the link needs over the travel of what it hangs on, m. */
  readonly needed: number;
}

/** The link that needs more than the jack's declared `stroke` (m); undefined when none does. */
export function shortStroke(
  definition: DeviceDefinition,
  parameters: Parameters,
  links: Readonly<Record<string, LinkEntry>>,
): ShortStroke | undefined {
  const { stroke } = parameters;
  if (definition.role !== 'actuator' || typeof stroke !== 'number') return undefined;
  for (const [link, { to, travel }] of Object.entries(links)) {
    if (travel === undefined) continue;
    let needed = 0;
    for (const y of travel.y) needed = Math.max(needed, y);
    if (needed > stroke + SLACK) return { link, to, needed };
  }
  return undefined;
}
