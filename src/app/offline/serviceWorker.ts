import type { EditionAnswer, EditionRequest } from './editionMessage.ts';

/** Filled in when the page is built: every file of this edition, and a mark that changes with any of them. */
declare const EDITION: { readonly mark: string; readonly files: readonly string[] };

/** What of a service worker's surroundings is used here; the browser's own types know only a page's. */
interface WorkerEvent extends Event {
  readonly request: Request;
  readonly source: { postMessage(answer: EditionAnswer): void } | null;
  readonly data: EditionRequest;
  waitUntil(work: Promise<unknown>): void;
  respondWith(response: Promise<Response>): void;
}
interface WorkerScope {
  readonly registration: { readonly scope: string; update(): Promise<unknown> };
  readonly clients: { claim(): Promise<void>; matchAll(options: object): Promise<readonly object[]> };
  skipWaiting(): Promise<void>;
  addEventListener(type: string, listener: (event: WorkerEvent) => void): void;
}
const worker = self as unknown as WorkerScope;

/** Other pages of this origin have caches too. */
const PREFIX = `coverwright ${worker.registration.scope} `;
const CACHE = PREFIX + EDITION.mark;

/** Files are told apart by their names alone. */
const ANY = { ignoreSearch: true, ignoreVary: true };

/** Fetches all files of this edition or none. */
async function fill(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(EDITION.files.map((file) => new Request(file, { cache: 'reload' })));
}

// Where a file cannot be fetched, the edition before stays in use.
worker.addEventListener('install', (event) => event.waitUntil(fill()));

let refilling: Promise<void> | null = null;

/** Fills a cache again that was emptied, unless the server has another edition by now: the two must not be mixed. */
function refill(): Promise<void> {
  const refillIfSame = async (): Promise<void> => {
    const script = await fetch('./sw.js', { cache: 'no-store' });
    if ((await script.text()).includes(EDITION.mark)) await fill();
    else await worker.registration.update();
  };
  // Without a network the next file that is missed tries again.
  refilling ??= refillIfSame()
    .catch(() => {})
    .finally(() => {
      refilling = null;
    });
  return refilling;
}

const FILES = new Set(EDITION.files.map((file) => new URL(file, worker.registration.scope).pathname));

// Comes when no window of the edition before is left, or at the maker's word.
worker.addEventListener('activate', (event) => {
  const clear = async (): Promise<void> => {
    const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await worker.clients.claim();
  };
  event.waitUntil(clear());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  const answer = async (): Promise<Response> => {
    const cache = await caches.open(CACHE);
    const kept = await cache.match(request.mode === 'navigate' ? './index.html' : request, ANY);
    if (kept !== undefined) return kept;
    if (request.mode === 'navigate' || FILES.has(new URL(request.url).pathname)) event.waitUntil(refill());
    return fetch(request);
  };
  event.respondWith(answer());
});

worker.addEventListener('message', (event) => {
  if (event.data !== 'take') return;
  const take = async (): Promise<void> => {
    const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
    // Another window would lose the parts that it has not fetched yet.
    if (windows.length > 1) return event.source?.postMessage('othersAreOpen');
    await worker.skipWaiting();
    event.source?.postMessage('taken');
  };
  event.waitUntil(take());
});
