import {
  difference,
  intersection,
  polygonArea,
  type Region,
  regionArea,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import { embedAt } from './embed-at.js'
import { type KnownPolygons, knownPolygons } from './known-polygons.js'
import type { WallParts } from './parts.js'
import { standsAt } from './parts.js'
import { type Cut, embedCut, liesAt, openingCut, opensAt } from './recess.js'
import { reliefPhase } from './relief.js'
import { roundCorners } from './round-corners.js'
import { placeSection, type SectionPlan } from './section-plan.js'
import { type Shell, shellsAt } from './shell.js'

/** The walls of one make-up at one height: what is to be filled or lined with beads. */
export interface Body extends Shell {
  readonly cuts: readonly Cut[]
}

/** The body of a section at height z: walls joined at their junctions, less openings and recesses. */
export const sectionBody = (parts: WallParts, section: Section, z: Metres): Region =>
  bodiesAt(parts, placeSection(parts.walls, section), z).flatMap(body => body.region)

/** What of one section's plan is known: bands that differ by openings alone share shells, and those that differ by ties alone bodies. */
export interface BodyCache {
  readonly shells: Map<string, readonly Shell[]>
  readonly bodies: Map<string, readonly Body[]>
  readonly polygons: KnownPolygons
}

export const newBodyCache = (polygons: KnownPolygons = knownPolygons()): BodyCache => ({
  shells: new Map(),
  bodies: new Map(),
  polygons,
})

/** Walls less what openings and embeds take away at height z; corners rounded as the nozzle can turn. */
export function bodiesAt(
  parts: WallParts,
  plan: SectionPlan,
  z: Metres,
  { shells, bodies, polygons }: BodyCache = newBodyCache(),
): readonly Body[] {
  const shellKey = shellCacheKey(plan, z)
  const key = `${shellKey}/${cutters(parts, plan, z)}`
  const known = bodies.get(key)
  if (known) return known
  const whole = shells.get(shellKey) ?? easedShells(parts, plan, z)
  shells.set(shellKey, whole)
  const cuts = whole.map(shell => cutsOf(parts, shell, z))
  const shared = whole.length > 1 ? cuts.map(own => own.filter(cut => isBesideJunction(plan, cut))) : []
  const made = whole
    .map((shell, i) => cutShell(parts.print, shell, cuts[i]!, shared.filter((_, k) => k !== i).flat()))
    .map(body => ({ ...body, region: polygons.same(body.region) }))
  bodies.set(key, made)
  return made
}

/** What cuts the section's walls at height z. */
function cutters({ openings, embeds, print }: WallParts, { stretches }: SectionPlan, z: Metres): string {
  const own = new Set(stretches.map(({ wall }) => wall.id))
  const cutting = [
    ...openings.filter(opening => own.has(opening.wall) && opensAt(opening, z)),
    ...embeds
      .filter(embed => own.has(embed.wall) && embed.method === 'gap' && liesAt(embed, z))
      .map(embed => embedAt(embed, z, print)),
  ]
  return cutting.map(({ id, width }) => `${id} ${width}`).join(' ')
}

function shellCacheKey({ stretches, junctions }: SectionPlan, z: Metres): string {
  const walls = new Set([
    ...stretches.map(({ wall }) => wall),
    ...junctions.flatMap(({ arms }) => arms.map(arm => arm.wall)),
  ])
  return [...walls].map(wall => (standsAt(wall, z) ? `${wall.id} ${reliefPhase(wall, z)}` : '')).join('|')
}

/** The bead turns round an inside corner at half a bead from the face. */
function easedShells(parts: WallParts, plan: SectionPlan, z: Metres): readonly Shell[] {
  const { inside, outside } = cornerRadii(parts.print)
  const finished = (region: Region): Region => roundCorners(region, outside, inside)
  return shellsAt(plan, parts.columns, parts.print, z, finished).map(shell => ({
    ...shell,
    region: roundCorners(shell.region, 0, inside),
  }))
}

const cornerRadii = ({ cornerRadius, beadWidth }: PrintRules) => ({
  inside: Math.max(0, cornerRadius - beadWidth / 2),
  outside: cornerRadius > 0 ? cornerRadius + beadWidth / 2 : 0,
})

/** Where another wall may have its foot. */
const isBesideJunction = ({ junctions }: SectionPlan, { taken: { wall, from, to } }: Cut): boolean =>
  junctions.some(({ arms }) => {
    const reach = 2 * Math.max(...arms.map(arm => arm.wall.thickness))
    return arms.some(arm => arm.wall === wall && from - reach < arm.station && arm.station < to + reach)
  })

/**
 * The bead turns round an outside corner half a bead within it. Recesses of `others` cut the foot that this shell has in
 * their wall, too.
 */
function cutShell(print: PrintRules, shell: Shell, cuts: readonly Cut[], others: readonly Cut[]): Body {
  const { outside } = cornerRadii(print)
  const reaching = others.filter(
    ({ ring }) => regionArea(intersection(shell.region, unionRings([ring]))) > 1e-9,
  )
  const rings = [...cuts, ...reaching].map(cut => cut.ring)
  const open =
    rings.length > 0
      ? withoutSlivers(difference(shell.region, unionRings(rings)), print.beadWidth)
      : shell.region
  const butts = shell.kind === 'single' ? shell.butts : []
  return { ...shell, region: roundCorners(open, outside, 0, butts), cuts }
}

/** A section that ends at a jamb keeps a sliver of rounding there, of no width: no bead fits into a hundredth of its square. */
const withoutSlivers = (region: Region, beadWidth: Metres): Region =>
  region.filter(polygon => polygonArea(polygon) > beadWidth ** 2 / 100)

function cutsOf(parts: WallParts, shell: Shell, z: Metres): readonly Cut[] {
  const touches = (wall: Wall, at: Metres, width: Metres) =>
    shell.stretches.some(
      other => other.wall === wall && other.from < at + width / 2 && at - width / 2 < other.to,
    )
  const walls = [...new Set(shell.stretches.map(({ wall }) => wall))].filter(wall => standsAt(wall, z))
  return walls.flatMap(wall => {
    const outermost = outermostHalf(parts, wall)
    const openings = parts.openings
      .filter(
        opening =>
          opening.wall === wall.id && opensAt(opening, z) && touches(wall, opening.at, opening.width),
      )
      .map(opening => openingCut(opening, wall, outermost))
    const embeds = parts.embeds
      .filter(embed => embed.wall === wall.id && liesAt(embed, z) && touches(wall, embed.at, embed.width))
      .flatMap(embed => embedCut(embedAt(embed, z, parts.print), wall, outermost, parts.print) ?? [])
    return [...openings, ...embeds]
  })
}

/** Half the thickness of the wall where it is thickest: relief and piers counted in. */
function outermostHalf({ columns }: WallParts, { id, thickness, relief }: Wall): Metres {
  const piers = columns.filter(column => column.wall === id).map(column => column.thickness)
  return Math.max(thickness, ...piers) / 2 + (relief?.depth ?? 0)
}
