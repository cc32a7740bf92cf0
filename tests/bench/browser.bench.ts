import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { noBrowser, openStage, type Stage, site } from '../browser/stage.js'

/** What was set out for the page, and what it is held against. */
interface Measure {
  readonly what: string
  readonly aim: number
  readonly unit: string
  /** Larger is better. */
  readonly atLeast?: boolean
  readonly found: readonly number[]
}

const runs = Number(process.env.DAWNLIFT_BENCH_RUNS ?? 5)
const patience = 120_000

/** The page in a browser: opening, editing, memory, and how long it keeps the hand waiting. Prints its own table. */
export async function bench() {
  if (noBrowser) {
    console.log(`  not measured: ${noBrowser}`)
    return []
  }
  const stage = await openStage('torrenubia')
  try {
    const opened = []
    for (let run = 0; run < runs; run++) opened.push(await coldOpen(stage))
    const edited = await edits(stage)
    print([
      {
        what: 'cold open to the first useful picture',
        aim: 1500,
        unit: 'ms',
        found: opened.map(each => each.picture),
      },
      {
        what: 'cold open to the print days',
        aim: Number.NaN,
        unit: 'ms',
        found: opened.map(each => each.days),
      },
      {
        what: 'fetched for that picture, gzipped',
        aim: 350,
        unit: 'kB',
        found: opened.map(each => each.pictureKb),
      },
      {
        what: 'fetched until the print days, gzipped',
        aim: Number.NaN,
        unit: 'kB',
        found: opened.map(each => each.daysKb),
      },
      {
        what: 'longest task of the page while it plans',
        aim: 50,
        unit: 'ms',
        found: opened.map(each => each.longest),
      },
      { what: 'one embed moved, to its limits', aim: 100, unit: 'ms', found: edited.embed.map(timeOf) },
      ...threadRows('one embed moved', edited.embed),
      { what: 'one wall’s end moved, to its limits', aim: 400, unit: 'ms', found: edited.wall.map(timeOf) },
      ...threadRows('one wall’s end moved', edited.wall),
      { what: 'longest task while an edit is planned', aim: 50, unit: 'ms', found: [edited.longest] },
      {
        what: 'solid view in software, while it is turned',
        aim: 20,
        unit: 'fps',
        atLeast: true,
        found: [edited.frames],
      },
      {
        what: 'memory of the page with its workers, after all this',
        aim: 500,
        unit: 'MB',
        found: [edited.memory],
      },
    ])
  } finally {
    await stage.close()
  }
  return []
}

/** How long an edit took to its limits, and what of it the page and its workers were on a processor [ms]. */
interface Answered {
  readonly time: number
  readonly page: number
  readonly workers: number
}

const timeOf = ({ time }: Answered): number => time

/** On a machine that others share, the CPU tells what the clock would on a quiet one; the search that goes on is in it. */
const threadRows = (edit: string, answers: readonly Answered[]): readonly Measure[] =>
  (['page', 'workers'] as const).map(who => ({
    what: `${edit}: CPU of the ${who} until then, at most`,
    aim: Number.NaN,
    unit: 'ms',
    found: answers.map(each => each[who]),
  }))

function print(rows: readonly Measure[]): void {
  for (const { what, aim, unit, atLeast, found } of rows) {
    const median = [...found].sort((a, b) => a - b)[Math.floor(found.length / 2)] ?? Number.NaN
    const met = Number.isNaN(aim) ? '' : (atLeast ? median >= aim : median <= aim) ? 'met' : 'NOT MET'
    const aimed = Number.isNaN(aim) ? '' : `${atLeast ? '≥' : '≤'} ${aim} ${unit}`
    console.log(
      `  ${what.padEnd(54)} ${median.toFixed(0).padStart(7)} ${unit.padEnd(4)} ${aimed.padEnd(10)} ${met.padEnd(8)} (${found.length} runs, least ${Math.min(...found).toFixed(0)})`,
    )
  }
}

/** Kept by the page from its first moment on: long tasks, and when what was first seen. */
interface Watched {
  readonly tasks: { at: number; length: number }[]
  picture?: number
  days?: number
  changed?: number
}
declare global {
  interface Window {
    watched: Watched
  }
}

/** Runs in the page before anything else does. */
function watch(): void {
  const watched: Watched = { tasks: [] }
  window.watched = watched
  new PerformanceObserver(list => {
    for (const task of list.getEntries()) watched.tasks.push({ at: task.startTime, length: task.duration })
  }).observe({ type: 'longtask', buffered: true })
  const look = () => {
    if (document.querySelector('main svg path, main svg polygon')) watched.picture ??= performance.now()
    if (document.querySelector('.liftrow')) watched.days ??= performance.now()
    if (watched.days === undefined) requestAnimationFrame(look)
  }
  requestAnimationFrame(look)
}

interface WatchedPage {
  readonly page: Page
  readonly kilobytes: () => number
  readonly beforePlanning: () => number
}

async function watchedPage(stage: Stage): Promise<WatchedPage> {
  const page = await stage.page()
  page.setDefaultTimeout(patience)
  await page.addInitScript(watch)
  const fetched = new Set<string>()
  page.context().on('request', request => fetched.add(new URL(request.url()).pathname))
  const kilobytes = (paths: readonly string[]) => paths.reduce((sum, path) => sum + gzipped(path), 0) / 1000
  return {
    page,
    kilobytes: () => kilobytes([...fetched]),
    // In the order they are asked for: the job is read and told before the pipeline is fetched.
    beforePlanning: () => {
      const all = [...fetched]
      const end = all.findIndex(path => path.startsWith('/assets/planning-'))
      return kilobytes(end < 0 ? all : all.slice(0, end))
    },
  }
}

const sizes = new Map<string, number>()

/** Bytes of one file of the page, gzipped; what the server says of the job is not the page’s. */
function gzipped(path: string): number {
  const known = sizes.get(path)
  if (known !== undefined) return known
  const file = path.startsWith('/assets/') ? path : path.startsWith('/api/') ? undefined : '/index.html'
  const size = file ? gzipSync(readFileSync(join(site, file))).length : 0
  sizes.set(path, size)
  return size
}

async function coldOpen(stage: Stage) {
  const { page, kilobytes, beforePlanning } = await watchedPage(stage)
  // The shelf for offline use is filled behind the page's back; what it fetches is not waited for.
  await page.context().route('**/offline.js', route => route.abort())
  await page.goto(`${stage.address}/days`)
  await page.waitForFunction(() => window.watched.picture !== undefined)
  const pictureKb = beforePlanning()
  await page.waitForSelector('.liftrow')
  await page.waitForTimeout(500)
  const seen = await page.evaluate(() => window.watched)
  await page.context().close()
  return {
    picture: seen.picture ?? Number.NaN,
    days: seen.days ?? Number.NaN,
    pictureKb,
    daysKb: kilobytes(),
    // From the first picture on the planner is at work.
    longest: Math.max(
      0,
      ...seen.tasks.filter(each => each.at >= (seen.picture ?? 0)).map(each => each.length),
    ),
  }
}

async function edits(stage: Stage) {
  const { page } = await watchedPage(stage)
  await page.goto(`${stage.address}/walls`)
  await page.waitForSelector('#walls-plan .embed')
  await page.waitForSelector('.ribbon .track')
  await page.waitForTimeout(2000)
  await page.evaluate(() => {
    window.watched.tasks.length = 0
  })
  const embed: Answered[] = []
  const wall: Answered[] = []
  const ids = await page.locator('#walls-plan .embed').evaluateAll(all => all.map(each => each.id))
  for (let run = 0; run < runs; run++) {
    const id = ids[(run * 7) % ids.length]!
    await page.locator(`#${id}`).dispatchEvent('click')
    await page.focus('#walls-plan')
    await page.keyboard.press('m')
    await page.keyboard.press('ArrowRight')
    embed.push(await timeToLimits(stage, page, () => page.keyboard.press('Enter')))
  }
  await page.locator('#walls-plan .wall').first().dispatchEvent('click')
  for (let run = 0; run < runs; run++) {
    const height = page.getByLabel('Height', { exact: true }).first()
    await height.fill(run % 2 === 0 ? '2.6 m' : '2.8 m')
    wall.push(await timeToLimits(stage, page, () => height.press('Enter')))
  }
  const longest = await page.evaluate(() => Math.max(0, ...window.watched.tasks.map(each => each.length)))
  const frames = await framesOf(page)
  const memory = await stage.memory(page)
  await page.context().close()
  return { embed, wall, longest, frames, memory }
}

/** From the key that sets it down to the words that say what the limits make of it [ms]. */
async function timeToLimits(stage: Stage, page: Page, press: () => Promise<void>): Promise<Answered> {
  const seen = page.evaluate(
    () =>
      new Promise<number>(resolve => {
        const line = document.querySelector('[data-testid="change-line"]')!
        let start = 0
        let worked = false
        addEventListener('keydown', () => (start = performance.now()), { capture: true, once: true })
        new MutationObserver((_, observer) => {
          const working = line.querySelector('.soft')?.textContent?.includes('Working') === true
          worked ||= working
          if (!worked || working || start === 0) return
          observer.disconnect()
          resolve(performance.now() - start)
        }).observe(line, { childList: true, subtree: true, characterData: true })
      }),
  )
  await page.waitForTimeout(50)
  const before = await stage.cpu()
  await press()
  const time = await seen
  const after = await stage.cpu()
  // The search that goes on is not to be in the way of the next edit.
  await page.waitForFunction(idle)
  await page.waitForTimeout(700)
  return { time, page: after.page - before.page, workers: after.workers - before.workers }
}

/** Runs in the page: nothing is being planned. */
const idle = (): boolean => document.querySelector('.headline [role="progressbar"]') === null

/** Frames that the drawing worker gives in a second while the house is turned by the hand. */
async function framesOf(page: Page): Promise<number> {
  const worker = page.workers().find(each => each.url().includes('solid.worker'))
  const box = await page.locator('[data-testid="solid"]').boundingBox()
  if (!worker || !box) return Number.NaN
  await page.locator('.ribbon .track').press('End')
  await worker.evaluate(() => {
    const counting = globalThis as unknown as { frames: number }
    counting.frames = 0
    const next = requestAnimationFrame
    globalThis.requestAnimationFrame = then =>
      next(at => {
        then(at)
        counting.frames += 1
      })
  })
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2 + 5, box.y + box.height / 2)
  const frames = () => worker.evaluate(() => (globalThis as unknown as { frames: number }).frames)
  const [before, start] = [await frames(), performance.now()]
  for (let step = 0; step < 240; step++)
    await page.mouse.move(box.x + box.width / 2 + (step % 120) * 2, box.y + box.height / 2 + (step % 40))
  const [after, end] = [await frames(), performance.now()]
  await page.mouse.up()
  return ((after - before) * 1000) / (end - start)
}
