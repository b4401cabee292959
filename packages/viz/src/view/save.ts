/** Writes the scenario with its changes to a file: where the user says, or among the downloads. */
import type { EditWork } from '../model/edits.js';
import type { Store } from '../model/store.js';
import { whyOf } from '../worker/why.js';

interface Picker {
  readonly showSaveFilePicker?: (options: {
    readonly suggestedName: string;
    readonly types: readonly {
      readonly description: string;
      readonly accept: Readonly<Record<string, readonly string[]>>;
    }[];
  }) => Promise<FileSystemFileHandle>;
}

export async function saveAs(store: Store, work: EditWork): Promise<void> {
  const { source } = store.state;
  if (source === undefined) return;
  const name = source.file.split('/').at(-1) ?? source.file;
  try {
    // First: it needs the user's press, which does not wait for the worker.
    const { showSaveFilePicker } = window as Picker;
    const handle = await showSaveFilePicker?.call(window, {
      suggestedName: name,
      types: [{ description: 'Scenario', accept: { 'application/yaml': ['.yaml', '.yml'] } }],
    });
    const { edits } = store.state;
    const { text, issues } = await work.text();
    if (text === undefined) {
      const failure = `It was not saved: ${issues.map((i) => `${i.path}: ${i.message}`).join('; ')}.`;
      store.set({ failure, said: failure });
      return;
    }
    if (handle === undefined) download(name, text);
    else {
      const file = await handle.createWritable();
      await file.write(text);
      await file.close();
    }
    work.saved(edits, handle?.name ?? name);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    const why = whyOf(error);
    const failure = `It was not saved: ${why}`;
    store.set({ failure, said: failure });
  }
}

function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken its copy by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
