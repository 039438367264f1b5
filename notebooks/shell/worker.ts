/**
 * The service worker: after the first visit the whole notebook works with the network off. The build writes the list of
 * files and their common fingerprint over the two names below. Own copies come first; a newer notebook is fetched beside
 * the old one and takes over when the reader says so, or when the last page is closed.
 */
declare const FILES: readonly string[];
declare const VERSION: string;

// The types of workers and of pages exclude each other in one program; this is all that is used.
interface WorkerEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface FetchEvent extends WorkerEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  readonly location: Location;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: WorkerEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: FetchEvent) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}
const worker = globalThis as unknown as Worker;

const home = new URL('./', worker.location.href);
// Several notebooks may live under one host, each in its folder.
const family = `evenhoof ${home.pathname} `;
const current = family + VERSION;

async function keep(): Promise<void> {
  const cache = await caches.open(current);
  await cache.addAll(FILES.map((file) => new Request(new URL(file, home), { cache: 'no-cache' })));
}

async function forgetOlder(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(family) && name !== current).map((name) => caches.delete(name)),
  );
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const address = new URL(request.url);
  if (address.pathname === home.pathname) address.pathname += 'index.html';
  const cache = await caches.open(current);
  return (await cache.match(address, { ignoreSearch: true })) ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(keep()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOlder()));
worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && event.request.url.startsWith(home.href))
    event.respondWith(answer(event.request));
});
