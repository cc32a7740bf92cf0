import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { onStage, patience } from './on-stage.js'

onStage('the days in a browser', 'tern-cottage', ({ job, open }) => {
  /** The day a lift is printed on. */
  const dateOf = (page: Page, lift: string) =>
    page.evaluate(
      id =>
        [...document.querySelectorAll('.weeks .chip')]
          .find(chip => chip.textContent === id)
          ?.closest('[data-date]')
          ?.getAttribute('data-date'),
      lift,
    )

  it(
    'let a lift be moved by keys, say what breaks, pin it, and let it go',
    async () => {
      const before = job()
      const page = await open('days', { shown: '.weeks .chip' })
      const chip = page.locator('.weeks .chip').first()
      const lift = (await chip.textContent())!
      const from = await dateOf(page, lift)
      await chip.focus()
      await page.keyboard.press('ArrowRight')
      await page.getByText(`${lift} to`).waitFor()
      await page.keyboard.press('Enter')
      await page
        .getByText(/print days/)
        .last()
        .waitFor()
      expect(job()).toBe(before)
      await page.getByRole('button', { name: 'Pin it there' }).click()
      await expect.poll(job, { timeout: patience }).toMatch(/pins:\n? *-? ?.*lift: 1/)
      await expect.poll(() => dateOf(page, lift), { timeout: patience }).not.toBe(from)
      await page.getByRole('button', { name: `Take the pin off ${lift}` }).click()
      await expect.poll(() => dateOf(page, lift), { timeout: patience }).toBe(from)
      await page.context().close()
    },
    3 * patience,
  )

  it(
    'name what stands in the way of a lift dragged onto a day nobody works',
    async () => {
      const before = job()
      const page = await open('days', { shown: '.weeks .chip' })
      const chip = page.locator('.weeks .chip').first()
      const off = page.locator('.weekday.off').first()
      await chip.scrollIntoViewIfNeeded()
      const [from, to] = [(await chip.boundingBox())!, (await off.boundingBox())!]
      await page.mouse.move(from.x + 10, from.y + 10)
      await page.mouse.down()
      await page.mouse.move(from.x + 30, from.y + 20)
      await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 4 })
      await page.mouse.up()
      await page
        .locator('.move-result .limit')
        .getByText(/cannot be printed on/)
        .waitFor()
      await page.getByRole('button', { name: 'Leave it' }).click()
      expect(job()).toBe(before)
      await page.context().close()
    },
    3 * patience,
  )
})
