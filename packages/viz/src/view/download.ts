/** Gives the user a file; nothing leaves the machine. */
export function download(name: string, content: string | Blob, type: string): void {
  const blob =
    typeof content === 'string' ? new Blob([content], { type: `${type};charset=utf-8` }) : content;
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // After the click has been taken up.
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

/** A title as a file's name. */
export function fileName(title: string, ending: string): string {
  const words = title.toLowerCase().match(/[a-z0-9]+/g) ?? ['file'];
  return `${words.slice(0, 6).join('-')}.${ending}`;
}
