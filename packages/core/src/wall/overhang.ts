import {
  difference,
  inflate,
  type Point,
  pathLength,
  polygonArea,
  polygonCentroid,
  type Region,
  type Ring,
  unionRings,
} from '../geometry/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import { formatPlace, formatQuantity, type Metres, type SquareMetres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { Band, SectionBands } from './bead.js'
import { layersBelow } from './layers.js'
import type { WallParts } from './parts.js'
import { patchWidth } from './patch-width.js'
import { lateralStrip } from './strip.js'

/** A patch of a layer that hangs over, and how far it steps out. */
interface Patch {
  readonly point: Point
  readonly area: SquareMetres
  readonly step: Metres
}

type Body = Band['body']

/** Patches found before, by the bodies of both layers, which stay the same objects while their plan does, and what carries. */
export type KnownSteps = WeakMap<Body, WeakMap<Body, Map<string, readonly Patch[]>>>

/**
 * Each layer against the one below: how far its face steps out, as a share of the bead width, and material that hangs
 * over nothing unless a lintel, or an embed set into the gap, carries it. Reported where the plan changes; patches under
 * half a squared bead width, such as a rounded corner below a full one, are carried by the bead across them. `known`:
 * steps of earlier plans; the caller owns it.
 */
export function checkOverhang(
  parts: WallParts,
  laid: SectionBands,
  known: KnownSteps = new WeakMap(),
): readonly Finding[] {
  const findings: Finding[] = []
  laid.bands.forEach((band, i) => {
    const below = i === 0 ? undefined : laid.bands[i - 1]!
    const gap = below && below.toLayer < band.fromLayer - 1
    if (!below || gap) {
      if (band.fromLayer > 1) findings.push(onNothing(parts, laid.section, band))
    } else findings.push(...stepFindings(parts, laid.section, below, band, known))
  })
  return findings
}

function stepFindings(
  parts: WallParts,
  section: string,
  below: Band,
  band: Band,
  known: KnownSteps,
): readonly Finding[] {
  const { beadWidth, overhang } = parts.print
  return knownPatches(parts, below, band, known).map(({ point, area, step }) =>
    overhangFinding(section, band, point, area, step, beadWidth, overhang, parts.units ?? 'metric'),
  )
}

function knownPatches(parts: WallParts, below: Band, band: Band, known: KnownSteps): readonly Patch[] {
  const carried = carriers(parts, band.fromLayer)
  const onto = known.get(band.body) ?? new WeakMap<Body, Map<string, readonly Patch[]>>()
  known.set(band.body, onto)
  const over = onto.get(below.body) ?? new Map<string, readonly Patch[]>()
  onto.set(below.body, over)
  const key = JSON.stringify([carried, parts.print.beadWidth, parts.print.overhang])
  const patches = over.get(key) ?? patchesOf(parts, below, band, unionRings(carried))
  if (over.size >= mostCarriers) over.clear()
  over.set(key, patches)
  return patches
}

/** A lintel or box that is moved about over one step. */
const mostCarriers = 8

function patchesOf({ print }: WallParts, below: Band, band: Band, carried: Region): readonly Patch[] {
  const { beadWidth, overhang } = print
  const allowed = overhang * beadWidth
  return difference(band.body, inflate(below.body, allowed, 'mitre'), carried)
    .map(polygon => ({ area: polygonArea(polygon), point: polygonCentroid(polygon), polygon }))
    .filter(({ area }) => area > 0.5 * beadWidth ** 2)
    .map(({ area, point, polygon }) => ({ area, point, step: allowed + patchWidth([polygon], beadWidth) }))
}

function overhangFinding(
  section: string,
  band: Band,
  point: Point,
  area: SquareMetres,
  step: Metres,
  beadWidth: Metres,
  limit: number,
  units: Units,
): Finding {
  const share = step / beadWidth
  const where = `layer ${band.fromLayer} at ${formatPlace(point, units)}`
  return {
    check: share > 1 ? 'unsupported' : 'overhang',
    at: `section ${section}, layer ${band.fromLayer}`,
    point,
    demand: share,
    capacity: limit,
    unit: 'bead widths',
    source: 'the job',
    verdict: 'fail',
    say:
      share > 1
        ? `${where}: ${sayQuantity(area * 1e4, 'cm²', units)} hangs over nothing; set a lintel or a form under it. A screening check: the support is for a licensed engineer to confirm.`
        : `${where}: the layer steps out ${sayQuantity(step * 1000, 'mm', units)}, ${(share * 100).toFixed(0)} % of the bead, over the ${(limit * 100).toFixed(0)} % allowed; spread the step over more layers.`,
  }
}

/** Rigid things that carry a layer: lintels with their bearings, and embeds that fill their gap. */
function carriers(parts: WallParts, layer: number): readonly Ring[] {
  const h = parts.print.layerHeight
  const under = (top: Metres) => layersBelow(top, h) === layer - 1
  const strip = (on: string, at: Metres, width: Metres) => {
    const wall = parts.walls.find(({ id }) => id === on)
    if (!wall) return []
    const reach = wall.thickness / 2 + (wall.relief?.depth ?? 0) + parts.print.beadWidth
    const [from, to] = [Math.max(0, at - width / 2), Math.min(pathLength(wall.centreline), at + width / 2)]
    return to > from ? [lateralStrip(wall.centreline, from, to, -reach, reach)] : []
  }
  const lintels = parts.openings.flatMap(({ wall, at, width, head, lintel }) =>
    lintel && under(head + lintel.height) ? strip(wall, at, width + 2 * lintel.bearing) : [],
  )
  const embeds = parts.embeds.flatMap(({ wall, at, width, bottom, height, kind, method }) =>
    method === 'gap' && rigid.has(kind) && under(bottom + height) ? strip(wall, at, width + 0.002) : [],
  )
  return [...lintels, ...embeds]
}

/** Niches and chases stay empty: nothing in them carries the next layer. */
const rigid: ReadonlySet<string> = new Set(['box', 'sleeve', 'pipe', 'plate', 'anchor', 'strap'])

function onNothing({ print, units }: WallParts, section: string, band: Band): Finding {
  const height = (band.fromLayer - 1) * print.layerHeight
  return {
    check: 'unsupported',
    at: `section ${section}, layer ${band.fromLayer}`,
    demand: band.bodyArea,
    capacity: 0,
    unit: 'm²',
    source: 'the job',
    verdict: 'fail',
    say: `section ${section} starts at ${formatQuantity(height, 'length', units ?? 'metric')} with nothing of its own below; print it from the slab, or stand it on a beam that a licensed engineer has checked.`,
  }
}
