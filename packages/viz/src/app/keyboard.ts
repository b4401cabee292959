/** The keys of the page: one table, read by the handler and by the help. */

export interface Deeds {
  /** What the bench at work does with a key of its own; false when it is none. */
  readonly bench: (key: string) => boolean;
  readonly toggle: () => void;
  readonly event: (by: -1 | 1) => void;
  readonly tick: (by: number) => void;
  readonly flag: (by: -1 | 1) => void;
  readonly rate: (by: -1 | 1) => void;
  readonly zoom: (factor: number) => void;
  readonly whole: () => void;
  readonly ends: (end: boolean) => void;
  readonly open: () => void;
  readonly panel: (index: number) => void;
  readonly loop: (what: 'a' | 'b' | 'r') => void;
  readonly hold: () => void;
  readonly letGo: () => void;
  readonly link: () => void;
  readonly units: () => void;
  readonly large: () => void;
  readonly theme: () => void;
  readonly help: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly save: () => void;
}

export interface Key {
  /** As in KeyboardEvent.key; letters in lower case, with shift where it is told. */
  readonly keys: readonly string[];
  readonly shown: string;
  readonly what: string;
  readonly act: (deeds: Deeds, key: string) => void;
  /** The browser has a use for it, too. */
  readonly shared?: true;
}

export const KEYS: readonly Key[] = [
  { keys: [' '], shown: 'Space', what: 'play or pause', act: (d) => d.toggle() },
  {
    keys: ['ArrowLeft', 'ArrowRight'],
    shown: '← →',
    what: 'former, next event',
    act: (d, k) => d.event(k === 'ArrowLeft' ? -1 : 1),
  },
  {
    keys: [',', '.'],
    shown: ', .',
    what: 'one tick back, on',
    act: (d, k) => d.tick(k === ',' ? -1 : 1),
  },
  { keys: ['f'], shown: 'F', what: 'next flag', act: (d) => d.flag(1) },
  { keys: ['F'], shown: 'Shift F', what: 'former flag', act: (d) => d.flag(-1) },
  {
    keys: ['Home', 'End'],
    shown: 'Home End',
    what: 'start, end of the run',
    act: (d, k) => d.ends(k === 'End'),
  },
  {
    keys: ['[', ']'],
    shown: '[ ]',
    what: 'slower, faster',
    act: (d, k) => d.rate(k === '[' ? -1 : 1),
  },
  {
    keys: ['a', 'b', 'r'],
    shown: 'A B R',
    what: 'loop starts here, ends here, on or off',
    act: (d, k) => d.loop(k === 'a' ? 'a' : k === 'b' ? 'b' : 'r'),
  },
  { keys: ['m'], shown: 'M', what: 'hold a mark; the time to the next one', act: (d) => d.hold() },
  {
    keys: ['Escape'],
    shown: 'Esc',
    what: 'let the marks go',
    act: (d) => d.letGo(),
    shared: true,
  },
  {
    keys: ['+', '=', '-'],
    shown: '+ −',
    what: 'chart closer, wider',
    act: (d, k) => d.zoom(k === '-' ? 0.5 : 2),
  },
  { keys: ['0'], shown: '0', what: 'chart shows the whole run', act: (d) => d.whole() },
  {
    keys: ['1', '2', '3', '4'],
    shown: '1 2 3 4',
    what: 'flags, events, faults, parameters',
    act: (d, k) => d.panel(Number(k) - 1),
  },
  { keys: ['c'], shown: 'C', what: 'copy a link to what is shown', act: (d) => d.link() },
  { keys: ['o'], shown: 'O', what: 'open a scenario file', act: (d) => d.open() },
  { keys: ['u'], shown: 'U', what: 'US or metric units', act: (d) => d.units() },
  { keys: ['l'], shown: 'L', what: 'large, for a room, and back', act: (d) => d.large() },
  { keys: ['t'], shown: 'T', what: 'light, dark or as the system', act: (d) => d.theme() },
  { keys: ['?'], shown: '?', what: 'this list', act: (d) => d.help() },
];

/** Keys with Ctrl (or Command): they act even where single keys are switched off. */
export const CHORDS: readonly (Omit<Key, 'act'> & {
  readonly act: (deeds: Deeds, shift: boolean) => void;
})[] = [
  {
    keys: ['z', 'y'],
    shown: 'Ctrl Z',
    what: 'take the last change back; with Shift make it again',
    act: (d, again) => (again ? d.redo() : d.undo()),
  },
  { keys: ['s'], shown: 'Ctrl S', what: 'save as a file', act: (d) => d.save() },
];

/** Elements that need these keys themselves. */
const OWN_SPACE = 'button, summary, input, select, textarea, a[href]';
const OWN_ALL = 'select, textarea, input:not([type=range]):not([type=checkbox])';
const OWN_ARROWS = 'input[type=range], [role=tab]';
const ARROWS = ['ArrowLeft', 'ArrowRight', 'Home', 'End'];

export function listen(target: Window, deeds: Deeds, on: () => boolean, signal: AbortSignal): void {
  const handler = (e: KeyboardEvent): void => {
    if (e.altKey || e.defaultPrevented) return;
    const within = e.composedPath()[0];
    const element = within instanceof Element ? within : undefined;
    if (e.ctrlKey || e.metaKey) {
      const name = e.key.toLowerCase();
      const chord = CHORDS.find((c) => c.keys.includes(name));
      // What is typed in a field is the field's to take back.
      if (chord === undefined || (name !== 's' && element?.matches(OWN_ALL) === true)) return;
      e.preventDefault();
      chord.act(deeds, e.shiftKey || name === 'y');
      return;
    }
    if (!on()) return;
    if (element?.closest('dialog') != null || element?.matches(OWN_ALL) === true) return;
    if (e.key === ' ' && element?.matches(OWN_SPACE) === true) return;
    if (ARROWS.includes(e.key) && element?.matches(OWN_ARROWS) === true) return;
    if (deeds.bench(e.key)) {
      e.preventDefault();
      return;
    }
    const key = KEYS.find((k) => k.keys.includes(e.key));
    if (key === undefined) return;
    if (key.shared !== true) e.preventDefault();
    key.act(deeds, e.key);
  };
  target.addEventListener('keydown', handler, { signal });
}
