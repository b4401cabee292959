/** What the browser remembers between visits: theme, units, whether single keys act. */

export type Theme = 'auto' | 'light' | 'dark';
export const THEMES: readonly Theme[] = ['auto', 'light', 'dark'];

export const THEME_WORD: Readonly<Record<Theme, string>> = {
  auto: 'Theme: system',
  light: 'Theme: light',
  dark: 'Theme: dark',
};

/** Reads a remembered word; the first of `allowed` when none is kept or storage is closed. */
export function recall<T extends string>(name: string, allowed: readonly [T, ...T[]]): T {
  try {
    const kept = localStorage.getItem(`wheelwell.${name}`);
    return allowed.find((a) => a === kept) ?? allowed[0];
  } catch {
    return allowed[0];
  }
}

export function remember(name: string, value: string): void {
  try {
    localStorage.setItem(`wheelwell.${name}`, value);
  } catch {
    // Storage may be closed to the page; then it starts from the defaults next time.
  }
}

export function applyTheme(theme: Theme): void {
  const root = document.documentElement;
  if (theme === 'auto') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', theme);
}

/** Larger things that outlive a reload, as JSON. */
export const shelf = {
  get(name: string): unknown {
    try {
      return JSON.parse(localStorage.getItem(`wheelwell.${name}`) ?? 'null') as unknown;
    } catch {
      return null;
    }
  },
  put(name: string, value: unknown): void {
    remember(name, JSON.stringify(value));
  },
};
