/** The lessons that come with the page. */
import type { Source } from './state.js';

const texts = import.meta.glob<string>('../../../../scenarios/*/lessons/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** In the order in which they are best taken. */
const ORDER = ['normal-sequence', 'sequence-valve', 'early-plunger', 'slow-side', 'blow-down'];

const rank = (file: string): number => {
  const at = ORDER.findIndex((name) => file.endsWith(`/${name}.yaml`));
  return at < 0 ? ORDER.length : at;
};

export const lessons: readonly Source[] = Object.entries(texts)
  .map(([path, text]) => ({ file: path.split('/').slice(-3).join('/'), text }))
  .sort((a, b) => rank(a.file) - rank(b.file));

/** What a lesson file has in a line of its own; empty when it has not. */
export function lineOf(text: string, key: string): string {
  const line = new RegExp(`^${key}: *(.+)$`, 'm').exec(text)?.[1]?.trim() ?? '';
  return line.replace(/^(['"])(.*)\1$/, '$2');
}

export function isLesson(text: string): boolean {
  return /^wheelwell-lesson:/m.test(text);
}
