/** Pieces of Markdown that read well on a code host's page. */

/** Text of a definition made safe for a paragraph or a table cell. */
export function plain(text) {
  return String(text).replace(/\s+/g, ' ').trim().replace(/[|*<]/g, '\\$&');
}

/** A name as it is written in scenario files. */
export function kebab(name) {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

export function code(text) {
  return `\`${text}\``;
}

/** A table; nothing when it has no rows. Columns in which every cell is empty are left out. */
export function table(heads, rows) {
  if (rows.length === 0) return '';
  const used = heads.map((_, i) => rows.some((row) => row[i] !== ''));
  const line = (cells) => `| ${cells.filter((_, i) => used[i]).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** A second-level section; nothing when its body is empty. */
export function section(title, ...body) {
  const text = body.filter((part) => part !== '').join('\n\n');
  return text === '' ? '' : `## ${title}\n\n${text}`;
}

export function fence(language, text) {
  return `\`\`\`${language}\n${text}\n\`\`\``;
}

/** Sentence with a capital and a full stop. */
export function sentence(text) {
  const t = plain(text);
  const whole = t.charAt(0).toUpperCase() + t.slice(1);
  return /[.!?)]$/.test(whole) ? whole : `${whole}.`;
}

export function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A whole page from its parts. */
export function page(...parts) {
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

export const GENERATED =
  '_Written by `npm run docs` from the definition in the source; do not edit._';
