/** Plain data written as YAML in block style, so that reading it gives the same data again. */
import { RESOLVED } from './edit-value.js';

/** Signs that must not stand in a file as they are, beside those that JSON writes otherwise, too. */
const HIDDEN = '\\u007f-\\u009f\\u2028\\u2029\\ufeff\\ufffe\\uffff';
const ODD = new RegExp(`[${HIDDEN}]`, 'g');
/** Text that can stand without quotes. */
const BARE = new RegExp(
  `^[A-Za-z0-9]([^:#\\u0000-\\u001f${HIDDEN}]*[^:#\\s\\u0000-\\u001f${HIDDEN}])?$`,
);
/** Runs of single spaces between words: what can be broken into lines and read as before. */
const WORDS = /^\S+( \S+)*$/;

/** Of the lines of a file that is read by people. */
export const WIDTH = 100;

/** @param width of lines for long texts; they stay on their line when absent */
export function yamlOf(data: object, width = Infinity): string {
  return `${item(data, '', width)}\n`;
}

type Entries = readonly (readonly [string, unknown])[];

/** Lines of a map or a list, the first without its indent. */
function block(data: object, indent: string, width: number): string {
  const inner = `${indent}  `;
  const lines = Array.isArray(data)
    ? (data as readonly unknown[]).map((each) => `- ${item(each, inner, width)}`)
    : entriesOf(data).map(([key, each]) => {
        const nested = isFilled(each);
        const text = nested
          ? `\n${inner}${block(each, inner, width)}`
          : ` ${scalar(each, inner, width)}`;
        return `${quoted(key)}:${text}`;
      });
  return lines.join(`\n${indent}`);
}

const item = (each: unknown, inner: string, width: number): string =>
  isFilled(each) ? block(each, inner, width) : scalar(each, inner, width);

/** What is undefined is not there. */
const entriesOf = (data: object): Entries =>
  Object.entries(data).filter(([, each]) => each !== undefined);

const isFilled = (data: unknown): data is object =>
  typeof data === 'object' &&
  data !== null &&
  (Array.isArray(data) ? data.length > 0 : entriesOf(data).length > 0);

function scalar(data: unknown, indent: string, width: number): string {
  if (Array.isArray(data)) return '[]';
  if (typeof data === 'object' && data !== null) return '{}';
  if (typeof data !== 'string') return String(data);
  if (data.length + indent.length <= width || !WORDS.test(data) || data.search(ODD) >= 0)
    return quoted(data);
  return `>-\n${indent}${folded(data, width - indent.length).join(`\n${indent}`)}`;
}

function quoted(text: string): string {
  if (BARE.test(text) && !RESOLVED.test(text)) return text;
  return JSON.stringify(text).replace(
    ODD,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** Words in lines. */
function folded(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
