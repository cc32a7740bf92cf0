import type { Wall } from '../job/index.js'
import type { Finding } from '../result/index.js'
import { gapBetween, type WallItem } from './wall-item.js'

/**
 * A box must be reached by its wires: through a chase that touches it, or through the open cavity straight up to the
 * wall's top or down to the slab. A cavity is open where nothing that fills it lies over or under the box.
 */
export function checkReach(wall: Wall, items: readonly WallItem[]): readonly Finding[] {
  return items
    .filter(item => item.what === 'box')
    .filter(box => !meetsChase(box, items) && !reachesThroughCavity(wall, box, items))
    .map(box => ({
      check: 'box-reach',
      at: box.id,
      demand: 1,
      capacity: 0,
      unit: 'way',
      source: 'common practice, no source',
      verdict: 'fail',
      say: `No wire reaches box ${box.id}: no chase touches it${
        wall.makeUp.kind === 'double'
          ? ', and the cavity is closed both above and below it'
          : ` and wall ${wall.name} has no cavity`
      }. Add a chase up or down, or move the box.`,
    }))
}

const meetsChase = (box: WallItem, items: readonly WallItem[]): boolean =>
  items.some(
    item =>
      item.what === 'chase' &&
      gapBetween(item.along, box.along) <= 0.001 &&
      gapBetween(item.up, box.up) <= 0.001 &&
      gapBetween(item.through, box.through) <= 0.001,
  )

function reachesThroughCavity(wall: Wall, box: WallItem, items: readonly WallItem[]): boolean {
  if (wall.makeUp.kind !== 'double') return false
  const others = items.filter(item => item.id !== box.id && -gapBetween(item.along, box.along) > 0.001)
  const stops = others.filter(item => closesCavity(wall, item))
  const shutAbove = stops.some(item => item.up[0] >= box.up[1] - 0.001 || item.what === 'column')
  const shutBelow = stops.some(item => item.up[1] <= box.up[0] + 0.001 || item.what === 'column')
  return !shutAbove || !shutBelow
}

const closesCavity = (wall: Wall, item: WallItem): boolean =>
  item.what === 'opening' ||
  item.what === 'lintel' ||
  item.what === 'bearing' ||
  item.what === 'column' ||
  item.through[1] - item.through[0] >= 0.8 * wall.thickness
