import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { newJobText } from '@dawnlift/document/job'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../sources.js'
import { noBrowser, openStage, type Stage } from './stage.js'

/** Of a whole plan, made in the page's worker on a busy machine. */
const patience = 90_000
const cottage = join(root, 'examples/tern-cottage/plan.dxf')

describe.skipIf(noBrowser)(`a job and its files${noBrowser ? `: ${noBrowser}` : ''}`, () => {
  let stage: Stage
  let whole: string
  beforeAll(async () => {
    stage = await openStage('tern-cottage')
    whole = job()
  }, patience)
  afterAll(() => stage?.close())

  const job = () => readFileSync(join(stage.folder, 'job.yaml'), 'utf8')
  const write = (text: string) => writeFileSync(join(stage.folder, 'job.yaml'), text)
  const open = async (place: string, page?: Page) => {
    const opened = page ?? (await stage.page())
    opened.setDefaultTimeout(patience)
    await opened.goto(`${stage.address}/${place}`)
    return opened
  }
  const people = (page: Page) => page.getByLabel('People', { exact: true })
  const type = async (page: Page, count: string) => {
    await people(page).fill(count)
    await people(page).press('Enter')
  }
  const saved = (page: Page) => page.locator('.headline').getByText('Saved', { exact: true }).waitFor()

  it(
    'keep an edit whose page is killed while the server is away',
    async () => {
      const page = await open('site')
      await people(page).waitFor()
      await stage.stopServer()
      await type(page, '11')
      await page.getByText('Kept here, server away').waitFor()
      const context = page.context()
      // No farewell: the page is gone as when a battery dies.
      await page.close({ runBeforeUnload: false })
      expect(job()).toBe(whole)
      await stage.startServer()
      const again = await open('site', await context.newPage())
      await expect.poll(job, { timeout: patience }).toContain('size: 11')
      await saved(again)
      await context.close()
      write(whole)
    },
    2 * patience,
  )

  it(
    'are not overwritten silently by a second tab',
    async () => {
      const one = await open('site')
      await people(one).waitFor()
      const two = await open('site', await one.context().newPage())
      await people(two).waitFor()
      await stage.stopServer()
      await type(one, '12')
      await type(two, '13')
      await one.getByText('Kept here, server away').waitFor()
      await two.getByText('Kept here, server away').waitFor()
      await stage.startServer()
      // Whoever comes first is saved; the other one is asked.
      await expect.poll(job, { timeout: patience }).toMatch(/size: 1[23]/)
      const late = job().includes('size: 12') ? two : one
      await late.getByRole('button', { name: 'Take theirs' }).click()
      await saved(late)
      const shelf = readdirSync(join(stage.folder, '.dawnlift/revisions'))
      expect(shelf.length).toBeGreaterThan(0)
      await one.context().close()
      write(whole)
    },
    2 * patience,
  )

  it(
    'say that nothing can be kept where the storage is full, and are saved all the same',
    async () => {
      const page = await stage.page()
      await page.addInitScript(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('full', 'QuotaExceededError')
        }
      })
      await open('site', page)
      await people(page).waitFor()
      await stage.stopServer()
      await type(page, '14')
      await page.getByText('no room to keep edits').waitFor()
      await stage.startServer()
      await expect.poll(job, { timeout: patience }).toContain('size: 14')
      await saved(page)
      await page.context().close()
      write(whole)
    },
    2 * patience,
  )

  it(
    'of a newer program are shown with the reason and stay as they are',
    async () => {
      const newer = whole.replace('dawnlift: 1', 'dawnlift: 99')
      write(newer)
      const page = await open('days')
      await page.getByText('saved as version 99; this program reads up to 1').waitFor()
      await page.click('nav a[href="/site"]')
      await type(page, '15')
      await page
        .getByText(/People/)
        .first()
        .waitFor()
      await page.waitForTimeout(1500)
      expect(job()).toBe(newer)
      await page.context().close()
      write(whole)
    },
    2 * patience,
  )

  it(
    'with a problem open, say where it is, and are mended at that line',
    async () => {
      write(whole.replace('size: 4', 'size: many'))
      const page = await open('days')
      await page.locator('.problems button').first().click()
      const text = page.getByLabel(/The job’s own text, at line/)
      const chosen = await text.evaluate((area: HTMLTextAreaElement) =>
        area.value.slice(area.selectionStart, area.selectionEnd),
      )
      expect(chosen).toContain('size: many')
      await text.fill((await text.inputValue()).replace('size: many', 'size: 4'))
      await page.getByRole('button', { name: 'Take it' }).click()
      await page.waitForSelector('.liftrow')
      await expect.poll(job, { timeout: patience }).toBe(whole)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'stay as they are when junk is dropped on them',
    async () => {
      const page = await open('days')
      await page.waitForSelector('.liftrow')
      await page.evaluate(() => {
        const data = new DataTransfer()
        data.items.add(new File([new Uint8Array([0xff, 0xd8, 0, 1])], 'holiday.jpg'))
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }))
      })
      await page.getByText('holiday.jpg').waitFor()
      await page.evaluate(() => {
        const data = new DataTransfer()
        data.items.add(new File(['\u0000\u0001: [nonsense'], 'job.yaml'))
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }))
      })
      await page
        .getByText(/not valid YAML|not a job document/)
        .first()
        .waitFor()
      expect(job()).toBe(whole)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'lose the dropped drawing again when its import is undone, and have it back by redo',
    async () => {
      write(newJobText('Cottage'))
      rmSync(join(stage.folder, 'plan.dxf'))
      const page = await open('walls')
      await page.locator('#walls-plan .opening').first().waitFor({ state: 'attached' })
      await page.setInputFiles('input[type="file"]', cottage)
      await page.getByLabel('EMBEDS: It is').selectOption('ignore')
      await page.getByText('Gives 7 walls').waitFor()
      await page.getByRole('button', { name: 'Take it into the job' }).click()
      const drawing = () => existsSync(join(stage.folder, 'plan.dxf'))
      await expect.poll(drawing, { timeout: patience }).toBe(true)
      await page.getByRole('button', { name: 'Undo' }).click()
      await expect.poll(drawing, { timeout: patience }).toBe(false)
      await expect.poll(job, { timeout: patience }).toBe(newJobText('Cottage'))
      await page.getByRole('button', { name: 'Redo' }).click()
      await expect.poll(drawing, { timeout: patience }).toBe(true)
      expect(readFileSync(join(stage.folder, 'plan.dxf')).equals(readFileSync(cottage))).toBe(true)
      await page.context().close()
    },
    3 * patience,
  )
})
