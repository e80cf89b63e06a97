import { CacheFirst, NetworkFirst, Serwist, type SerwistPlugin } from 'serwist'
import { awayPage, CALL, type KeptPage, NEWS } from '#app/_words/away.ts'
import { type Call, type News, readCall, readNews } from './call.ts'
import { FILES, PAGES, type ToPage, type ToWorker } from './messages.ts'
import { isKeptPage, wayOf } from './ways.ts'

declare const self: ServiceWorkerGlobalScope
/** What this build was made of. */
declare const BUILD: string
/** All that its pages may ask for while they are open. */
declare const STATIC: readonly string[]

const pages = `${PAGES}${BUILD}`
const files = `${FILES}${BUILD}`
/** Beside a kept page: the name of its evening. */
const NAME = 'x-tableward-name'

// --- pages and files

const isWhole = (response: Response): boolean => response.status === 200 && response.type === 'basic' && !response.redirected

const forget = (prefixes: readonly string[]): Promise<unknown> =>
  caches
    .keys()
    .then((names) =>
      Promise.all(
        names
          .filter((name) => prefixes.some((prefix) => name.startsWith(prefix)) && name !== pages && name !== files)
          .map((name) => caches.delete(name)),
      ),
    )

/** Only what was shown to somebody who may see it is kept, and it goes when the server says that they may no longer. */
const onlyWhole: SerwistPlugin = {
  cacheKeyWillBeUsed: async ({ request }) => new URL(request.url).pathname,
  cacheWillUpdate: async ({ response }) => (isWhole(response) ? response : null),
  fetchDidSucceed: async ({ request, response }) => {
    // A server that starts, or a proxy without one, is as good as none.
    if (response.status >= 500) throw new Error(`answered ${response.status}`)
    const { pathname } = new URL(request.url)
    if (response.type === 'opaqueredirect') await caches.delete(pages)
    else if (response.status === 404 && isKeptPage(pathname)) await (await caches.open(pages)).delete(pathname)
    return response
  },
}

/** An answer that knows its own address would take from a worker's the part that tells it what to run. */
const asAsked: SerwistPlugin = {
  cachedResponseWillBeUsed: async ({ cachedResponse }) =>
    cachedResponse ? new Response(cachedResponse.body, { status: cachedResponse.status, headers: cachedResponse.headers }) : null,
}

const keptPages = async (): Promise<readonly KeptPage[]> => {
  const cache = await caches.open(pages)
  return Promise.all(
    (await cache.keys()).map(async (request) => ({
      path: new URL(request.url).pathname,
      name: decodeURIComponent((await cache.match(request))?.headers.get(NAME) ?? ''),
    })),
  )
}

const away = async (): Promise<Response> =>
  new Response(awayPage(await keptPages()), {
    status: 503,
    headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' },
  })

const keepFile = async (cache: Cache, path: string): Promise<void> => {
  if (await cache.match(path)) return
  const response = await fetch(path)
  if (isWhole(response)) await cache.put(path, response)
}

const keepPage = async (path: string, name: string): Promise<void> => {
  const cache = await caches.open(pages)
  const known = await cache.match(path)
  const response = known ?? (await fetch(path, { headers: { accept: 'text/html' } }))
  if (!isWhole(response) && !known) return
  const headers = new Headers(response.headers)
  headers.set(NAME, encodeURIComponent(name))
  await cache.put(path, new Response(await response.text(), { headers }))
}

const keep = async ({ name, pages: paths }: ToWorker): Promise<void> => {
  await Promise.all(paths.filter(isKeptPage).map((path) => keepPage(path, name)))
  const cache = await caches.open(files)
  // What does not come now is asked for again when it is used.
  await Promise.allSettled(STATIC.map((path) => keepFile(cache, path)))
}

const asked = (request: Request) =>
  wayOf({
    method: request.method,
    isPage: request.mode === 'navigate',
    url: new URL(request.url),
    origin: self.location.origin,
  })

const firstNetwork = new NetworkFirst({ cacheName: pages, networkTimeoutSeconds: 4, plugins: [onlyWhole] })

const serwist = new Serwist({
  skipWaiting: true,
  clientsClaim: true,
  disableDevLogs: true,
  runtimeCaching: [
    {
      matcher: ({ request }) => asked(request) === 'kept-page',
      handler: (options) => firstNetwork.handle(options).catch(away),
    },
    {
      matcher: ({ request }) => asked(request) === 'file',
      handler: new CacheFirst({ cacheName: files, plugins: [onlyWhole, asAsked] }),
    },
    { matcher: ({ request }) => asked(request) === 'other-page', handler: ({ request }) => fetch(request).catch(away) },
  ],
})
self.addEventListener('activate', (event) => event.waitUntil(forget([PAGES, FILES])))
serwist.addEventListeners()

self.addEventListener('message', (event) => {
  const said = event.data as ToWorker | null
  if (said?.kind === 'keep') event.waitUntil(keep(said).catch((why: unknown) => console.warn('not kept on this device', why)))
})

// --- calls

const PATIENCE_MS = 400

/** Whether an open page says that it rings: one that sleeps says nothing. */
const rings = (client: Client, alert: string): Promise<boolean> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    setTimeout(() => resolve(false), PATIENCE_MS)
    port1.onmessage = ({ data }) => resolve(data === true)
    client.postMessage({ kind: 'do-you-ring', alert } satisfies ToPage, [port2])
  })

const pagesAt = async (path: string): Promise<readonly WindowClient[]> =>
  (await self.clients.matchAll({ type: 'window', includeUncontrolled: true })).filter(({ url }) => new URL(url).pathname === path)

/** Every call is shown, as browsers demand; where a page rings itself it makes no sound and goes at once. */
const tell = async ({ alert, path }: Call): Promise<void> => {
  const open = await pagesAt(path)
  const isRung = (await Promise.all(open.map((page) => rings(page, alert)))).includes(true)
  const tag = `${path} ${alert}`
  await self.registration.showNotification(CALL.title, {
    body: CALL.body,
    tag,
    silent: isRung,
    icon: '/icons/192.png',
    badge: '/icons/badge.png',
    data: path,
  })
  if (isRung) for (const shown of await self.registration.getNotifications({ tag })) shown.close()
  else for (const page of open) page.postMessage({ kind: 'was-told', alert } satisfies ToPage)
}

/** Without a sound: nobody has to come at once. */
const tellNews = ({ notice, path }: News): Promise<void> =>
  self.registration.showNotification(CALL.title, {
    body: NEWS[notice] ?? CALL.body,
    tag: `${path} ${notice}`,
    silent: true,
    icon: '/icons/192.png',
    badge: '/icons/badge.png',
    data: path,
  })

self.addEventListener('push', (event) => {
  const text = event.data?.text() ?? ''
  const [call, news] = [readCall(text), readNews(text)]
  if (call) event.waitUntil(tell(call))
  else if (news) event.waitUntil(tellNews(news))
})

const lead = async (path: string): Promise<void> => {
  const [page] = await pagesAt(path)
  if (page) await page.focus()
  else await self.clients.openWindow(path)
}

self.addEventListener('notificationclick', (event) => {
  event.notification.close()
  const path: unknown = event.notification.data
  if (typeof path === 'string') event.waitUntil(lead(path))
})
