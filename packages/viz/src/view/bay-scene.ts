/** What the parts of one drawing of the bay are made from. */
import type { Projection } from '../drawing/projection.js';
import type { Sheet } from '../model/sheet.js';
import { angleAt, placeAt } from '../model/place.js';
import type { Place } from '../model/place.js';
import type { OutlineSamples, Picture, System, UnitFacts } from '../worker/message.js';

/** Changes with the run, the size or the units; not while a run plays. */
export interface Scene {
  readonly picture: Picture;
  readonly onto: Projection;
  readonly sheet: Sheet;
  readonly system: System;
  readonly large: boolean;
}

/** One moment of it. */
export interface Moment {
  readonly time: number;
  /** Class of a flagged device; empty for one that is not. */
  readonly mark: (device: string) => string;
}

export type Mover = (moment: Moment) => void;

export function outlineOf(picture: Picture, mechanism: string): OutlineSamples | undefined {
  return picture.outlines.find((o) => o.mechanism === mechanism);
}

export function placeNow(picture: Picture, o: OutlineSamples, time: number): Place {
  return placeAt(o, angleAt(picture, o, time));
}

export function unitOf(picture: Picture, mechanism: string): UnitFacts | undefined {
  return picture.units.find(
    (u) => u.leg === mechanism || u.doors.includes(mechanism) || u.others.includes(mechanism),
  );
}

/** In the side view the right-hand parts stand behind the left-hand ones. */
export function isFar(scene: Scene, mechanism: string): boolean {
  return scene.onto.view === 'side' && unitOf(scene.picture, mechanism)?.side === 'right';
}

/** The move that closes the gaps, as an attribute. */
export function shiftOf({ sheet }: Scene, mechanism: string): string {
  return `translate(${sheet.shiftOf(mechanism).join(' ')})`;
}
