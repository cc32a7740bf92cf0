import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { noBrowser, openStage, type Stage } from './stage.js'

describe.skipIf(noBrowser)(`the app in a browser${noBrowser ? `: ${noBrowser}` : ''}`, () => {
  let stage: Stage
  beforeAll(async () => {
    stage = await openStage('torrenubia')
  }, 60_000)
  afterAll(() => stage.close())

  it('shows the print days of the demo job, each lift with its reason', async () => {
    const page = await stage.page()
    await page.goto(`${stage.address}/days`)
    await page.waitForSelector('.liftrow', { timeout: 30_000 })
    const reasons = await page.locator('.liftrow .why').allTextContents()
    expect(reasons.length).toBeGreaterThan(5)
    expect(reasons.every(reason => /stops at layer|all \d+ layers?:/.test(reason))).toBe(true)
    await page.context().close()
  })

  it('goes through all places without an error on the page', async () => {
    const page = await stage.page()
    const errors: string[] = []
    page.on('pageerror', error => errors.push(error.message))
    await page.goto(`${stage.address}/days`)
    await page.waitForSelector('.liftrow', { timeout: 30_000 })
    for (const place of ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc']) {
      await page.click(`nav a[href="/${place}"]`)
      await page.waitForFunction(() => (document.querySelector('main')?.textContent?.length ?? 0) > 200)
    }
    expect(errors).toEqual([])
    await page.context().close()
  })
})
