/** The definitions of core's catalogue rooms, found by loading every file of them. */
import { pathToFileURL } from 'node:url';
import type { ParameterDefinition } from '../../packages/core/src/define/index.js';
import { filesIn, ROOT, stem } from './files.js';

/** Rooms with one definition a file, and the property that holds its name. */
export const CATALOGUES = [
  { room: 'component', key: 'kind' },
  { room: 'mechanism', key: 'kind' },
  { room: 'fault', key: 'kind' },
  { room: 'monitor', key: 'name' },
] as const;

export interface Definition {
  readonly file: string;
  readonly stem: string;
  readonly name: string;
  readonly value: Readonly<Record<string, unknown>>;
  readonly parameters: Readonly<Record<string, ParameterDefinition>>;
}

export interface Catalogue {
  readonly room: string;
  readonly definitions: readonly Definition[];
  /** What index.ts exports, lists and records opened one level; undefined without index.ts. */
  readonly listed: ReadonlySet<unknown> | undefined;
}

function isDefinition(value: unknown, key: string): value is Readonly<Record<string, unknown>> {
  return (
    typeof value === 'object' &&
    value !== null &&
    typeof (value as Record<string, unknown>)[key] === 'string' &&
    typeof (value as Record<string, unknown>).source === 'string'
  );
}

export async function loadCatalogue(room: string, key: string): Promise<Catalogue> {
  const files = filesIn(`packages/core/src/${room}`).filter((path) => path.endsWith('.ts'));
  const definitions: Definition[] = [];
  let listed: Set<unknown> | undefined;
  for (const file of files) {
    const exported = Object.values(
      (await import(pathToFileURL(ROOT + file).href)) as Record<string, unknown>,
    );
    if (file === `packages/core/src/${room}/index.ts`) {
      const open = (value: unknown) =>
        value instanceof Map
          ? [...value.values()]
          : typeof value === 'object' && value !== null && !isDefinition(value, key)
            ? Object.values(value)
            : [];
      listed = new Set(exported.flatMap(open));
      continue;
    }
    for (const value of exported) {
      if (!isDefinition(value, key)) continue;
      definitions.push({
        file,
        stem: stem(file),
        name: value[key] as string,
        value,
        parameters: (value.parameters ?? {}) as Definition['parameters'],
      });
    }
  }
  return { room, definitions, listed };
}
