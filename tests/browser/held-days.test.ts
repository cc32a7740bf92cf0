import { expect, it } from 'vitest'
import { onStage, patience } from './on-stage.js'

onStage('an edit in a browser', 'tern-cottage', ({ open, job }) => {
  it(
    'is answered with the days kept, and then says that none better were found',
    async () => {
      const whole = job()
      const page = await open('walls', { shown: '#walls-plan .column' })
      const line = page.getByTestId('change-line')
      await page.locator('#plan-column-K2').dispatchEvent('click')
      await page.focus('#walls-plan')
      for (const key of ['m', 'ArrowRight', 'Enter']) await page.keyboard.press(key)
      // A column half an inch on asks for no other days.
      await expect
        .poll(() => line.textContent(), { timeout: patience })
        .toMatch(/^Since the last edit: .*finish unchanged\. Days kept as they were; none better found\.$/)
      // The plan from before is known: undo holds nothing and searches nothing.
      await page.getByRole('button', { name: 'Undo' }).click()
      await expect.poll(job, { timeout: patience }).toBe(whole)
      await expect.poll(() => line.textContent(), { timeout: patience }).toMatch(/finish unchanged$/)
      await page.context().close()
    },
    2 * patience,
  )
})
