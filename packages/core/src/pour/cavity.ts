import type { Column, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Cavity } from './pour-plan.js'

/** The clear inside of a column in a wall: between its cross ties, and between the wythes. */
export const columnCavity = (
  column: Column,
  wall: Pick<Wall, 'base' | 'top'>,
  beadWidth: Metres,
): Cavity => ({
  id: column.id,
  length: column.length,
  depth: column.thickness - 2 * beadWidth,
  height: wall.top - wall.base,
  shell: beadWidth,
  cover: column.cover,
})
