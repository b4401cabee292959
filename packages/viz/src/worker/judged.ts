/** A picture and the judgement that came after it. */
import type { Judgement, Picture } from './message.js';

export function judgedBy(picture: Picture, { flags, clearances, looks }: Judgement): Picture {
  return { ...picture, flags, bay: { ...picture.bay, clearances, looks }, judged: true };
}
