import type { Inspection, Wall } from '@dawnlift/core/job'
import { closestName } from '@dawnlift/core/result'
import type { Ledger } from './ledger.js'
import { nameList } from './name-list.js'

/** Inspections name a wall that is there, at a height where it still goes on. */
export function checkInspections(
  inspections: readonly Inspection[],
  walls: readonly Wall[],
  ledger: Ledger,
): void {
  inspections.forEach(({ id, wall: name, above }, index) => {
    const wall = walls.find(each => each.id === name)
    const names = walls.map(each => each.id)
    if (!wall) {
      const near = closestName(name, names)
      const hint = near ? `did you mean “${near}”?` : `walls are ${nameList(names)}.`
      const say = `Inspection ${id} names wall “${name}”, which is not there; ${hint}`
      ledger.wrong('job/unknown-wall', ['inspections', index, 'wall'], say)
    } else if (above >= wall.top) {
      const say = `Inspection ${id} waits ${ledger.said(above)} over the slab, but wall ${name} ends at ${ledger.said(wall.top)}; give a height below its top.`
      ledger.wrong('job/inspection-outside', ['inspections', index, 'above'], say)
    }
    if (inspections.findIndex(each => each.id === id) !== index)
      ledger.wrong('job/double', ['inspections', index, 'id'], `There are two inspections ${id}; rename one.`)
  })
}
