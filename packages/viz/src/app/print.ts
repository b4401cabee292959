/** Puts the panel that is on top on paper, and nothing else of the page. */
export function printPanel(host: HTMLElement): void {
  host.setAttribute('printing', '');
  window.addEventListener('afterprint', () => host.removeAttribute('printing'), { once: true });
  window.print();
}
