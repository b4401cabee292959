/**
 * What the page has already of a picture is not sent again: it is most of what would be copied, and what stays
 * the same object need not be looked through by the views either.
 */
import { dequal } from 'dequal';
import type { Picture } from './message.js';

/** What most changes of faults and figures leave as it was. None of it is transferred. */
const STAYING = [
  'bay',
  'cards',
  'catalogue',
  'channels',
  'circuit',
  'devices',
  'display',
  'fluidFaults',
  'limits',
  'outlines',
  'units',
] as const satisfies readonly (keyof Picture)[];

type Staying = Pick<Picture, (typeof STAYING)[number]>;

/** A picture without what is as it was in the one before it. */
export type SparingPicture = Omit<Picture, keyof Staying> & Partial<Staying>;

/** The worker's side. @param sent the picture that it posted last */
export function sparing(made: Picture, sent: Picture | undefined): SparingPicture {
  const known = STAYING.filter((key) => sent !== undefined && dequal(made[key], sent[key]));
  return Object.fromEntries(
    Object.entries(made).filter(([key]) => !known.some((k) => k === key)),
  ) as SparingPicture;
}

/** The page's side. @param had the whole picture that came last from that worker */
export function whole(came: SparingPicture, had: Picture | undefined): Picture {
  const stayed = Object.fromEntries(STAYING.map((key) => [key, had?.[key]]));
  return { ...stayed, ...came } as Picture;
}
