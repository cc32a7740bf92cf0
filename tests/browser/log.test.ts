import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { beforeEach, expect, it } from 'vitest'
import { onStage, patience } from './on-stage.js'

onStage('the site log in a browser', 'tern-cottage', ({ stage, folder, open }) => {
  const file = () => join(folder(), 'site-log.jsonl')
  const log = () => (existsSync(file()) ? readFileSync(file(), 'utf8') : '')
  beforeEach(() => {
    if (existsSync(file())) writeFileSync(file(), '')
  })
  /** The first print day of the cottage, by its own clocks: four hours behind UTC in May. */
  const at = (clock: string) => new Date(`2026-05-18T${clock}:00-04:00`)
  const openToday = async (clock: string) => {
    const page = await stage().page()
    await page.clock.setFixedTime(at(clock))
    return open('today', { page })
  }
  /** The page looks at the clock every few seconds. */
  const later = async (page: Page, clock: string) => {
    await page.clock.setFixedTime(at(clock))
    await page.getByText(`now, ${clock}`).waitFor()
  }
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click()
  const logged = (text: RegExp) => expect.poll(log, { timeout: patience }).toMatch(text)

  it(
    'takes a stop by touch; the rest is planned anew, and who must be told what is listed until they were',
    async () => {
      const page = await openToday('07:00')
      await press(page, 'Shift begins')
      await logged(/"at":"2026-05-18 07:00","what":"shift"/)
      await later(page, '09:00')
      for (let more = 0; more < 3; more++) await press(page, 'One layer more')
      await press(page, 'Layer 4 of A is down')
      await logged(
        /"09:00","what":"layer","section":"A","layer":4|09:00","what":"layer","section":"A","layer":4/,
      )
      await later(page, '09:10')
      await press(page, 'hose blocked')
      await page.getByText('Stopped since 09:10').waitFor()
      await later(page, '13:10')
      await press(page, 'It goes on')
      await logged(/"what":"strike","line":3\}\n.*"cause":"hose blocked","until":"2026-05-18 13:10"\}\n$/)
      await page.getByText('hose blocked: once, 240 min').waitFor()
      const told = page.locator('[aria-labelledby="tell-title"] li')
      await told.first().waitFor()
      expect((await told.allTextContents()).join('\n')).toMatch(/A1|A2/)
      await press(page, 'All of them have been told')
      await page.getByText('Nobody needs to be told anything new.').waitFor()
      await expect.poll(() => existsSync(join(folder(), 'told-days.json')), { timeout: patience }).toBe(true)
      // What was printed is not undone with the telling.
      await press(page, 'Undo')
      await told.first().waitFor()
      await expect.poll(() => existsSync(join(folder(), 'told-days.json')), { timeout: patience }).toBe(false)
      expect(log().split('\n').length).toBe(6)
      await page.context().close()
    },
    4 * patience,
  )

  it(
    'keeps what is logged while the server is away, through a killed page, and sends it once',
    async () => {
      const page = await openToday('09:00')
      await stage().stopServer()
      await press(page, 'Layer 1 of A is down')
      await page.getByText('One line waits here for the server.').waitFor()
      await page.getByText('1 of 48').waitFor()
      expect(log()).toBe('')
      const context = page.context()
      await page.close({ runBeforeUnload: false })
      // Somebody else writes to it meanwhile.
      writeFileSync(file(), '{"at":"2026-05-18 06:50","what":"shift"}\n')
      await stage().startServer()
      const again = await context.newPage()
      await again.clock.setFixedTime(at('09:05'))
      await open('today', { page: again })
      await logged(/^.*"shift"\}\n\{"at":"2026-05-18 09:00","what":"layer","section":"A","layer":1\}\n$/)
      await again.getByText('One line waits').waitFor({ state: 'detached' })
      expect(log().split('\n').length).toBe(3)
      await context.close()
    },
    3 * patience,
  )

  it(
    'shows the days that are over as they were, and keeps them from being moved',
    async () => {
      const rows = [5, 30].map(
        (layer, index) =>
          `{"at":"2026-05-18 ${9 + 4 * index}:00","what":"layer","section":"A","layer":${layer}}\n`,
      )
      writeFileSync(file(), rows.join(''))
      const page = await open('days', { shown: '.weeks .chip' })
      const first = page.locator('.liftrow').first()
      expect(await first.getAttribute('class')).toContain('over')
      expect(await first.textContent()).toMatch(/layers 1–30as it was/)
      expect(await page.locator('.liftrow.over').count()).toBe(1)
      expect(await page.locator('[data-layer="now"]').count()).toBe(1)
      expect(await page.locator('.weeks .chip.past').allTextContents()).toEqual(['A1'])
      expect(await page.locator('.weeks button.chip').count()).toBeGreaterThan(2)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'gives the machine file of what is left, from the layer above what stands and a chosen pass',
    async () => {
      writeFileSync(file(), '{"at":"2026-05-18 13:00","what":"layer","section":"A","layer":21}\n')
      const page = await openToday('13:05')
      await page.getByText('Go on after a stop').click()
      await page.getByText('layer 22 of 128').waitFor()
      await page.getByText(/^pass 1 of \d+$/).waitFor()
      await press(page, 'One pass on')
      await page.getByText(/^pass 2 of \d+$/).waitFor()
      expect(await page.locator('.passes .laid').count()).toBe(1)
      const coming = page.waitForEvent('download')
      await page.getByRole('link', { name: 'Machine file of what is left' }).click()
      const download = await coming
      expect(download.suggestedFilename()).toBe('A2-from-layer-22-pass-2.ngc')
      const text = readFileSync(await download.path(), 'utf8')
      expect(text.slice(0, 5)).toBe('(job ')
      expect(text).toMatch(/layer 22\)/)
      expect(text).not.toMatch(/layer 21\)/)
      await page.context().close()
    },
    3 * patience,
  )

  it(
    'has a wrong line struck, refuses what cannot be, and follows what is logged elsewhere',
    async () => {
      const page = await openToday('09:00')
      await press(page, 'Layer 1 of A is down')
      await press(page, /^Strike line 1/)
      await logged(/"layer":1\}\n\{"what":"strike","line":1\}\n$/)
      await page.locator('.log s').waitFor()
      writeFileSync(file(), `${log()}{"at":"2026-05-18 09:30","what":"layer","section":"A","layer":6}\n`)
      await press(page, 'Layer 7 of A is down')
      // At nine there cannot be more than at half past.
      await page
        .getByRole('alert')
        .getByText(/strike the wrong one/)
        .waitFor()
      expect(log()).not.toContain('"layer":7')
      await page.context().close()
    },
    3 * patience,
  )
})
