import type { Embed, PrintRules, Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { drawn, hostWall, outsideAlong, problem, sayLength, sayThickness } from './check-words.js'
import { headLayers, stepMost } from './embed-at.js'
import { findJunctions, type Junction } from './junction.js'
import { wallsMet } from './met-wall.js'
import type { WallParts } from './parts.js'
import { cutsThrough } from './recess.js'

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
      ...checkHead(embed, host.wall, print, at, units),
      ...inJunction(embed, host.wall, junctions, print, at, units),
    ]
  })
}

/**
 * A gap where another wall meets the embed's own: one that interrupts it, right through or for want of a bead behind it, cuts that
 * wall off, and its end needs a jamb of one bead, too; in the face that the wall comes out of, or in the middle of a solid wall, it
 * takes its foot away.
 */
function inJunction(
  embed: Embed,
  on: Wall,
  junctions: readonly Junction[],
  print: PrintRules,
  at: string,
  units?: Units,
): readonly Problem[] {
  const { id, method, face, at: middle, width, bottom, height } = embed
  const interrupts = cutsThrough(embed, on, print)
  if (method !== 'gap' || (face === 'middle' && on.makeUp.kind === 'double')) return []
  const side = interrupts || face === 'middle' ? {} : ({ side: face === 'left' ? 1 : -1 } as const)
  const span = { wall: on.id, at: middle, width, bottom, top: bottom + height, ...side }
  const met = wallsMet(span, junctions, interrupts ? print.beadWidth : 0)
  // The one bead of a single wall laps onto the face, and bulges beside its foot.
  const bulging = wallsMet(span, junctions, print.beadWidth / 2).filter(
    ({ wall }) => wall.makeUp.kind === 'single' && !met.some(known => known.wall === wall),
  )
  return [...met, ...bulging].map(({ wall, station }) =>
    problem(
      'embed/in-junction',
      `${at}.at`,
      `Embed ${id} leaves no wall for ${wall.id}, which meets wall ${on.id} at ${sayLength(station, units)}; move one of them.`,
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

/** A corbelled head closes within the height of what is left free as a gap. */
function checkHead(
  embed: Embed,
  wall: Wall,
  print: PrintRules,
  at: string,
  units?: Units,
): readonly Problem[] {
  const { id, kind, head, method, face, height } = embed
  if (head !== 'corbelled') return []
  const [said, thick] = [
    (length: Metres) => sayLength(length, units),
    (length: Metres) => sayThickness(length, units),
  ]
  if ((kind !== 'niche' && kind !== 'chase') || method !== 'gap' || face === 'middle')
    return [
      problem(
        'embed/no-head',
        `${at}.head`,
        `Embed ${id} (${kind}, ${method}, ${face}) has a corbelled head; only niches and chases left as a gap, in a face or right through, can have one.`,
      ),
    ]
  if (face !== 'through' && cutsThrough(embed, wall, print))
    return [
      problem(
        'embed/no-head',
        `${at}.head`,
        `Embed ${id} leaves less than a bead of wall ${wall.id}, so that its head has no back to close on; make it shallower, or its face through.`,
      ),
    ]
  const needed = (headLayers(embed, print) + 1) * print.layerHeight
  if (needed <= height + drawn) return []
  const step = `${thick(stepMost(print))} a layer`
  return [
    problem(
      'embed/head-too-low',
      `${at}.height`,
      Number.isFinite(needed)
        ? `The head of ${id} closes by ${step} and needs ${said(needed)}, but ${id} is ${said(height)} high; make it higher, narrower or shallower, or its head flat.`
        : `The head of ${id} cannot close: print.overhang allows ${step}; allow more, or make it flat.`,
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
