/** Takes the indentation out of Lit's templates and style sheets, which no minifier looks into. */
import type { Plugin } from 'vite';
import { edited } from './syntax.js';

const VIEWS = /\/packages\/viz\/src\/[^?]*\.ts$/;
const BREAK = /\s*\n\s*/g;
/** Text in quotes, which stays, or a comment, or a sign with the spaces about it. */
const STYLE = /("[^"]*"|'[^']*')|\/\*[^]*?\*\/|\s*([{};,])\s*|(:)\s+/g;

/** A break and the spaces about it are one space to the browser, too. */
const squeezed: Readonly<Record<string, (text: string) => string>> = {
  html: (text) => text.replace(BREAK, ' '),
  svg: (text) => text.replace(BREAK, ' '),
  css: (text) =>
    text
      .replace(BREAK, ' ')
      .replace(
        STYLE,
        (_, quoted?: string, sign?: string, colon?: string) => quoted ?? sign ?? colon ?? '',
      ),
};

export function squeezeTemplates(): Plugin {
  return {
    name: 'wheelwell:squeeze-templates',
    apply: 'build',
    transform: {
      filter: { id: VIEWS, code: /\b(html|svg|css)`/ },
      handler: (code) =>
        edited(code, (edits) => ({
          TaggedTemplateExpression({ tag, quasi }) {
            const squeeze = tag.type === 'Identifier' ? squeezed[tag.name] : undefined;
            if (squeeze === undefined) return;
            for (const { start, end } of quasi.quasis)
              edits.push({ start, end, text: squeeze(code.slice(start, end)) });
          },
        })),
    },
  };
}
