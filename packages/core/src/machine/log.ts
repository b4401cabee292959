import type { LogEntry } from '../define/index.js';

/** The event log while it grows: entries, and the last one of every name. */
export class Log {
  readonly entries: LogEntry[] = [];
  private readonly last = new Map<string, number>();

  add(entry: Omit<LogEntry, 'index'>): LogEntry {
    const full = { ...entry, index: this.entries.length };
    this.entries.push(full);
    this.last.set(entry.device, full.index);
    return full;
  }

  /** Index of the last entry of a device, -1 when it has none. */
  lastOf(device: string): number {
    return this.last.get(device) ?? -1;
  }

  /** The latest among the last entries of several devices, -1 when none has any. */
  latestOf(devices: readonly string[]): number {
    let latest = -1;
    for (const d of devices) latest = Math.max(latest, this.lastOf(d));
    return latest;
  }
}
