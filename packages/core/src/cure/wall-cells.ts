import type { MakeUp } from '../job/index.js'
import type { MixModel } from '../mix/index.js'
import type { Metres } from '../quantity/index.js'
import { DRY_HEAT } from '../weather/index.js'
import { type CellWall, cavityWall, slabOf } from './conduction.js'

/** A wall as heat sees it. */
export interface WallBuild {
  readonly kind: MakeUp['kind']
  readonly beadWidth: Metres
  /** Face to face. */
  readonly thickness: Metres
}

/** Damp, young mortar [W/mK]. Source common practice, no source: 1.2 to 1.8. */
export const CONDUCTIVITY = 1.5
/** Across an upright cavity of 25 mm and more, air and radiation together [W/m²K]. Source [ISO6946-2017], from memory: R = 0.17. */
export const CAVITY = 1 / 0.17

/** Heat capacity of the fresh mix [J/m³K]: water 4187, dry material 0.22 of it. Source [ACI305-2010]; Assumes that it stays so while it hardens (8 % high in the end). */
export const heatCapacity = ({ density, waterRatio }: Pick<MixModel, 'density' | 'waterRatio'>): number =>
  (density * 4187 * (DRY_HEAT + waterRatio)) / (1 + waterRatio)

/** The wall in cells of about a centimetre, at least four to a wythe. */
export function wallCells(build: WallBuild, mix: Pick<MixModel, 'density' | 'waterRatio'>): CellWall {
  const leaf = build.kind === 'solid' ? build.thickness : build.beadWidth
  const cells = Math.max(4, Math.min(30, Math.round(leaf / 0.01)))
  const slab = slabOf(leaf, cells, CONDUCTIVITY, heatCapacity(mix))
  return build.kind === 'double' ? cavityWall(slab, CAVITY) : slab
}

/** Thickness of one cell [m]. */
export function cellSize(build: WallBuild, cells: number): Metres {
  if (build.kind === 'double') return build.beadWidth / (cells / 2)
  return (build.kind === 'solid' ? build.thickness : build.beadWidth) / cells
}

/** Middles of the cells from the left face [m]; the cavity of a double wall has none. */
export function cellDepths(build: WallBuild, cells: number): readonly Metres[] {
  const size = cellSize(build, cells)
  const far = build.kind === 'double' ? build.thickness - 2 * build.beadWidth : 0
  return Array.from({ length: cells }, (_, i) => (i + 0.5) * size + (i >= cells / 2 ? far : 0))
}
