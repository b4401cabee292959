/** Brings an element into sight inside the list it belongs to, and leaves the page where it is. */
export function reveal(element: Element | null, margin = 0): void {
  if (element === null) return;
  const list = scrollerOf(element);
  if (list === undefined) return;
  const box = element.getBoundingClientRect();
  const frame = list.getBoundingClientRect();
  if (box.top < frame.top + margin) list.scrollTop += box.top - frame.top - margin;
  else if (box.bottom > frame.bottom)
    list.scrollTop += Math.min(box.bottom - frame.bottom, box.top - frame.top - margin);
}

/** The nearest scrolling ancestor, across shadow roots. */
function scrollerOf(element: Element): Element | undefined {
  let at: Node | null = element.parentNode;
  while (at !== null) {
    if (at instanceof ShadowRoot) {
      at = at.host;
      continue;
    }
    if (at instanceof HTMLElement && /auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
    at = (at instanceof Element ? at.assignedSlot : null) ?? at.parentNode;
  }
  return undefined;
}
