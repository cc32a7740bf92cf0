import type { Metres } from '../quantity/index.js'
import type { Stretch } from '../section/index.js'
import { embedAt } from './embed-at.js'
import { facesMeet, type Run, takeAway } from './free-run.js'
import { bandLimits, type LayerRange } from './heights.js'
import type { Junction } from './junction.js'
import { layerMiddle } from './layers.js'
import { standsAt, type WallParts } from './parts.js'
import { cutsThrough, liesAt, opensAt } from './recess.js'
import { holdsArm, type PlacedStretch, placeSection } from './section-plan.js'

/**
 * Layers on which a section has something to print: at least one bead's width of one of its stretches is neither open nor
 * taken by a wall of another section. Judged by lengths along the walls, without the polygons; never more than is there.
 */
export function solidLayers(
  parts: WallParts,
  stretches: readonly Stretch[],
  junctions: readonly Junction[],
): readonly LayerRange[] {
  const section = { id: '', stretches, joints: [] }
  const plan = placeSection(parts.walls, section, junctions)
  return bandLimits(parts, section)
    .filter(({ fromLayer }) => {
      const z = layerMiddle(fromLayer, parts.print.layerHeight)
      return plan.stretches.some(stretch => isSolid(parts, stretch, takenRuns(plan, stretch, z), z))
    })
    .reduce<LayerRange[]>((merged, next) => {
      const last = merged.at(-1)
      if (last && last.toLayer === next.fromLayer - 1)
        merged[merged.length - 1] = { ...last, toLayer: next.toLayer }
      else merged.push(next)
      return merged
    }, [])
}

function isSolid(
  parts: WallParts,
  { wall, from, to }: PlacedStretch,
  taken: readonly Run[],
  z: Metres,
): boolean {
  if (!standsAt(wall, z)) return false
  const open = [
    ...parts.openings.filter(each => each.wall === wall.id && opensAt(each, z)),
    ...parts.embeds
      .filter(each => each.wall === wall.id && liesAt(each, z))
      .map(each => embedAt(each, z, parts.print))
      .filter(each => cutsThrough(each, wall, parts.print)),
  ].map(({ at, width }) => ({ from: at - width / 2, to: at + width / 2 }))
  return takeAway({ from, to }, [...open, ...taken]).some(
    free => free.to - free.from >= parts.print.beadWidth - 1e-6,
  )
}

/** Where walls of other sections that meet a stretch may keep the junction to themselves. */
const takenRuns = (
  { junctions, stretches }: ReturnType<typeof placeSection>,
  { wall }: PlacedStretch,
  z: Metres,
): readonly Run[] =>
  junctions.flatMap(({ arms }) => {
    const others = arms.filter(arm => arm.wall !== wall && standsAt(arm.wall, z) && !holdsArm(stretches, arm))
    return arms
      .filter(arm => arm.wall === wall)
      .map(arm => {
        const reach = Math.max(0, ...others.map(other => facesMeet(arm, other)))
        return arm.sense > 0
          ? { from: arm.station, to: arm.station + reach }
          : { from: arm.station - reach, to: arm.station }
      })
  })
