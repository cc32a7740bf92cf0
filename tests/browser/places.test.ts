import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../sources.js'
import { noBrowser, openStage, type Stage } from './stage.js'

const places = ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc'] as const
/** Of a whole plan, made in the page's worker on a busy machine. */
const patience = 90_000

describe.skipIf(noBrowser)(`the places along the job${noBrowser ? `: ${noBrowser}` : ''}`, () => {
  let stage: Stage
  beforeAll(async () => {
    stage = await openStage('torrenubia')
  }, patience)
  afterAll(() => stage?.close())

  const openPage = async (place: string, options?: Parameters<Stage['page']>[0]) => {
    const page = await stage.page(options)
    page.setDefaultTimeout(patience)
    await page.goto(`${stage.address}/${place}`)
    await page.waitForSelector('.ribbon .track')
    return page
  }
  const job = () => readFileSync(join(stage.folder, 'job.yaml'), 'utf8')
  const saved = (page: Page) => page.locator('.headline').getByText('Saved', { exact: true }).waitFor()

  it.each(['light', 'dark'] as const)(
    'have nothing that axe calls serious, in %s',
    async colorScheme => {
      const page = await openPage('days', { colorScheme })
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

  it(
    'write a rule into the job, and take it back',
    async () => {
      const page = await openPage('site')
      const most = page.getByLabel('Mix at most', { exact: true })
      await most.fill('34 °C')
      await most.press('Enter')
      await expect.poll(job, { timeout: patience }).toContain('mixTemperatureMost: 34 °C # the plant')
      await page.getByRole('button', { name: /^Mix at most: back to the usual/ }).click()
      await expect.poll(job, { timeout: patience }).not.toContain('mixTemperatureMost')
      await page.getByRole('button', { name: 'Undo' }).click()
      await page.getByRole('button', { name: 'Undo' }).click()
      await expect.poll(job, { timeout: patience }).toContain('mixTemperatureMost: 32 °C')
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'keep an edit made while the server is away, and send it when it is back',
    async () => {
      const page = await openPage('site')
      await stage.stopServer()
      const people = page.getByLabel('People', { exact: true })
      await people.fill('7')
      await people.press('Enter')
      await page.getByText('Kept here, server away').waitFor()
      expect(job()).toContain('size: 6')
      await stage.startServer()
      await expect.poll(job, { timeout: patience }).toContain('size: 7')
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'follow a change made elsewhere, and ask when both have changed',
    async () => {
      const page = await openPage('site')
      const people = page.getByLabel('People', { exact: true })
      writeFileSync(join(stage.folder, 'job.yaml'), job().replace(/size: \d+/, 'size: 8'))
      await expect.poll(() => people.inputValue(), { timeout: patience }).toBe('8')
      await stage.stopServer()
      await people.fill('9')
      await people.press('Enter')
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
    'show the plan again without a network',
    async () => {
      const page = await openPage('days')
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
    'try the levers and lay them side by side',
    async () => {
      const page = await openPage('days')
      await page.getByRole('button', { name: 'Try the levers' }).click()
      await page.getByRole('rowheader', { name: 'as planned' }).waitFor()
      const levers = await page.locator('[aria-label="Levers"] tbody th').allTextContents()
      expect(levers.length).toBeGreaterThan(3)
      expect(levers.some(lever => /chilled water|nozzle|earlier/.test(lever))).toBe(true)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'remember which calls are confirmed',
    async () => {
      const page = await openPage('trades')
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
    'open a job dropped on the page, and leave the one on disk alone',
    async () => {
      const page = await openPage('days')
      const before = job()
      const dropped = (name: string) => readFileSync(join(root, 'examples/tern-cottage', name), 'utf8')
      await page.evaluate(
        files => {
          const data = new DataTransfer()
          for (const [name, text] of files) data.items.add(new File([text], name))
          window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }))
        },
        ['job.yaml', 'plan.dxf'].map(name => [name, dropped(name)] as const),
      )
      await page.getByText('This job lives only in this tab').waitFor()
      await page.getByRole('heading', { name: 'Tern Cottage' }).waitFor()
      await page.click('nav a[href="/site"]')
      const people = page.getByLabel('People', { exact: true })
      await people.fill('3')
      await people.press('Enter')
      await page.getByRole('button', { name: 'Undo' }).and(page.locator(':enabled')).waitFor()
      await page.reload()
      await page.getByRole('heading', { name: 'Casa Torrenubia' }).waitFor()
      expect(job()).toBe(before)
      await page.context().close()
    },
    2 * patience,
  )
})
