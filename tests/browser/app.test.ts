import { expect, it } from 'vitest'
import { goTo, onStage, patience } from './on-stage.js'

onStage('the app in a browser', 'torrenubia', ({ stage, open }) => {
  it(
    'shows the print days of the demo job, each lift with its reason',
    async () => {
      const page = await open('days', { shown: '.liftrow' })
      const reasons = await page.locator('.liftrow .why').allTextContents()
      expect(reasons.length).toBeGreaterThan(5)
      expect(reasons.every(reason => /stops at layer|all \d+ layers?:/.test(reason))).toBe(true)
      await page.context().close()
    },
    patience,
  )

  it(
    'goes through all places without an error on the page',
    async () => {
      const page = await stage().page()
      const errors: string[] = []
      page.on('pageerror', error => errors.push(error.message))
      await open('days', { page, shown: '.liftrow' })
      for (const place of ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc']) {
        await goTo(page, place)
      }
      expect(errors).toEqual([])
      await page.context().close()
    },
    2 * patience,
  )
})
