/** Signatures kept in a temporary folder from one run of the bench to the next. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';

const DIST = fileURLToPath(new URL('../../../packages/core/dist/', import.meta.url));
/** What has no say in what a played swing puts on a sheet: the inference behind it, and what is above. */
const ELSEWHERE =
  /^(bundle|cli|report|lesson|check)\b|^analysis\/(?!diagnosis\/(signature|setup|under|ending|patient|leave|passage|pause|unknown|player)\.js)/;

/** Of core's build, as far as it decides what is played, and of the scenario. */
export function buildKey(scenarioText) {
  const hash = createHash('sha256').update(scenarioText);
  const files = readdirSync(DIST, { recursive: true }).filter(
    (file) => file.endsWith('.js') && !ELSEWHERE.test(file),
  );
  for (const file of files.sort()) hash.update(file).update(readFileSync(join(DIST, file)));
  return hash.digest('hex').slice(0, 16);
}

const fileOf = (key, name) => join(tmpdir(), `wheelwell-bench-${key}`, `${name}.v8`);

export function kept(key, name) {
  try {
    return deserialize(readFileSync(fileOf(key, name)));
  } catch {
    return new Map();
  }
}

/** Written aside first, so that nobody reads half of it. */
export function keep(key, name, memory) {
  const file = fileOf(key, name);
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(`${file}.new`, serialize(memory));
  renameSync(`${file}.new`, file);
}
