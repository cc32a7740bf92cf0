import type { Metres } from '../quantity/index.js'
import { findJunctions, type Junction, layersBelow, solidLayers } from '../wall/index.js'
import type { Stretch } from './section.js'
import { type SectionJob, solidParts } from './section-job.js'

/** A run of heights above the slab, snapped to layers. */
export interface Rise {
  readonly from: Metres
  readonly to: Metres
}

/**
 * Heights from the slab to its top at which a section has nothing to print: a sill and a head alone, without the wall beside
 * the opening. Nobody can print over them. Of stretches with nothing at all, all heights of their walls.
 */
export function emptyHeights(
  job: SectionJob,
  stretches: readonly Stretch[],
  junctions: readonly Junction[] = findJunctions(job.walls),
): readonly Rise[] {
  const { layerHeight } = job.print
  const solid = solidLayers(solidParts(job), stretches, junctions)
  const tops = job.walls.filter(({ id }) => stretches.some(({ wall }) => wall === id)).map(({ top }) => top)
  const top = layersBelow(Math.max(0, ...tops), layerHeight)
  const ranges = solid.length > 0 ? solid : [{ fromLayer: top + 1, toLayer: top + 1 }]
  const from = (i: number) => (i === 0 ? 0 : ranges[i - 1]!.toLayer)
  return ranges
    .map(({ fromLayer }, i) => ({ from: from(i) * layerHeight, to: (fromLayer - 1) * layerHeight }))
    .filter(rise => rise.to - rise.from > layerHeight / 2)
}
