import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe } from 'vitest'
import { noBrowser, openStage, type PageLook, type Stage } from './stage.js'

/** Of a whole plan, made in the page's worker on a busy machine. */
export const patience = 90_000

/** Where a place is opened, and what has to be there before a test goes on. */
export interface Opening extends PageLook {
  /** A page that is there already. */
  readonly page?: Page
  /** Waited for; the ribbon with its plan unless said otherwise. */
  readonly shown?: string
}

/** A demo job on a stage of its own, for the tests of one `describe`. */
export interface OnStage {
  readonly stage: () => Stage
  readonly folder: () => string
  /** The job's text on disk. */
  readonly job: () => string
  readonly write: (text: string) => void
  readonly open: (place: string, opening?: Opening) => Promise<Page>
}

/** Tests on a copy of a demo job, served and shown in a real browser; left out, with the reason, where there is none. */
export function onStage(
  title: string,
  demo: string,
  tests: (on: OnStage) => void,
  prepare: (folder: string) => void = () => {},
): void {
  describe.skipIf(noBrowser)(`${title}${noBrowser ? `: ${noBrowser}` : ''}`, () => {
    let stage: Stage
    beforeAll(async () => {
      stage = await openStage(demo)
      prepare(stage.folder)
    }, patience)
    afterAll(() => stage?.close())
    const file = () => join(stage.folder, 'job.yaml')
    tests({
      stage: () => stage,
      folder: () => stage.folder,
      job: () => readFileSync(file(), 'utf8'),
      write: text => writeFileSync(file(), text),
      open: async (place, { page, shown = '.ribbon .track', ...look } = {}) => {
        const opened = page ?? (await stage.page(look))
        opened.setDefaultTimeout(patience)
        await opened.goto(`${stage.address}/${place}`)
        await opened.locator(shown).first().waitFor({ state: 'attached' })
        return opened
      },
    })
  })
}

/** To another place, once it is there: what is fetched at the first visit may take its time. */
export async function goTo(page: Page, place: string): Promise<void> {
  await page.click(`nav a[href="/${place}"]`)
  await page.waitForSelector(`nav a[href="/${place}"][aria-current="page"]`)
  await page.waitForFunction(() => (document.querySelector('main')?.textContent?.length ?? 0) > 200)
}

/** The page says that the server has the job as it is shown. */
export const saved = (page: Page): Promise<void> =>
  page.locator('.headline').getByText('Saved', { exact: true }).waitFor()

/** A number of people typed into the site’s crew. */
export async function typePeople(page: Page, count: string): Promise<void> {
  await people(page).fill(count)
  await people(page).press('Enter')
}

export const people = (page: Page) => page.getByLabel('People', { exact: true })

/** Files dropped on the page, as from a folder on the desk. */
export const drop = (
  page: Page,
  files: readonly (readonly [name: string, content: string])[],
): Promise<void> =>
  page.evaluate(dropped => {
    const data = new DataTransfer()
    for (const [name, content] of dropped) data.items.add(new File([content], name))
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }))
  }, files)
