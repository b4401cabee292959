/** The custom elements for other pages: `<script type="module" src="wheelwell.js">` defines them. */
import { Gear } from './gear.js';
import type { GearEvents } from './gear-events.js';

export { Gear };
export type { GearEvents, GearRun } from './gear-events.js';

declare global {
  interface HTMLElementTagNameMap {
    'ww-gear': Gear;
  }
  // eslint-disable-next-line @typescript-eslint/no-empty-object-type -- adds to the browser's own table
  interface HTMLElementEventMap extends GearEventMap {}
}

type GearEventMap = { [K in keyof GearEvents]: CustomEvent<GearEvents[K]> };
