/** The page's side of a map: the workers it takes, and an end to them when it is cancelled. */
import type { MapJob, MapReply, MapRequest } from './blow-down-message.js';

/** More do not help: they wait for the one who leads, and the page needs a core too. */
const MOST = 4;

export class Mapper {
  #workers: Worker[] = [];

  /** Makes a map; what was being made before is given up. */
  make(request: MapRequest, hear: (reply: MapReply) => void): void {
    this.stop();
    const players = Math.max(1, Math.min(MOST, navigator.hardwareConcurrency));
    const channels = Array.from({ length: players }, () => new MessageChannel());
    let open = 2;
    const heard = (reply: MapReply): void => {
      if (reply.kind === 'whole' || reply.kind === 'least') open -= 1;
      // Idle workers cost memory; a map is asked for now and then.
      if (open === 0 || reply.kind === 'broken') this.stop();
      hear(reply);
    };
    channels.forEach(({ port2 }, i) => {
      const job: MapJob = { kind: 'player', request, port: port2, least: i === 0 };
      this.#hire(job, [port2], heard);
    });
    const ports = channels.map((c) => c.port1);
    this.#hire({ kind: 'map', request, ports }, ports, heard);
  }

  stop(): void {
    for (const worker of this.#workers) worker.terminate();
    this.#workers = [];
  }

  #hire(job: MapJob, transfer: Transferable[], hear: (reply: MapReply) => void): void {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      type: 'module',
      name: 'wheelwell map',
    });
    worker.onmessage = (e: MessageEvent<MapReply>) => {
      if (this.#workers.includes(worker)) hear(e.data);
    };
    worker.onerror = (e) =>
      hear({ kind: 'broken', message: e.message || 'the simulation could not be started' });
    worker.postMessage(job, transfer);
    this.#workers.push(worker);
  }
}
