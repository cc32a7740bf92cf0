import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { expect, it } from 'vitest'
import { drop, goTo, onStage, patience, people, saved, typePeople } from './on-stage.js'

const places = ['site', 'walls', 'mix', 'days', 'trades', 'today', 'tally', 'calc'] as const

onStage('the places along the job', 'torrenubia', ({ open }) => {
  it.each(['light', 'dark'] as const)(
    'have nothing that axe calls serious, in %s',
    async colorScheme => {
      const page = await open('days', { colorScheme })
      for (const place of places) {
        await goTo(page, place)
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

onStage('the places under a finger', 'tern-cottage', ({ open }) => {
  it.each([
    [820, 1180],
    [1180, 820],
  ])(
    'have nothing to press that is less than 44 px high, and nothing beyond the edge, at %d by %d',
    async (width, height) => {
      const page = await open('days', { viewport: { width, height }, touch: true })
      const small: string[] = []
      for (const place of places) {
        await goTo(page, place)
        await page.waitForTimeout(500)
        small.push(...(await page.evaluate(tooSmall)).map(each => `${place}: ${each}`))
      }
      expect(small).toEqual([])
      await page.context().close()
    },
    4 * patience,
  )
})

onStage('a job in the page and on disk', 'tern-cottage', ({ stage, folder, job, write, open }) => {
  it(
    'takes a rule typed on the site, and goes back to the usual one at a touch',
    async () => {
      const page = await open('site')
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
    'takes what the machine can do from its profile, and the job’s own word over it',
    async () => {
      const page = await open('site')
      const most = page.getByLabel('Pump at most', { exact: true })
      const profile = await most.inputValue()
      expect(profile).toMatch(/gal\/min|L\/min/)
      await most.fill('9 L/min')
      await most.press('Enter')
      await expect.poll(job, { timeout: patience }).toMatch(/flowMost: 9 L\/min/)
      await page.getByRole('button', { name: 'Pump at most: back to what the profile says' }).click()
      await expect.poll(job, { timeout: patience }).not.toContain('flowMost')
      expect(await most.inputValue()).toBe(profile)
      for (let step = 0; step < 2; step++) await page.getByRole('button', { name: 'Undo' }).click()
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'keeps an edit made while the server is away, and sends it when it is back',
    async () => {
      const page = await open('site')
      await stage().stopServer()
      await typePeople(page, '7')
      await page.getByText('Kept here, server away').waitFor()
      expect(job()).toContain('size: 4')
      await stage().startServer()
      await expect.poll(job, { timeout: patience }).toContain('size: 7')
      await saved(page)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'follows a change made elsewhere, and asks when both have changed',
    async () => {
      const page = await open('site')
      write(job().replace(/size: \d+/, 'size: 8'))
      await expect.poll(() => people(page).inputValue(), { timeout: patience }).toBe('8')
      await stage().stopServer()
      await typePeople(page, '9')
      await page.getByText('Kept here, server away').waitFor()
      write(job().replace(/size: \d+/, 'size: 5'))
      await stage().startServer()
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
      const page = await open('days')
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
    'remembers which calls are confirmed',
    async () => {
      const page = await open('trades')
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
      const page = await open('days')
      const before = job()
      const dropped = [
        ['job.yaml', before.replace('Tern Cottage', 'Wren Cottage')],
        ['plan.dxf', readFileSync(join(folder(), 'plan.dxf'), 'utf8')],
      ] as const
      await drop(page, dropped)
      await page.getByText('This job lives only in this tab').waitFor()
      await page.getByRole('heading', { name: 'Wren Cottage' }).waitFor()
      await page.click('nav a[href="/site"]')
      await typePeople(page, '3')
      await page.getByRole('button', { name: 'Undo' }).and(page.locator(':enabled')).waitFor()
      await page.reload()
      await page.getByRole('heading', { name: 'Tern Cottage' }).waitFor()
      expect(job()).toBe(before)
      await page.context().close()
    },
    2 * patience,
  )
})

/** Runs in the page: what can be pressed and is too low for a finger, its drawn-out reach counted, or lies past the edge. */
function tooSmall(): readonly string[] {
  const pressed = 'button, a[href], input, select, textarea, summary, [role="slider"]'
  const named = (each: Element) =>
    `${each.tagName} ${each.getAttribute('aria-label') ?? each.textContent?.trim().slice(0, 30)}`
  const reach = (each: Element) => {
    const label =
      each.closest('label') ?? (each.id ? document.querySelector(`label[for="${each.id}"]`) : null)
    const drawn = [each, ...(label ? [label] : [])].map(one => one.getBoundingClientRect().height)
    const after = getComputedStyle(each, '::after')
    const more = after.content === 'none' ? 0 : Number.parseFloat(after.top) + Number.parseFloat(after.bottom)
    return Math.max(...drawn) - (Number.isNaN(more) ? 0 : more)
  }
  return [...document.querySelectorAll(pressed)].flatMap(each => {
    const { width, height, right } = each.getBoundingClientRect()
    const isShown = width > 1 && height > 1 && !each.closest('.unseen, .skip')
    if (!isShown || each.matches(':disabled')) return []
    const low = reach(each) < 43.5 ? [`${named(each)} is ${reach(each).toFixed(0)} px high`] : []
    const past = right > innerWidth + 1 && !each.closest('.scroller') ? [`${named(each)} is cut off`] : []
    return [...low, ...past]
  })
}
