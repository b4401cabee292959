/** The words of a link: how one is written, and how the fields of a part are taken one by one. */

/** What is wrong with a link, as a clause. */
export class BrokenLink extends Error {}

/** A word with everything but letters, digits and a few harmless signs escaped; blanks as plus. */
export const word = (text: string): string => encodeURIComponent(text).replaceAll('%20', '+');

/** So much of what is wrong is shown. */
const MOST = 30;
export const quoted = (text: string): string =>
  `“${text.length > MOST ? `${text.slice(0, MOST)}…` : text}”`;

/** The fields of one part, taken one by one. */
export class Fields {
  readonly #fields: readonly string[];
  #next = 0;

  constructor(
    private readonly key: string,
    private readonly raw: string,
  ) {
    this.#fields = raw.split(',');
  }

  get count(): number {
    return this.#fields.length;
  }

  first(): string | undefined {
    return this.#fields[0];
  }

  wrong(): BrokenLink {
    return new BrokenLink(`${quoted(this.key)} in it cannot be ${quoted(this.raw)}`);
  }

  text(): string {
    const field = this.#fields[this.#next++];
    if (field === undefined) throw this.wrong();
    try {
      return decodeURIComponent(field.replaceAll('+', ' '));
    } catch {
      throw this.wrong();
    }
  }

  number(least: number, most = Number.MAX_VALUE): number {
    const field = this.text();
    const value = field.trim() === '' ? NaN : Number(field);
    if (!(value >= least && value <= most)) throw this.wrong();
    return value;
  }

  one<T extends string>(allowed: readonly T[]): T {
    const field = this.text();
    const found = allowed.find((a) => a === field);
    if (found === undefined) throw this.wrong();
    return found;
  }

  /** Nothing may be left over. */
  end(): void {
    if (this.#next !== this.#fields.length) throw this.wrong();
  }
}
