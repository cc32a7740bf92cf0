import type { Job, Wall } from '../job/index.js'
import { layerTime, type RouteCache, routeSection } from '../route/index.js'
import { layBeads } from '../wall/index.js'

const sampleLength = 6

/**
 * Bead metres at full nozzle speed that a metre of this wall is worth in time. A sample of straight wall of the same make-up is
 * laid and run: corners of the web, heading and flow slow the nozzle, and a division by bead length alone would come out with layers
 * half as long again as meant.
 */
export function sampledBeadLength(job: Job, cache: RouteCache): (wall: Wall) => number {
  const known = new Map<string, number>()
  return wall => {
    const key = JSON.stringify([wall.makeUp, wall.thickness])
    const before = known.get(key)
    if (before !== undefined) return before
    const worth = (sampleTime(job, wall, cache) * job.print.speed) / sampleLength
    known.set(key, worth)
    return worth
  }
}

function sampleTime(job: Job, wall: Wall, cache: RouteCache): number {
  const centreline = {
    points: [
      [0, 0],
      [sampleLength, 0],
    ] as const,
    bulges: [0],
    closed: false,
  }
  const { relief: _, ...plain } = wall
  const sample: Wall = { ...plain, centreline, base: 0, top: job.print.layerHeight, joints: [] }
  const parts = { walls: [sample], openings: [], embeds: [], columns: [], print: job.print }
  const section = { id: 'sample', stretches: [{ wall: wall.id, from: 0, to: sampleLength }], joints: [] }
  const { routes } = routeSection(layBeads(parts, section), job.machine, { speed: job.print.speed, cache })
  const [first] = routes.routes
  return first ? layerTime(first) : (sampleLength / job.print.speed) * 2
}
