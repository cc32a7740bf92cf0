import type { Embed, Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, hostWall, outsideAlong, problem, sayLength, sayThickness } from './check-words.js'
import { findJunctions, type Junction } from './junction.js'
import { wallsMet } from './met-wall.js'
import type { WallParts } from './parts.js'

export function checkEmbeds({ walls, embeds, print, units }: WallParts): readonly Problem[] {
  const junctions = findJunctions(walls.filter(({ centreline }) => centreline.bulges.length > 0))
  return embeds.flatMap((embed, i) => {
    const at = `embeds[${i}]`
    const host = hostWall(walls, embed, at, 'Embed')
    if ('code' in host) return [host]
    return [
      ...outsideAlong(embed, embed.width, host, at, 'Embed', 'embed/outside-wall', units),
      ...outsideUpward(embed, host.wall, at, units),
      ...checkSize(embed, host.wall, at, units),
      ...inJunction(embed, junctions, print.beadWidth, at, units),
    ]
  })
}

/**
 * A gap where another wall meets the embed's own: right through it cuts that wall off, and its end needs a jamb of one
 * bead, too; in the face that the wall comes out of it takes its foot away.
 */
function inJunction(
  { id, method, face, wall: on, at: middle, width, bottom, height }: Embed,
  junctions: readonly Junction[],
  bead: Metres,
  at: string,
  units?: Units,
): readonly Problem[] {
  if (method !== 'gap' || face === 'middle') return []
  const side = face === 'through' ? {} : ({ side: face === 'left' ? 1 : -1 } as const)
  const span = { wall: on, at: middle, width, bottom, top: bottom + height, ...side }
  return wallsMet(span, junctions, face === 'through' ? bead : 0).map(({ wall, station }) =>
    problem(
      'embed/in-junction',
      `${at}.at`,
      `Embed ${id} leaves no wall for ${wall.id}, which meets wall ${on} at ${sayLength(station, units)}; move one of them.`,
    ),
  )
}

function outsideUpward(
  { id, bottom, height }: Embed,
  wall: Wall,
  at: string,
  units?: Units,
): readonly Problem[] {
  const top = bottom + height
  if (bottom >= wall.base - drawn && top <= wall.top + drawn) return []
  return [
    problem(
      'embed/outside-height',
      `${at}.bottom`,
      `Embed ${id} goes from ${sayLength(bottom, units)} to ${sayLength(top, units)}, but wall ${wall.id} from ${sayLength(wall.base, units)} to ${sayLength(wall.top, units)}; move it.`,
    ),
  ]
}

function checkSize(
  { id, kind, width, height, depth, method }: Embed,
  wall: Wall,
  at: string,
  units?: Units,
): readonly Problem[] {
  const problems: Problem[] = []
  if (width <= 0 || height < 0 || depth < 0 || (method === 'gap' && (height === 0 || depth === 0)))
    problems.push(
      problem(
        'embed/no-size',
        at,
        `Embed ${id} (${kind}) is ${sayThickness(width, units)} wide, ${sayThickness(height, units)} high and ${sayThickness(depth, units)} deep; a gap needs all three.`,
      ),
    )
  if (depth > wall.thickness + drawn)
    problems.push(
      problem(
        'embed/deeper-than-wall',
        `${at}.depth`,
        `Embed ${id} is ${sayThickness(depth, units)} deep, wall ${wall.id} ${sayThickness(wall.thickness, units)} thick; make it shallower.`,
      ),
    )
  return problems
}
