import { pathLength } from '../geometry/index.js'
import type { Job, Opening, Wall } from '../job/index.js'
import type { CubicMetres, SquareMetres } from '../quantity/index.js'

/** One face of every wall along its centreline, openings taken off. */
export const wallFace = (job: Job): SquareMetres =>
  job.walls.reduce((sum, wall) => sum + grossFace(wall), 0) -
  job.openings.reduce((sum, opening) => sum + openingArea(opening), 0)

const grossFace = (wall: Wall): SquareMetres => pathLength(wall.centreline) * (wall.top - wall.base)
const openingArea = (opening: Opening): SquareMetres => opening.width * (opening.head - opening.sill)

/** What is poured into the columns: the room between the outer beads, full height. */
export const pouredVolume = (job: Job): CubicMetres =>
  job.columns.reduce((sum, column) => {
    const wall = job.walls.find(candidate => candidate.id === column.wall)
    const height = wall ? wall.top - wall.base : 0
    return sum + column.length * Math.max(0, column.thickness - 2 * job.print.beadWidth) * height
  }, 0)
