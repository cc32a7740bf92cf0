import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { newJobText } from '@dawnlift/document/job'
import type { Page } from 'playwright-core'
import { beforeAll, expect, it } from 'vitest'
import { root } from '../sources.js'
import { drop, onStage, patience, people, saved, typePeople } from './on-stage.js'

const cottage = join(root, 'examples/tern-cottage/plan.dxf')

onStage('a job and its files', 'tern-cottage', ({ stage, folder, job, write, open: openPlace }) => {
  let whole: string
  beforeAll(() => {
    whole = job()
  })
  const open = (place: string, page?: Page) => openPlace(place, { ...(page ? { page } : {}), shown: 'main' })

  it(
    'keep an edit whose page is killed while the server is away',
    async () => {
      const page = await open('site')
      await people(page).waitFor()
      await stage().stopServer()
      await typePeople(page, '11')
      await page.getByText('Kept here, server away').waitFor()
      const context = page.context()
      // No farewell: the page is gone as when a battery dies.
      await page.close({ runBeforeUnload: false })
      expect(job()).toBe(whole)
      await stage().startServer()
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
      await stage().stopServer()
      await typePeople(one, '12')
      await typePeople(two, '13')
      await one.getByText('Kept here, server away').waitFor()
      await two.getByText('Kept here, server away').waitFor()
      await stage().startServer()
      // Whoever comes first is saved; the other one is asked.
      await expect.poll(job, { timeout: patience }).toMatch(/size: 1[23]/)
      const late = job().includes('size: 12') ? two : one
      await late.getByRole('button', { name: 'Take theirs' }).click()
      await saved(late)
      const shelf = readdirSync(join(folder(), '.dawnlift/revisions'))
      expect(shelf.length).toBeGreaterThan(0)
      await one.context().close()
      write(whole)
    },
    2 * patience,
  )

  it(
    'say that nothing can be kept where the storage is full, and are saved all the same',
    async () => {
      const page = await stage().page()
      await page.addInitScript(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('full', 'QuotaExceededError')
        }
      })
      await open('site', page)
      await people(page).waitFor()
      await stage().stopServer()
      await typePeople(page, '14')
      await page.getByText('no room to keep edits').waitFor()
      await stage().startServer()
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
      await typePeople(page, '15')
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
      await drop(page, [['holiday.jpg', '\u00ff\u00d8\u0000\u0001']])
      await page.getByText('holiday.jpg').waitFor()
      await drop(page, [['job.yaml', '\u0000\u0001: [nonsense']])
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
      rmSync(join(folder(), 'plan.dxf'))
      const page = await open('walls')
      await page.locator('#walls-plan .opening').first().waitFor({ state: 'attached' })
      await page.setInputFiles('input[type="file"]', cottage)
      await page.getByLabel('EMBEDS: It is').selectOption('ignore')
      await page.getByText('Gives 7 walls').waitFor()
      await page.getByRole('button', { name: 'Take it into the job' }).click()
      const drawing = () => existsSync(join(folder(), 'plan.dxf'))
      await expect.poll(drawing, { timeout: patience }).toBe(true)
      await page.getByRole('button', { name: 'Undo' }).click()
      await expect.poll(drawing, { timeout: patience }).toBe(false)
      await expect.poll(job, { timeout: patience }).toBe(newJobText('Cottage'))
      await page.getByRole('button', { name: 'Redo' }).click()
      await expect.poll(drawing, { timeout: patience }).toBe(true)
      expect(readFileSync(join(folder(), 'plan.dxf')).equals(readFileSync(cottage))).toBe(true)
      await page.context().close()
    },
    3 * patience,
  )
})
