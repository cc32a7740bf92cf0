/**
 * Keeps the page and the last job on this device, so that both open without a network.
 * The page's own files carry their content in their names: once kept they never change. What the server says is asked first,
 * and what it said last is shown when it does not answer.
 */
const shelf = 'dawnlift-2'
/** Names of all files of the page, written when it is built. */
const list = '/offline-files.json'

self.addEventListener('install', event => {
  event.waitUntil(Promise.all([keepPage(), keepJob()]).then(() => self.skipWaiting()))
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
  else if (request.mode === 'navigate' && !pathname.startsWith('/api/')) {
    event.respondWith(askedFirst('/'))
    // A newer page may have come: its files are fetched before anybody needs them away from the network.
    event.waitUntil(keepPage().catch(() => undefined))
  } else event.respondWith(askedFirst(request))
})

/** Every file of the page, each fetched once; files of older pages go. */
async function keepPage() {
  const answer = await fetch(list)
  if (!answer.ok) throw new Error(`${list}: ${answer.status}`)
  const names = await answer.json()
  const kept = await caches.open(shelf)
  const have = new Set((await kept.keys()).map(request => new URL(request.url).pathname))
  await kept.addAll(['/', ...names.filter(name => !have.has(name))])
  const now = new Set(names)
  const stale = [...have].filter(name => name.startsWith('/assets/') && !now.has(name))
  await Promise.all(stale.map(name => kept.delete(name)))
}

/** The job as the server holds it when the page is first opened: it was asked for before anybody listened here. */
async function keepJob() {
  const answer = await fetch('/api/job')
  if (!answer.ok) return
  const kept = await caches.open(shelf)
  const { beside } = await answer.clone().json()
  await kept.put('/api/job', answer)
  await kept.addAll(beside.map(name => `/api/job/files/${encodeURIComponent(name)}`))
}

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
