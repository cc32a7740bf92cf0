import { describe, expect, it } from 'vitest'
import { machineProfile } from '../machine/index.js'
import { retimedRoutes, routeSection } from './index.js'
import { bead, hollowWall, line, sectionOf } from './invented-section.js'

const gantry = machineProfile('gantry-12')!
const at = (speed: number, beads = hollowWall) => routeSection(sectionOf(beads), gantry, { speed }).routes

describe('routes at another speed', () => {
  // Independent: the same beads searched for and run at that speed; ways and order do not change here.
  it.each([0.075, 0.12, 0.2])('take as long as routes made for %d m/s', speed => {
    const retimed = retimedRoutes(at(0.1), gantry, speed)
    for (const [i, route] of at(speed).routes.entries()) {
      expect(retimed.routes[i]!.printTime).toBeCloseTo(route.printTime, 9)
      expect(retimed.routes[i]!.travelTime).toBeCloseTo(route.travelTime, 9)
      expect(retimed.routes[i]!.passes.map(pass => pass.flow)).toEqual(route.passes.map(pass => pass.flow))
    }
  })
  // Closed form: a straight bead of length L from rest to rest at acceleration a takes L/v + v/a, after the pump's start lag.
  it('run a straight bead by its closed form', () => {
    const straight = [bead('s', line([0, 0], [4, 0]))]
    const { printTime } = retimedRoutes(at(0.1, straight), gantry, 0.2).routes[0]!
    expect(printTime).toBeCloseTo(4 / 0.2 + 0.2 / gantry.acceleration + gantry.pump.startLag, 6)
  })
  it('gain less than in proportion: corners stay as slow as they are', () => {
    const [slow, fast] = [at(0.1), retimedRoutes(at(0.1), gantry, 0.2)]
    const ratio = fast.routes[0]!.printTime / slow.routes[0]!.printTime
    expect(ratio).toBeGreaterThan(0.5)
    expect(ratio).toBeLessThan(1)
  })
})
