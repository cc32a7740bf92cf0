import { localTime } from '../clock/index.js'
import type { Call } from './call.js'
import { type CallParts, placeOf, wallOf } from './embed-calls.js'
import { heldLifts } from './held-lifts.js'
import { INSPECTION_NOTICE, inspectionWords } from './trade-words.js'

/** An inspector is called wherever the nozzle waits for one: to the layer that is down, in every section of the wall. */
export function inspectionCalls({ job, sections, campaign }: CallParts): readonly Call[] {
  return heldLifts(campaign, 'inspection').flatMap(({ id, hold, lift, from }) => {
    const inspection = job.inspections?.find(one => one.id === hold.ref)
    const section = sections.find(one => one.id === lift.section)
    const stretch = section?.stretches.find(one => one.wall === inspection?.wall)
    if (!inspection || !stretch) return []
    const wall = wallOf(job, inspection.wall)
    const bottom = hold.afterLayer * job.print.layerHeight
    return [
      {
        id,
        trade: 'inspector' as const,
        what: 'inspection' as const,
        wall: wall.id,
        section: lift.section,
        lift: lift.id,
        date: localTime(from, job.site.timeZone).date,
        layerIn: hold.afterLayer,
        layerOut: hold.afterLayer,
        from,
        until: from + hold.duration,
        tellBy: from - INSPECTION_NOTICE,
        place: placeOf(job, wall, { at: (stretch.from + stretch.to) / 2, bottom, face: 'left' }),
        ...inspectionWords(inspection.what),
      },
    ]
  })
}
