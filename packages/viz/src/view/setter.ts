/** Sets attributes and words of a drawing's parts, and touches nothing that is as it should be. */

export type Setter = (part: string, name: string, value: string) => void;

/** `part` is a selector within the group, found once; empty for the group itself. */
export function setter(group: Element): Setter {
  const parts = new Map<string, Element | null>();
  const values = new Map<string, string>();
  return (part, name, value) => {
    const key = `${part} ${name}`;
    if (values.get(key) === value) return;
    values.set(key, value);
    const found = parts.has(part)
      ? parts.get(part)
      : part === ''
        ? group
        : group.querySelector(part);
    parts.set(part, found ?? null);
    // It may be as it should be from before: setting it once more would have it drawn anew.
    if (name === 'text') {
      if (found && found.textContent !== value) found.textContent = value;
    } else if (found?.getAttribute(name) !== value) found?.setAttribute(name, value);
  };
}
