import { expect, it } from 'vitest'
import { halfOver, smallPlan, smallSay } from '../examples/index.js'
import { type Drawing, paperSheet } from '../paper/index.js'
import { drawTimeHeight } from './index.js'

const plan = smallPlan()
const sheet = paperSheet('A3', 'landscape', { job: 'Orchard pavilion', revision: 'C', date: '1 July 2026' })
const linesIn = (drawing: Drawing, name: string) =>
  drawing.layers
    .filter(layer => layer.name === name)
    .flatMap(layer => layer.marks.flatMap(mark => (mark.kind === 'line' ? [mark] : [])))

it('a campaign under way is parted by a line at the moment of the log: on its left what was', () => {
  const drawing = drawTimeHeight(halfOver(plan), sheet, smallSay)
  const at = linesIn(drawing, 'now')[0]!.points[0]![0]
  const titles = (isLeft: boolean) =>
    linesIn(drawing, 'sections').flatMap(({ title, points }) =>
      title && Math.max(...points.map(([x]) => x)) <= at + 1e-6 === isLeft ? [title] : [],
    )
  expect(titles(true)).toEqual(['lift A1, as it was', 'lift A2, as it was', 'lift B1, as it was'])
  expect(titles(false).some(title => title.includes('as it was'))).toBe(false)
  expect(linesIn(drawTimeHeight(plan, sheet, smallSay), 'now')).toEqual([])
})
