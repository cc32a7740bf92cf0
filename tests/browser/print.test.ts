import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { onStage, patience } from './on-stage.js'

onStage('on paper', 'tern-cottage', ({ stage, open }) => {
  it(
    'a place of the dark screen is light, has its title, and nothing to press',
    async () => {
      const page = await open('days', { colorScheme: 'dark', shown: '.liftrow' })
      await page.emulateMedia({ media: 'print' })
      const paper = () =>
        page.evaluate(() => {
          const [, red] = /rgb\((\d+)/.exec(getComputedStyle(document.body).backgroundColor) ?? []
          return Number(red)
        })
      expect(await paper()).toBeLessThan(60)
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
      expect(await paper()).toBeGreaterThan(200)
      const title = await page.evaluate(
        () => getComputedStyle(document.querySelector('.board')!, '::before').content,
      )
      expect(title).toContain('Tern Cottage · revision B · Days')
      expect(await page.locator('.headline').isVisible()).toBe(false)
      expect(await page.locator('.mantine-Button-root:visible').count()).toBe(0)
      await page.evaluate(() => dispatchEvent(new Event('afterprint')))
      expect(await paper()).toBeLessThan(60)
      await page.context().close()
    },
    2 * patience,
  )

  it(
    'day sheets, trade sheets and the permit package are there as PDF',
    async () => {
      const page = await open('tally')
      const outputs = (await (await page.request.get(`${stage().address}/api/out`)).json()) as {
        name: string
      }[]
      for (const wanted of [/^sheets\/day-/, /^sheets\/trade-/, /permit/]) {
        const found = outputs.find(({ name }) => wanted.test(name) && name.endsWith('.pdf'))
        expect(found, String(wanted)).toBeDefined()
        const file = await page.request.get(`${stage().address}/api/out/${found!.name}`)
        expect((await file.body()).subarray(0, 5).toString()).toBe('%PDF-')
      }
      await page.context().close()
    },
    3 * patience,
  )
})

onStage('walls on paper', 'tern-cottage', ({ open }) => {
  it(
    'are unrolled each from both sides, and only there',
    async () => {
      const page = await open('walls', { shown: '#walls-plan .opening' })
      const drawn = () => page.locator('.paper-only .picture').count()
      expect(await drawn()).toBe(0)
      const walls = await page.locator('#walls-plan .wall').count()
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
      expect(await drawn()).toBe(2 * walls)
      await page.evaluate(() => dispatchEvent(new Event('afterprint')))
      await page.waitForFunction(() => !document.querySelector('.paper-only'))
      expect((await page.pdf()).length).toBeGreaterThan(20_000)
      await page.context().close()
    },
    2 * patience,
  )
})

onStage('the solid view', 'tern-cottage', ({ open }) => {
  it(
    'is drawn by WebGL: an empty slab before the campaign, walls at its end, cut open, in both lights',
    async () => {
      const page = await open('walls', { shown: '[data-testid="solid"] canvas' })
      await page.waitForTimeout(2500)
      const before = (await seen(page)).walls
      await page.focus('.ribbon .track')
      await page.keyboard.press('End')
      await page.waitForTimeout(2500)
      const after = (await seen(page)).walls
      expect(after).toBeGreaterThan(before + 0.03)
      await page.locator('.cutter [role="slider"]').focus()
      for (let step = 0; step < 40; step++) await page.keyboard.press('ArrowLeft')
      await expect
        .poll(async () => (await seen(page)).walls, { timeout: patience })
        .toBeLessThan(after - 0.02)
      // The slab at the near edge of the picture, nothing before it any more, wears the colours of the page.
      expect((await seen(page)).slab).toBeGreaterThan(150)
      await page.getByRole('button', { name: 'Dark', exact: true }).click()
      await expect.poll(async () => (await seen(page)).slab, { timeout: patience }).toBeLessThan(100)
      expect((await seen(page)).slab).toBeGreaterThan(40)
      await page.context().close()
    },
    2 * patience,
  )
})

/** What the solid view shows: the share of it that is coloured as by print days, and a place on the slab. */
async function seen(page: Page): Promise<{ readonly walls: number; readonly slab: number }> {
  const shot = await page.locator('[data-testid="solid"]').screenshot()
  return page.evaluate(
    async source => {
      const image = new Image()
      image.src = source
      await image.decode()
      const { width, height } = image
      const canvas = new OffscreenCanvas(width, height)
      const context = canvas.getContext('2d')!
      context.drawImage(image, 0, 0)
      const { data } = context.getImageData(0, 0, width, height)
      // The ramp of print days runs through blue and green, which neither slab nor paper is.
      let walls = 0
      for (let at = 0; at < data.length; at += 4) if (data[at + 1]! - data[at]! > 25) walls += 1
      const slab = data[4 * (Math.floor(0.8 * height) * width + Math.floor(0.5 * width))]!
      return { walls: walls / (width * height), slab }
    },
    `data:image/png;base64,${shot.toString('base64')}`,
  )
}
