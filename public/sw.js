// Keeps the whole program on the machine, so that it opens with no network from the first visit on.
// kept-files.js is written by the build: the files, and a name that changes with their content.
importScripts('./kept-files.js')

const { name, paths } = self.KEPT
const SLOW_MS = 2000

/** A page is worth a short wait for a newer one; what it asks for then carries its content in its name. */
const newest = async (request) => {
  const late = new Promise((_resolve, reject) => setTimeout(reject, SLOW_MS))
  try {
    const response = await Promise.race([fetch(request), late])
    return response.ok ? response : await kept(request)
  } catch {
    return kept(request)
  }
}

const kept = async (request) => {
  // Servers vary their answers by Origin, which only some of the requests carry.
  const options = { ignoreSearch: true, ignoreVary: true }
  const page = request.mode === 'navigate' ? './' : undefined
  const copy = (await caches.match(request, options)) ?? (page && (await caches.match(page, options)))
  return copy ?? fetch(request)
}

self.addEventListener('install', (event) => {
  // Asked of the server anew, so that nothing stale comes out of the browser's other cache.
  const requests = paths.map((path) => new Request(path, { cache: 'no-cache' }))
  event.waitUntil(caches.open(name).then((cache) => cache.addAll(requests)))
})

self.addEventListener('activate', (event) => {
  const old = async () => (await caches.keys()).filter((each) => each.startsWith('fieldpair-') && each !== name)
  const tidy = old().then((names) => Promise.all(names.map((each) => caches.delete(each))))
  event.waitUntil(tidy.then(() => self.clients.claim()))
})

self.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return
  event.respondWith(request.mode === 'navigate' ? newest(request) : kept(request))
})
