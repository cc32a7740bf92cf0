/**
 * Keeps the page and the last job on this device, so that both open without a network.
 * The page's own files carry their content in their names: once kept they never change. What the server says is asked first,
 * and what it said last is shown when it does not answer.
 */
const shelf = 'dawnlift-1'

self.addEventListener('install', event => {
  event.waitUntil(
    caches
      .open(shelf)
      .then(cache => cache.add('/'))
      .then(() => self.skipWaiting()),
  )
})

self.addEventListener('activate', event => {
  const old = names => names.filter(name => name !== shelf)
  event.waitUntil(
    caches
      .keys()
      .then(names => Promise.all(old(names).map(name => caches.delete(name))))
      .then(() => self.clients.claim()),
  )
})

self.addEventListener('fetch', event => {
  const { request } = event
  const { pathname, origin } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin || pathname === '/api/events') return
  if (pathname.startsWith('/assets/')) event.respondWith(keptFirst(request))
  else event.respondWith(askedFirst(request.mode === 'navigate' ? '/' : request))
})

async function keptFirst(request) {
  const kept = await caches.match(request)
  return kept ?? keep(request, await fetch(request))
}

async function askedFirst(request) {
  try {
    return await keep(request, await fetch(request))
  } catch (reason) {
    const kept = await caches.match(request)
    if (kept) return kept
    throw reason
  }
}

async function keep(request, answer) {
  if (answer.ok) (await caches.open(shelf)).put(request, answer.clone())
  return answer
}
