/** The browser's storage as the drawer that work is kept in; pages tell each other which names they use. */
import type { Drawer } from '../model/kept.js';

const PREFIX = 'wheelwell.';
const CHANNEL = 'wheelwell.work';
/** How long other pages have to speak up, ms. */
const WAIT = 250;

type Word = { readonly kind: 'who' } | { readonly kind: 'here'; readonly name: string };

export class BrowserDrawer implements Drawer {
  readonly #channel = new BroadcastChannel(CHANNEL);
  readonly #heard = new Set<string>();

  names(): readonly string[] {
    try {
      return Object.keys(localStorage)
        .filter((key) => key.startsWith(PREFIX))
        .map((key) => key.slice(PREFIX.length));
    } catch {
      return [];
    }
  }

  get(name: string): string | null {
    try {
      return localStorage.getItem(PREFIX + name);
    } catch {
      return null;
    }
  }

  put(name: string, text: string): string {
    try {
      localStorage.setItem(PREFIX + name, text);
      return '';
    } catch (error) {
      const full = error instanceof DOMException && error.name === 'QuotaExceededError';
      return full
        ? "This browser's storage is full: changes are not kept over a reload. Save them as a file."
        : 'This browser keeps nothing for the page: changes are lost at a reload. Save them as a file.';
    }
  }

  remove(name: string): void {
    try {
      localStorage.removeItem(PREFIX + name);
    } catch {
      // Closed storage has nothing to remove.
    }
  }

  others(own: string): Promise<ReadonlySet<string>> {
    this.#channel.onmessage = ({ data }: MessageEvent<Word>) => {
      if (data.kind === 'here') this.#heard.add(data.name);
      else this.#say({ kind: 'here', name: own });
    };
    this.#say({ kind: 'who' });
    return new Promise((resolve) => setTimeout(() => resolve(this.#heard), WAIT));
  }

  #say(word: Word): void {
    this.#channel.postMessage(word);
  }
}

/** A name no other page has. (randomUUID is there in secure contexts only.) */
export function newName(): string {
  return [...crypto.getRandomValues(new Uint32Array(3))].map((n) => n.toString(36)).join('');
}
