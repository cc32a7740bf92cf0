import type { Page } from 'playwright-core'
import { beforeAll, expect, it } from 'vitest'
import { onStage, patience } from './on-stage.js'

onStage('things on the plan in a browser', 'tern-cottage', ({ job, open: openPlace }) => {
  let whole: string
  beforeAll(() => {
    whole = job()
  })
  const open = () => openPlace('walls', { shown: '#walls-plan .column' })
  const choose = (page: Page, id: string) => page.locator(`#plan-${id}`).dispatchEvent('click')
  const undo = async (page: Page) => {
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(job, { timeout: patience }).toBe(whole)
  }
  const takeOut = (page: Page) => page.getByRole('button', { name: 'Take out', exact: true }).click()

  it(
    'of every kind are taken out and come back by undo, byte for byte',
    async () => {
      const page = await open()
      const drawn = await page.locator('#walls-plan .embed').first().getAttribute('id')
      const things = [
        ['opening-F2', /^(?![\s\S]*id: F2,)/],
        ['column-K1', /^(?![\s\S]*id: K1,)/],
        ['lintel-F3', /id: F3, wall: E, kind: window/],
        [drawn!.replace('plan-', ''), new RegExp(`leaveOut: \\[? ?${drawn!.replace('plan-embed-', '')}`)],
      ] as const
      for (const [thing, gone] of things) {
        await choose(page, thing)
        await takeOut(page)
        await expect.poll(job, { timeout: patience }).toMatch(gone)
        await undo(page)
      }
      await page.context().close()
    },
    4 * patience,
  )

  it(
    'that are drawn are brought back from the list of what is left out',
    async () => {
      const page = await open()
      const embed = await page.locator('#walls-plan .embed').first().getAttribute('id')
      await choose(page, embed!.replace('plan-', ''))
      await takeOut(page)
      await page.locator(`#${embed}`).waitFor({ state: 'detached' })
      await page.getByText('1 thing of the drawing is left out').click()
      await page.getByRole('button', { name: `Bring ${embed!.replace('plan-embed-', '')} back` }).click()
      await page.locator(`#${embed}`).waitFor({ state: 'attached' })
      await expect.poll(job, { timeout: patience }).not.toContain('leaveOut')
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'move by keys: a column along its wall, a whole wall with those that end on it',
    async () => {
      const page = await open()
      await choose(page, 'column-K2')
      await page.focus('#walls-plan')
      await page.keyboard.press('m')
      await page.keyboard.press('Shift+ArrowRight')
      await page.keyboard.press('Enter')
      // K2 stands at 18' 6"; ten steps of half an inch on.
      await expect.poll(job, { timeout: patience }).toContain(`id: K2, wall: S, type: cast, at: 18' 11"`)
      await undo(page)
      await choose(page, 'wall-P')
      await page.focus('#walls-plan')
      await page.keyboard.press('m')
      await page.keyboard.press('Shift+ArrowRight')
      await page.keyboard.press('Enter')
      // The partition between bath and room goes to the right, and the wall that ends on it goes along.
      await expect.poll(job, { timeout: patience }).toMatch(/walls:\n +- \{ id: P,.*\n +- \{ id: B,/)
      await undo(page)
      await page.context().close()
    },
    3 * patience,
  )

  it(
    'move by hand: a wall taken by its second touch goes where it is dropped',
    async () => {
      const page = await open()
      await choose(page, 'wall-P')
      const box = (await page.locator('#plan-wall-P path').first().boundingBox())!
      const at = { x: box.x + box.width * 0.5, y: box.y + box.height * 0.15 }
      await page.mouse.move(at.x, at.y)
      await page.mouse.down()
      await page.mouse.move(at.x + 6, at.y + 3)
      await page.mouse.move(at.x + 25, at.y, { steps: 3 })
      await page.mouse.up()
      await expect.poll(job, { timeout: patience }).toMatch(/walls:\n +- \{ id: P,/)
      await undo(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'are set in a row with a typed distance',
    async () => {
      const page = await open()
      await choose(page, 'column-K2')
      await page.getByText('The same again in a row').click()
      await page.getByLabel('So many more').fill('2')
      await page.getByLabel('From middle to middle').fill('18 in')
      await page.getByRole('button', { name: 'Set them' }).click()
      // K2 stands at 18' 6", behind the last window of its wall.
      await expect.poll(job, { timeout: patience }).toMatch(/id: K5,.*at: 20' 0"[\s\S]*id: K6,.*at: 21' 6"/)
      await undo(page)
      await page.context().close()
    },
    2 * patience,
  )
})
