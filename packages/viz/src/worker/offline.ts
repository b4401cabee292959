/**
 * The service worker's entry: keeps the whole page on the device, so that it opens without a network.
 * Its two constants are put in when the page is built (build/offline-list.ts).
 *
 * The page itself is asked for anew on every visit as long as somebody answers in time; everything else
 * has its content's hash in its name and comes from what is kept. A newer page that has arrived waits
 * until no older one is open, or until it is told to take over: so none loses its parts while it runs.
 */
declare const __FILES__: readonly string[];
declare const __VERSION__: string;

/** What the page says to a waiting worker. */
export type OfflineWord =
  /** Is the page that runs these scripts yours? Answered by true or false on the port sent along. */
  { readonly kind: 'whose'; readonly scripts: readonly string[] } | { readonly kind: 'take-over' };

interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface AskedEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
// The DOM and worker type libraries cannot both be loaded; this is all that is used of it.
const scope = self as unknown as {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', act: (e: LastingEvent) => void): void;
  addEventListener(kind: 'fetch', act: (e: AskedEvent) => void): void;
  addEventListener(kind: 'message', act: (e: MessageEvent<OfflineWord>) => void): void;
};

/** How long the network may take for the page itself before the kept one is shown, ms. */
const PATIENCE = 2500;

const HOME = scope.registration.scope;
/** Others may keep things at the same address; what begins so is ours. */
const OURS = `wheelwell ${HOME} `;
const KEPT = OURS + __VERSION__;
const address = (file: string): string => new URL(file, HOME).href;

async function keep(): Promise<void> {
  const cache = await caches.open(KEPT);
  // The browser's own cache may hold an older page under a name without a hash.
  const asks = __FILES__.map(
    (file) =>
      new Request(address(file), { cache: file.startsWith('assets/') ? 'default' : 'no-cache' }),
  );
  await cache.addAll(asks);
}

async function tidy(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== KEPT);
  await Promise.all(names.map((name) => caches.delete(name)));
}

async function kept(url: string): Promise<Response | undefined> {
  const cache = await caches.open(KEPT);
  return cache.match(url, { ignoreVary: true });
}

/** A page of ours: the newest when it comes in time, else the kept one. */
async function visited(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const own = await kept((origin + pathname).replace(/index\.html$/, ''));
  const asked = fetch(request);
  if (own === undefined) return asked;
  const late = new Promise<Response>((give) => setTimeout(() => give(own), PATIENCE));
  const newest = asked.then(
    (answer) => (answer.ok || answer.type === 'opaqueredirect' ? answer : own),
    () => own,
  );
  return Promise.race([newest, late]);
}

scope.addEventListener('install', (e) => e.waitUntil(keep()));
scope.addEventListener('activate', (e) => e.waitUntil(tidy().then(() => scope.clients.claim())));
scope.addEventListener('fetch', (e) => {
  const { request } = e;
  if (request.method !== 'GET' || !request.url.startsWith(HOME)) return;
  e.respondWith(
    request.mode === 'navigate'
      ? visited(request)
      : kept(request.url).then((own) => own ?? fetch(request)),
  );
});
scope.addEventListener('message', ({ data, ports }) => {
  if (data.kind === 'take-over') void scope.skipWaiting();
  else {
    const own = new Set(__FILES__.map(address));
    ports[0]?.postMessage(data.scripts.every((script) => own.has(script)));
  }
});
