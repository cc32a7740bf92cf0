import type { Metres } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import type { Snap } from './bead.js'
import { headLayers } from './embed-at.js'
import { layersBelow } from './layers.js'
import type { WallParts } from './parts.js'
import { shapesPlan } from './recess.js'
import { reliefVariesWithHeight } from './relief.js'

/** Layers with one plan, first and last included. */
export interface LayerRange {
  readonly fromLayer: number
  readonly toLayer: number
}

/** From the slab to the top of the section's tallest wall. */
export const layerCount = (parts: WallParts, section: Section): number =>
  Math.max(0, ...wallsOf(parts, section).map(wall => layersBelow(wall.top, parts.print.layerHeight)))

interface Level {
  readonly what: string
  readonly z: Metres
}

/** Every height at which the plan of a section may change. */
function levels(parts: WallParts, section: Section): readonly Level[] {
  const ids = new Set(section.stretches.map(stretch => stretch.wall))
  const walls = wallsOf(parts, section).flatMap(({ id, base, top }) => [
    { what: `${id} base`, z: base },
    { what: `${id} top`, z: top },
  ])
  const openings = parts.openings
    .filter(({ wall }) => ids.has(wall))
    .flatMap(({ id, sill, head, lintel }) => [
      { what: `${id} sill`, z: sill },
      { what: `${id} head`, z: head },
      ...(lintel ? [{ what: `${id} lintel top`, z: head + lintel.height }] : []),
    ])
  const embeds = embedsOf(parts, section)
    .filter(shapesPlan)
    .flatMap(({ id, bottom, height }) => [
      { what: `${id} bottom`, z: bottom },
      { what: `${id} top`, z: bottom + height },
    ])
  return [...walls, ...openings, ...embeds]
}

/** Heights asked for and the layer boundaries they got; those that fall on a boundary are left out. */
export function heightSnaps(parts: WallParts, section: Section): readonly Snap[] {
  const h = parts.print.layerHeight
  return levels(parts, section)
    .map(({ what, z }) => ({ what, asked: z, got: layersBelow(z, h) * h }))
    .filter(({ asked, got }) => Math.abs(asked - got) > 1e-6)
}

/**
 * The layers of a section in bands of one plan each, from the slab up. Layers in a relief that changes with height, or in a
 * corbelled head, are bands of their own. Walls elsewhere in the plan count too where they meet the section: they may end lower.
 */
export function bandLimits(parts: WallParts, section: Section): readonly LayerRange[] {
  const h = parts.print.layerHeight
  const count = layerCount(parts, section)
  const cuts = new Set([0, count])
  for (const { z } of levels(parts, section)) cuts.add(layersBelow(z, h))
  for (const wall of parts.walls) for (const z of [wall.base, wall.top]) cuts.add(layersBelow(z, h))
  for (const wall of wallsOf(parts, section).filter(reliefVariesWithHeight))
    for (let n = layersBelow(wall.base, h); n <= layersBelow(wall.top, h); n++) cuts.add(n)
  for (const embed of embedsOf(parts, section)) {
    const top = layersBelow(embed.bottom + embed.height, h)
    for (let n = Math.max(0, top - headLayers(embed, parts.print)); n < top; n++) cuts.add(n)
  }
  const sorted = [...cuts].filter(n => n <= count).sort((a, b) => a - b)
  return sorted.slice(1).map((toLayer, i) => ({ fromLayer: sorted[i]! + 1, toLayer }))
}

const embedsOf = ({ embeds }: WallParts, { stretches }: Section) =>
  embeds.filter(embed => stretches.some(({ wall }) => wall === embed.wall))

const wallsOf = ({ walls }: WallParts, section: Section) => {
  const ids = new Set(section.stretches.map(stretch => stretch.wall))
  return walls.filter(({ id }) => ids.has(id))
}
