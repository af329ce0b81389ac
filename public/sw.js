// Keeps one whole release of the program on the machine, and opens it from there: with no network, and whatever the server has by
// then. A newer release takes its place when every file of it has come as it was built, and no window is open on the old one.
// kept-files.js is written by the build: the name of the release, and the SHA-256 of each of its files.
importScripts('./kept-files.js')

const { name, files } = self.RELEASE
const SCOPE = self.registration.scope
/** Another copy of the program on this server has another path, and keeps under other names. */
const OWN = `fieldpair ${new URL(SCOPE).pathname} `
const CACHE = OWN + name

const AT_ONCE = 6
/** A file that does not come in that time is asked for once more, and then at the next visit. */
const SLOW_MS = 120_000

/** Servers say of what they do not know anything, or the wrong thing: the ending says it better. */
const TYPES = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  tif: 'image/tiff',
  wasm: 'application/wasm',
  json: 'application/json',
  geojson: 'application/geo+json',
  webmanifest: 'application/manifest+json',
  txt: 'text/plain; charset=utf-8',
}
const typeOf = (path) => TYPES[path === './' ? 'html' : path.split('.').at(-1)] ?? 'application/octet-stream'

const urlOf = (path) => new URL(path, SCOPE).href

async function hashOf(bytes) {
  const digest = await crypto.subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

const isWhole = async (path, response) => (await hashOf(await response.clone().arrayBuffer())) === files[path]

/** A file from the server, exactly as it was built. Rejects where something else comes: an error, a page in its place, an older one. */
async function fetched(path) {
  // The second time under an address that nothing between here and the server can have kept.
  const ways = [
    [urlOf(path), 'no-cache'],
    [`${urlOf(path)}?release=${encodeURIComponent(name)}`, 'reload'],
  ]
  for (const [url, cache] of ways) {
    const response = await fetch(url, { cache, signal: AbortSignal.timeout(SLOW_MS) }).catch(() => undefined)
    const bytes = response?.ok && (await response.arrayBuffer().catch(() => undefined))
    if (bytes && (await hashOf(bytes)) === files[path])
      return new Response(bytes, { headers: { 'content-type': typeOf(path) } })
  }
  throw new Error(`${path} has not come as it was built`)
}

const ownCaches = async () => (await caches.keys()).filter((each) => each.startsWith(OWN))

/** What an earlier release has of a file, if it is the same file. */
async function fromEarlier(path) {
  for (const each of await ownCaches()) {
    const copy = each !== CACHE && (await (await caches.open(each)).match(urlOf(path)))
    if (copy && (await isWhole(path, copy))) return copy
  }
  return undefined
}

/** Brings every file that is not kept yet; what has come stays for the next try. Rejects where one does not come. */
async function gather(isChecked) {
  const cache = await caches.open(CACHE)
  const paths = Object.keys(files)
  const work = async () => {
    for (let path = paths.shift(); path; path = paths.shift()) {
      const copy = await cache.match(urlOf(path))
      if (copy && (!isChecked || (await isWhole(path, copy)))) continue
      await cache.put(urlOf(path), (await fromEarlier(path)) ?? (await fetched(path)))
    }
  }
  await Promise.all(Array.from({ length: AT_ONCE }, work))
}

/** The file of the release that an address means; undefined where it means none. */
function pathOf(url) {
  const [address] = url.split(/[?#]/)
  if (!address.startsWith(SCOPE)) return undefined
  const rest = address.slice(SCOPE.length)
  const path = rest === '' || rest === 'index.html' ? './' : rest
  return Object.hasOwn(files, path) ? path : undefined
}

/** From what is kept. What the browser has cleared comes from the server, as it was built or not at all. */
async function answer(path, request) {
  const cache = await caches.open(CACHE)
  const copy = await cache.match(urlOf(path))
  if (copy) return copy
  try {
    const response = await fetched(path)
    await cache.put(urlOf(path), response.clone()).catch(() => undefined)
    return response
  } catch {
    // Of the page anything is better than nothing: it says what is missing.
    return request.mode === 'navigate' ? fetch(request) : Response.error()
  }
}

/** Whether a cache is of this very copy, from before releases were checked. */
async function isFormer(each) {
  if (!each.startsWith('fieldpair-')) return false
  return (await (await caches.open(each)).match(SCOPE)) !== undefined
}

async function tidy() {
  for (const each of await caches.keys())
    if ((each.startsWith(OWN) && each !== CACHE) || (await isFormer(each))) await caches.delete(each)
  await self.clients.claim()
}

/** A newer release does not come under an open window, but where it was opened just now and is the only one. */
async function takeOver() {
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true })
  if (windows.filter(({ url }) => pathOf(url) !== undefined).length <= 1) await self.skipWaiting()
}

self.addEventListener('install', (event) => event.waitUntil(gather(false)))
self.addEventListener('activate', (event) => event.waitUntil(tidy()))
self.addEventListener('fetch', (event) => {
  const path = event.request.method === 'GET' ? pathOf(event.request.url) : undefined
  if (path !== undefined) event.respondWith(answer(path, event.request))
})
self.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(takeOver())
  if (event.data === 'mend')
    event.waitUntil(
      gather(true)
        .catch(() => undefined)
        .then(() => event.ports[0].postMessage('done')),
    )
})
