import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../sources.js'
import { contactSheet, difference } from './contact-sheet.js'
import { letterIn } from './golden-font.js'
import { goTo } from './on-stage.js'
import { noBrowser, openStage, type Stage } from './stage.js'

// Every place at a desk and on a tablet, in both lights, half size, on one sheet a place. A person looks at them:
// DAWNLIFT_GOLDENS=write writes them anew.
const folder = join(root, 'tests/browser/golden')
const write = process.env.DAWNLIFT_GOLDENS === 'write'
const patience = 120_000
/** Edges of letters and lines may be softened a little differently: a pixel may be so far off [of 255] … */
const apart = 64
/** … and so large a share of them further than that. A moved column of text is more. */
const share = 0.004
const places = ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc'] as const
const views = [
  { viewport: { width: 1440, height: 900 }, colorScheme: 'light' },
  { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
  { viewport: { width: 820, height: 1180 }, colorScheme: 'light', touch: true },
  { viewport: { width: 820, height: 1180 }, colorScheme: 'dark', touch: true },
] as const

describe.skipIf(noBrowser)(`the places as they look${noBrowser ? `: ${noBrowser}` : ''}`, () => {
  let stage: Stage
  const shots = new Map<string, Buffer[]>()
  let blank: Page
  beforeAll(async () => {
    stage = await openStage('tern-cottage')
    blank = await stage.page()
    for (const view of views) {
      const page = await stage.page({ ...view, deviceScaleFactor: 0.45 })
      page.setDefaultTimeout(patience)
      // The morning of a print day, whatever day it is here.
      await page.clock.setFixedTime(new Date('2026-05-18T12:30:00Z'))
      await letterIn(page)
      await page.goto(`${stage.address}/days`)
      await page.waitForSelector('.liftrow')
      await page.evaluate(() => document.fonts.ready)
      for (const place of places) {
        await goTo(page, place)
        await page.mouse.move(0, 0)
        if (place === 'walls') await page.waitForSelector('#walls-plan .opening')
        // A place whose code or figures are still on their way says so; a picture of that is of no use.
        await page.getByText('Planning …', { exact: true }).waitFor({ state: 'detached' })
        await page.waitForTimeout(1200)
        shots.set(place, [...(shots.get(place) ?? []), await page.screenshot()])
      }
      await page.context().close()
    }
  }, 5 * patience)
  afterAll(() => stage?.close())

  it.each(places)(
    '%s',
    async place => {
      const now = await contactSheet(blank, shots.get(place) ?? [])
      const file = join(folder, `${place}.png`)
      if (write) {
        mkdirSync(folder, { recursive: true })
        writeFileSync(file, now)
      }
      expect(existsSync(file), `no golden of ${place}: look at it and write it`).toBe(true)
      const found = await difference(blank, readFileSync(file), now, apart)
      if (found.share > share) writeFileSync(file.replace('.png', '-changed.png'), now)
      expect(found.sameSize).toBe(true)
      expect(found.share).toBeLessThanOrEqual(share)
    },
    patience,
  )
})
