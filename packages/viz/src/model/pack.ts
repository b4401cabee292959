/** A text as letters that a link can carry: deflated (with its check sum), in base64 as of RFC 4648, section 5. */

/** A scenario has at most this many characters; what unpacks to more is something else. */
const LARGEST = 5e6;

export async function pack(text: string): Promise<string> {
  const packed = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate'));
  const bytes = new Uint8Array(await new Response(packed).arrayBuffer());
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** @throws when it has been cut short, changed, or would be far too large. */
export async function unpack(letters: string): Promise<string> {
  if (!/^[\w-]+$/.test(letters)) throw new Error('not packed text');
  const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = Uint8Array.from(binary, (c) => c.charCodeAt(0));
  const reader = new Blob([bytes])
    .stream()
    .pipeThrough(new DecompressionStream('deflate'))
    .getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    text += decoder.decode(value, { stream: true });
    if (text.length > LARGEST) {
      await reader.cancel();
      throw new Error('too large');
    }
  }
}
