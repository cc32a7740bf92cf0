import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { noBrowser, openStage, type Stage } from './stage.js'

const places = ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc'] as const
/** Of a whole plan, made in the page's worker on a busy machine. */
const patience = 90_000

/** A place with the plan made and shown. */
async function openPlace(stage: Stage, place: string, options?: Parameters<Stage['page']>[0]): Promise<Page> {
  const page = await stage.page(options)
  page.setDefaultTimeout(patience)
  await page.goto(`${stage.address}/${place}`)
  await page.waitForSelector('.ribbon .track')
  return page
}

const where = noBrowser ? `: ${noBrowser}` : ''

describe.skipIf(noBrowser)(`the places along the job${where}`, () => {
  let stage: Stage
  beforeAll(async () => {
    stage = await openStage('torrenubia')
  }, patience)
  afterAll(() => stage?.close())

  it.each(['light', 'dark'] as const)(
    'have nothing that axe calls serious, in %s',
    async colorScheme => {
      const page = await openPlace(stage, 'days', { colorScheme })
      for (const place of places) {
        await page.click(`nav a[href="/${place}"]`)
        await page.waitForFunction(() => (document.querySelector('main')?.textContent?.length ?? 0) > 200)
        const { violations } = await new AxeBuilder({ page }).analyze()
        const grave = violations
          .filter(({ impact }) => impact === 'serious' || impact === 'critical')
          .map(({ id, nodes }) => `${place}: ${id} ${nodes[0]?.html.slice(0, 160)}`)
        expect(grave).toEqual([])
      }
      await page.context().close()
    },
    4 * patience,
  )
})

describe.skipIf(noBrowser)(`a job in the page and on disk${where}`, () => {
  let stage: Stage
  beforeAll(async () => {
    stage = await openStage('tern-cottage')
  }, patience)
  afterAll(() => stage?.close())

  const job = () => readFileSync(join(stage.folder, 'job.yaml'), 'utf8')
  const saved = (page: Page) => page.locator('.headline').getByText('Saved', { exact: true }).waitFor()
  const people = (page: Page) => page.getByLabel('People', { exact: true })
  const type = async (page: Page, count: string) => {
    await people(page).fill(count)
    await people(page).press('Enter')
  }

  it(
    'takes a rule typed on the site, and goes back to the usual one at a touch',
    async () => {
      const page = await openPlace(stage, 'site')
      const height = page.getByLabel('A lift is at most this high', { exact: true })
      await height.fill('80 cm')
      await height.press('Enter')
      await expect.poll(job, { timeout: patience }).toContain('liftHeight: 80 cm')
      await page.getByRole('button', { name: /^A lift is at most this high: back to the usual/ }).click()
      await expect.poll(job, { timeout: patience }).not.toContain('liftHeight')
      await page.getByRole('button', { name: 'Undo' }).click()
      await page.getByRole('button', { name: 'Undo' }).click()
      await expect.poll(job, { timeout: patience }).toContain('liftHeight: 3 ft')
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'keeps an edit made while the server is away, and sends it when it is back',
    async () => {
      const page = await openPlace(stage, 'site')
      await stage.stopServer()
      await type(page, '7')
      await page.getByText('Kept here, server away').waitFor()
      expect(job()).toContain('size: 4')
      await stage.startServer()
      await expect.poll(job, { timeout: patience }).toContain('size: 7')
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'follows a change made elsewhere, and asks when both have changed',
    async () => {
      const page = await openPlace(stage, 'site')
      writeFileSync(join(stage.folder, 'job.yaml'), job().replace(/size: \d+/, 'size: 8'))
      await expect.poll(() => people(page).inputValue(), { timeout: patience }).toBe('8')
      await stage.stopServer()
      await type(page, '9')
      await page.getByText('Kept here, server away').waitFor()
      writeFileSync(join(stage.folder, 'job.yaml'), job().replace(/size: \d+/, 'size: 5'))
      await stage.startServer()
      await page.getByRole('button', { name: 'Keep mine' }).click()
      await expect.poll(job, { timeout: patience }).toContain('size: 9')
      await saved(page)
      await page.context().close()
    },
    3 * patience,
  )

  it(
    'shows its plan again without a network',
    async () => {
      const page = await openPlace(stage, 'days')
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
      await page.context().setOffline(true)
      await page.reload()
      await page.waitForSelector('.liftrow')
      await page.click('nav a[href="/trades"]')
      await page.waitForSelector('.call')
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'has its levers tried and laid side by side',
    async () => {
      const page = await openPlace(stage, 'days')
      await page.getByRole('button', { name: 'Try the levers' }).click()
      await page.getByRole('rowheader', { name: 'as planned' }).waitFor()
      const levers = await page.locator('[aria-label="Levers"] tbody th').allTextContents()
      expect(levers.slice(1).some(lever => /by permission|nozzle|earlier|slower|longer/.test(lever))).toBe(
        true,
      )
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'remembers which calls are confirmed',
    async () => {
      const page = await openPlace(stage, 'trades')
      await page.locator('.call .finding').first().click()
      await page.locator('.callplace svg').waitFor()
      await page.locator('.agree input').first().check()
      await page.reload()
      await page.waitForSelector('.call')
      expect(await page.locator('.agree input').first().isChecked()).toBe(true)
      await page.keyboard.press('Alt+7')
      await page.waitForURL(/tally$/)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'stays as it is on disk while another is dropped on the page and edited',
    async () => {
      const page = await openPlace(stage, 'days')
      const before = job()
      const dropped = [
        ['job.yaml', before.replace('Tern Cottage', 'Wren Cottage')],
        ['plan.dxf', readFileSync(join(stage.folder, 'plan.dxf'), 'utf8')],
      ] as const
      await page.evaluate(files => {
        const data = new DataTransfer()
        for (const [name, text] of files) data.items.add(new File([text], name))
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }))
      }, dropped)
      await page.getByText('This job lives only in this tab').waitFor()
      await page.getByRole('heading', { name: 'Wren Cottage' }).waitFor()
      await page.click('nav a[href="/site"]')
      await type(page, '3')
      await page.getByRole('button', { name: 'Undo' }).and(page.locator(':enabled')).waitFor()
      await page.reload()
      await page.getByRole('heading', { name: 'Tern Cottage' }).waitFor()
      expect(job()).toBe(before)
      await page.context().close()
    },
    2 * patience,
  )
})
