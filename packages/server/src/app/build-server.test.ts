import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openFolderStore } from '../store/index.js'
import { buildServer, planKeeper } from './index.js'

const gardenWall = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall', import.meta.url))
const around = mkdtempSync(join(tmpdir(), 'dawnlift-server-'))
const folder = join(around, 'job')
let server: FastifyInstance

beforeAll(async () => {
  await initGeometry()
  cpSync(gardenWall, folder, { recursive: true })
  writeFileSync(join(around, 'secret.txt'), 'secret')
  symlinkSync(join(around, 'secret.txt'), join(folder, 'link.txt'))
  mkdirSync(join(around, 'page'))
  writeFileSync(join(around, 'page/index.html'), '<title>page</title>')
  const store = openFolderStore(folder)
  if (!store.ok) throw new Error(store.problems[0]?.say)
  server = await buildServer({
    store: store.value,
    plans: planKeeper(store.value, () => 1_780_000_000),
    site: join(around, 'page'),
  })
})
afterAll(async () => {
  await server.close()
  rmSync(around, { recursive: true })
})

const get = (url: string, host = 'localhost:8140') => server.inject({ method: 'GET', url, headers: { host } })
const put = (url: string, payload: string | Buffer, headers: Record<string, string>) =>
  server.inject({ method: 'PUT', url, payload, headers: { host: 'localhost:8140', ...headers } })

describe('the job over HTTP', () => {
  it('is given with its revision and the names beside it', async () => {
    const { document, revision, beside } = (await get('/api/job')).json()
    expect(document).toBe(readFileSync(join(folder, 'job.yaml'), 'utf8'))
    expect(revision).toMatch(/^[0-9a-f]{16}$/)
    expect(beside).not.toContain('job.yaml')
  })
  it('is saved on the revision it rests on, and on no other; the older text is kept', async () => {
    const { document, revision } = (await get('/api/job')).json()
    const newer = document.replace('Garden wall', 'Garden walls')
    const yaml = { 'content-type': 'application/yaml' }
    expect((await put('/api/job/document', newer, { ...yaml, 'if-match': revision })).statusCode).toBe(200)
    const late = await put('/api/job/document', 'dawnlift: 1', { ...yaml, 'if-match': revision })
    expect([late.statusCode, late.json().problems[0].code]).toEqual([409, 'store/changed-elsewhere'])
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(newer)
    expect(readdirSync(join(folder, '.dawnlift/revisions')).length).toBe(1)
  })
  it('is not overwritten by what a parser made of it', async () => {
    const before = readFileSync(join(folder, 'job.yaml'), 'utf8')
    const answer = await put('/api/job/document', '{"name":"x"}', { 'content-type': 'application/json' })
    expect([answer.statusCode, answer.json().problems[0].code]).toEqual([415, 'server/content-type'])
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(before)
  })
  it('has its files taken away again, and says so of one that is not there', async () => {
    await put('/api/job/files/hours.csv', 'time,air', { 'content-type': 'application/octet-stream' })
    const remove = () =>
      server.inject({
        method: 'DELETE',
        url: '/api/job/files/hours.csv',
        headers: { host: 'localhost:8140' },
      })
    expect([(await remove()).statusCode, (await remove()).statusCode]).toEqual([200, 404])
    expect((await get('/api/job')).json().beside).not.toContain('hours.csv')
  })

  it('says so in words when the disk is full', async () => {
    const opened = openFolderStore(folder)
    if (!opened.ok) throw new Error('the job is there')
    const full = {
      ...opened.value,
      save: () => {
        throw Object.assign(new Error('write'), { code: 'ENOSPC' })
      },
    }
    const other = await buildServer({ store: full, plans: planKeeper(full, () => 0), site: 'nowhere' })
    const answer = await other.inject({
      method: 'PUT',
      url: '/api/job/document',
      payload: 'name: x',
      headers: { host: 'localhost:8140', 'content-type': 'application/yaml' },
    })
    expect([answer.statusCode, answer.json().problems[0].say]).toEqual([
      507,
      'The disk is full: make room on it.',
    ])
  })

  it('takes files beside it as they are', async () => {
    const content = Buffer.from([0, 255, 13, 10])
    const bytes = { 'content-type': 'application/octet-stream' }
    expect((await put('/api/job/files/plan.dxf', content, bytes)).statusCode).toBe(200)
    expect((await get('/api/job/files/plan.dxf')).rawPayload).toEqual(content)
  })
  it.each([
    '..%2fsecret.txt',
    '%2e%2e%2fsecret.txt',
    'link.txt',
    '.dawnlift%2frevisions',
    'a%2fb.txt',
    'none.csv',
  ])('gives nothing for %s', async name => expect((await get(`/api/job/files/${name}`)).statusCode).toBe(404))
  it.each(['..%2fout.txt', '.hidden', 'job.yaml', 'a%2fb.txt'])('keeps nothing as %s', async name => {
    const { statusCode } = await put(`/api/job/files/${name}`, 'x', { 'content-type': 'text/plain' })
    expect(statusCode).toBe(422)
    expect(readdirSync(around).sort()).toEqual(['job', 'page', 'secret.txt'])
  })
})

describe('the site log over HTTP', () => {
  const post = (payload: string, type = 'text/plain') =>
    server.inject({
      method: 'POST',
      url: '/api/job/log',
      payload,
      headers: { host: 'localhost:8140', 'content-type': type },
    })
  const layer = (number: number) =>
    `{"at":"2026-06-01 07:${10 + number}","what":"layer","section":"A","layer":${number}}`
  const log = () => readFileSync(join(folder, 'site-log.jsonl'), 'utf8')

  it('grows line by line at its end, whoever else has written to it, and no line comes twice', async () => {
    expect((await post(`${layer(1)}\n`)).json().log).toBe(`${layer(1)}\n`)
    writeFileSync(join(folder, 'site-log.jsonl'), `${log()}${layer(2)}`)
    await post(`${layer(1)}\n${layer(3)}`)
    expect(log()).toBe(`${layer(1)}\n${layer(2)}\n${layer(3)}\n`)
  })
  it('takes nothing at all of what is not a log, and stays as it was', async () => {
    const before = log()
    const answer = await post(`${layer(4)}\nhello`)
    expect([answer.statusCode, answer.json().problems[0].code]).toEqual([422, 'store/log-line'])
    expect((await post(layer(4), 'application/octet-stream')).statusCode).toBe(415)
    expect(log()).toBe(before)
    rmSync(join(folder, 'site-log.jsonl'))
  })
})

describe('the plan over HTTP', () => {
  it('lists its files and makes each when asked', async () => {
    const names = (await get('/api/out')).json().map((output: { name: string }) => output.name)
    expect(names).toContain('machine/2026-06-01-A1.ngc')
    const file = await get('/api/out/machine/2026-06-01-A1.ngc')
    expect([file.statusCode, file.body.slice(0, 5)]).toEqual([200, '(job '])
    expect((await get('/api/out/machine/none.ngc')).json().problems[0].code).toBe('server/no-output')
  })
  it('gives what is left of a lift after a stop, and says what the plan does not have', async () => {
    const whole = (await get('/api/out/machine/2026-06-01-A1.ngc')).body
    const rest = (await get('/api/restart/A1/3/1')).body
    expect(rest.slice(0, 5)).toBe('(job ')
    expect(rest.length).toBeLessThan(whole.length)
    expect(rest).toContain('layer 3)')
    expect(rest).not.toContain('layer 2)')
    for (const [wrong, said] of [
      ['Z9/3/1', 'no lift Z9'],
      ['A1/999/1', 'has layers 1 to'],
      ['A1/3/99', 'has passes 1 to'],
      ['A1/3/x', '“NaN” is not one'],
    ]) {
      const answer = await get(`/api/restart/${wrong}`)
      expect([answer.statusCode, answer.json().problems[0].say]).toEqual([
        404,
        expect.stringContaining(said!),
      ])
    }
  })
  it('follows a change on disk, and answers a broken job with its problems', async () => {
    const whole = readFileSync(join(folder, 'job.yaml'), 'utf8')
    writeFileSync(join(folder, 'job.yaml'), whole.replace('height: 600 mm', 'height: 600'))
    const { problems } = (await get('/api/plan')).json()
    expect(problems[0]).toMatchObject({
      code: 'quantity/no-unit',
      at: expect.stringMatching(/^job\.yaml:\d+/),
    })
    writeFileSync(join(folder, 'job.yaml'), whole)
    expect((await get('/api/plan')).json().campaign.finished).toBe(true)
  })
})

describe('who is answered', () => {
  it.each(['localhost', '127.0.0.1:8140', '[::1]:8140'])('a browser that calls %s', async host =>
    expect((await get('/api/job', host)).statusCode).toBe(200),
  )
  it.each(['evil.example', 'localhost.evil.example', '127.0.0.1.evil.example:8140'])(
    'not a page that reaches in by the name %s',
    async host => expect((await get('/api/job', host)).statusCode).toBe(403),
  )
  it('any place of the app with the page, any other address under /api with a problem', async () => {
    expect((await get('/days')).body).toContain('<title>page')
    expect((await get('/api/none')).json().problems[0].code).toBe('server/not-found')
  })
  it('with a policy that lets no foreign script in', async () =>
    expect((await get('/days')).headers['content-security-policy']).toContain("default-src 'self'"))
})

describe('a job whose document is taken away and put back, as editors do that save,', () => {
  const [document, aside] = [join(folder, 'job.yaml'), join(folder, 'aside.yaml')]
  const yaml = { 'content-type': 'application/yaml' }

  it('goes on telling open pages, and says what is missing meanwhile', async () => {
    const address = await server.listen({ host: '127.0.0.1', port: 0 })
    const stop = new AbortController()
    const events = await fetch(`${address}/api/events`, { signal: stop.signal })
    const reader = events.body!.getReader()
    const told = async () => new TextDecoder().decode((await reader.read()).value)
    const first = await told()
    renameSync(document, aside)
    await new Promise(done => setTimeout(done, 50))
    const gone = await get('/api/job')
    expect([gone.statusCode, gone.json().problems[0].code]).toEqual([404, 'store/gone'])
    expect((await put('/api/job/document', 'title: x', yaml)).statusCode).toBe(404)
    renameSync(aside, document)
    expect(await told()).toBe(first)
    stop.abort()
  })
})

it('what is too large is refused with the size that is not', async () => {
  const large = { 'content-type': 'application/octet-stream', 'content-length': String(101 * 1024 ** 2) }
  const answer = await put('/api/job/files/large.bin', 'x', large)
  expect([answer.statusCode, answer.json().problems[0].say]).toEqual([413, expect.stringMatching(/100 MB/)])
})

describe('a page that is not ours', () => {
  const from = (origin: string) =>
    server.inject({
      method: 'POST',
      url: '/api/job/log',
      payload: '',
      headers: { host: 'localhost:8140', 'content-type': 'text/plain', origin },
    })
  it('adds nothing to the log, though a browser lets it send text', async () => {
    for (const origin of ['http://elsewhere.example', 'null', 'http://localhost.elsewhere.example'])
      expect((await from(origin)).json().problems[0].code).toBe('server/foreign-origin')
    expect((await from('http://127.0.0.1:8140')).statusCode).toBe(200)
  })
  it('gets a problem for an address that cannot be read, like any other', async () => {
    const answer = await get('/%E0%A4%A')
    expect([answer.statusCode, answer.json().problems[0].at]).toEqual([400, '/%E0%A4%A'])
  })
})
