import { existsSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { newJobText } from '@dawnlift/document/job'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { root } from '../sources.js'
import { onStage, patience } from './on-stage.js'

const cottage = join(root, 'examples/tern-cottage/plan.dxf')

onStage('walls in a browser', 'torrenubia', ({ job, open }) => {
  it('moves a drawn window by keys, says what the limits make of it, and takes it back byte for byte', async () => {
    const before = job()
    const page = await open('walls', plan)
    await chooseByKeys(page, 'plan-opening-F1')
    await page.keyboard.press('m')
    for (let step = 0; step < 3; step++) await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('Enter')
    await page.waitForFunction(() =>
      /layers|unchanged/.test(document.querySelector('[data-testid="change-line"]')?.textContent ?? ''),
    )
    // F1 stands at 8.4 m in the drawing; three times ten steps of 10 mm.
    await expect.poll(job, { timeout: patience }).toContain('id: F1, wall: S, kind: window, at: 8.7 m')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(job, { timeout: patience }).toBe(before)
    await page.context().close()
  }, 240_000)

  it('keeps the job as it is when a field would break it, and says what is allowed', async () => {
    const before = job()
    const page = await open('walls', plan)
    await chooseByKeys(page, 'plan-opening-F1')
    await page.getByLabel('Head', { exact: true }).fill('9 m')
    await page.keyboard.press('Enter')
    await page.getByText(/above the wall’s top at 2.8 m/).waitFor()
    expect(job()).toBe(before)
    await page.context().close()
  }, 240_000)
})

onStage(
  'a drawing brought in',
  'tern-cottage',
  ({ job, folder, open }) => {
    it('is refused with reasons when it is junk, and nothing changes', async () => {
      const before = job()
      const page = await open('walls', plan)
      await page.setInputFiles('input[type="file"]', {
        name: 'holiday.dxf',
        mimeType: 'image/jpeg',
        buffer: Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 1, 2, 3]),
      })
      await page.getByText('holiday.dxf was not brought in; nothing has changed.').waitFor()
      expect(await page.getByLabel('Problems').textContent()).toContain('holiday.dxf')
      expect(job()).toBe(before)
      await page.context().close()
    }, 240_000)

    it('becomes the walls of a fresh job, its layers mapped and its file beside the job', async () => {
      const page = await open('walls', plan)
      await page.setInputFiles('input[type="file"]', cottage)
      await page.getByLabel('EMBEDS: It is').selectOption('ignore')
      const accept = page.getByRole('button', { name: 'Take it into the job' })
      await page.getByText('Gives 7 walls').waitFor()
      await accept.click()
      await page.locator('#plan-wall-P').waitFor({ state: 'attached' })
      await expect.poll(job, { timeout: patience }).toContain('WALLS OUT: { is: walls, type: outer }')
      expect(existsSync(join(folder(), 'plan.dxf'))).toBe(true)
      await page.context().close()
    }, 240_000)
  },
  freshJob,
)

const plan = { shown: '#walls-plan .opening' }

/** A job fresh from its template, and no drawing beside it yet. */
function freshJob(folder: string): void {
  writeFileSync(join(folder, 'job.yaml'), newJobText('Cottage'))
  rmSync(join(folder, 'plan.dxf'))
}

/** Arrow through the plan until the wanted thing is the active one. */
async function chooseByKeys(page: Page, id: string): Promise<void> {
  await page.focus('#walls-plan')
  for (let step = 0; step < 200; step++) {
    if ((await page.getAttribute('#walls-plan', 'aria-activedescendant')) === id) return
    await page.keyboard.press('ArrowRight')
  }
  throw new Error(`${id} is not reached by arrow keys`)
}
