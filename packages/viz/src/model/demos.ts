/** The scenarios that come with the page. */
import type { Source } from './state.js';

const texts = import.meta.glob<string>('../../../../scenarios/*/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** A scenario file names the format's version at its start; other YAML beside it is not ours to run. */
const SCENARIO = /^wheelwell:/m;

/** What the page opens on: the aircraft that the tutorial and the README speak of. */
const FIRST = 'hedgelark/hedgelark.yaml';

export const demos: readonly Source[] = Object.entries(texts)
  .filter(([, text]) => SCENARIO.test(text))
  .map(([path, text]) => ({ file: path.split('/').slice(-2).join('/'), text }))
  .sort((a, b) => Number(b.file === FIRST) - Number(a.file === FIRST));

const sheets = import.meta.glob<string>('../../../../scenarios/*/observations/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** Observation sheets that come with the page, by the folder of their aircraft. */
export const exampleSheets: readonly Source[] = Object.entries(sheets).map(([path, text]) => ({
  file: path.split('/').slice(-3).join('/'),
  text,
}));
