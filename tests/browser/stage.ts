import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import { buildServer, planKeeper } from '@dawnlift/server/app'
import { openFolderStore } from '@dawnlift/server/store'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { root } from '../sources.js'

const stamp = join(root, 'node_modules/.dawnlift/browser')
const stamped = existsSync(stamp) ? readFileSync(stamp, 'utf8') : ''

/** Path of a browser the tests may drive; the set-up script has looked for one. */
export const browserPath = [process.env.CHROME_PATH, stamped, '/usr/bin/chromium'].find(
  path => path && existsSync(path),
)
export const site = join(root, 'packages/web/site')
/** Why the browser tests cannot run here, if they cannot. */
export const noBrowser = !browserPath
  ? 'no browser on this machine (set CHROME_PATH)'
  : !existsSync(join(site, 'index.html'))
    ? 'the page is not built (npm test builds it)'
    : undefined

export interface PageLook {
  readonly viewport?: { width: number; height: number }
  readonly colorScheme?: 'light' | 'dark'
  readonly deviceScaleFactor?: number
  /** A finger instead of a mouse. */
  readonly touch?: boolean
}

export interface Stage {
  readonly address: string
  /** A copy of the demo job: tests may edit it. */
  readonly folder: string
  readonly page: (look?: PageLook) => Promise<Page>
  readonly context: (page: Page) => BrowserContext
  /** What the page and its workers hold [MB]: their process alone, by what it does not share. */
  readonly memory: (page: Page) => Promise<number>
  /** CPU that the page's own thread and its workers have had so far [ms]; helpers of the engine are left out. */
  readonly cpu: () => Promise<{ readonly page: number; readonly workers: number }>
  /** The server goes away and comes back, as when somebody trips over its cable. */
  readonly stopServer: () => Promise<void>
  readonly startServer: () => Promise<void>
  readonly close: () => Promise<void>
}

/** Pages of a process that are its own, as Linux counts them. */
function privateMegabytes(pid: number): number {
  const rollup = readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8')
  const kilobytes = [...rollup.matchAll(/^Private_\w+:\s+(\d+) kB/gm)].map(([, size]) => Number(size))
  return kilobytes.reduce((sum, each) => sum + each, 0) / 1024
}

/** Threads of a process by name, with the time each was on a processor [ms], as Linux counts it. */
function threadTimes(
  pid: number,
): readonly { readonly name: string; readonly isFirst: boolean; readonly ms: number }[] {
  return readdirSync(`/proc/${pid}/task`).map(tid => {
    const read = (file: string) => readFileSync(`/proc/${pid}/task/${tid}/${file}`, 'utf8').trim()
    return {
      name: read('comm'),
      isFirst: Number(tid) === pid,
      ms: Number(read('schedstat').split(' ')[0]) / 1e6,
    }
  })
}

const flags = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

async function renderers(browser: Browser): Promise<readonly number[]> {
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id)
}

/** The app in a real browser on a copy of a demo job. */
export async function openStage(job: string): Promise<Stage> {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-stage-'))
  cpSync(join(root, 'examples', job), folder, { recursive: true })
  await initGeometry()
  let port = 0
  const listen = async () => {
    const store = openFolderStore(folder)
    if (!store.ok) throw new Error(store.problems[0]!.say)
    const server = await buildServer({
      store: store.value,
      plans: planKeeper(store.value, () => Date.now() / 1000),
      site,
    })
    const address = await server.listen({ host: '127.0.0.1', port })
    port = Number(new URL(address).port)
    return { server, address }
  }
  let running = await listen()
  const browser: Browser = await chromium.launch({ executablePath: browserPath!, args: flags })
  return {
    address: running.address,
    folder,
    page: async ({
      viewport = { width: 1440, height: 900 },
      colorScheme = 'light',
      deviceScaleFactor = 1,
      touch = false,
    } = {}) => {
      const context = await browser.newContext({
        viewport,
        colorScheme,
        deviceScaleFactor,
        hasTouch: touch,
        reducedMotion: 'reduce',
        locale: 'en-GB',
        timezoneId: 'Europe/Madrid',
      })
      return context.newPage()
    },
    context: page => page.context(),
    memory: async () => Math.max(...(await renderers(browser)).map(privateMegabytes)),
    cpu: async () => {
      const threads = (await renderers(browser)).flatMap(threadTimes)
      const sum = (own: typeof threads) => own.reduce((total, { ms }) => total + ms, 0)
      return {
        page: sum(threads.filter(({ isFirst }) => isFirst)),
        workers: sum(threads.filter(({ name }) => name.startsWith('DedicatedWorker'))),
      }
    },
    stopServer: async () => {
      running.server.server.closeAllConnections()
      await running.server.close()
    },
    startServer: async () => {
      running = await listen()
    },
    close: async () => {
      await browser.close()
      running.server.server.closeAllConnections()
      await running.server.close()
    },
  }
}
