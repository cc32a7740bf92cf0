import { existsSync, watch } from 'node:fs'
import { basename } from 'node:path'
import type { Problem } from '@dawnlift/core/result'
import { restOfLift } from '@dawnlift/formats/outputs'
import { logFile, toldFile } from '@dawnlift/formats/site-log'
import helmet from '@fastify/helmet'
import serveFiles from '@fastify/static'
import fastify, { type FastifyInstance, type FastifyReply } from 'fastify'
import type { FolderStore } from '../store/index.js'
import type { PlanKeeper } from './plan-keeper.js'

export interface ServerParts {
  readonly store: FolderStore
  readonly plans: PlanKeeper
  /** Folder of the built page. */
  readonly site: string
}

const largestUpload = 100 * 1024 * 1024
/** Names a browser on this machine may call us by; any other Host header is a page elsewhere trying to reach in. */
const loopback = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/

/** Pages that may call: our own, and those of a server under development. A page elsewhere could add to the log unasked. */
const ownOrigin = /^https?:\/\/(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/

const workerPolicy = "default-src 'self'; script-src 'self' 'unsafe-eval'"

/** The local server: the job folder over HTTP, its plan's files, and the page. Tested by calling its handler. */
export async function buildServer({ store, plans, site }: ServerParts): Promise<FastifyInstance> {
  const server = fastify({
    bodyLimit: largestUpload,
    logger: false,
    // an address that cannot be read never gets as far as the routes
    frameworkErrors: (error, request, reply) =>
      refuse(reply, error.statusCode ?? 400, [{ code: error.code, at: request.url, say: error.message }]),
  })
  await server.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        workerSrc: ["'self'", 'blob:'],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        // On loopback there is no certificate to upgrade to.
        upgradeInsecureRequests: null,
      },
    },
  })
  server.addContentTypeParser(
    /^application\/(yaml|octet-stream)$/,
    { parseAs: 'buffer' },
    (_request, body, done) => done(null, body),
  )
  server.addHook('onRequest', async (request, reply) => {
    if (!loopback.test(request.headers.host ?? ''))
      return refuse(reply, 403, [foreignHost(request.headers.host)])
    const { origin } = request.headers
    if (origin !== undefined && !ownOrigin.test(origin)) return refuse(reply, 403, [foreignOrigin(origin)])
    return undefined
  })
  jobRoutes(server, store)
  planRoutes(server, plans)
  eventRoute(server, store)
  server.setNotFoundHandler((request, reply) => {
    if (request.url.startsWith('/api/') || !existsSync(site)) {
      return refuse(reply, 404, [
        { code: 'server/not-found', at: request.url, say: `Nothing is kept at ${request.url}.` },
      ])
    }
    // A place of the app: the page finds its own way from the address.
    return reply.sendFile('index.html')
  })
  server.setErrorHandler((error: { statusCode?: number; message: string; code?: string }, request, reply) => {
    const disk = diskRefusals[error.code ?? '']
    if (disk) return refuse(reply, 507, [{ code: 'store/disk', at: request.url, say: disk }])
    if (error.code === 'ENOENT') return refuse(reply, 404, [awayFromFolder(request.url)])
    const status = error.statusCode ?? 500
    const say =
      status === 413
        ? `That is too large: ${largestUpload / 1024 ** 2} MB at the most.`
        : status < 500
          ? error.message
          : 'Dawnlift made a mistake here. The job on disk is as it was; the server goes on.'
    return refuse(reply, status, [{ code: error.code ?? 'server/bug', at: request.url, say }])
  })
  if (existsSync(site))
    await server.register(serveFiles, {
      root: site,
      cacheControl: false,
      setHeaders: (response, path) => {
        // The polygon engine makes its calls from text; only its worker may, and a worker's script brings its own rule.
        if (/planner\.worker-[^/]*\.js$/.test(path))
          response.setHeader('content-security-policy', workerPolicy)
      },
    })
  return server
}

function jobRoutes(server: FastifyInstance, store: FolderStore): void {
  server.get('/api/job', async () => ({
    document: store.read().text,
    revision: store.read().revision,
    id: store.id,
    beside: store.beside(),
  }))

  server.put('/api/job/document', async (request, reply) => {
    if (!isContent(request.body)) return refuse(reply, 415, [notContent(request.url)])
    const saved = store.save(String(request.body), request.headers['if-match'])
    return saved.ok ? { revision: saved.value.revision } : refuse(reply, 409, saved.problems)
  })

  server.get<{ Params: { name: string } }>('/api/job/files/:name', async (request, reply) => {
    const { name } = request.params
    const content = store.readBeside(name)
    if (!content) return refuse(reply, 404, [noFile(name)])
    return reply.type('application/octet-stream').send(content)
  })

  server.put<{ Params: { name: string } }>('/api/job/files/:name', async (request, reply) => {
    const { body } = request
    if (!isContent(body)) return refuse(reply, 415, [notContent(request.url)])
    const content = typeof body === 'string' ? new TextEncoder().encode(body) : body
    const added = store.addBeside(request.params.name, content)
    return added.ok ? { name: request.params.name } : refuse(reply, 422, added.problems)
  })

  server.post('/api/job/log', async (request, reply) => {
    if (typeof request.body !== 'string') return refuse(reply, 415, [notContent(request.url)])
    const added = store.addToLog(request.body.split('\n').filter(line => line !== ''))
    return added.ok ? { log: added.value } : refuse(reply, 422, added.problems)
  })

  server.delete<{ Params: { name: string } }>('/api/job/files/:name', async (request, reply) => {
    const { name } = request.params
    return store.removeBeside(name) ? { name } : refuse(reply, 404, [noFile(name)])
  })
}

/** What the disk says when it takes nothing more, in words and with a status of its own. */
const diskRefusals: Readonly<Record<string, string>> = {
  ENOSPC: 'The disk is full: make room on it.',
  EDQUOT: 'The disk quota is used up: make room or raise it.',
  EROFS: 'The disk can only be read: save the job to another folder.',
  EACCES: 'This program may not write there: give it leave, or save the job to another folder.',
  EPERM: 'This program may not write there: give it leave, or save the job to another folder.',
}

function planRoutes(server: FastifyInstance, plans: PlanKeeper): void {
  server.get('/api/plan', async (_request, reply) => {
    const planned = await plans.current()
    return planned.ok ? planned.value.plan : refuse(reply, 422, planned.problems)
  })

  server.get('/api/out', async (_request, reply) => {
    const planned = await plans.current()
    return planned.ok
      ? planned.value.outputs.map(({ name, title, mediaType }) => ({ name, title, mediaType }))
      : refuse(reply, 422, planned.problems)
  })

  server.get<{ Params: { lift: string; layer: string; pass: string } }>(
    '/api/restart/:lift/:layer/:pass',
    async (request, reply) => {
      const planned = await plans.current()
      if (!planned.ok) return refuse(reply, 422, planned.problems)
      const { lift, layer, pass } = request.params
      const text = restOfLift(planned.value.plan, { lift, layer: Number(layer), pass: Number(pass) })
      if (!text.ok) return refuse(reply, 404, text.problems)
      return reply
        .type('text/plain; charset=utf-8')
        .header('content-disposition', `attachment; filename="${lift}-from-layer-${layer}-pass-${pass}.ngc"`)
        .send(text.value)
    },
  )

  server.get<{ Params: { '*': string } }>('/api/out/*', async (request, reply) => {
    const planned = await plans.current()
    if (!planned.ok) return refuse(reply, 422, planned.problems)
    const name = request.params['*']
    const output = planned.value.outputs.find(each => each.name === name)
    if (!output)
      return refuse(reply, 404, [
        {
          code: 'server/no-output',
          at: name,
          say: `The plan gives no file “${name}”; /api/out lists those it gives.`,
        },
      ])
    return reply
      .type(output.mediaType)
      .header('content-disposition', `inline; filename="${basename(name)}"`)
      .send(await output.make())
  })
}

/**
 * Tells every open page that the document on disk has changed, so that two of them never overwrite each other silently;
 * and that something was logged, by whomever.
 */
function eventRoute(server: FastifyInstance, store: FolderStore): void {
  server.get('/api/events', (request, reply) => {
    const watcher = watch(store.folder, (_event, name) => {
      if (name === 'job.yaml') tell()
      if (name === logFile || name === toldFile) reply.raw.write('event: log\ndata: changed\n\n')
    })
    reply.hijack()
    reply.raw.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-cache' })
    const tell = () => {
      const revision = revisionNow(store)
      if (revision) reply.raw.write(`event: revision\ndata: ${revision}\n\n`)
    }
    tell()
    watcher.on('error', () => reply.raw.end())
    request.raw.on('close', () => watcher.close())
  })
}

/** Undefined for the moment in which an editor that saves has taken the document away; what it puts there is told next. */
function revisionNow(store: FolderStore): string | undefined {
  try {
    return store.read().revision
  } catch {
    return undefined
  }
}

const refuse = (reply: FastifyReply, status: number, problems: readonly Problem[]) =>
  reply.status(status).send({ problems })

/** Text or bytes as they are; anything a parser made of them is not what stands on disk afterwards. */
const isContent = (body: unknown): body is string | Uint8Array =>
  typeof body === 'string' || body instanceof Uint8Array

const noFile = (name: string): Problem => ({
  code: 'server/no-file',
  at: name,
  say: `There is no file “${name}” beside the job.`,
})

const notContent = (at: string): Problem => ({
  code: 'server/content-type',
  at,
  say: 'The content was not sent as it is: send it as application/yaml, text/plain or application/octet-stream.',
})

const foreignHost = (host: string | undefined): Problem => ({
  code: 'server/foreign-host',
  at: host ?? 'no Host header',
  say: 'This server answers only to a browser on the same machine, at localhost or 127.0.0.1.',
})

const foreignOrigin = (origin: string): Problem => ({
  code: 'server/foreign-origin',
  at: origin,
  say: 'Only pages of this server may call it; close the page that tried, if you do not know it.',
})

const awayFromFolder = (at: string): Problem => ({
  code: 'store/gone',
  at,
  say: 'A file of the job is not in its folder just now. Put it back, or wait until whoever writes it is done, and ask again.',
})
