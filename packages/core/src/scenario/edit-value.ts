/** A changed value as typed: what it means, and how it is put into a file so that nothing but a value can come of it. */
import type { Finding } from './issue-list.js';
import { parseText, type Plain } from './parse.js';

/** Far above any figure; a table may be long, yet must fit on one line of the file. */
const LONGEST = 3_000;
// eslint-disable-next-line no-control-regex -- they are what is looked for
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff\ufffd]/;
/** Texts that YAML takes for something else than text. */
const RESOLVED =
  /^(true|false|null|~|[-+]?((\d+\.?\d*|\.\d+)(e[-+]?\d+)?|\.inf)|0o[0-7]+|0x[\da-f]+|\.nan)$/i;
const PLAIN = /^[A-Za-z0-9.][\w .%/^*()+°-]*$/;

export interface EditValue {
  /** As it stands in the file. */
  readonly written: string;
  readonly data: Plain;
}

/** Reads a value as typed; a text that would be more than one value is put in quotes. */
export function readEditValue(typed: string): EditValue | Finding {
  const text = typed.trim();
  if (text.length > LONGEST)
    return {
      message: 'this is too long',
      allowed: `up to ${LONGEST} characters`,
    };
  if (CONTROL.test(text))
    return { message: 'this has a sign that cannot be written in a file', allowed: 'one line' };
  const { data } = parseText(`[${text}]`, '');
  const only = Array.isArray(data) && data.length === 1 ? (data[0] as Plain) : undefined;
  if (/^[[{]/.test(text)) {
    // A list or a map, as tables are.
    if (typeof only === 'object' && only !== null) return { written: text, data: only };
    return {
      message: 'this list cannot be read',
      allowed: 'brackets in pairs, commas between figures',
    };
  }
  // Whatever else YAML would make of it (quotes, anchors, comments, a second value) is not meant.
  const asTyped = typeof only === 'string' ? only === text : RESOLVED.test(text);
  return asTyped && only !== undefined && typeof only !== 'object'
    ? { written: text, data: only }
    : { written: JSON.stringify(text), data: text };
}

/** Plain data on one line, as it can be typed again. */
export function onOneLine(data: Plain): string {
  return typeof data === 'string' ? data : flow(data);
}

function flow(data: Plain): string {
  if (data === null || typeof data === 'number' || typeof data === 'boolean') return String(data);
  if (typeof data === 'string')
    return PLAIN.test(data) && !RESOLVED.test(data) && data.trim() === data
      ? data
      : JSON.stringify(data);
  if (Array.isArray(data)) return `[${(data as readonly Plain[]).map(flow).join(', ')}]`;
  const entries = Object.entries(data).map(([key, value]) => `${key}: ${flow(value)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}
