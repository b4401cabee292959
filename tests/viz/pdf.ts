/** The words of a PDF that the browser has printed, page by page: as much of the format as that takes. */
import { inflateSync } from 'node:zlib';

interface Piece {
  readonly head: string;
  /** Contents of its stream, unpacked; empty without one. */
  readonly stream: string;
}

/** Objects by number (ISO 32000-1, 7.3.10); streams packed by Flate only, which is what browsers write. */
function pieces(pdf: Buffer): Map<number, Piece> {
  const text = pdf.toString('latin1');
  const found = new Map<number, Piece>();
  for (const match of text.matchAll(/(\d+) 0 obj\s([\s\S]*?)endobj/g)) {
    const [, number, body] = match;
    const at = body.search(/stream\r?\n/);
    const head = at < 0 ? body : body.slice(0, at);
    const raw = at < 0 ? '' : body.slice(body.indexOf('\n', at) + 1, body.lastIndexOf('endstream'));
    const packed = Buffer.from(raw, 'latin1');
    const stream = head.includes('/FlateDecode') ? inflateSync(packed).toString('latin1') : raw;
    found.set(Number(number), { head, stream });
  }
  return found;
}

/** Glyph to text of a font (9.10.3: bfchar and bfrange). */
function glyphs(cmap: string): Map<number, string> {
  const found = new Map<number, string>();
  const chars = (hex: string): string =>
    (hex.match(/.{4}/g) ?? []).map((h) => String.fromCharCode(Number.parseInt(h, 16))).join('');
  for (const [, block] of cmap.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, from, to] of block.matchAll(/<(\w+)>\s*<(\w+)>/g))
      found.set(Number.parseInt(from, 16), chars(to));
  for (const [, block] of cmap.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, last, to] of block.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const first = Number.parseInt(from, 16);
      for (let i = first; i <= Number.parseInt(last, 16); i++)
        found.set(i, String.fromCharCode(Number.parseInt(to, 16) + i - first));
    }
  return found;
}

/** Text of each page, without spaces: how far glyphs stand apart is not looked at. */
export function pagesOf(pdf: Buffer): string[] {
  const all = pieces(pdf);
  const pages = [...all.values()].filter((p) => /\/Type\s*\/Page\b/.test(p.head));
  return pages.map(({ head }) => {
    const fonts = new Map<string, Map<number, string>>();
    for (const [, name, number] of head.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const cmap = /\/ToUnicode (\d+) 0 R/.exec(all.get(Number(number))?.head ?? '')?.[1];
      fonts.set(name, glyphs(all.get(Number(cmap))?.stream ?? ''));
    }
    const content = all.get(Number(/\/Contents (\d+) 0 R/.exec(head)?.[1]))?.stream ?? '';
    let font = new Map<number, string>();
    let text = '';
    for (const [token] of content.matchAll(/\/F\d+ [\d.]+ Tf|<[0-9A-Fa-f]+>/g)) {
      if (token.startsWith('/')) font = fonts.get(/F\d+/.exec(token)?.[0] ?? '') ?? font;
      else
        for (const hex of token.slice(1, -1).match(/.{4}/g) ?? [])
          text += font.get(Number.parseInt(hex, 16)) ?? '';
    }
    // Fonts have one glyph for fi, fl, ff.
    return text.normalize('NFKC').replace(/\s/g, '');
  });
}
