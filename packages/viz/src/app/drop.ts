/** Files dropped anywhere on the page. */
export function listenDrops(
  target: Window,
  over: (something: boolean) => void,
  files: (dropped: readonly File[]) => void,
  signal: AbortSignal,
): void {
  const dragover = (e: DragEvent): void => {
    if (e.dataTransfer?.types.includes('Files') !== true) return;
    e.preventDefault();
    over(true);
  };
  const dragleave = (e: DragEvent): void => {
    if (e.relatedTarget === null) over(false);
  };
  const drop = (e: DragEvent): void => {
    e.preventDefault();
    over(false);
    files([...(e.dataTransfer?.files ?? [])]);
  };
  target.addEventListener('dragover', dragover, { signal });
  target.addEventListener('dragleave', dragleave, { signal });
  target.addEventListener('drop', drop, { signal });
}
