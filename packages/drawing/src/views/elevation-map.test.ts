import { describe, expect, it } from 'vitest'
import { smallPlan } from '../examples/index.js'
import { figure, type LineMark } from '../paper/index.js'
import { drawWallElevation, elevationMap } from './index.js'

const plan = smallPlan()
const sheet = figure(300, 95, { job: 'Orchard pavilion', revision: 'C', date: '1 July 2026' })

describe('elevationMap', () => {
  it.each(['right', 'left'] as const)('finds on the %s side what the drawing shows there', seenFrom => {
    const door = plan.job.openings.find(each => each.id === 'D1')!
    const mark = drawWallElevation(plan, door.wall, sheet, { seenFrom })
      .layers.find(layer => layer.name === 'openings')
      ?.marks.find((each): each is LineMark => each.kind === 'line' && each.ref === 'D1')
    const corners = mark!.points.map(elevationMap(plan, door.wall, sheet, { seenFrom }).toWall)
    const stations = corners.map(corner => corner[0])
    expect(Math.min(...stations)).toBeCloseTo(door.at - door.width / 2, 6)
    expect(Math.max(...stations)).toBeCloseTo(door.at + door.width / 2, 6)
  })
  it('goes there and back', () => {
    const { toPaper, toWall } = elevationMap(plan, 'S', sheet, { seenFrom: 'left' })
    const [station, height] = toWall(toPaper([1.25, 0.75]))
    expect([station, height].map(each => each.toFixed(9))).toEqual(['1.250000000', '0.750000000'])
  })
  it('refuses a wall that is not there', () =>
    expect(() => elevationMap(plan, 'nowhere', sheet)).toThrow('no wall nowhere'))
})
