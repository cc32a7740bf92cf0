import { type Polygon, regionArea } from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import type { CubicMetres, Metres, SquareMetres } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import { bandKey } from './band-key.js'
import { bandLayerVolume } from './band-volume.js'
import type { Band, Bead, BeadRole, SectionBands } from './bead.js'
import { solidFill } from './bead-section.js'
import { type Body, type BodyCache, bodiesAt, newBodyCache } from './body.js'
import { doubleBeads } from './double-wall.js'
import { bandLimits, type LayerRange } from './heights.js'
import { findJunctions } from './junction.js'
import { type KnownPolygons, knownPolygons } from './known-polygons.js'
import { layerMiddle } from './layers.js'
import type { WallParts } from './parts.js'
import type { RawBead } from './raw-bead.js'
import { placeSection, type SectionPlan } from './section-plan.js'
import { singleBeads } from './single-wall.js'
import { solidBeads } from './solid-wall.js'
import { thinPlaces } from './thin-place.js'

/** The plan of one band, whatever its layers and its section are called. */
export interface BandPlan {
  readonly body: readonly Polygon[]
  readonly bodyArea: SquareMetres
  readonly beads: readonly RawBead[]
  readonly thinPlaces: Band['thinPlaces']
}

/**
 * Band plans by everything they depend on. Hand the same map to a later call and only bands whose walls, openings or
 * embeds changed are computed again. The caller owns it and drops its oldest entries, those asked for longest ago.
 */
export type BandCache = Map<string, BandPlan>

/** All beads of all sections. */
export function layAllBeads(
  parts: WallParts,
  sections: readonly Section[],
  cache: BandCache = new Map(),
): readonly SectionBands[] {
  const junctions = findJunctions(parts.walls)
  const polygons = polygonsOf(cache)
  return sections.map(section =>
    laySection(parts, section, placeSection(parts.walls, section, junctions), cache, polygons),
  )
}

/** The beads of one section, band by band from the slab up. */
export const layBeads = (parts: WallParts, section: Section, cache: BandCache = new Map()): SectionBands =>
  laySection(parts, section, placeSection(parts.walls, section), cache, polygonsOf(cache))

const polygonsOf = (cache: BandCache): KnownPolygons =>
  knownPolygons([...cache.values()].flatMap(({ body }) => body))

function laySection(
  parts: WallParts,
  section: Section,
  plan: SectionPlan,
  cache: BandCache,
  polygons: KnownPolygons,
): SectionBands {
  const runs: { range: LayerRange; band: BandPlan }[] = []
  const bodies = newBodyCache(polygons)
  for (const range of bandLimits(parts, section)) {
    const z = layerMiddle(range.fromLayer, parts.print.layerHeight)
    const band = cachedBand(parts, plan, z, cache, bodies)
    const last = runs.at(-1)
    // A height at which nothing of this section changes does not divide it.
    if (last?.band === band)
      runs[runs.length - 1] = { range: { ...last.range, toLayer: range.toLayer }, band }
    else runs.push({ range, band })
  }
  const bands = runs
    .filter(({ band }) => band.body.length > 0)
    .map(({ range, band }, i) => numberBand(`${section.id}.${i + 1}`, range, band, parts.print.layerHeight))
  // Above the last material there is nothing to print, as over a sill panel in an opening up to the top.
  return { section: section.id, layers: bands.at(-1)?.toLayer ?? 0, bands, volume: sectionVolume(bands) }
}

function cachedBand(
  parts: WallParts,
  plan: SectionPlan,
  z: Metres,
  cache: BandCache,
  bodies: BodyCache,
): BandPlan {
  const key = bandKey(parts, plan, z)
  const known = cache.get(key) ?? planBand(parts, plan, z, bodies)
  // Set anew: the map's order tells its owner what was asked for last.
  cache.delete(key)
  cache.set(key, known)
  return known
}

function planBand(parts: WallParts, plan: SectionPlan, z: Metres, known: BodyCache): BandPlan {
  const bodies = bodiesAt(parts, plan, z, known)
  const region = bodies.flatMap(body => body.region)
  const filled = bodies.map(body => ({ body, beads: beadsOf(parts, plan, bodies, body, z) }))
  return {
    body: region,
    bodyArea: regionArea(region),
    beads: filled.flatMap(({ beads }) => beads),
    thinPlaces: filled.flatMap(({ body, beads }) => thinPlaces(body, beads, parts.print)),
  }
}

function beadsOf(
  parts: WallParts,
  plan: SectionPlan,
  bodies: readonly Body[],
  body: Body,
  z: Metres,
): readonly RawBead[] {
  const others = () => bodies.filter(other => other !== body).flatMap(other => other.region)
  switch (body.kind) {
    case 'double':
      return doubleBeads(parts, plan, body, z)
    case 'solid':
      return isOneBead(body.thickness, parts.print)
        ? singleBeads(parts, plan, body, others(), z)
        : solidBeads(body, parts.print)
    case 'single':
      return singleBeads(parts, plan, body, others(), z)
  }
}

/** Nothing goes round in a solid wall as thick as a bead: it is one line. */
const isOneBead = (thickness: Metres, { beadWidth, layerHeight }: PrintRules): boolean =>
  solidFill(thickness, beadWidth, layerHeight).count === 1

const letters: Readonly<Record<BeadRole, string>> = {
  wythe: 'w',
  web: 't',
  closer: 'c',
  fill: 'f',
  line: 'l',
}

const numbered = new WeakMap<BandPlan, Map<string, Band>>()

/** One plan is known by few names: more come from walls that are moved about. */
const mostNames = 16

/** The same object for the same plan under the same name: who draws it or sends it on sees that it has stayed. */
function numberBand(id: string, range: LayerRange, band: BandPlan, height: Metres): Band {
  const key = `${id} ${range.fromLayer} ${range.toLayer} ${height}`
  const known = numbered.get(band)
  const before = known?.get(key)
  if (before) return before
  const made = namedBand(id, range, band, height)
  numbered.set(band, known && known.size < mostNames ? known.set(key, made) : new Map([[key, made]]))
  return made
}

function namedBand(id: string, range: LayerRange, band: BandPlan, height: Metres): Band {
  const counts: Record<BeadRole, number> = { wythe: 0, web: 0, closer: 0, fill: 0, line: 0 }
  const beads = band.beads.map(
    (bead): Bead => ({ id: `${id}.${letters[bead.role]}${++counts[bead.role]}`, ...bead, height }),
  )
  return { ...range, body: band.body, bodyArea: band.bodyArea, beads, thinPlaces: band.thinPlaces }
}

const sectionVolume = (bands: readonly Band[]): CubicMetres =>
  bands.reduce((sum, band) => sum + bandLayerVolume(band) * (band.toLayer - band.fromLayer + 1), 0)
