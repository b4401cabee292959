/** A file server that can be stopped, started again at the same address, and given another folder. */
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

export class FileServer {
  /** What it was asked for, oldest first. */
  readonly asked: string[] = [];
  #server: Server | undefined;
  #port = 0;

  constructor(public folder: string) {}

  get address(): string {
    return `http://127.0.0.1:${this.#port}/`;
  }

  async start(): Promise<void> {
    const server = createServer((request, response) => {
      const path = new URL(request.url ?? '/', this.address).pathname;
      this.asked.push(path);
      const file = path.endsWith('/') ? `${path}index.html` : path;
      readFile(join(this.folder, file)).then(
        (content) =>
          response
            .writeHead(200, { 'content-type': KINDS[extname(file)] ?? 'text/plain' })
            .end(content),
        () => response.writeHead(404).end(),
      );
    });
    await new Promise<void>((done) => server.listen(this.#port, '127.0.0.1', done));
    this.#server = server;
    this.#port = (server.address() as AddressInfo).port;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = undefined;
    if (server === undefined) return;
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  }
}
