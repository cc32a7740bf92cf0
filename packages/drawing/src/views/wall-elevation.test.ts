import { describe, expect, it } from 'vitest'
import { marksOf, refOf, smallPlan, span, textsOf } from '../examples/index.js'
import { type LineMark, paperSheet } from '../paper/index.js'
import { drawLayerPlan, drawWallElevation } from './index.js'

const plan = smallPlan()
const sheet = paperSheet('A3', 'landscape', { job: 'Orchard pavilion', revision: 'C', date: '1 July 2026' })

describe('drawWallElevation', () => {
  it('seen on its right face starts at the left hand', () => {
    const drawing = drawWallElevation(plan, 'S', sheet)
    // hand: 1:20, the door's jamb stands 1.1 m = 55 mm from the wall's start
    const [left] = span(refOf(drawing, 'D1'), 0)
    const wall = marksOf(drawing, 'outline').find(mark => mark.kind === 'line' && mark.closed) as LineMark
    expect(left - span(wall, 0)[0]).toBeCloseTo(55, 6)
  })

  it('seen on its left face starts at the right hand', () => {
    const drawing = drawWallElevation(plan, 'S', sheet, { seenFrom: 'left' })
    const [, right] = span(refOf(drawing, 'D1'), 0)
    const wall = marksOf(drawing, 'outline').find(mark => mark.kind === 'line' && mark.closed) as LineMark
    expect(span(wall, 0)[1] - right).toBeCloseTo(55, 6)
  })

  it('draws full what is on the face that is seen, and hidden what is not', () => {
    expect(refOf(drawWallElevation(plan, 'S', sheet), 'X1').pen).toBe('hidden')
    expect(refOf(drawWallElevation(plan, 'S', sheet, { seenFrom: 'left' }), 'X1').pen).toBe('accent')
  })

  it('draws a corbelled head as it leans in, and a layer through it as wide as it is there', () => {
    const { job } = plan
    const embeds = job.embeds.map(embed =>
      embed.id === 'N1' ? { ...embed, method: 'gap' as const, head: 'corbelled' as const } : embed,
    )
    const leaning = { ...plan, job: { ...job, embeds } }
    const { points } = refOf(drawWallElevation(leaning, 'W', sheet, { seenFrom: 'left' }), 'N1')
    const wide = [0, 1, 2].map(i => Math.abs(points[i]![0] - points[points.length - 1 - i]![0]))
    // hand: 120 mm deep by steps of 7.5 mm: 15 layers, 15 mm off its width of 500 mm on each
    expect(wide[0]).toBeCloseTo(wide[1]!, 9)
    expect(wide[2]! / wide[0]!).toBeCloseTo((500 - 15 * 15) / 500, 9)
    // hand: 1.2 to 1.6 m are layers 49 to 64 of 25 mm; the head closes from layer 50 on, by layer 56 seven steps
    const [west, south] = [49, 56].map(number => refOf(drawLayerPlan(leaning, number, sheet), 'N1'))
    expect(span(west!, 1)[1] - span(west!, 1)[0]).toBeCloseTo(20, 6)
    expect(span(south!, 1)[1] - span(south!, 1)[0]).toBeCloseTo(20 * ((500 - 7 * 15) / 500), 6)
  })

  it('puts lifts one on the other up to the top of the wall', () => {
    const drawing = drawWallElevation(plan, 'S', sheet)
    const heights = ['A1', 'A2', 'A3', 'A4'].map(id => span(refOf(drawing, id), 1))
    for (const [index, [foot]] of heights.slice(1).entries()) expect(foot).toBeCloseTo(heights[index]![1], 9)
    // hand: 2.4 m at 1:20
    expect(heights[3]![1] - heights[0]![0]).toBeCloseTo(120, 6)
  })

  it('names every call of the wall', () => {
    const refs = new Set(textsOf(drawWallElevation(plan, 'S', sheet)).map(mark => mark.ref))
    for (const id of ['X1', 'X2', 'J1', 'D1/cut', 'F1/cut']) expect(refs).toContain(id)
  })

  it('is asked for a wall there is', () =>
    expect(() => drawWallElevation(plan, 'Z', sheet)).toThrow('no wall Z'))
})
